package headrace.energy.year;

import static headrace.circuit.KnownLoop.LOOP;
import static headrace.pump.KnownPump.m3ph;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.circuit.Branch;
import headrace.circuit.Circuit;
import headrace.circuit.CircuitProblem;
import headrace.circuit.part.valve.MinimumFlowValve;
import headrace.control.ControlLaw;
import headrace.control.LawLimits;
import headrace.control.SteadyState;
import headrace.control.TrimAndRespond;
import headrace.curve.Duty;
import headrace.drive.SeparateLosses;
import headrace.energy.EnergyProblem;
import headrace.energy.StrategyComparison;
import headrace.energy.load.BranchYear;
import headrace.energy.load.HourlyLoad;
import headrace.energy.load.LoadToFlow;
import headrace.energy.load.Sharing;
import headrace.problem.Refusal;
import headrace.pump.KnownPump;
import headrace.pump.PumpSet;
import headrace.record.Basis;
import headrace.units.EnergyPrice;
import headrace.units.Flow;
import headrace.units.FlowCoefficient;
import headrace.units.Head;
import headrace.units.Money;
import headrace.units.Ratio;
import headrace.units.Time;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

/**
 * A plant of 8 m at 80 m³/h; near takes 4 m, a main 3 m and far 5 m at 40 m³/h; all with the square of flow, so that 16
 * m are needed at 80 m³/h. Hand calculations.
 */
@DisplayNameGeneration(ReplaceUnderscores.class)
class CircuitYearTest {
    private static final Duty DESIGN = new Duty(m3ph(80), Head.metres(16));
    private static final PumpSet SET = KnownPump.set(SeparateLosses.ASSUMED);
    private static final EnergyPrice PRICE = new EnergyPrice(Money.of(0.2, "EUR"));

    @Test
    void a_year_of_one_load_is_its_power_times_the_hours() {
        ControlLaw law = ControlLaw.quadratic(DESIGN, Ratio.percent(25));
        LawHours hours = year(constant(0.5), Sharing.even(), law).laws().get(0);
        SteadyState state = SteadyState.of(law, SET, m3ph(40));
        assertEquals(
                state.point().wirePower().watts() * 8760 * 3600,
                hours.energy().wire().joules(),
                1e-6 * hours.energy().wire().joules());
        assertEquals(state.point().wirePower().watts(), hours.peak().power().watts(), 1e-6);
        assertEquals(8760, hours.running().on().toHours(), 1e-9);
        assertEquals(1, hours.running().starts());
        assertEquals(0, hours.service().starvedBranchHours().si());
        assertTrue(hours.service().worst().isEmpty());
    }

    /** 20 m³/h of load in every hour, and a bypass that keeps 40: the pump moves 40 m³/h at the head of the law. */
    @Test
    void a_minimum_flow_valve_is_load_of_the_pump_in_every_hour_and_starves_nobody() {
        List<Branch> branches = new ArrayList<>(LOOP.branches());
        branches.add(Branch.terminal(
                "bypass",
                "supply",
                "return",
                m3ph(40),
                new MinimumFlowValve("valve", m3ph(40), FlowCoefficient.kv(100))));
        Circuit loop = new Circuit(LOOP.liquid(), "supply", "return", branches);
        ControlLaw law = ControlLaw.constantHead(DESIGN);
        LawHours hours = CircuitYear.of(SET, loop, asked(constant(0.25), Sharing.even()), PRICE, List.of(law))
                .laws()
                .get(0);
        SteadyState state = SteadyState.of(law, SET, m3ph(40));
        assertEquals(
                state.point().wirePower().watts() * 8760 * 3600,
                hours.energy().wire().joules(),
                1e-6 * hours.energy().wire().joules());
        assertEquals(0, hours.service().starvedBranchHours().si());
    }

    /** Far alone at 40 m³/h under 4 + 12·z²: q = √(4/0.004375) of 40, in every hour of the year. */
    @Test
    void what_a_law_does_not_serve_is_counted_by_branch_with_the_worst_hour() {
        ControlLaw law = ControlLaw.quadratic(DESIGN, Ratio.percent(25));
        LawHours hours = year(constant(0.5), Sharing.far(), law).laws().get(0);
        double q = Math.sqrt(4 / 0.004375);
        assertEquals(8760, hours.service().starvedBranchHours().toHours(), 1e-9);
        assertEquals(
                Map.of("far", hours.service().starvedBranchHours()),
                hours.service().byBranch());
        assertEquals((40 - q) * 8760, hours.service().unmet().cubicMetres(), 1e-4);
        Shortfall worst = hours.service().worst().orElseThrow();
        assertEquals("far", worst.branch());
        assertEquals(q / 40, worst.delivered().value(), 1e-9);
        assertEquals(5 - 0.003125 * q * q, worst.missing().metres(), 1e-6);
    }

    /** The same total asks 4 m shared evenly and 10 m of the far branch alone. */
    @Test
    void the_neediest_valve_takes_what_each_pattern_needs_and_starves_nobody() {
        ControlLaw law = ControlLaw.neediestValve(DESIGN, Ratio.percent(100));
        LawHours even = year(constant(0.5), Sharing.even(), law).laws().get(0);
        LawHours far = year(constant(0.5), Sharing.far(), law).laws().get(0);
        assertEquals(4, even.running().meanHead().metres(), 1e-6);
        assertEquals(10, far.running().meanHead().metres(), 1e-6);
        assertEquals(0, far.service().starvedBranchHours().si());
        assertEquals(
                0, far.shares().throttled().joules(), 1e-6 * far.energy().wire().joules());
    }

    @Test
    void where_the_energy_goes_makes_up_the_whole() {
        CircuitYear year = year(seasons(), Sharing.random(7), laws());
        for (LawHours law : year.laws()) {
            double whole = law.energy().wire().joules();
            assertEquals(whole, law.shares().total().joules(), 1e-9 * whole, law.toString());
            assertTrue(law.shares().throttled().joules() >= 0, law.toString());
            assertEquals(whole, Arrays.stream(law.hourly()).sum() * 3600, 1e-9 * whole);
        }
    }

    @Test
    void hours_and_bins_of_the_same_year_agree() {
        BranchYear asked = asked(seasons(), Sharing.even());
        ControlLaw law = ControlLaw.quadratic(DESIGN, Ratio.percent(60));
        CircuitYear hours = CircuitYear.of(SET, LOOP, asked, PRICE, List.of(law));
        StrategyComparison bins = StrategyComparison.of(SET, asked.together(), PRICE, List.of(law));
        double expected = bins.laws().get(0).wireEnergy().joules();
        assertEquals(expected, hours.laws().get(0).energy().wire().joules(), 1e-9 * expected);
    }

    /** 20 m were specified where 16 are needed. */
    @Test
    void a_saving_is_split_into_what_the_law_saves_and_what_the_margin_wasted() {
        Duty specified = new Duty(m3ph(80), Head.metres(20));
        CircuitYear year = CircuitYear.of(
                SET,
                LOOP,
                asked(constant(0.5), Sharing.even()),
                PRICE,
                List.of(ControlLaw.quadratic(specified, Ratio.percent(25))));
        assertEquals(16, year.neededAtDesign().metres(), 1e-7);
        assertEquals(0.25, year.margin().value(), 1e-8);
        double atTwenty = watts(ControlLaw.fixedSpeed(specified));
        double atSixteen = watts(ControlLaw.fixedSpeed(DESIGN));
        double law = watts(ControlLaw.quadratic(specified, Ratio.percent(25)));
        LawSaving saving = year.savings().get(1);
        double seconds = 8760 * 3600.0;
        assertEquals((atTwenty - law) * seconds, saving.atWire().joules(), 1e-6 * atTwenty * seconds);
        assertEquals((atTwenty - atSixteen) * seconds, saving.ofMargin().joules(), 1e-6 * atTwenty * seconds);
        assertEquals((atSixteen - law) * seconds, saving.ofLaw().joules(), 1e-6 * atTwenty * seconds);
        assertTrue(saving.toString().contains("of it from the margin"), saving.toString());
    }

    /** Half a load: 40 m³/h in every hour, for 16 h of the day at 12 m and for 8 h at 9 m; by hand from two points. */
    @Test
    void a_law_that_observes_the_clock_is_another_law_at_night() {
        ControlLaw night = ControlLaw.of(
                "set back at night",
                Optional.of(DESIGN),
                List.of("clock"),
                now -> Head.metres(now.clock().getHour() >= 22 || now.clock().getHour() < 6 ? 9 : 12));
        assertTrue(night.followsClock());
        LawHours hours = CircuitYear.of(SET, LOOP, asked(constant(0.5), Sharing.even()), PRICE, List.of(night))
                .laws()
                .get(0);
        double day = watts(ControlLaw.of("twelve", now -> Head.metres(12)));
        double low = watts(ControlLaw.of("nine", now -> Head.metres(9)));
        double joules = 365 * 3600.0 * (16 * day + 8 * low);
        assertEquals(joules, hours.energy().wire().joules(), 1e-9 * joules);
    }

    /** Fixed at 20 m where 16 m are needed it saves nothing against itself, and the margin stays wasted. */
    @Test
    void a_law_that_keeps_the_margin_is_not_said_to_save_it() {
        Duty specified = new Duty(m3ph(80), Head.metres(20));
        LawSaving saving = CircuitYear.of(
                        SET,
                        LOOP,
                        asked(constant(0.5), Sharing.even()),
                        PRICE,
                        List.of(ControlLaw.fixedSpeed(specified)))
                .savings()
                .get(1);
        assertEquals(0, saving.atWire().joules(), 1e-6);
        assertTrue(saving.ofMargin().joules() > 0);
        assertTrue(saving.toString().contains("less than the "), saving.toString());
    }

    @Test
    void hours_without_demand_stand_still_and_each_run_counts_as_a_start() {
        double[] loads = new double[8760];
        for (int hour = 0; hour < loads.length; hour++) {
            loads[hour] = hour % 24 >= 8 && hour % 24 < 18 ? 0.6 : 0;
        }
        LawHours hours = year(loads, Sharing.even(), ControlLaw.linear(DESIGN, Ratio.percent(50)))
                .laws()
                .get(0);
        assertEquals(365, hours.running().starts());
        assertEquals(3650, hours.running().on().toHours(), 1e-9);
        double standby = SET.driveTrain().standby().watts() * 5110 * 3600;
        assertEquals(standby, hours.shares().standby().joules(), 1e-6);
    }

    @Test
    void a_law_with_limits_of_flow_is_counted_too() {
        LawLimits least = new LawLimits(
                Optional.empty(), Optional.empty(), Optional.empty(), Optional.of(m3ph(50)), Optional.empty());
        ControlLaw law = ControlLaw.linear(DESIGN, Ratio.percent(50)).within(least);
        LawHours hours = year(constant(0.25), Sharing.even(), law).laws().get(0);
        double watts = SteadyState.of(law, SET, m3ph(20)).point().wirePower().watts();
        assertEquals(watts, hours.peak().power().watts(), 1e-6);
    }

    /**
     * Shared evenly at half, 4 m are needed; below that far requests. Stepped here by hand: the share of the span from
     * 0.1 to 16 m falls by 2 points a step and rises by 3 for the one request.
     */
    @Test
    void trim_and_respond_moves_step_by_step_through_the_hours() {
        TrimAndRespond law = new TrimAndRespond(
                DESIGN,
                Head.metres(0.1),
                TrimAndRespond.Steps.USUAL,
                new TrimAndRespond.Requests(Ratio.percent(100), 0),
                Time.minutes(5));
        LawHours hours = year(constant(0.5), Sharing.even(), law).laws().get(0);
        double share = 1;
        double sum = 0;
        double starved = 0;
        for (int step = 0; step < 12 * 8760; step++) {
            double metres = 0.1 + share * 15.9;
            boolean requests = metres < 4;
            sum += metres;
            starved += requests && Math.sqrt(far(metres)) < 0.99 ? 1 : 0;
            share = Math.max(0, share - 0.02 + (requests ? 0.03 : 0));
        }
        assertEquals(sum / (12 * 8760), hours.running().meanHead().metres(), 1e-6);
        assertEquals(starved / 12, hours.service().starvedBranchHours().toHours(), 1e-6);
    }

    /** The square of far's share of 20 m³/h at less than 4 m, near getting its 20: 0.00125·(20 + q)² + 0.005·q². */
    private static double far(double metres) {
        double a = 0.00125 + 0.005;
        double b = 2 * 0.00125 * 20;
        double c = 0.00125 * 400 - metres;
        double q = (-b + Math.sqrt(b * b - 4 * a * c)) / (2 * a);
        return q / 20 * (q / 20);
    }

    @Test
    void the_best_law_is_the_cheapest_that_starves_nobody() {
        CircuitYear year = year(constant(0.5), Sharing.far(), laws());
        assertEquals("neediest valve at 100 %", year.best().orElseThrow().law().name());
    }

    @Test
    void two_runs_give_the_same_bits() {
        CircuitYear one = year(seasons(), Sharing.random(7), laws());
        CircuitYear two = year(seasons(), Sharing.random(7), laws());
        for (int i = 0; i < one.laws().size(); i++) {
            assertTrue(
                    Arrays.equals(one.laws().get(i).hourly(), two.laws().get(i).hourly()));
        }
    }

    @Test
    void a_price_below_nothing_is_computed_and_noted() {
        BranchYear asked = asked(constant(0.5), Sharing.even());
        EnergyPrice paid = new EnergyPrice(new Money(-0.01, "EUR"));
        CircuitYear year = CircuitYear.of(SET, LOOP, asked, paid, List.of(laws()));
        assertTrue(year.notes().has(EnergyProblem.NEGATIVE_PRICE));
        assertTrue(year.price().of(year.laws().get(0).energy().wire()).amount() < 0);
    }

    @Test
    void what_cannot_be_compared_is_refused() {
        BranchYear asked = asked(constant(0.5), Sharing.even());
        assertEquals(
                EnergyProblem.DESIGN_MISSING,
                assertThrows(
                                Refusal.class,
                                () -> CircuitYear.of(SET, LOOP, asked, PRICE, List.of(ControlLaw.constantSpeed())))
                        .problem());
        BranchYear stranger = BranchYear.of(
                HourlyLoad.of("year", LocalDateTime.of(2025, 1, 1, 0, 0), constant(0.5), Basis.NONE),
                List.of(new BranchYear.Asked("attic", m3ph(40), LoadToFlow.constantDifference())),
                Sharing.even());
        assertEquals(
                CircuitProblem.UNKNOWN_BRANCH,
                assertThrows(Refusal.class, () -> CircuitYear.of(SET, LOOP, stranger, PRICE, List.of(laws())))
                        .problem());
    }

    private static double watts(ControlLaw law) {
        return SteadyState.of(law, SET, m3ph(40)).point().wirePower().watts();
    }

    private static ControlLaw[] laws() {
        return new ControlLaw[] {
            ControlLaw.constantHead(DESIGN),
            ControlLaw.linear(DESIGN, Ratio.percent(50)),
            ControlLaw.quadratic(DESIGN, Ratio.percent(25)),
            ControlLaw.neediestValve(DESIGN, Ratio.percent(100)),
            ControlLaw.remoteSensors(DESIGN, Map.of("far", Head.metres(5)))
        };
    }

    private static CircuitYear year(double[] loads, Sharing sharing, ControlLaw... laws) {
        return CircuitYear.of(SET, LOOP, asked(loads, sharing), PRICE, List.of(laws));
    }

    private static BranchYear asked(double[] loads, Sharing sharing) {
        LoadToFlow way = LoadToFlow.constantDifference();
        Flow each = m3ph(40);
        return BranchYear.of(
                HourlyLoad.of("made-up year", LocalDateTime.of(2025, 1, 1, 0, 0), loads, Basis.of("invented")),
                List.of(new BranchYear.Asked("near", each, way), new BranchYear.Asked("far", each, way)),
                sharing);
    }

    private static double[] constant(double load) {
        double[] loads = new double[8760];
        Arrays.fill(loads, load);
        return loads;
    }

    /** A load that swings over the year and rests at night. */
    private static double[] seasons() {
        double[] loads = new double[8760];
        for (int hour = 0; hour < loads.length; hour++) {
            double season = 0.6 + 0.35 * Math.cos(2 * Math.PI * hour / 8760);
            loads[hour] = hour % 24 < 5 ? 0 : Math.max(0.15, Math.rint(season * 100) / 100);
        }
        return loads;
    }
}
