package headrace.control;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.circuit.Branch;
import headrace.circuit.Circuit;
import headrace.circuit.Demands;
import headrace.circuit.part.Drop;
import headrace.circuit.part.PlantResistance;
import headrace.curve.Duty;
import headrace.estimate.ErrorBudget;
import headrace.estimate.FlowEstimator;
import headrace.estimate.MapFactors;
import headrace.estimate.Sets;
import headrace.estimate.ThroughLosses;
import headrace.problem.Refusal;
import headrace.pump.PumpSet;
import headrace.units.Head;
import headrace.units.Ratio;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

/** Laws that are run on flow and head estimated from power and speed. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class EstimatedLawTest {
    private static final PumpSet SET = Sets.set();
    private static final Duty DESIGN = new Duty(Sets.m3ph(60), Head.metres(24));
    private static final ControlLaw LAW = ControlLaw.quadratic(DESIGN, Ratio.percent(40));

    private static ControlLaw believing(double power, double head) {
        return EstimatedLaw.of(
                LAW,
                FlowEstimator.of(
                        ThroughLosses.of(SET).calibrated(new MapFactors(power, 0, head), "believed"),
                        ErrorBudget.NONE));
    }

    private static double headAt(ControlLaw law, double flow) {
        return SteadyState.of(law, SET, Sets.m3ph(flow)).point().head().metres();
    }

    @Test
    void with_the_right_map_a_law_on_estimates_is_the_law_with_sensors() {
        for (double flow : new double[] {5, 15, 30, 45, 60}) {
            assertEquals(headAt(LAW, flow), headAt(believing(1, 1), flow), 1e-8);
        }
    }

    /** A pump that takes more than its map looks like more flow, for which the law asks for more head. */
    @Test
    void a_pump_that_takes_more_power_than_its_map_is_given_too_much_head_and_one_that_takes_less_too_little() {
        for (double flow : new double[] {15, 30, 45}) {
            assertTrue(headAt(believing(0.97, 1), flow) > headAt(LAW, flow) + 0.05);
            assertTrue(headAt(believing(1.03, 1), flow) < headAt(LAW, flow) - 0.05);
        }
    }

    /** A pump with 95 % of the head of its map is believed to give more than it does. */
    @Test
    void a_worn_pump_falls_short_of_what_the_law_asks_for() {
        for (double flow : new double[] {15, 30, 45}) {
            assertTrue(headAt(believing(1, 1 / 0.95), flow) < headAt(LAW, flow) - 0.1);
        }
    }

    /**
     * At its demands of 30 m³/h each the circuit needs 8 + 3 + 5 = 16 m at 60 m³/h, which the law asks for with
     * sensors.
     */
    @Test
    void the_error_of_an_estimate_starves_the_far_branch_of_a_circuit() {
        Duty duty = new Duty(Sets.m3ph(60), Head.metres(16.05));
        ControlLaw sensors = ControlLaw.quadratic(duty, Ratio.percent(40));
        assertTrue(starved(sensors).isEmpty());
        assertTrue(starved(onEstimates(sensors, 1)).isEmpty());
        assertEquals(List.of("far"), starved(onEstimates(sensors, 1.1)));
    }

    private static ControlLaw onEstimates(ControlLaw law, double head) {
        MapFactors believed = new MapFactors(1, 0, head);
        return EstimatedLaw.of(
                law, FlowEstimator.of(ThroughLosses.of(SET).calibrated(believed, "believed"), ErrorBudget.NONE));
    }

    private static List<String> starved(ControlLaw law) {
        Circuit loop = Circuit.of(
                SET.curve().liquid(),
                "supply",
                "return",
                Branch.of("plant", "supply", "first tap", loss("chiller", 60, 8)),
                Branch.terminal("near", "first tap", "return", Sets.m3ph(30), loss("near coil", 30, 4)),
                Branch.of("main", "first tap", "second tap", loss("pipe", 30, 3)),
                Branch.terminal("far", "second tap", "return", Sets.m3ph(30), loss("far coil", 30, 5)));
        Demands demands = new Demands(Map.of("near", Sets.m3ph(30), "far", Sets.m3ph(30)));
        return LoopOperation.of(law, SET, loop, demands).circuit().starvedBranches();
    }

    private static PlantResistance loss(String name, double flow, double metres) {
        return PlantResistance.of(name, Drop.of(Sets.m3ph(flow), Head.metres(metres)));
    }

    @Test
    void it_observes_nothing_out_in_the_loop_and_keeps_the_design_of_its_law() {
        ControlLaw law = believing(1, 1);
        assertTrue(law.observes().isEmpty());
        assertEquals(LAW.design(), law.design());
        assertEquals("quadratic, 40 % minimum head, on estimates", law.name());
    }

    @Test
    void a_power_off_its_map_takes_the_end_of_it_and_the_law_still_answers() {
        assertTrue(headAt(believing(1.4, 1), 3) > 0);
        assertTrue(headAt(believing(0.6, 1), 55) > 0);
    }

    @Test
    void a_law_that_makes_no_head_of_flow_cannot_be_run_on_estimates() {
        FlowEstimator estimator = FlowEstimator.of(ThroughLosses.of(SET), ErrorBudget.NONE);
        assertEquals(
                ControlProblem.NO_HEAD_OF_FLOW,
                assertThrows(Refusal.class, () -> EstimatedLaw.of(ControlLaw.constantSpeed(), estimator))
                        .problem());
    }
}
