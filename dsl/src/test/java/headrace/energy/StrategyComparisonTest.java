package headrace.energy;

import static headrace.pump.KnownPump.DESIGN;
import static headrace.pump.KnownPump.m3ph;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.control.ControlLaw;
import headrace.control.ControlProblem;
import headrace.curve.CurveProblem;
import headrace.curve.Duty;
import headrace.drive.ConstantEfficiency;
import headrace.drive.SeparateLosses;
import headrace.problem.Problem;
import headrace.problem.Refusal;
import headrace.pump.KnownPump;
import headrace.pump.PumpSet;
import headrace.record.Basis;
import headrace.units.EnergyPrice;
import headrace.units.Head;
import headrace.units.Money;
import headrace.units.Ratio;
import headrace.units.Time;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

@DisplayNameGeneration(ReplaceUnderscores.class)
class StrategyComparisonTest {
    private static final PumpSet SET = KnownPump.set(SeparateLosses.ASSUMED);
    private static final EnergyPrice PRICE = new EnergyPrice(new Money(0.18, "EUR"));
    private static final List<ControlLaw> LAWS = List.of(
            ControlLaw.constantSpeed(),
            ControlLaw.fixedSpeed(DESIGN),
            ControlLaw.constantHead(DESIGN),
            ControlLaw.linear(DESIGN, Ratio.percent(50)),
            ControlLaw.quadratic(DESIGN, Ratio.percent(40)));

    /** 4000 h at half flow, 1000 h at design flow, the rest of the year off. */
    private static final LoadProfile YEAR =
            LoadProfile.of("a made-up year", List.of(bin(0, 3760), bin(50, 4000), bin(100, 1000)), Basis.NONE);

    private static final StrategyComparison COMPARISON = StrategyComparison.of(SET, YEAR, PRICE, LAWS);

    /** Heads by hand at 40 m³/h: 36, 32, 20, 15 and 11 m; at 80 m³/h: 24 m at full speed, else 20 m. */
    @Test
    void takes_the_shaft_energy_of_a_hand_calculation() {
        double[] half = {36, 32, 20, 15, 11};
        double[] full = {24, 20, 20, 20, 20};
        for (int i = 0; i < half.length; i++) {
            double expected = 4 * KnownPump.shaftWatts(40, half[i]) + KnownPump.shaftWatts(80, full[i]);
            LawYear year = COMPARISON.laws().get(i);
            assertEquals(
                    expected,
                    year.shaftEnergy().toKilowattHours(),
                    1e-9 * expected,
                    year.law().name());
            assertEquals(0.8 * expected, year.hydraulicEnergy().toKilowattHours(), 1e-9 * expected);
        }
    }

    @Test
    void closes_its_sums_of_energy_and_cost() {
        for (LawYear year : COMPARISON.laws()) {
            double kilowattHours = 0;
            for (BinResult bin : year.bins()) {
                kilowattHours +=
                        bin.wirePower().toKilowatts() * bin.bin().hours().toHours();
            }
            assertEquals(kilowattHours, year.wireEnergy().toKilowattHours(), 1e-12 * kilowattHours);
            assertEquals(0.18 * kilowattHours, year.cost().amount(), 1e-9);
            assertEquals("EUR", year.cost().currency());
            assertTrue(year.wireEnergy().compareTo(year.shaftEnergy()) > 0);
        }
    }

    /** By hand from the heads at half flow: 1 − 11/36, 1 − 11/32 and 1 − 11/(2·20). */
    @Test
    void saves_at_the_shaft_at_half_flow_what_a_hand_calculation_gives() {
        List<PowerSaving> savings = COMPARISON.savingsAt(Ratio.percent(50));
        assertEquals(3 * LAWS.size(), savings.size());
        PowerSaving throttled = savings.get(12);
        assertEquals(Baseline.CONSTANT_SPEED, throttled.baseline());
        assertEquals(1 - 11 / 36.0, throttled.shaftShare().value(), 1e-12);
        PowerSaving fixed = savings.get(13);
        assertEquals(Baseline.FIXED_DESIGN_SPEED, fixed.baseline());
        assertEquals(1 - 11 / 32.0, fixed.shaftShare().value(), 1e-12);
        PowerSaving design = savings.get(14);
        assertEquals(Baseline.DESIGN_POWER, design.baseline());
        assertEquals(0.725, design.shaftShare().value(), 1e-12);
        assertEquals(
                KnownPump.shaftWatts(40, 36) - KnownPump.shaftWatts(40, 11),
                throttled.shaft().watts(),
                1e-8);
    }

    /**
     * With constant efficiency of the motor (90.4 %) and of the drive (581 W of 7500 W) the wire follows by hand; on
     * the mains without the drive's share.
     */
    @Test
    void saves_at_the_wire_what_a_hand_calculation_with_constant_efficiency_gives() {
        PumpSet constant = SET.with(new ConstantEfficiency());
        List<PowerSaving> savings =
                StrategyComparison.of(constant, YEAR, PRICE, LAWS).savingsAt(Ratio.percent(50));
        double mains = 1 / 0.904;
        double drive = mains + 581 / 7500.0;
        assertEquals(1 - 11 * drive / (36 * mains), savings.get(12).wireShare().value(), 1e-12);
        assertEquals(1 - 11 / 32.0, savings.get(13).wireShare().value(), 1e-12);
        assertEquals(0.725, savings.get(14).wireShare().value(), 1e-12);
    }

    @Test
    void names_the_basis_of_every_saving() {
        for (PowerSaving saving : COMPARISON.savingsAt(Ratio.percent(50))) {
            assertTrue(saving.toString().contains(saving.baseline().words()));
        }
        for (YearSaving saving : COMPARISON.yearSavings()) {
            assertTrue(saving.toString().contains(saving.baseline().words()));
        }
    }

    @Test
    void saves_nothing_against_itself() {
        List<YearSaving> savings = COMPARISON.yearSavings();
        assertEquals(0, savings.get(0).energy().joules());
        assertEquals(0, savings.get(3).cost().amount());
        assertTrue(savings.get(8).share().value() > savings.get(6).share().value());
    }

    @Test
    void leaves_the_pump_off_at_no_flow_and_says_so() {
        BinResult off = COMPARISON.laws().get(4).bins().get(0);
        assertTrue(off.state().isEmpty());
        assertEquals(0, off.wireEnergy().joules());
        assertTrue(COMPARISON.notes().has(EnergyProblem.PUMP_OFF));
    }

    @Test
    void takes_the_design_wattage_through_the_drive() {
        assertEquals(
                KnownPump.shaftWatts(80, 20),
                COMPARISON.designPoint().shaftPower().watts(),
                1e-8);
        assertTrue(COMPARISON.designPoint().losses().parts().size() == 5);
    }

    @Test
    void is_refused_without_one_design_point() {
        Duty other = new Duty(m3ph(70), Head.metres(20));
        refused(
                EnergyProblem.DESIGN_MISSING,
                () -> compare(List.of(ControlLaw.constantHead(DESIGN), ControlLaw.constantHead(other))));
        refused(EnergyProblem.DESIGN_MISSING, () -> compare(List.of(ControlLaw.constantSpeed())));
        refused(EnergyProblem.DESIGN_MISSING, () -> compare(List.of()));
    }

    /** The energies do not change, so that every cost is -0.01/0.18 of what it was. */
    @Test
    void a_price_below_nothing_is_computed_and_noted() {
        EnergyPrice negative = new EnergyPrice(new Money(-0.01, "EUR"));
        StrategyComparison paid = StrategyComparison.of(SET, YEAR, negative, LAWS);
        assertTrue(paid.notes().has(EnergyProblem.NEGATIVE_PRICE));
        assertFalse(COMPARISON.notes().has(EnergyProblem.NEGATIVE_PRICE));
        double cost = COMPARISON.laws().get(0).cost().amount();
        assertEquals(-0.01 / 0.18 * cost, paid.laws().get(0).cost().amount(), 1e-9 * cost);
    }

    @Test
    void a_price_of_nothing_costs_nothing() {
        EnergyPrice free = new EnergyPrice(new Money(0, "EUR"));
        assertEquals(
                0,
                StrategyComparison.of(SET, YEAR, free, LAWS)
                        .laws()
                        .get(0)
                        .cost()
                        .amount());
    }

    /** 5 % of 80 m³/h is 4 m³/h; at full speed the tested range begins at 5 m³/h. */
    @Test
    void is_refused_in_a_bin_outside_the_tested_range_and_marks_it_where_the_curve_was_extended() {
        LoadProfile low = LoadProfile.of("low", List.of(bin(5, 100)), Basis.NONE);
        refused(CurveProblem.FLOW_OUT_OF_RANGE, () -> StrategyComparison.of(SET, low, PRICE, LAWS));
        PumpSet extended = SET.with(SET.curve().extendedTo(m3ph(2)));
        StrategyComparison marked = StrategyComparison.of(extended, low, PRICE, LAWS);
        assertTrue(marked.laws().get(0).notes().has(CurveProblem.EXTENDED_BEYOND_TEST));
        assertFalse(marked.laws().get(4).bins().get(0).state().isEmpty());
    }

    /** Over rated speed the pump reaches 30 m at 80 m³/h; at rated speed on the mains it gives 24 m. */
    @Test
    void says_when_throttling_at_rated_speed_serves_less_than_the_design_head() {
        Duty high = new Duty(m3ph(80), Head.metres(30));
        PumpSet fast = SET.withSpeeds(SET.minimumSpeed(), SET.ratedSpeed().times(1.1));
        List<ControlLaw> laws = List.of(ControlLaw.constantHead(high));
        assertTrue(
                StrategyComparison.of(fast, YEAR, PRICE, laws).notes().has(EnergyProblem.FULL_SPEED_SHORT_OF_DESIGN));
        assertFalse(COMPARISON.notes().has(EnergyProblem.FULL_SPEED_SHORT_OF_DESIGN));
    }

    @Test
    void carries_the_notes_of_its_load_profile() {
        LoadProfile twice = LoadProfile.of("twice", List.of(bin(50, 10), bin(50, 20)), Basis.NONE);
        StrategyComparison comparison = StrategyComparison.of(SET, twice, PRICE, LAWS);
        assertTrue(comparison.notes().has(EnergyProblem.REPEATED_BINS));
        YearSaving saving = comparison.yearSavings().get(0);
        assertTrue(saving.notes().has(EnergyProblem.REPEATED_BINS));
        assertTrue(saving.basis().choices().contains("saving against: throttling at constant speed, same flow"));
    }

    /** A least speed of 80 % holds the quadratic law up at half flow, which the saving has to say. */
    @Test
    void carries_the_notes_of_a_law_into_its_savings() {
        PumpSet brisk = SET.withMinimumSpeed(SET.ratedSpeed().times(0.8));
        PowerSaving saving = StrategyComparison.of(brisk, YEAR, PRICE, LAWS)
                .savingsAt(Ratio.percent(50))
                .get(12);
        assertTrue(saving.notes().has(ControlProblem.MINIMUM_SPEED_REACHED));
        assertTrue(saving.basis().choices().stream().anyMatch(choice -> choice.startsWith("law 'quadratic, 40 %")));
    }

    private static StrategyComparison compare(List<ControlLaw> laws) {
        return StrategyComparison.of(SET, YEAR, PRICE, laws);
    }

    private static LoadBin bin(double percent, double hours) {
        return new LoadBin(Ratio.percent(percent), Time.hours(hours));
    }

    private static void refused(Problem problem, Executable asking) {
        assertEquals(problem, assertThrows(Refusal.class, asking).problem());
    }
}
