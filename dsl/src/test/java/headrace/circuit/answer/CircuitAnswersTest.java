package headrace.circuit.answer;

import static headrace.circuit.LitreLoop.litres;
import static headrace.circuit.LitreLoop.twoBranches;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.circuit.Branch;
import headrace.circuit.Circuit;
import headrace.circuit.CircuitProblem;
import headrace.circuit.Closing;
import headrace.circuit.Demands;
import headrace.circuit.LitreLoop.Loss;
import headrace.circuit.LitreLoop.Valve;
import headrace.circuit.part.coil.EmissionLaw;
import headrace.circuit.part.pipe.Pipe;
import headrace.circuit.part.pipe.PipeSeries;
import headrace.circuit.part.valve.Characteristic;
import headrace.circuit.part.valve.ControlValve;
import headrace.circuit.part.valve.FixedValve;
import headrace.circuit.part.valve.PressureIndependentValve;
import headrace.liquid.Liquid;
import headrace.problem.Refusal;
import headrace.units.FlowCoefficient;
import headrace.units.Head;
import headrace.units.Length;
import headrace.units.Pressure;
import headrace.units.Ratio;
import headrace.units.Temperature;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

/** All expected numbers are hand calculations; losses go with the square of flow in L/s. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class CircuitAnswersTest {
    private static final Liquid WATER = Liquid.water(Temperature.celsius(20));

    @Test
    void the_branch_without_excess_head_is_the_index_circuit_and_decides_the_need() {
        // 4 L/s in the main: 16 m; far needs 9 m, near 2 m
        HeadNeed need = HeadNeed.of(twoBranches());
        assertEquals(25, need.head().metres(), 1e-9);
        assertEquals("far", need.index());
        assertEquals(7, need.branches().get(0).excess().metres(), 1e-8);
        assertEquals(0, need.branches().get(1).excess().metres());
    }

    @Test
    void another_load_pattern_needs_another_head_and_has_another_index_circuit() {
        // near alone: 1 m in the main and 2 m
        Circuit circuit = twoBranches();
        HeadNeed need = HeadNeed.of(circuit, circuit.designDemands().without("far"));
        assertEquals(3, need.head().metres(), 1e-9);
        assertEquals("near", need.index());
    }

    @Test
    void no_head_is_needed_where_nothing_is_asked() {
        Circuit circuit = twoBranches();
        Demands nothing = circuit.designDemands().times(Ratio.ZERO);
        Refusal refusal = assertThrows(Refusal.class, () -> HeadNeed.of(circuit, nothing));
        assertEquals(CircuitProblem.FLOW_OUTSIDE_DEMANDS, refusal.problem());
    }

    @Test
    void the_margin_is_what_was_specified_beyond_the_need() {
        HeadMargin margin = HeadNeed.of(twoBranches()).against(Head.metres(30));
        assertEquals(5, margin.head().metres(), 1e-8);
        assertEquals(0.2, margin.share().value(), 1e-9);
        assertTrue(margin.sentence().contains("'far'") && margin.sentence().contains("more than it needs"));
        assertTrue(HeadNeed.of(twoBranches())
                .against(Head.metres(20))
                .sentence()
                .contains("5 m or 20 % less than it needs"));
    }

    @Test
    void the_effective_authority_is_that_of_the_state_with_the_branch_shut_in_it() {
        // near shut: 3 L/s, 9 m in the main, 16 m across; far shut: 1 L/s, 1 m, 24 m across
        Circuit circuit = twoBranches();
        CircuitSurvey survey = CircuitSurvey.at(circuit, Head.metres(25), circuit.designDemands());
        BranchAnswer near = survey.branch("near");
        BranchAnswer far = survey.branch("far");
        assertEquals(16, near.shut().metres(), 1e-8);
        assertEquals(1 / 16.0, near.authority().orElseThrow().effective().value(), 1e-9);
        assertEquals(0.5, near.authority().orElseThrow().design().value(), 1e-12);
        assertEquals(24, far.shut().metres(), 1e-8);
        assertEquals(4.5 / 24, far.authority().orElseThrow().effective().value(), 1e-9);
        assertEquals("far", survey.need().orElseThrow().index());
        assertEquals(List.of("near", "far"), survey.huntingBranches());
    }

    @Test
    void less_head_at_the_same_load_gives_more_authority() {
        // 10 m, near alone asked for 1 L/s: shut, the whole head stands across it; 3 m likewise
        Circuit circuit = twoBranches();
        Demands near = circuit.designDemands().without("far");
        CircuitSurvey much = CircuitSurvey.at(circuit, Head.metres(10), near);
        CircuitSurvey little = CircuitSurvey.at(circuit, Head.metres(3), near);
        assertEquals(
                0.1, much.branch("near").authority().orElseThrow().effective().value(), 1e-9);
        assertEquals(
                1 / 3.0,
                little.branch("near").authority().orElseThrow().effective().value(),
                1e-9);
        assertEquals(List.of("near"), much.huntingBranches());
        assertEquals(List.of(), little.huntingBranches());
    }

    /**
     * A main that leads only to a shut branch carries nothing and loses nothing: at its end stands what stands before.
     */
    @Test
    void the_last_branch_shut_has_the_head_of_the_one_before_it_across() {
        Circuit circuit = Circuit.of(
                WATER,
                "s",
                "r",
                Branch.of("to 1", "s", "s1", new Loss("pipe 1", 1)),
                Branch.terminal("one", "s1", "r", litres(1), new Loss("coil 1", 1), new Valve("valve 1", 1)),
                Branch.of("to 2", "s1", "s2", new Loss("pipe 2", 1)),
                Branch.terminal("two", "s2", "r", litres(1), new Loss("coil 2", 1), new Valve("valve 2", 1)));
        // two shut: 1 L/s in the first main, 10 − 1 m
        CircuitSurvey survey = CircuitSurvey.at(circuit, Head.metres(10), circuit.designDemands());
        assertEquals(9, survey.branch("two").shut().metres(), 1e-8);
        assertEquals(
                1 / 9.0,
                survey.branch("two").authority().orElseThrow().effective().value(),
                1e-9);
    }

    @Test
    void a_valve_that_hangs_near_its_seat_may_hunt_and_is_named() {
        // 3.2 L/s: 10.24 m in the main, 14.76 m across; share = √(0.04/14.72) = 0.0521
        Circuit circuit = twoBranches();
        CircuitSurvey survey = CircuitSurvey.at(
                circuit, Head.metres(25), circuit.designDemands().with("near", litres(0.2)));
        assertTrue(survey.branch("near").isNearSeat());
        assertTrue(survey.notes().toString().contains("'near' stands at 5.21"), survey.notes()::toString);
        assertFalse(survey.branch("far").isNearSeat());
    }

    @Test
    void half_the_flow_of_an_emitter_with_a_of_a_half_misses_a_third_of_its_heat() {
        // 2 m at 1 L/s; design 2 L/s; 2 m give 1 L/s; L = 0.5/(0.5 + 0.5·0.5) = 2/3
        Circuit circuit = Circuit.of(
                WATER,
                "supply",
                "return",
                Branch.terminal("room", "supply", "return", litres(2), new Loss("coil", 1), new Valve("valve", 1)));
        CircuitSurvey survey = CircuitSurvey.of(
                Standing.at(circuit, Head.metres(2)),
                circuit.designDemands(),
                Map.of("room", HeatOfFlow.of(new EmissionLaw(0.5))),
                Optional.empty());
        assertEquals(1 / 3.0, survey.branch("room").heatMissing().orElseThrow().value(), 1e-9);
    }

    private static Circuit closingOffAt(Pressure closeOff) {
        ControlValve valve = new ControlValve(
                "valve", FlowCoefficient.kv(10), Characteristic.equalPercentage(), Optional.of(closeOff));
        return Circuit.of(
                WATER,
                "supply",
                "return",
                Branch.terminal("room", "supply", "return", litres(1), new Loss("coil", 1), valve));
    }

    @Test
    void a_valve_that_more_head_presses_on_than_its_actuator_holds_is_forced_open() {
        // 100 kPa at 998.2 kg/m³ are 10.216 m: 15 m force it open, 10 m do not, unless the pump can reach more
        Circuit circuit = closingOffAt(Pressure.kilopascals(100));
        Demands design = circuit.designDemands();
        assertTrue(CircuitSurvey.at(circuit, Head.metres(15), design).notes().has(CircuitProblem.FORCED_OPEN_VALVE));
        assertFalse(CircuitSurvey.at(circuit, Head.metres(10), design).notes().has(CircuitProblem.FORCED_OPEN_VALVE));
        CircuitSurvey reached =
                CircuitSurvey.of(Standing.at(circuit, Head.metres(10)), design, Map.of(), Optional.of(Head.metres(15)));
        assertTrue(reached.notes().has(CircuitProblem.FORCED_OPEN_VALVE));
    }

    @Test
    void the_valve_of_a_favoured_branch_takes_its_excess_and_all_show_their_design_flow() {
        // all open: a·(1 + (1 + √½)²) = 25; near √(a/2), far √a/3
        // near takes 7 m at 3.6 m³/h; 1 bar is 10.1972 m: Kv = 3.6·√(10.1972/7) = 4.34503
        ProportionalBalance balance = ProportionalBalance.of(twoBranches());
        assertEquals("far", balance.reference());
        ProportionalBalance.Step near = balance.steps().get(1);
        double across = 25 / (1 + Math.pow(1 + Math.sqrt(0.5), 2));
        assertEquals(Math.sqrt(across) / 3, balance.steps().get(0).before().value(), 1e-8);
        assertEquals(Math.sqrt(across / 2), near.before().value(), 1e-8);
        assertEquals(4.34503, near.coefficient().orElseThrow().kv(), 1e-5);
        assertEquals(1, near.after().value(), 1e-8);
        assertEquals(1, near.reference().value(), 1e-8);
        assertTrue(balance.balanced().branch("near").parts().stream().anyMatch(FixedValve.class::isInstance));
    }

    /** A valve of its own in far takes 30 kPa and more: 16 m in the main, far without a valve to set. */
    @Test
    void a_branch_that_holds_its_flow_is_not_set_and_where_all_do_there_is_nothing_to_balance() {
        PressureIndependentValve holds = PressureIndependentValve.of("far valve", litres(3));
        Circuit circuit = twoBranches()
                .with(Branch.terminal("far", "header", "return", litres(3), new Loss("far coil", 2), holds));
        // far needs 18 m and 25 kPa, near 2 m: near is the reference, and is throttled too
        ProportionalBalance balance = ProportionalBalance.of(circuit);
        assertEquals(1, balance.steps().size());
        assertEquals("near", balance.reference());
        assertEquals(
                18 + 25_000 / (WATER.density().si() * 9.80665) - 2,
                balance.steps().get(0).excess().metres(),
                1e-7);
        Circuit all = Circuit.of(
                WATER, "s", "r", Branch.terminal("far", "s", "r", litres(3), new Loss("far coil", 2), holds));
        Refusal refusal = assertThrows(Refusal.class, () -> ProportionalBalance.of(all));
        assertEquals(CircuitProblem.NOTHING_TO_BALANCE, refusal.problem());
    }

    @Test
    void the_farthest_is_set_first_and_each_shows_what_the_reference_shows() {
        Circuit circuit = Circuit.of(
                WATER,
                "s",
                "r",
                Branch.of("to 1", "s", "s1", new Loss("pipe 1", 0.2)),
                Branch.terminal("one", "s1", "r", litres(1), new Loss("coil 1", 1), new Valve("valve 1", 1)),
                Branch.of("to 2", "s1", "s2", new Loss("pipe 2", 0.3)),
                Branch.terminal("two", "s2", "r", litres(2), new Loss("coil 2", 0.4), new Valve("valve 2", 0.2)),
                Branch.of("to 3", "s2", "s3", new Loss("pipe 3", 0.4)),
                Branch.terminal("three", "s3", "r", litres(1), new Loss("coil 3", 1.1), new Valve("valve 3", 1.3)));
        // at design: three needs 2.4 m; two has 2.8 m and needs 2.4 m; one has 2.8 + 0.3·9 = 5.5 m and needs 2 m
        ProportionalBalance balance = ProportionalBalance.of(circuit);
        assertEquals(
                List.of("three", "two", "one"),
                balance.steps().stream().map(ProportionalBalance.Step::branch).toList());
        assertEquals(0.4, balance.steps().get(1).excess().metres(), 1e-8);
        assertEquals(3.5, balance.steps().get(2).excess().metres(), 1e-8);
        for (ProportionalBalance.Step step : balance.steps()) {
            assertEquals(step.reference().value(), step.after().value(), 1e-8);
        }
    }

    @Test
    void a_profile_lays_each_junction_as_far_out_as_its_pipes_are_long() {
        Pipe pipe = Pipe.of("p", PipeSeries.STEEL.size(50), Length.metres(30));
        Circuit circuit = Circuit.of(
                WATER,
                "s",
                "r",
                Branch.of("to", "s", "s1", pipe),
                Branch.terminal("room", "s1", "r1", litres(1), new Loss("coil", 1), new Valve("valve", 1)),
                Branch.of("back", "r1", "r", pipe));
        HeadProfile profile = HeadProfile.of(circuit.solve(Closing.head(Head.metres(10))));
        assertTrue(profile.inMetres());
        assertEquals(30, profile.distance("s1"));
        assertEquals(30, profile.distance("r1"));
        assertEquals(0, profile.distance("s"));
        assertEquals(
                profile.solution()
                        .headAt("s1")
                        .minus(profile.solution().headAt("r1"))
                        .metres(),
                profile.across("room").metres(),
                1e-12);
    }
}
