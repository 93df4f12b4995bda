package headrace.control;

import static headrace.circuit.KnownLoop.LOOP;
import static headrace.circuit.KnownLoop.loss;
import static headrace.pump.KnownPump.SPEED;
import static headrace.pump.KnownPump.m3ph;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.circuit.Branch;
import headrace.circuit.BranchState;
import headrace.circuit.Circuit;
import headrace.circuit.CircuitProblem;
import headrace.circuit.Demands;
import headrace.circuit.part.valve.MinimumFlowValve;
import headrace.curve.Duty;
import headrace.drive.SeparateLosses;
import headrace.liquid.Liquid;
import headrace.problem.Refusal;
import headrace.pump.KnownPump;
import headrace.pump.PumpSet;
import headrace.units.Flow;
import headrace.units.FlowCoefficient;
import headrace.units.Head;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Speed;
import headrace.units.Temperature;
import headrace.units.Time;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

/**
 * A plant of 8 m at 80 m³/h; near takes 4 m at 40 m³/h; a main of 3 m and far of 5 m at 40 m³/h. All losses go with the
 * square of flow, so that every number here is worked by hand; the pump gives 40·s² − 0.0025·Q² m.
 */
@DisplayNameGeneration(ReplaceUnderscores.class)
class LoopOperationTest {
    private static final Duty DESIGN = new Duty(m3ph(80), Head.metres(16));
    private static final PumpSet SET = KnownPump.set(SeparateLosses.ASSUMED);

    @Test
    void a_law_of_flow_that_gives_enough_delivers_every_demand() {
        LoopOperation run = run(ControlLaw.constantHead(new Duty(m3ph(80), Head.metres(20))), 40, 40);
        assertEquals(80, run.circuit().flow().toCubicMetresPerHour(), 1e-9);
        assertEquals(20, run.circuit().head().metres(), 1e-9);
        assertEquals(
                Math.sqrt(0.9), run.pump().orElseThrow().point().speedRatio().value(), 1e-9);
        assertTrue(run.circuit().starvedBranches().isEmpty());
    }

    /**
     * The bypass takes what the loads leave of 15 m³/h: 10 beside 5, nothing beside 40, and nothing where nothing runs.
     */
    @Test
    void a_minimum_flow_valve_bypasses_what_the_pump_lacks() {
        Circuit loop = Circuit.of(
                KnownPump.WATER,
                "supply",
                "return",
                Branch.terminal("room", "supply", "return", m3ph(40), loss("coil", 40, 5)),
                Branch.terminal(
                        "bypass",
                        "supply",
                        "return",
                        m3ph(15),
                        new MinimumFlowValve("valve", m3ph(15), FlowCoefficient.kv(40))));
        ControlLaw law = ControlLaw.constantHead(new Duty(m3ph(40), Head.metres(10)));
        Demands design = loop.designDemands();
        LoopOperation low = LoopOperation.of(law, SET, loop, design.with("room", m3ph(5)));
        assertEquals(10, low.circuit().branch("bypass").flow().toCubicMetresPerHour(), 1e-7);
        assertEquals(15, low.pump().orElseThrow().point().flow().toCubicMetresPerHour(), 1e-7);
        LoopOperation full = LoopOperation.of(law, SET, loop, design);
        assertEquals(0, full.circuit().branch("bypass").flow().si(), 1e-12);
        assertEquals(40, full.circuit().flow().toCubicMetresPerHour(), 1e-7);
        LoopOperation none = LoopOperation.of(law, SET, loop, design.with("room", Flow.ZERO));
        assertTrue(none.pump().isEmpty());
        assertEquals(0, none.circuit().flow().si());
    }

    /** Far alone needs 2 + 3 + 5 = 10 m; 4 + 12·(q/80)² = 0.00625·q² gives q = √(4/0.004375). */
    @Test
    void a_law_that_gives_too_little_starves_the_branch_that_it_cannot_see() {
        LoopOperation run = run(ControlLaw.quadratic(DESIGN, Ratio.percent(25)), 0, 40);
        double q = Math.sqrt(4 / 0.004375);
        assertEquals(q, run.circuit().flow().toCubicMetresPerHour(), 1e-7);
        assertEquals(0.00625 * q * q, run.circuit().head().metres(), 1e-7);
        BranchState far = run.circuit().branch("far");
        assertEquals(q / 40, far.delivered().value(), 1e-9);
        assertEquals(5 - 0.003125 * q * q, far.missing().metres(), 1e-7);
        assertEquals(
                run.circuit().head().metres(),
                run.pump().orElseThrow().point().head().metres(),
                1e-7);
    }

    /**
     * Flows and heads are those of the square laws in any liquid; the shaft goes with the density of that in the loop.
     */
    @Test
    void the_pump_stands_in_the_liquid_of_the_circuit() {
        Liquid hot = Liquid.water(Temperature.celsius(80));
        ControlLaw law = ControlLaw.constantHead(new Duty(m3ph(80), Head.metres(20)));
        LoopOperation cold = run(law, 40, 40);
        LoopOperation run =
                LoopOperation.of(law, SET, LOOP.with(hot), cold.circuit().demands());
        double ratio = hot.density().over(KnownPump.WATER.density()).value();
        assertEquals(
                ratio * cold.pump().orElseThrow().point().point().shaftPower().watts(),
                run.pump().orElseThrow().point().point().shaftPower().watts(),
                1e-4);
        assertEquals(20, run.circuit().head().metres(), 1e-9);
    }

    /** 8·(60/80)² + 3·(20/40)² + 5 m. */
    @Test
    void a_remote_sensor_gets_the_head_that_it_wants_and_no_more() {
        LoopOperation run = run(ControlLaw.remoteSensors(DESIGN, Map.of("far", Head.metres(5))), 40, 20);
        assertEquals(10.25, run.circuit().head().metres(), 1e-7);
        assertEquals(5, run.circuit().branch("far").available().metres(), 1e-7);
        assertEquals(10.25, run.pump().orElseThrow().point().head().metres(), 1e-7);
    }

    /** Nothing flows to far, so that across it stands what stands across near: 8·(40/80)² + 5 m. */
    @Test
    void a_remote_sensor_across_a_branch_that_is_shut_sees_the_head_before_its_valve() {
        LoopOperation run = run(ControlLaw.remoteSensors(DESIGN, Map.of("far", Head.metres(5))), 40, 0);
        assertEquals(7, run.circuit().head().metres(), 1e-7);
        assertEquals(5, run.circuit().branch("far").available().metres(), 1e-7);
        assertTrue(run.circuit().starvedBranches().isEmpty());
    }

    /** Near wants 5 m: 4.5 + 5; far wants 3 m: 4.5 + 0.75 + 3. The greater decides. */
    @Test
    void of_several_sensors_the_one_that_lacks_most_decides() {
        LoopOperation run =
                run(ControlLaw.remoteSensors(DESIGN, Map.of("near", Head.metres(5), "far", Head.metres(3))), 40, 20);
        assertEquals(9.5, run.circuit().head().metres(), 1e-7);
    }

    /** Near needs 4 + 4.5 m, far 1.25 + 0.75 + 4.5 m. */
    @Test
    void the_neediest_valve_takes_the_least_head_that_serves_all() {
        LoopOperation run = run(ControlLaw.neediestValve(DESIGN, Ratio.percent(100)), 40, 20);
        assertEquals(8.5, run.circuit().head().metres(), 1e-7);
        assertTrue(run.circuit().starvedBranches().isEmpty());
    }

    /** Far needs 2 m at its tap, at which near takes √(2/0.0025) of its 40; the plant 8·(Q/80)². */
    @Test
    void trim_and_respond_settles_where_only_the_ignored_valves_request() {
        TrimAndRespond law = new TrimAndRespond(
                DESIGN,
                Head.ZERO,
                TrimAndRespond.Steps.USUAL,
                new TrimAndRespond.Requests(Ratio.percent(100), 1),
                Time.minutes(5));
        LoopOperation run = run(law, 40, 20);
        double q = Math.sqrt(2 / 0.0025) + 20;
        assertEquals(2 + 0.00125 * q * q, run.circuit().head().metres(), 1e-6);
        assertEquals(List.of("near"), run.circuit().starvedBranches());
    }

    @Test
    void trim_and_respond_that_cannot_move_is_refused() {
        TrimAndRespond.Steps still = new TrimAndRespond.Steps(Ratio.ZERO, Ratio.percent(3), Ratio.percent(7));
        Refusal refusal = assertThrows(
                Refusal.class,
                () -> new TrimAndRespond(DESIGN, Head.ZERO, still, TrimAndRespond.Requests.USUAL, Time.minutes(5)));
        assertEquals(ControlProblem.IMPOSSIBLE_LAW, refusal.problem());
        assertThrows(
                Refusal.class,
                () -> new TrimAndRespond(
                        DESIGN, Head.ZERO, TrimAndRespond.Steps.USUAL, TrimAndRespond.Requests.USUAL, Time.minutes(7)));
    }

    @Test
    void an_own_law_that_looks_at_a_branch_does_what_a_sensor_there_does() {
        ControlLaw own = ControlLaw.of(
                "own sensor",
                Optional.of(DESIGN),
                List.of("far"),
                now -> now.pumpHead().plus(Head.metres(5)).minus(now.head("far")));
        assertEquals(10.25, run(own, 40, 20).circuit().head().metres(), 1e-7);
    }

    /** Asks for 12 m while far has less than 5 m, which it has below 10.25 m at the pump, and for 8 m above. */
    @Test
    void an_own_law_that_jumps_across_the_circuit_is_refused() {
        ControlLaw own = ControlLaw.of(
                "step",
                Optional.of(DESIGN),
                List.of("far"),
                now -> Head.metres(now.head("far").metres() < 5 ? 12 : 8));
        Refusal refusal = assertThrows(Refusal.class, () -> run(own, 40, 20));
        assertEquals(CircuitProblem.LAW_MISSES_CIRCUIT, refusal.problem());
        assertTrue(refusal.getMessage().contains("10.25 m"), refusal.getMessage());
    }

    /**
     * Plant 8·(60/80)² = 4.5 m and main 3·(20/40)² = 0.75 m stand before far: H = 30 − 2·(H − 5.25) = 13.5 m. On the
     * way there a head above 15 m across far is tried, where the law has no head of 0 or more.
     */
    @Test
    void an_own_law_may_answer_below_0_where_the_loop_does_not_come_to_stand() {
        ControlLaw own = ControlLaw.of(
                "proportional",
                Optional.of(DESIGN),
                List.of("far"),
                now -> Head.metres(30 - 2 * now.head("far").metres()));
        assertEquals(13.5, run(own, 40, 20).circuit().head().metres(), 1e-6);
    }

    @Test
    void an_own_law_sees_only_what_it_says_that_it_observes() {
        ControlLaw own = ControlLaw.of("own", Optional.of(DESIGN), List.of("far"), now -> now.head("near"));
        Refusal refusal = assertThrows(Refusal.class, () -> run(own, 40, 20));
        assertEquals(ControlProblem.NOTHING_SEEN_OF_CIRCUIT, refusal.problem());
        ControlLaw blind = ControlLaw.of("blind", now -> now.head("near"));
        assertEquals(
                ControlProblem.NOTHING_SEEN_OF_CIRCUIT,
                assertThrows(Refusal.class, () -> run(blind, 40, 20)).problem());
    }

    @Test
    void a_law_that_looks_at_the_circuit_is_refused_without_one() {
        ControlLaw law = ControlLaw.neediestValve(DESIGN, Ratio.percent(90));
        Refusal refusal = assertThrows(Refusal.class, () -> SteadyState.of(law, SET, m3ph(40)));
        assertEquals(ControlProblem.LAW_NEEDS_CIRCUIT, refusal.problem());
    }

    /** 40 − 0.0025·q² = 0.00625·q². */
    @Test
    void at_constant_speed_the_pump_rides_its_curve_into_the_open_circuit() {
        LoopOperation run = run(ControlLaw.constantSpeed(), 0, 200);
        assertEquals(Math.sqrt(40 / 0.00875), run.circuit().flow().toCubicMetresPerHour(), 1e-7);
        assertTrue(run.pump().orElseThrow().asked().isEmpty());
    }

    /** At 60 % of its speed the pump gives 14.4 − 1 = 13.4 m at 20 m³/h. */
    @Test
    void at_its_least_speed_the_pump_gives_more_than_the_law_asks_for() {
        PumpSet slow = SET.withMinimumSpeed(SPEED.times(0.6));
        LoopOperation run = LoopOperation.of(
                ControlLaw.constantHead(new Duty(m3ph(80), Head.metres(8))), slow, LOOP, demands(20, 0));
        assertEquals(13.4, run.circuit().head().metres(), 1e-9);
        assertEquals(20, run.circuit().flow().toCubicMetresPerHour(), 1e-9);
        assertEquals(SteadyState.Limit.MINIMUM_SPEED, run.pump().orElseThrow().limit());
        assertEquals(5.4, run.excessHead().orElseThrow().metres(), 1e-9);
    }

    /** Both open: near 0.0025, far 0.005 in parallel behind 0.00125; 10 − 0.0025·q² = k·q². */
    @Test
    void at_its_greatest_speed_the_pump_falls_short_and_every_branch_gets_less() {
        PumpSet half = SET.withMaximumSpeed(SPEED.times(0.5));
        LoopOperation run = LoopOperation.of(
                ControlLaw.constantHead(new Duty(m3ph(80), Head.metres(20))), half, LOOP, demands(40, 40));
        double both = 1 / Math.sqrt(0.0025) + 1 / Math.sqrt(0.005);
        double q = Math.sqrt(10 / (0.0025 + 0.00125 + 1 / (both * both)));
        assertEquals(q, run.circuit().flow().toCubicMetresPerHour(), 1e-7);
        assertEquals(SteadyState.Limit.MAXIMUM_SPEED, run.pump().orElseThrow().limit());
        assertEquals(List.of("far", "near"), run.circuit().starvedBranches());
    }

    /** At 60 m³/h both are open: 60²·k as above. */
    @Test
    void a_greatest_flow_is_kept_and_said() {
        ControlLaw law = ControlLaw.constantHead(new Duty(m3ph(80), Head.metres(20)))
                .within(flows(Optional.empty(), Optional.of(m3ph(60))));
        LoopOperation run = run(law, 40, 40);
        double both = 1 / Math.sqrt(0.0025) + 1 / Math.sqrt(0.005);
        assertEquals(60, run.circuit().flow().toCubicMetresPerHour(), 1e-7);
        assertEquals(3600 * (0.00125 + 1 / (both * both)), run.circuit().head().metres(), 1e-6);
        assertTrue(run.notes().has(ControlProblem.MAXIMUM_FLOW_REACHED));
    }

    /** The law gives 8 + 8·50/80 = 13 m at the 50 m³/h that the pump keeps moving; the circuit takes 20 of them. */
    @Test
    void a_least_flow_goes_through_the_pump_and_the_rest_through_a_bypass() {
        ControlLaw law =
                ControlLaw.linear(DESIGN, Ratio.percent(50)).within(flows(Optional.of(m3ph(50)), Optional.empty()));
        LoopOperation run = run(law, 20, 0);
        assertEquals(20, run.circuit().flow().toCubicMetresPerHour(), 1e-9);
        assertEquals(13, run.circuit().head().metres(), 1e-9);
        assertEquals(50, run.pump().orElseThrow().point().flow().toCubicMetresPerHour(), 1e-9);
        assertEquals(13, run.pump().orElseThrow().point().head().metres(), 1e-9);
    }

    @Test
    void a_greatest_power_is_part_of_the_solve() {
        ControlLaw constant = ControlLaw.constantHead(new Duty(m3ph(80), Head.metres(20)));
        Power free = run(constant, 40, 40).pump().orElseThrow().point().wirePower();
        LawLimits limits = new LawLimits(
                Optional.empty(), Optional.empty(), Optional.of(free.times(0.6)), Optional.empty(), Optional.empty());
        LoopOperation run = run(constant.within(limits), 40, 40);
        SteadyState pump = run.pump().orElseThrow();
        assertEquals(0.6 * free.watts(), pump.point().wirePower().watts(), 1e-6 * free.watts());
        assertEquals(run.circuit().head().metres(), pump.point().head().metres(), 1e-6);
        assertTrue(run.circuit().starvedBranches().contains("far"));
    }

    @Test
    void where_nothing_is_asked_the_pump_stands_still() {
        LoopOperation run = run(ControlLaw.constantHead(DESIGN), 0, 0);
        assertTrue(run.pump().isEmpty());
        assertEquals(0, run.circuit().flow().si());
    }

    private static LoopOperation run(ControlLaw law, double near, double far) {
        return LoopOperation.of(law, SET, LOOP, demands(near, far));
    }

    private static Demands demands(double near, double far) {
        return new Demands(Map.of("near", m3ph(near), "far", m3ph(far)));
    }

    private static LawLimits flows(Optional<Flow> least, Optional<Flow> greatest) {
        Optional<Speed> none = Optional.empty();
        return new LawLimits(none, none, Optional.empty(), least, greatest);
    }
}
