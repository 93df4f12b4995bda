package headrace.economics.tariff;

import headrace.economics.EconomicsProblem;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.units.EnergyPrice;
import headrace.units.Money;
import headrace.units.Ratio;
import java.time.DayOfWeek;
import java.time.Month;
import java.time.format.TextStyle;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * What electricity costs: rates of energy over the hours of the year, a charge for demand, a fixed charge.
 *
 * <dl>
 *   <dt>Units
 *   <dd>One currency. Hours in local standard time.
 *   <dt>Limits
 *   <dd>Of the rates that hold in an hour the first one counts; every hour of the year must have one. Prices below 0
 *       are computed and noted.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code TARIFF_INCOMPLETE} or {@code IMPOSSIBLE_TARIFF}, or {@code MEANINGLESS_ARITHMETIC}
 *       if currencies differ.
 *   <dt>Source
 *   <dd>The supplier's, as the user states it.
 * </dl>
 *
 * @param name what it is called
 * @param rates the rates of energy
 * @param demand the charge for demand; none if absent
 * @param fixed what is paid each month whatever is taken
 */
public record Tariff(String name, List<EnergyRate> rates, Optional<DemandCharge> demand, Money fixed) {
    private static final double ROUNDING = 1e-9;

    /** Keeps the rates from changing; refuses hours without a rate. */
    public Tariff {
        rates = List.copyOf(rates);
        for (Month month : Month.values()) {
            for (DayOfWeek day : DayOfWeek.values()) {
                for (int hour = 0; hour < 24; hour++) {
                    requireRate(name, rates, month, day, hour);
                }
            }
        }
        Money sum = fixed;
        for (EnergyRate rate : rates) {
            for (EnergyRate.Tier tier : rate.tiers()) {
                sum = sum.plus(tier.price().perKilowattHour());
            }
        }
        demand.map(charge -> charge.perKilowatt()).ifPresent(sum::plus);
    }

    private static void requireRate(String name, List<EnergyRate> rates, Month month, DayOfWeek day, int hour) {
        if (rates.stream().noneMatch(rate -> rate.holds(month, day, hour))) {
            throw new Refusal(
                    EconomicsProblem.TARIFF_INCOMPLETE,
                    "Asked for the tariff '" + name + "', which has no price on a "
                            + day.getDisplayName(TextStyle.FULL, Locale.ENGLISH) + " in "
                            + month.getDisplayName(TextStyle.FULL, Locale.ENGLISH) + " at " + hour + " o'clock",
                    "Every hour of the year must have a rate",
                    "Put a rate that holds at every hour last, since the first one that holds counts");
        }
    }

    /** Returns a tariff of these rates without other charges. */
    public static Tariff of(String name, List<EnergyRate> rates) {
        String currency = rates.isEmpty()
                ? ""
                : rates.get(0).tiers().get(0).price().perKilowattHour().currency();
        return new Tariff(name, rates, Optional.empty(), new Money(0, currency));
    }

    /** Returns a tariff of one price at every hour. */
    public static Tariff flat(EnergyPrice price) {
        return of("flat " + price, List.of(EnergyRate.at("every hour", price)));
    }

    /** Returns this tariff with a charge for demand. */
    public Tariff with(DemandCharge charge) {
        return new Tariff(name, rates, Optional.of(charge), fixed);
    }

    /** Returns this tariff with a fixed charge a month. */
    public Tariff withFixed(Money monthly) {
        return new Tariff(name, rates, demand, monthly);
    }

    /** Returns what a year of powers costs. */
    public Bill bill(PowerSeries powers) {
        return new Billing(this, powers).bill();
    }

    /**
     * Returns the price of an energy of which only the shares at each rate are known, as of bins that do not say at
     * what hour they fall. Demand and fixed charges are not in it: a saving of energy is not a saving of those.
     *
     * @param shares the share of the energy at each rate, by its name; they add up to 100 %
     */
    public EnergyPrice priceFor(Map<String, Ratio> shares) {
        double sum = shares.values().stream().mapToDouble(Ratio::value).sum();
        List<String> names = rates.stream().map(EnergyRate::name).toList();
        boolean tiered = rates.stream().anyMatch(rate -> rate.tiers().size() > 1);
        boolean below = shares.values().stream().anyMatch(share -> share.value() < 0);
        if (tiered || below || Math.abs(sum - 1) > ROUNDING || !names.containsAll(shares.keySet())) {
            throw new Refusal(
                    EconomicsProblem.IMPOSSIBLE_TERM,
                    "Asked for the price of '" + name + "' for the shares " + shares,
                    "Shares are given for the rates " + names + ", add up to 100 %, and need rates without tiers",
                    "Correct the shares, or bill the powers hour by hour");
        }
        double price = 0;
        for (EnergyRate rate : rates) {
            Ratio share = shares.getOrDefault(rate.name(), Ratio.ZERO);
            price += share.value()
                    * rate.tiers().get(0).price().perKilowattHour().amount();
        }
        return new EnergyPrice(new Money(price, fixed.currency()));
    }

    /** Returns what is unusual about it. */
    public Notes notes() {
        Notes notes = Notes.NONE;
        for (EnergyRate rate : rates) {
            for (EnergyRate.Tier tier : rate.tiers()) {
                if (tier.price().perKilowattHour().amount() < 0) {
                    notes = notes.with(
                            EconomicsProblem.ENERGY_PRICE_BELOW_ZERO,
                            "At the rate '" + rate.name() + "' energy costs " + tier.price()
                                    + ": there a saving of energy is a loss of money");
                }
            }
        }
        return notes;
    }

    int rateAt(Month month, DayOfWeek day, int hour) {
        for (int i = 0; i < rates.size(); i++) {
            if (rates.get(i).holds(month, day, hour)) {
                return i;
            }
        }
        throw new AssertionError("Every hour has a rate");
    }

    @Override
    public String toString() {
        return name + ": " + rates.stream().map(EnergyRate::toString).collect(Collectors.joining("; "))
                + demand.map(charge -> "; " + charge).orElse("")
                + (fixed.amount() == 0 ? "" : "; fixed " + fixed + " a month");
    }
}
