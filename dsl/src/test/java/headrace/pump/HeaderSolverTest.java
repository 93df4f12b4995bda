package headrace.pump;

import static headrace.pump.KnownPump.m3ph;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.curve.Duty;
import headrace.numeric.Roots;
import headrace.problem.Refusal;
import headrace.units.Head;
import headrace.units.Ratio;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class HeaderSolverTest {
    /** Invented: head in m of the flow in m³/h as three coefficients, speed ratio, loss of the branch in m/(m³/h)². */
    private static final double[][] EIGHT = {
        {30.0, -0.010, -0.00090, 1.00, 0.00012},
        {31.2, -0.012, -0.00082, 0.95, 0.00010},
        {27.5, -0.008, -0.00140, 1.00, 0.00020},
        {33.0, -0.020, -0.00110, 0.90, 0.00015},
        {24.0, -0.005, -0.00065, 1.00, 0.00008},
        {36.0, -0.030, -0.00200, 0.92, 0.00030},
        {22.0, 0.000, -0.00160, 1.05, 0.00025},
        {29.0, -0.015, -0.00100, 0.97, 0.00012}
    };

    private static final double CRACKING = 0.25;
    private static final double STATIC = 2.0;
    private static final int SYSTEMS = 10_000;

    private static List<PumpBranch> eight() {
        List<PumpBranch> branches = new ArrayList<>();
        for (double[] row : EIGHT) {
            double to = (-row[1] - Math.sqrt(row[1] * row[1] - 4 * row[2] * (row[0] - 1))) / (2 * row[2]);
            branches.add(PumpBranch.of(Parabolas.curve("P-" + branches.size(), to, row[0], row[1], row[2])
                            .atSpeed(Ratio.of(row[3])))
                    .withCheckValve(Head.metres(CRACKING))
                    .withLoss(new Duty(m3ph(100), Head.metres(row[4] * 1e4))));
        }
        return branches;
    }

    /** Resistances in m/(m³/h)² from 1e-5 to 1e-2, evenly in their logarithm. */
    private static double resistance(int i) {
        return 1e-5 * Math.pow(10, 3.0 * i / (SYSTEMS - 1));
    }

    /** The other method: Brent on the header head, and within it Brent for the flow of each pump. */
    private static double[] nestedBrent(double resistance) {
        double header =
                Roots.between(h -> DoubleStream.of(flows(h)).sum() - Math.sqrt((h - STATIC) / resistance), STATIC, 36);
        return flows(header);
    }

    private static double[] flows(double header) {
        double[] flows = new double[EIGHT.length];
        for (int i = 0; i < flows.length; i++) {
            double[] p = EIGHT[i];
            double shutOff = p[0] * p[3] * p[3] - CRACKING;
            flows[i] = shutOff <= header
                    ? 0
                    : Roots.between(q -> shutOff + p[1] * p[3] * q + (p[2] - p[4]) * q * q - header, 0, 400);
        }
        return flows;
    }

    @Test
    void eight_unequal_pumps_agree_with_nested_brent_to_a_billionth() {
        HeaderSolver solver = HeaderSolver.of(eight());
        double[] flows = new double[8];
        for (int i = 0; i < SYSTEMS; i += 97) {
            solver.totalFlow(STATIC, resistance(i) * 3600 * 3600, flows);
            double[] other = nestedBrent(resistance(i));
            for (int j = 0; j < 8; j++) {
                assertEquals(other[j], flows[j] * 3600, 1e-9 * 100, "system " + i + ", pump " + j);
            }
        }
    }

    /** Halley's method from a start read off the combined curve: what a poorer start or step would need more of. */
    @Test
    void three_steps_are_enough_for_eight_unequal_pumps() {
        HeaderSolver solver = HeaderSolver.ofSteps(eight(), 3);
        double[] flows = new double[8];
        double[] exact = new double[8];
        HeaderSolver all = HeaderSolver.of(eight());
        for (int i = 0; i < SYSTEMS; i += 7) {
            double k = resistance(i) * 3600 * 3600;
            double total = all.totalFlow(STATIC, k, exact);
            assertEquals(total, solver.totalFlow(STATIC, k, flows), 1e-9 * total, "system " + i);
            assertArrayEquals(exact, flows, 1e-9 * total, "system " + i);
        }
    }

    /** Newton's method where the curves are no parabolas. */
    @Test
    void four_steps_are_enough_for_curves_that_are_no_parabolas() {
        List<PumpBranch> branches = List.of(
                PumpBranch.of(Parabolas.cubic()),
                PumpBranch.of(Parabolas.cubic().atSpeed(Ratio.of(0.9))),
                PumpBranch.of(Parabolas.steep().atSpeed(Ratio.of(0.8))));
        HeaderSolver solver = HeaderSolver.ofSteps(branches, 4);
        double[] flows = new double[3];
        double[] exact = new double[3];
        for (double r = 3e-4; r < 0.02; r *= 1.07) {
            double total = HeaderSolver.of(branches).totalFlow(STATIC, r * 3600 * 3600, exact);
            solver.totalFlow(STATIC, r * 3600 * 3600, flows);
            assertArrayEquals(exact, flows, 1e-9 * total, "resistance " + r);
        }
    }

    /** Sums over ten thousand systems by an independent implementation with nested Brent, as above. */
    @Test
    void eight_unequal_pumps_on_ten_thousand_systems_sum_up_as_an_independent_implementation_does() {
        double[] pumps = {
            718557.699246, 571569.972666, 397746.179914, 364367.953236,
            332301.090996, 476064.831692, 227861.796133, 432060.96262
        };
        HeaderSolver solver = HeaderSolver.of(eight());
        double[] flows = new double[8];
        double[] sums = new double[8];
        double total = 0;
        double heads = 0;
        int open = 0;
        for (int i = 0; i < SYSTEMS; i++) {
            double k = resistance(i) * 3600 * 3600;
            double q = solver.totalFlow(STATIC, k, flows);
            total += q * 3600;
            heads += STATIC + k * q * q;
            for (int j = 0; j < 8; j++) {
                sums[j] += flows[j] * 3600;
                open += flows[j] > 0 ? 1 : 0;
            }
        }
        assertEquals(3520530.4865, total, 1e-8 * 3520530);
        assertEquals(228987.297993, heads, 1e-8 * 228987);
        assertEquals(60725, open);
        assertArrayEquals(pumps, sums, 1e-8 * 400_000);
    }

    @Test
    void agrees_with_the_solution_that_lists_all_points_where_curves_are_no_parabolas() {
        Random random = new Random(65);
        for (int i = 0; i < 50; i++) {
            List<PumpBranch> branches = new ArrayList<>();
            for (int j = 0; j < 1 + random.nextInt(5); j++) {
                branches.add(PumpBranch.of((j % 2 == 0 ? Parabolas.cubic() : Parabolas.steep())
                                .atSpeed(Ratio.of(0.6 + 0.4 * random.nextDouble())))
                        .withLoss(new Duty(m3ph(60), Head.metres(2 * random.nextDouble()))));
            }
            double lift = 10 * random.nextDouble();
            double k = (0.003 + 0.01 * random.nextDouble()) * 3600 * 3600;
            double[] flows = new double[branches.size()];
            double total = HeaderSolver.of(branches).totalFlow(lift, k, flows);
            ParallelPoint point = ParallelPumps.of(branches).meeting(q -> lift + k * q * q, "system");
            assertEquals(point.flow().si(), total, 1e-9 * point.flow().si());
            for (int j = 0; j < flows.length; j++) {
                assertEquals(point.branches().get(j).flow().si(), flows[j], 1e-9 * total);
            }
        }
    }

    @Test
    void a_stopped_pump_and_a_closed_valve_have_no_flow_at_all() {
        List<PumpBranch> branches = eight();
        branches.set(2, branches.get(2).stopped());
        double[] flows = new double[8];
        Arrays.fill(flows, 7);
        double total = HeaderSolver.of(branches).totalFlow(STATIC, 1e-2 * 3600 * 3600, flows);
        assertEquals(0.0, flows[2]);
        assertEquals(0.0, flows[6]);
        assertEquals(DoubleStream.of(flows).sum(), total, 1e-15);
        assertEquals(0.0, HeaderSolver.of(branches).totalFlow(50, 1, flows));
        assertArrayEquals(new double[8], flows);
    }

    @Test
    void order_does_not_matter() {
        List<PumpBranch> branches = eight();
        double[] flows = new double[8];
        double[] reversed = new double[8];
        HeaderSolver.of(branches).totalFlow(STATIC, 3e-4 * 3600 * 3600, flows);
        Collections.reverse(branches);
        HeaderSolver.of(branches).totalFlow(STATIC, 3e-4 * 3600 * 3600, reversed);
        for (int i = 0; i < 8; i++) {
            assertEquals(flows[i], reversed[7 - i], 1e-14);
        }
    }

    /** Without resistance the header stands at the static head: 40 − 0.0025·Q² = 10 at √12000 m³/h. */
    @Test
    void a_system_without_resistance_sets_the_header_head() {
        HeaderSolver solver = HeaderSolver.of(List.of(PumpBranch.of(Parabolas.steep())));
        double[] flows = new double[1];
        assertEquals(Math.sqrt(12_000), solver.totalFlow(10, 0, flows) * 3600, 1e-9);
        assertTrue(solver.covers(flows));
        solver.totalFlow(-5, 0, flows);
        assertEquals(Math.sqrt(18_000), flows[0] * 3600, 1e-9);
        assertFalse(solver.covers(flows));
        assertEquals(1, solver.count());
        assertEquals(Math.sqrt(8000), solver.totalFlowAt(20) * 3600, 1e-9);
        assertEquals(0.0, solver.totalFlowAt(40));
        assertEquals(0.0, solver.totalFlow(40, 1, flows));
    }

    @Test
    void a_flow_at_the_very_end_of_a_curve_is_covered_and_one_beyond_it_is_not() {
        HeaderSolver solver = HeaderSolver.of(List.of(PumpBranch.of(Parabolas.steep())));
        assertTrue(solver.covers(new double[] {125 / 3600.0}));
        assertFalse(solver.covers(new double[] {125.001 / 3600.0}));
    }

    /** The system lies below the static head of all curves' ends: 40 − 0.0025·Q² = −5 + 0.0001·Q². */
    @Test
    void a_system_that_draws_below_the_headers_is_followed_along_the_curve() {
        HeaderSolver solver = HeaderSolver.of(List.of(PumpBranch.of(Parabolas.steep())));
        double[] flows = new double[1];
        assertEquals(Math.sqrt(45 / 0.0026), solver.totalFlow(-5, 1e-4 * 3600 * 3600, flows) * 3600, 1e-8);
    }

    @Test
    void a_stopped_pump_may_have_a_curve_that_a_running_one_may_not() {
        List<PumpBranch> branches = List.of(
                PumpBranch.of(Parabolas.drooping()).stopped(),
                PumpBranch.of(KnownPump.curve()).stopped(),
                PumpBranch.of(Parabolas.steep()));
        double[] flows = new double[3];
        assertEquals(Math.sqrt(12_000), HeaderSolver.of(branches).totalFlow(10, 0, flows) * 3600, 1e-9);
        assertEquals(0.0, flows[0]);
        assertEquals(0.0, HeaderSolver.of(branches.subList(0, 2)).totalFlow(10, 0, new double[2]));
    }

    @Test
    void a_drooping_branch_and_an_unknown_shut_off_head_are_refused() {
        assertEquals(
                PumpProblem.DROOPING_BRANCH,
                assertThrows(Refusal.class, () -> HeaderSolver.of(List.of(PumpBranch.of(Parabolas.drooping()))))
                        .problem());
        assertEquals(
                PumpProblem.SHUT_OFF_UNKNOWN,
                assertThrows(Refusal.class, () -> HeaderSolver.of(List.of(PumpBranch.of(KnownPump.curve()))))
                        .problem());
    }
}
