package headrace.pump;

import static headrace.pump.KnownPump.m3ph;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.curve.CurveProblem;
import headrace.curve.Duty;
import headrace.curve.PumpCurve;
import headrace.liquid.Liquid;
import headrace.problem.Problem;
import headrace.problem.Refusal;
import headrace.pump.BranchFlow.CheckValve;
import headrace.units.Head;
import headrace.units.Ratio;
import headrace.units.Temperature;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

@DisplayNameGeneration(ReplaceUnderscores.class)
class ParallelPumpsTest {
    private static final DoubleUnaryOperator LIFTING = system(10, 0.0015);

    private static DoubleUnaryOperator system(double lift, double perSquare) {
        return q -> lift + perSquare * (q * 3600) * (q * 3600);
    }

    private static ParallelPumps pumps(PumpBranch... branches) {
        return ParallelPumps.of(List.of(branches));
    }

    private static ParallelPoint meeting(DoubleUnaryOperator system, PumpBranch... branches) {
        return pumps(branches).meeting(system, "system");
    }

    private static PumpBranch branch(PumpCurve curve) {
        return PumpBranch.of(curve);
    }

    private static void refused(Problem problem, Executable asking) {
        assertEquals(problem, assertThrows(Refusal.class, asking).problem());
    }

    /** 40 − 0.0025·(Q/n)² = 10 + 0.0015·Q², solved by hand: Q = √(30/(0.0025/n² + 0.0015)). */
    @Test
    void equal_pumps_meet_a_system_where_the_closed_form_says() {
        ParallelPoint one = meeting(LIFTING, branch(Parabolas.steep()));
        assertEquals(Math.sqrt(7500), one.flow().toCubicMetresPerHour(), 1e-10 * 86.6);
        assertEquals(21.25, one.head().metres(), 1e-10 * 21.25);
        ParallelPoint two = meeting(LIFTING, branch(Parabolas.steep()), branch(Parabolas.steep()));
        double flow = Math.sqrt(30 / (0.0025 / 4 + 0.0015));
        assertEquals(118.81771, flow, 5e-6);
        assertEquals(flow, two.flow().toCubicMetresPerHour(), 1e-10 * flow);
        assertEquals(40 - 0.0025 * flow * flow / 4, two.head().metres(), 1e-10 * 31);
        ParallelPoint friction = meeting(system(0, 0.004), branch(Parabolas.steep()), branch(Parabolas.steep()));
        assertEquals(92.99811, friction.flow().toCubicMetresPerHour(), 5e-6);
    }

    @Test
    void equal_pumps_share_equally() {
        ParallelPoint point =
                meeting(LIFTING, branch(Parabolas.cubic()), branch(Parabolas.cubic()), branch(Parabolas.cubic()));
        for (BranchFlow each : point.branches()) {
            assertEquals(point.flow().si() / 3, each.flow().si(), 1e-12);
        }
    }

    @Test
    void a_branch_adds_its_head_less_valve_and_loss() {
        PumpBranch branch =
                branch(Parabolas.steep()).withCheckValve(Head.metres(0.5)).withLoss(new Duty(m3ph(50), Head.metres(2)));
        assertEquals(40 - 0.0025 * 1600 - 0.5 - 2 * 0.64, branch.headerMetres(40.0 / 3600), 1e-12);
        ParallelPoint point = meeting(LIFTING, branch, branch);
        double flow = Math.sqrt(29.5 / ((0.0025 + 0.0008) / 4 + 0.0015));
        assertEquals(flow, point.flow().toCubicMetresPerHour(), 1e-10 * flow);
    }

    /** The weak pump of 20 m at no flow cannot open against the 21.25 m that the strong one needs alone. */
    @Test
    void a_pump_too_weak_for_the_header_stands_behind_its_closed_valve_with_no_flow_at_all() {
        PumpCurve weak = Parabolas.curve("P-W", 60, 20, 0, -0.004);
        ParallelPoint point = meeting(LIFTING, branch(Parabolas.steep()), branch(weak));
        BranchFlow shut = point.branches().get(1);
        assertEquals(CheckValve.CLOSED, shut.valve());
        assertEquals(0.0, shut.flow().si());
        assertTrue(shut.deadHeaded() && shut.point().isEmpty());
        assertTrue(point.notes().has(PumpProblem.DEAD_HEADED_PUMP));
        assertEquals(Math.sqrt(7500), point.flow().toCubicMetresPerHour(), 1e-8);
        assertFalse(point.notes().has(PumpProblem.SEVERAL_SOLUTIONS));
    }

    @Test
    void a_stopped_pump_changes_nothing_and_is_not_dead_headed() {
        ParallelPoint alone = meeting(LIFTING, branch(Parabolas.steep()));
        ParallelPoint with = meeting(
                LIFTING, branch(Parabolas.steep()), branch(Parabolas.cubic()).stopped());
        assertEquals(alone.flow(), with.flow());
        assertEquals(alone.head(), with.head());
        assertEquals(alone.notes(), with.notes());
        assertFalse(with.branches().get(1).deadHeaded());
    }

    @Test
    void no_running_pump_gives_no_flow() {
        ParallelPoint point = meeting(LIFTING, branch(Parabolas.steep()).stopped());
        assertEquals(0.0, point.flow().si());
        assertEquals(10, point.head().metres(), 1e-12);
    }

    @Test
    void the_order_of_the_pumps_only_reorders_the_result() {
        List<PumpBranch> branches = new ArrayList<>(List.of(
                branch(Parabolas.steep().atSpeed(Ratio.of(0.93))),
                branch(Parabolas.cubic()).withCheckValve(Head.metres(0.4)),
                branch(Parabolas.curve("P-W", 90, 33, -0.02, -0.003))));
        ParallelPoint first = ParallelPumps.of(branches).meeting(LIFTING, "system");
        Collections.reverse(branches);
        ParallelPoint second = ParallelPumps.of(branches).meeting(LIFTING, "system");
        assertEquals(first.flow().si(), second.flow().si(), 1e-13);
        for (int i = 0; i < 3; i++) {
            assertEquals(
                    first.branches().get(i).flow().si(),
                    second.branches().get(2 - i).flow().si(),
                    1e-12);
        }
    }

    @Test
    void density_leaves_flows_and_heads_and_scales_the_power() {
        PumpCurve cold = Parabolas.steep();
        PumpCurve hot = cold.inLiquid(Liquid.water(Temperature.celsius(60)));
        ParallelPoint first = meeting(LIFTING, branch(cold), branch(cold));
        ParallelPoint second = meeting(LIFTING, branch(hot), branch(hot));
        assertEquals(first.flow().si(), second.flow().si(), 1e-13);
        assertEquals(first.head().si(), second.head().si(), 1e-10);
        double ratio = hot.liquid().density().over(cold.liquid().density()).value();
        assertEquals(first.shaftPower().si() * ratio, second.shaftPower().si(), 1e-6);
    }

    /** Twice the flow through a system of a quarter of the resistance takes the same head. */
    @Test
    void twice_the_pumps_on_a_quarter_of_the_resistance_give_twice_the_flow_at_the_same_head() {
        ParallelPoint one = meeting(system(5, 0.002), branch(Parabolas.cubic()));
        ParallelPoint two = meeting(system(5, 0.0005), branch(Parabolas.cubic()), branch(Parabolas.cubic()));
        assertEquals(one.head().si(), two.head().si(), 1e-10);
        assertEquals(2 * one.flow().si(), two.flow().si(), 1e-12);
    }

    /**
     * 20 + 0.1·Q − 0.002·Q² = 20.5: Q = 25 ± √(625 − 250) = 5.635 and 44.365; behind its valve, shut above 20 m, the
     * pump delivers nothing.
     */
    @Test
    void a_drooping_pump_on_a_flat_system_settles_on_its_falling_branch_and_lists_the_other_points() {
        ParallelPoint point = meeting(q -> 20.5, branch(Parabolas.drooping()));
        assertEquals(25 + Math.sqrt(375), point.flow().toCubicMetresPerHour(), 1e-8);
        assertTrue(point.notes().has(PumpProblem.SEVERAL_SOLUTIONS));
        assertEquals(2, point.others().size());
        assertEquals(25 - Math.sqrt(375), point.others().get(0).flow().toCubicMetresPerHour(), 1e-8);
        assertTrue(point.others().get(1).branches().get(0).deadHeaded());
        assertFalse(point.others().get(0).notes().has(PumpProblem.DEAD_HEADED_PUMP));
    }

    @Test
    void a_drooping_pump_on_a_steep_system_has_one_point_and_says_nothing_of_others() {
        ParallelPoint point = meeting(system(0, 0.01), branch(Parabolas.drooping()));
        assertTrue(point.others().isEmpty());
        assertFalse(point.notes().has(PumpProblem.SEVERAL_SOLUTIONS));
    }

    @Test
    void six_equal_drooping_pumps_are_solved_and_the_note_says_what_was_not_sought() {
        PumpBranch[] six = new PumpBranch[6];
        Arrays.fill(six, branch(Parabolas.drooping()));
        ParallelPoint point = meeting(system(19, 0.00002), six);
        assertEquals(point.flow().si() / 6, point.branches().get(0).flow().si(), 1e-12);
        assertTrue(point.notes().toString().contains("were not sought"));
    }

    @Test
    void a_system_that_takes_too_little_is_refused_and_not_followed_beyond_the_curve() {
        refused(PumpProblem.BEYOND_PUMP_CURVES, () -> meeting(system(0, 1e-5), branch(Parabolas.steep())));
        PumpBranch wider = branch(Parabolas.steep().extendedTo(m3ph(126.4)));
        ParallelPoint marked = meeting(system(0, 5e-6), wider);
        assertTrue(marked.notes().has(CurveProblem.EXTENDED_BEYOND_TEST));
    }

    @Test
    void a_system_that_asks_for_more_than_any_pump_gives_closes_all_valves() {
        ParallelPoint point = meeting(system(45, 0.001), branch(Parabolas.steep()), branch(Parabolas.cubic()));
        assertEquals(0.0, point.flow().si());
        assertEquals(45, point.head().metres(), 1e-12);
        assertTrue(point.branches().stream().allMatch(BranchFlow::deadHeaded));
    }

    @Test
    void what_cannot_be_known_or_built_is_refused() {
        refused(PumpProblem.SHUT_OFF_UNKNOWN, () -> pumps(branch(KnownPump.curve())));
        refused(PumpProblem.NO_PUMPS, ParallelPumpsTest::pumps);
        refused(PumpProblem.IMPOSSIBLE_BRANCH, () -> branch(Parabolas.steep()).withCheckValve(Head.metres(-1)));
        refused(
                PumpProblem.IMPOSSIBLE_BRANCH,
                () -> new PumpBranch("P-A", Parabolas.steep(), Head.ZERO, Double.NaN, true));
        refused(PumpProblem.IMPOSSIBLE_BRANCH, () -> branch(Parabolas.steep()).named(" "));
    }

    @Test
    void flows_add_and_heads_agree_for_any_pumps_and_systems() {
        Random random = new Random(20260117);
        for (int i = 0; i < 200; i++) {
            List<PumpBranch> branches = new ArrayList<>();
            for (int j = 0; j < 1 + random.nextInt(4); j++) {
                PumpCurve curve = random.nextBoolean() ? Parabolas.steep() : Parabolas.cubic();
                branches.add(branch(curve.atSpeed(Ratio.of(0.7 + 0.3 * random.nextDouble())))
                        .withCheckValve(Head.metres(random.nextDouble()))
                        .withLoss(new Duty(m3ph(60), Head.metres(3 * random.nextDouble()))));
            }
            DoubleUnaryOperator system = system(12 * random.nextDouble(), 0.002 + 0.01 * random.nextDouble());
            ParallelPoint point = ParallelPumps.of(branches).meeting(system, "system");
            double sum =
                    point.branches().stream().mapToDouble(b -> b.flow().si()).sum();
            assertEquals(sum, point.flow().si(), 1e-13);
            assertEquals(system.applyAsDouble(sum), point.head().metres(), 1e-9);
            for (BranchFlow each : point.branches()) {
                double gives = each.branch().headerMetres(each.flow().si());
                if (each.valve() == CheckValve.OPEN) {
                    assertEquals(gives, point.head().metres(), 1e-9);
                } else {
                    assertTrue(gives <= point.head().metres());
                }
            }
        }
    }

    /** Two pumps of 40 − 0.0025·Q² give √((40 − 20)/0.0025) each at 20 m, and nothing above 40 m. */
    @Test
    void the_flow_at_a_head_is_that_of_all_of_them_on_their_falling_stretches() {
        ParallelPumps two = pumps(branch(Parabolas.steep()), branch(Parabolas.steep()));
        assertEquals(2 * Math.sqrt(8000), two.totalFlowAt(20) * 3600, 1e-7);
        assertEquals(0, two.totalFlowAt(41), 0.0);
        assertEquals(2, two.branches().size());
        assertEquals(40, two.greatestHead().metres(), 1e-12);
        assertEquals(40 - 0.0025 * 125 * 125, two.leastHead().metres(), 1e-12);
        ParallelPumps drooping = pumps(branch(Parabolas.drooping()));
        assertEquals(25 + Math.sqrt(375), drooping.totalFlowAt(20.5) * 3600, 1e-7);
        assertEquals(100, drooping.totalFlowAt(10) * 3600, 1e-7);
        assertEquals(0, drooping.totalFlowAt(21.3), 0.0);
        assertEquals(21.25, drooping.greatestHead().metres(), 1e-9);
        assertEquals(
                0, pumps(branch(Parabolas.steep()).stopped()).greatestHead().metres(), 0.0);
        assertEquals(0, pumps(branch(Parabolas.steep()).stopped()).leastHead().metres(), 0.0);
    }

    /** Tested from 5 to 120 m³/h, extended to nothing: 40 m − 0.0025·Q² is 39.9775 m at 3 m³/h, 39.75 m at 10. */
    @Test
    void a_head_is_tested_where_each_pump_is_inside_its_test_or_behind_its_closed_valve() {
        ParallelPumps one = pumps(branch(KnownPump.curve().extendedTo(m3ph(0))));
        assertTrue(one.testedAt(39.75));
        assertFalse(one.testedAt(39.9775));
        assertTrue(one.testedAt(41));
        ParallelPumps both =
                pumps(branch(Parabolas.steep()), branch(KnownPump.curve().extendedTo(m3ph(0))));
        assertFalse(both.testedAt(39.9775));
        assertTrue(both.testedAt(20));
    }

    /**
     * Each of the two is on its falling branch at 44.365 m³/h, on its rising one at 5.635, or shut: 88.73, 50, 44.365,
     * 11.27, 5.635 and 0 m³/h are the sums.
     */
    @Test
    void two_drooping_pumps_on_a_flat_system_have_six_points_each_listed_once() {
        ParallelPoint point = meeting(q -> 20.5, branch(Parabolas.drooping()), branch(Parabolas.drooping()));
        double root = Math.sqrt(375);
        assertEquals(50 + 2 * root, point.flow().toCubicMetresPerHour(), 1e-7);
        assertEquals(5, point.others().size());
        double[] sums = point.others().stream()
                .mapToDouble(other -> other.flow().toCubicMetresPerHour())
                .sorted()
                .toArray();
        double[] expected = {0, 25 - root, 50 - 2 * root, 25 + root, 50};
        for (int i = 0; i < sums.length; i++) {
            assertEquals(expected[i], sums[i], 1e-7);
        }
        assertTrue(
                point.notes().toString().contains("can settle at 6 points"),
                point.notes().toString());
        assertFalse(point.notes().toString().contains("were not sought"));
    }

    /** As one of five may leave its falling branch: 5 falling, or 4 and one rising or shut. */
    @Test
    void five_drooping_pumps_are_tried_one_off_its_falling_branch_at_a_time() {
        PumpBranch[] five = new PumpBranch[5];
        Arrays.fill(five, branch(Parabolas.drooping()));
        ParallelPoint point = meeting(q -> 20.5, five);
        double root = Math.sqrt(375);
        assertEquals(5 * (25 + root), point.flow().toCubicMetresPerHour(), 1e-6);
        assertEquals(2, point.others().size());
        assertEquals(4 * (25 + root) + 25 - root, point.others().get(0).flow().toCubicMetresPerHour(), 1e-6);
        assertEquals(4 * (25 + root), point.others().get(1).flow().toCubicMetresPerHour(), 1e-6);
        assertTrue(point.notes().toString().contains("were not sought"));
        PumpBranch[] four = Arrays.copyOf(five, 4);
        ParallelPoint all = meeting(q -> 20.5, four);
        assertFalse(all.notes().toString().contains("were not sought"));
        assertTrue(all.others().stream().anyMatch(other -> other.flow().si() == 0));
    }

    /** A pump that never droops beside one that does: the former has one way to run only. */
    @Test
    void a_pump_that_falls_throughout_adds_no_points_of_its_own() {
        ParallelPoint point = meeting(q -> 20.5, branch(Parabolas.steep()), branch(Parabolas.drooping()));
        double steep = Math.sqrt(19.5 / 0.0025);
        assertEquals(steep + 25 + Math.sqrt(375), point.flow().toCubicMetresPerHour(), 1e-7);
        assertEquals(2, point.others().size());
        assertEquals(
                List.of(CheckValve.OPEN, CheckValve.CLOSED),
                point.others().get(1).branches().stream().map(BranchFlow::valve).toList());
    }

    @Test
    void a_point_says_which_pump_gives_what_and_which_does_not() {
        PumpCurve weak = Parabolas.curve("P-W", 60, 20, 0, -0.004);
        ParallelPoint point = meeting(
                LIFTING,
                branch(Parabolas.steep()),
                branch(weak),
                branch(Parabolas.cubic()).named("standby").stopped());
        assertEquals(
                "86.6 m³/h at 21.25 m: P-A 86.6 m³/h, P-W against its closed check valve, standby standing still",
                point.toString());
        assertEquals(20_000 + 100 * Math.sqrt(7500), point.shaftPower().watts(), 1e-6);
        assertEquals("P-A at 1450 rpm", branch(Parabolas.steep()).toString());
        assertEquals("P-A, standing still", branch(Parabolas.steep()).stopped().toString());
    }

    @Test
    void a_refusal_names_the_pumps_and_where_their_curves_end() {
        String said = assertThrows(
                        Refusal.class,
                        () -> meeting(
                                system(0, 1e-5),
                                branch(Parabolas.steep()),
                                branch(Parabolas.steep()).named("P-2")))
                .getMessage();
        assertTrue(said.startsWith("Asked where P-A, P-2 meet the system."), said);
        assertTrue(said.contains("At 250 m³/h,") && said.contains("they give 0.9375 m"), said);
    }

    @Test
    void a_branch_keeps_what_it_is_when_its_pump_changes_speed() {
        PumpBranch slow = branch(Parabolas.steep())
                .named("P-7")
                .withCheckValve(Head.metres(0.5))
                .withLoss(new Duty(m3ph(50), Head.metres(2)))
                .with(Parabolas.steep().atSpeed(Ratio.of(0.5)));
        assertEquals("P-7", slow.name());
        assertEquals(10 - 0.0025 * 400 - 0.5 - 2 * 0.16, slow.headerMetres(20.0 / 3600), 1e-12);
        assertTrue(slow.running());
        assertEquals(
                0.0,
                branch(Parabolas.steep())
                        .withCheckValve(Head.ZERO)
                        .crackingHead()
                        .si());
    }
}
