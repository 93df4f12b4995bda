package headrace.circuit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.circuit.LitreLoop.Loss;
import headrace.circuit.part.BoosterPump;
import headrace.circuit.part.LinkLaw;
import headrace.circuit.part.Part;
import headrace.circuit.part.PartProblem;
import headrace.circuit.part.Passage;
import headrace.circuit.part.SquareLaw;
import headrace.circuit.part.pipe.Pipe;
import headrace.circuit.solve.HeaderPump;
import headrace.circuit.solve.LoopView;
import headrace.curve.CurveFormula;
import headrace.curve.PumpCurve;
import headrace.liquid.Liquid;
import headrace.numeric.Polynomial;
import headrace.problem.Refusal;
import headrace.pump.PumpBranch;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Length;
import headrace.units.Pressure;
import headrace.units.Ratio;
import headrace.units.Speed;
import headrace.units.Temperature;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Laws that close the loop; all expected numbers are hand calculations. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class CircuitLawTest {
    private static final Liquid WATER = Liquid.water(Temperature.celsius(20));
    private static final double LITRE = 1e-3;

    /** 20 m at 2 L/s, half of it in the terminal. */
    private static final Circuit ONE_LOAD = Circuit.of(
            WATER,
            "out",
            "in",
            Branch.of("main", "out", "tap", new Loss("pipe", 2.5)),
            Branch.terminal("load", "tap", "in", Flow.litresPerSecond(2), new Loss("coil", 2.5)));

    /** {@code H = Hₘ + c·Q²} with c in m for each (L/s)². */
    private static Closing law(double minimum, double c) {
        return Closing.ofFlow(q -> minimum + c * q / LITRE * q / LITRE);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.2, 0.4, 0.5, 0.8})
    void at_the_design_point_the_gain_is_one_over_the_share_of_the_minimum_head(double share) {
        CircuitSolver solver = CircuitSolver.of(ONE_LOAD);
        Closing law = law(20 * share, 5 * (1 - share));
        CircuitSolution solution = solver.solve(ONE_LOAD.designDemands(), law);
        assertEquals(20, solution.head().metres(), 1e-9);
        assertEquals(1 / share, solver.gain(law).orElseThrow(), 1e-5);
    }

    @Test
    void a_given_head_has_a_gain_of_one() {
        CircuitSolver solver = CircuitSolver.of(ONE_LOAD);
        Closing head = Closing.head(Head.metres(20));
        solver.solve(ONE_LOAD.designDemands(), head);
        assertEquals(1, solver.gain(head).orElseThrow());
    }

    @Test
    void a_law_along_the_circuit_defines_no_operating_point_and_is_refused() {
        Demands more = ONE_LOAD.designDemands().with("load", Flow.litresPerSecond(9));
        Refusal refusal = assertThrows(Refusal.class, () -> ONE_LOAD.solve(more, law(0, 5)));
        assertEquals(CircuitProblem.LAW_MISSES_CIRCUIT, refusal.problem());
        assertTrue(refusal.getMessage().contains("exactly as steeply"), refusal.getMessage());
    }

    @Test
    void a_law_that_asks_for_more_than_stands_at_the_pump_at_every_head_is_refused() {
        Closing greedy = place -> loop -> loop.head() + 1;
        Refusal refusal = assertThrows(Refusal.class, () -> ONE_LOAD.solve(greedy));
        assertEquals(CircuitProblem.LAW_MISSES_CIRCUIT, refusal.problem());
        assertTrue(refusal.getMessage().contains("asks for more"), refusal.getMessage());
    }

    @Test
    void a_sensor_behind_a_shut_terminal_cannot_be_satisfied_where_it_has_no_head() {
        Circuit circuit = Circuit.of(
                WATER,
                "out",
                "in",
                Branch.of("main", "out", "in", new Loss("pipe", 5)),
                Branch.terminal("side", "out", "in", Flow.litresPerSecond(1), new Loss("coil", 1)));
        // the sensor wants 8 m, and the pump gives just that
        CircuitSolution solution = circuit.solve(Closing.sensors(Map.of("side", Head.metres(8))));
        assertEquals(8, solution.head().metres(), 1e-9);
    }

    @Test
    void a_law_with_steps_that_newton_does_not_meet_is_looked_for_and_said_so() {
        // falls from 30 m to 6 m within 0.02 L/s around 1.5 L/s: it meets 5·Q² there
        Closing step = Closing.ofFlow(q -> 18 - 12 * Math.tanh((q / LITRE - 1.5) / 0.01));
        CircuitSolution solution = ONE_LOAD.solve(step);
        assertEquals(1.5, solution.flow().toLitresPerSecond(), 0.02);
        assertEquals(
                5 * Math.pow(solution.flow().toLitresPerSecond(), 2),
                solution.head().metres(),
                1e-6);
    }

    @Test
    void a_drooping_pump_against_a_load_with_its_own_static_head_has_two_solutions_which_are_both_returned() {
        // pump 11 − (q−1)² in L/s; branch 10.5 + 0.25·q²: q = (2 ± √1.5)/2.5
        Part filter = new Part() {
            @Override
            public String name() {
                return "loaded check valve";
            }

            @Override
            public Passage passage() {
                return Passage.FORWARD;
            }

            @Override
            public LinkLaw in(Liquid liquid) {
                return new LinkLaw() {
                    @Override
                    public double headMetres(double q) {
                        return 10.5 + 0.25 * q / LITRE * Math.abs(q) / LITRE;
                    }

                    @Override
                    public double slope(double q) {
                        return 0.5 * Math.abs(q) / LITRE / LITRE;
                    }
                };
            }
        };
        Circuit circuit = Circuit.of(WATER, "out", "in", Branch.of("loop", "out", "in", filter));
        HeaderPump pump = new HeaderPump(q -> 11 - Math.pow(q / LITRE - 1, 2), 4 * LITRE);
        List<CircuitSolution> all = CircuitSolver.of(circuit).solveAll(circuit.designDemands(), List.of(pump));
        assertEquals(2, all.size());
        assertEquals((2 - Math.sqrt(1.5)) / 2.5, all.get(0).flow().toLitresPerSecond(), 1e-7);
        assertEquals((2 + Math.sqrt(1.5)) / 2.5, all.get(1).flow().toLitresPerSecond(), 1e-7);
        assertTrue(all.get(0).notes().toString().contains("does not hold"));
        assertTrue(all.get(1).notes().has(CircuitProblem.SEVERAL_OPERATING_POINTS));
    }

    @Test
    void a_pump_whose_curve_ends_before_the_circuit_is_refused_with_both_flows() {
        HeaderPump pump = new HeaderPump(q -> 30 - q / LITRE, LITRE);
        Refusal refusal = assertThrows(
                Refusal.class, () -> CircuitSolver.of(ONE_LOAD).solveAll(ONE_LOAD.designDemands(), List.of(pump)));
        assertEquals(CircuitProblem.LAW_MISSES_CIRCUIT, refusal.problem());
        assertTrue(refusal.getMessage().contains("end at"), refusal.getMessage());
    }

    /** 20 m at no flow, less 1 m for each (L/s)², up to 4 L/s. */
    private static PumpBranch pump(String name, double metres) {
        CurveFormula formula = new CurveFormula(
                Polynomial.of(metres, 0, -1 / (LITRE * LITRE)),
                Polynomial.of(200, 1e5),
                Flow.ZERO,
                Flow.litresPerSecond(Math.sqrt(metres) - 0.01));
        return PumpBranch.of(PumpCurve.of(name, Speed.revolutionsPerMinute(1450), WATER, formula));
    }

    @Test
    void a_pump_on_the_header_meets_the_load_where_both_heads_are_equal() {
        // 24 − q² = 5·q²
        List<CircuitSolution> all = CircuitSolver.of(ONE_LOAD)
                .solveAll(
                        ONE_LOAD.designDemands().with("load", Flow.litresPerSecond(3)),
                        List.of(CircuitSolver.onHeader(pump("duty", 24))));
        assertEquals(1, all.size());
        assertEquals(2, all.get(0).flow().toLitresPerSecond(), 1e-8);
    }

    @Test
    void a_booster_adds_its_head_in_its_branch() {
        // 16 m at the header, 9 − q² in the branch: 25 = 6.25·q², with 5.25·q² of pipe
        Circuit circuit = Circuit.of(
                WATER,
                "out",
                "in",
                Branch.of("far", "out", "in", new Loss("pipe", 5.25), new BoosterPump(pump("booster", 9))));
        CircuitSolution solution = circuit.solve(Closing.head(Head.metres(16)));
        assertEquals(2, solution.flow().toLitresPerSecond(), 1e-8);
        assertTrue(solution.notes().isEmpty(), solution.notes().toString());
    }

    @Test
    void a_booster_driven_beyond_its_curve_says_so() {
        Circuit circuit = Circuit.of(
                WATER,
                "out",
                "in",
                Branch.of("far", "out", "in", new Loss("pipe", 1), new BoosterPump(pump("booster", 4))));
        assertTrue(circuit.solve(Closing.head(Head.metres(30))).notes().has(PartProblem.BOOSTER_BEYOND_CURVE));
    }

    @Test
    void of_two_pumps_that_fight_the_weaker_is_named() {
        // 16 m hold the branch back, in which a pump gives 9 m at no flow
        Circuit circuit = Circuit.of(
                WATER,
                "out",
                "in",
                Branch.of("load", "out", "in", new Loss("pipe", 1)),
                Branch.of("side", "in", "out", new BoosterPump(pump("booster", 9))));
        CircuitSolution solution = circuit.solve(Closing.head(Head.metres(16)));
        assertEquals(0, solution.branch("side").flow().si());
        assertTrue(solution.notes().toString().contains("'booster' in 'side' works against other pumps"));
    }

    @Test
    void a_pipe_in_a_circuit_carries_the_flow_of_a_published_pressure_drop() {
        // 50 m of 52.5 mm, 0.045 mm rough, water at 20 °C: 6877.511 Pa at 6 m³/h (Colebrook to 13 digits, IAPWS water)
        Circuit circuit = Circuit.of(
                WATER,
                "out",
                "in",
                Branch.of(
                        "pipe",
                        "out",
                        "in",
                        Pipe.of("pipe", Length.millimetres(52.5), Length.millimetres(0.045), Length.metres(50))));
        CircuitSolution solution = circuit.solve(Closing.head(WATER.headOf(Pressure.pascals(6877.511))));
        assertEquals(6, solution.flow().toCubicMetresPerHour(), 2e-5);
    }

    @Test
    void a_branch_that_no_head_can_feed_is_named() {
        // the check valve before it stands the wrong way round
        Part check = new Part() {
            @Override
            public String name() {
                return "check valve";
            }

            @Override
            public Passage passage() {
                return Passage.FORWARD;
            }

            @Override
            public LinkLaw in(Liquid liquid) {
                return new SquareLaw(1e5);
            }
        };
        Circuit circuit = Circuit.of(
                WATER,
                "out",
                "in",
                Branch.terminal("near", "out", "in", Flow.litresPerSecond(1), new Loss("coil", 3)),
                Branch.of("riser", "top", "out", check),
                Branch.terminal("attic", "top", "in", Flow.litresPerSecond(1), new Loss("coil", 3)));
        Refusal refusal = assertThrows(Refusal.class, () -> circuit.solve(Closing.neediestValve(Ratio.percent(90))));
        assertEquals(CircuitProblem.LAW_MISSES_CIRCUIT, refusal.problem());
        assertTrue(refusal.getMessage().contains("'attic' still gets too little"), refusal.getMessage());
        CircuitSolution solution = circuit.solve(Closing.head(Head.metres(10)));
        assertTrue(solution.notes().has(CircuitProblem.BRANCH_NOT_FED));
        assertEquals(0, solution.branch("attic").flow().si());
    }

    @Test
    void a_law_may_look_at_any_junction_and_branch_by_name() {
        // the head at the tap is to be 10 m: main 2.5·2² = 10 m more
        Closing atTap = place -> {
            int tap = place.node("tap");
            return (LoopView loop) -> loop.head() + 10 - loop.headAt(tap);
        };
        assertEquals(20, ONE_LOAD.solve(atTap).head().metres(), 1e-8);
    }
}
