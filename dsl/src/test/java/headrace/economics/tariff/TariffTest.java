package headrace.economics.tariff;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.economics.EconomicsProblem;
import headrace.economics.tariff.EnergyRate.Tier;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Energy;
import headrace.units.EnergyPrice;
import headrace.units.Money;
import headrace.units.Ratio;
import headrace.units.Time;
import headrace.units.UnitProblem;
import java.time.Month;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

/** The year 2025 begins on a Wednesday and has 261 working days, 21 of them in July and 20 in February. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class TariffTest {
    private static final Tariff TWO_PRICES = Tariff.of(
            "two prices",
            List.of(
                    EnergyRate.at("day", price(0.25)).onWorkdays().between(7, 22),
                    EnergyRate.at("night", price(0.15))));

    /** 10 kW over 8760 h at 0.2. */
    @Test
    void a_flat_price_is_the_energy_times_the_price() {
        Bill bill = Tariff.flat(price(0.2)).bill(hourly(hour -> 10_000));
        assertEquals(17_520, bill.total().amount(), 1e-8);
        assertEquals(87_600, bill.energy().toKilowattHours(), 1e-6);
        assertEquals(0, bill.demandCost().amount());
    }

    /** 15 h of 261 working days at the day price: 3915 h of 1 kW at 0.25, and 4845 h at 0.15. */
    @Test
    void a_time_of_use_price_knows_the_hour_and_the_day_of_the_week() {
        Bill bill = TWO_PRICES.bill(hourly(hour -> 1000));
        assertEquals(3915 * 0.25 + 4845 * 0.15, bill.total().amount(), 1e-8);
        Energy february = bill.months().get(1).byRate().get("day");
        assertEquals(20 * 15, february.toKilowattHours(), 1e-9);
    }

    /** From 22 to 7 o'clock: 9 h of every day. */
    @Test
    void hours_go_on_past_midnight() {
        Tariff night = Tariff.of(
                "night", List.of(EnergyRate.at("night", price(0.1)).between(22, 7), EnergyRate.at("day", price(0.3))));
        assertEquals(
                365 * (9 * 0.1 + 15 * 0.3),
                night.bill(hourly(hour -> 1000)).total().amount(),
                1e-8);
    }

    /** June, July and August have 92 days. */
    @Test
    void a_season_knows_its_months() {
        Tariff seasons = Tariff.of(
                "seasons",
                List.of(
                        EnergyRate.at("summer", price(0.3)).inMonths(EnumSet.range(Month.JUNE, Month.AUGUST)),
                        EnergyRate.at("rest of the year", price(0.2))));
        Bill bill = seasons.bill(hourly(hour -> 1000));
        assertEquals(92 * 24 * 0.3 + 273 * 24 * 0.2, bill.total().amount(), 1e-8);
        assertEquals(31 * 24 * 0.3, bill.months().get(6).total().amount(), 1e-9);
    }

    /** 1 kW: 744 kWh in January; 500 at 0.30, 244 at 0.20. February has 672 kWh. */
    @Test
    void tiers_begin_anew_each_month() {
        Tariff tiers = Tariff.of(
                "tiers",
                List.of(EnergyRate.tiered(
                        "all",
                        List.of(
                                new Tier(Optional.of(Energy.kilowattHours(500)), price(0.3)),
                                new Tier(Optional.empty(), price(0.2))))));
        Bill bill = tiers.bill(hourly(hour -> 1000));
        assertEquals(500 * 0.3 + 244 * 0.2, bill.months().get(0).energyCost().amount(), 1e-9);
        assertEquals(500 * 0.3 + 172 * 0.2, bill.months().get(1).energyCost().amount(), 1e-9);
    }

    /**
     * Quarter hours of 20, 0, 0, 0 kW from hour 0 on: the demand over 15 min is 20 kW, over 30 min 10 kW, over an hour
     * 5 kW.
     */
    @Test
    void the_demand_is_the_highest_mean_of_a_window_and_not_the_highest_moment() {
        double[] watts = new double[4 * 8760];
        watts[0] = 20_000;
        PowerSeries powers = PowerSeries.of("quarters", 2025, watts, NOTHING);
        for (int minutes : new int[] {15, 30, 60}) {
            DemandCharge charge = DemandCharge.of(eur(1), Time.minutes(minutes));
            Bill bill = Tariff.flat(price(0)).with(charge).bill(powers);
            assertEquals(20.0 * 15 / minutes, bill.demandCost().amount(), 1e-9, minutes + " min");
        }
    }

    /** Peaks of 10 kW in January and 4 kW after; a ratchet of 80 % bills 8 kW in the other eleven months. */
    @Test
    void a_ratchet_bills_a_share_of_the_highest_demand_of_the_months_before() {
        DemandCharge charge = DemandCharge.of(eur(12), Time.hours(1)).ratcheted(Ratio.percent(80));
        Bill bill = Tariff.flat(price(0)).with(charge).bill(hourly(hour -> hour == 5 ? 10_000 : 4000));
        assertEquals(12 * (10 + 11 * 8), bill.demandCost().amount(), 1e-8);
        BilledMonth june = bill.months().get(5);
        assertEquals(4, june.demand().highest().toKilowatts(), 1e-12);
        assertEquals(8, june.demand().billed().toKilowatts(), 1e-12);
    }

    /**
     * A peak in December reaches back over the turn of a year that is like any other; three months look back no more.
     */
    @Test
    void a_ratchet_looks_back_over_the_turn_of_the_year_as_far_as_it_goes() {
        DemandCharge charge = new DemandCharge(eur(1), Time.hours(1), Ratio.percent(50), 3);
        Bill bill = Tariff.flat(price(0)).with(charge).bill(hourly(hour -> hour == 8759 ? 10_000 : 0));
        assertEquals(10 + 3 * 5, bill.demandCost().amount(), 1e-9);
        assertEquals(5, bill.months().get(2).demand().billed().toKilowatts(), 1e-12);
        assertEquals(0, bill.months().get(3).demand().billed().toKilowatts(), 1e-12);
    }

    /**
     * A saving of 100 kWh in the one hour of the peak costs 100·0.1 in energy and 100 kW of demand in its month. The
     * average price of a kWh times 100 kWh would say something else.
     */
    @Test
    void a_saving_is_the_difference_of_two_bills() {
        Tariff tariff = Tariff.flat(price(0.1)).with(DemandCharge.of(eur(10), Time.hours(1)));
        Bill before = tariff.bill(hourly(hour -> hour == 100 ? 200_000 : 100_000));
        Bill after = tariff.bill(hourly(hour -> 100_000));
        assertEquals(100 * 0.1 + 100 * 10, before.total().minus(after.total()).amount(), 1e-6);
    }

    @Test
    void a_fixed_charge_is_paid_each_month() {
        Bill bill = Tariff.flat(price(0.1)).withFixed(eur(7.5)).bill(hourly(hour -> 0));
        assertEquals(90, bill.total().amount(), 1e-12);
    }

    /** 60 % by day and 40 % by night: 0.6·0.25 + 0.4·0.15. */
    @Test
    void bins_are_priced_by_the_shares_that_are_stated() {
        EnergyPrice price = TWO_PRICES.priceFor(Map.of("day", Ratio.percent(60), "night", Ratio.percent(40)));
        assertEquals(0.21, price.perKilowattHour().amount(), 1e-12);
        assertThrows(Refusal.class, () -> TWO_PRICES.priceFor(Map.of("day", Ratio.percent(60))));
        assertThrows(Refusal.class, () -> TWO_PRICES.priceFor(Map.of("dawn", Ratio.percent(100))));
    }

    /** 1 kW at −0.05 in the nights of 9 h. */
    @Test
    void a_price_below_zero_is_computed_and_noted() {
        Tariff odd = Tariff.of(
                "odd", List.of(EnergyRate.at("night", price(-0.05)).between(22, 7), EnergyRate.at("day", price(0.3))));
        Bill bill = odd.bill(hourly(hour -> 1000));
        assertEquals(365 * (9 * -0.05 + 15 * 0.3), bill.total().amount(), 1e-8);
        assertTrue(bill.notes().has(EconomicsProblem.ENERGY_PRICE_BELOW_ZERO));
    }

    @Test
    void powers_by_the_hour_under_a_demand_of_quarters_are_noted() {
        Tariff tariff = Tariff.flat(price(0.1)).with(DemandCharge.of(eur(10), Time.minutes(15)));
        assertTrue(tariff.bill(hourly(hour -> 1)).notes().has(EconomicsProblem.DEMAND_WINDOW_COARSE));
        Tariff hourly = Tariff.flat(price(0.1)).with(DemandCharge.of(eur(10), Time.hours(1)));
        assertTrue(hourly.bill(hourly(hour -> 1)).notes().isEmpty());
    }

    @Test
    void hours_without_a_price_are_refused_with_the_first_of_them() {
        Refusal refusal = assertThrows(
                Refusal.class,
                () -> Tariff.of(
                        "day only", List.of(EnergyRate.at("day", price(0.2)).between(7, 22))));
        assertEquals(EconomicsProblem.TARIFF_INCOMPLETE, refusal.problem());
        assertTrue(refusal.getMessage().contains("on a Monday in January at 0 o'clock"), refusal.getMessage());
    }

    @Test
    void what_no_tariff_has_is_refused() {
        assertThrows(Refusal.class, () -> EnergyRate.at("late", price(0.2)).between(22, 25));
        assertThrows(Refusal.class, () -> DemandCharge.of(eur(1), Time.minutes(7)));
        assertThrows(Refusal.class, () -> DemandCharge.of(eur(1), Time.hours(1)).ratcheted(Ratio.percent(120)));
        assertThrows(
                Refusal.class,
                () -> EnergyRate.tiered("open", List.of(new Tier(Optional.of(Energy.kilowattHours(1)), price(1)))));
        Refusal mixed =
                assertThrows(Refusal.class, () -> Tariff.flat(price(0.1)).withFixed(new Money(1, "USD")));
        assertEquals(UnitProblem.MEANINGLESS_ARITHMETIC, mixed.problem());
    }

    @Test
    void powers_that_are_no_year_are_refused() {
        for (int size : new int[] {0, 8759, 8784, 52}) {
            Refusal refusal =
                    assertThrows(Refusal.class, () -> PowerSeries.of("short", 2025, new double[size], NOTHING));
            assertEquals(EconomicsProblem.IMPOSSIBLE_POWER_SERIES, refusal.problem());
        }
        assertEquals(
                8784, PowerSeries.of("leap", 2024, new double[8784], NOTHING).size());
    }

    private static final Traced NOTHING = new Traced() {
        @Override
        public Notes notes() {
            return Notes.NONE;
        }

        @Override
        public Basis basis() {
            return Basis.NONE;
        }
    };

    private static PowerSeries hourly(IntToDoubleFunction watts) {
        double[] all = new double[8760];
        Arrays.setAll(all, watts);
        return PowerSeries.of("powers", 2025, all, NOTHING);
    }

    private static EnergyPrice price(double amount) {
        return new EnergyPrice(eur(amount));
    }

    private static Money eur(double amount) {
        return new Money(amount, "EUR");
    }
}
