package headrace.circuit.band;

import static headrace.circuit.LitreLoop.litres;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.circuit.Branch;
import headrace.circuit.Circuit;
import headrace.circuit.CircuitProblem;
import headrace.circuit.CircuitSolution;
import headrace.circuit.CircuitSolver;
import headrace.circuit.Closing;
import headrace.circuit.Demands;
import headrace.circuit.LitreLoop.Loss;
import headrace.liquid.Liquid;
import headrace.problem.Refusal;
import headrace.units.Flow;
import headrace.units.Ratio;
import headrace.units.Temperature;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class HeadBandTest {
    private static final Liquid WATER = Liquid.water(Temperature.celsius(12));

    /** Direct return with side mains: each tap hangs on one of the last few before it. */
    private static Circuit tree(long seed, int terminals) {
        Random random = new Random(seed);
        List<Branch> all = new ArrayList<>();
        for (int j = 0; j < terminals; j++) {
            String before = j == 0 ? null : "" + Math.max(0, j - 1 - random.nextInt(3));
            double k = 4.0 * random.nextDouble() / terminals / Math.pow(terminals - j, 2);
            String supply = before == null ? "out" : "s" + before;
            String back = before == null ? "in" : "r" + before;
            all.add(Branch.of("supply " + j, supply, "s" + j, new Loss("pipe", k)));
            all.add(Branch.of("return " + j, "r" + j, back, new Loss("pipe", k)));
            double design = 0.3 + random.nextDouble();
            double open = (2 + 3 * random.nextDouble()) / (design * design);
            all.add(Branch.terminal("load " + j, "s" + j, "r" + j, litres(design), new Loss("coil", open)));
        }
        return new Circuit(WATER, "out", "in", all);
    }

    private static Circuit reverseReturn() {
        List<Branch> all = new ArrayList<>();
        for (int j = 0; j < 4; j++) {
            all.add(Branch.of("supply " + j, j == 0 ? "out" : "s" + (j - 1), "s" + j, new Loss("pipe", 0.1)));
            all.add(Branch.of("return " + j, "r" + j, j == 3 ? "in" : "r" + (j + 1), new Loss("pipe", 0.1)));
            all.add(Branch.terminal("load " + j, "s" + j, "r" + j, litres(1), new Loss("coil", 2 + j % 2)));
        }
        return new Circuit(WATER, "out", "in", all);
    }

    private static Circuit ring() {
        List<Branch> all = new ArrayList<>(tree(4, 5).branches());
        all.add(Branch.of("ring", "s0", "s4", new Loss("pipe", 0.5)));
        return new Circuit(WATER, "out", "in", all);
    }

    private static double headOf(CircuitSolver solver, Demands pattern) {
        CircuitSolution solution = solver.solve(pattern, Closing.neediestValve(Ratio.of(1)));
        return solution.head().metres();
    }

    /** A random way to share a flow: random order, random shares, the rest where there is room. */
    private static Demands shared(Demands most, double flow, Random random) {
        List<String> names = new ArrayList<>(most.flows().keySet());
        Collections.shuffle(names, random);
        Map<String, Flow> flows = new LinkedHashMap<>();
        double left = flow;
        double room = most.total().si();
        boolean corner = random.nextInt(3) == 0;
        for (String name : names) {
            double top = most.flows().get(name).si();
            room -= top;
            double least = Math.max(0, left - room);
            double greatest = Math.min(top, left);
            double own = corner ? greatest : least + (greatest - least) * random.nextDouble();
            flows.put(name, Flow.cubicMetresPerSecond(own));
            left -= own;
        }
        return new Demands(flows);
    }

    @ParameterizedTest
    @ValueSource(ints = {2, 3, 5, 12, 40})
    void each_edge_is_the_head_that_its_own_pattern_needs(int terminals) {
        Circuit circuit = tree(terminals, terminals);
        CircuitSolver solver = CircuitSolver.of(circuit);
        HeadBand band = HeadBand.of(circuit, circuit.designDemands(), 8);
        assertFalse(band.searched());
        for (BandPoint point : band.points()) {
            for (BandEdge edge : List.of(point.least(), point.greatest())) {
                assertEquals(headOf(solver, edge.pattern()), edge.head().metres(), 1e-6);
                assertEquals(point.flow().si(), edge.pattern().total().si(), 1e-12);
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"3, 4000", "8, 4000", "25, 4000"})
    void random_ways_to_share_a_flow_never_cross_the_band(int terminals, int patterns) {
        Circuit circuit = tree(100 + terminals, terminals);
        CircuitSolver solver = CircuitSolver.of(circuit);
        Demands most = circuit.designDemands();
        HeadBand band = HeadBand.of(circuit, most, 10);
        Random random = new Random(5);
        for (int i = 0; i < patterns; i++) {
            BandPoint point = band.points().get(random.nextInt(10));
            double head = headOf(solver, shared(most, point.flow().si(), random));
            assertTrue(head >= point.least().head().metres() - 1e-6, "below at " + point.flow());
            assertTrue(head <= point.greatest().head().metres() + 1e-6, "above at " + point.flow());
        }
    }

    @Test
    void with_five_branches_or_fewer_the_upper_edge_is_the_greatest_of_all_corners() {
        for (int seed = 0; seed < 40; seed++) {
            int terminals = 2 + seed % 4;
            Circuit circuit = tree(seed, terminals);
            CircuitSolver solver = CircuitSolver.of(circuit);
            Demands most = circuit.designDemands();
            double flow = most.total().si() * (0.1 + 0.8 * new Random(seed).nextDouble());
            double greatest = 0;
            for (int full = 0; full < 1 << terminals; full++) {
                for (int part = 0; part < terminals; part++) {
                    Map<String, Flow> flows = new LinkedHashMap<>();
                    double left = flow;
                    for (int j = 0; j < terminals; j++) {
                        double own = j != part && (full >> j & 1) == 1
                                ? most.flows().get("load " + j).si()
                                : 0;
                        flows.put("load " + j, Flow.cubicMetresPerSecond(own));
                        left -= own;
                    }
                    if (left >= 0 && left <= most.flows().get("load " + part).si()) {
                        flows.put("load " + part, Flow.cubicMetresPerSecond(left));
                        greatest = Math.max(greatest, headOf(solver, new Demands(flows)));
                    }
                }
            }
            HeadBand band = HeadBand.at(circuit, most, Flow.cubicMetresPerSecond(flow));
            assertEquals(greatest, band.points().get(0).greatest().head().metres(), 1e-6, "seed " + seed);
        }
    }

    @Test
    void two_loads_at_one_tap_have_the_band_of_a_hand_calculation() {
        // main 1·Q², loads 4·q² and 1·q², each up to 2 L/s, at 2 L/s in all: least shared 1:2, q = 2/3 and 4/3:
        // 4 + 16/9; greatest all in the first: 4 + 16
        Circuit circuit = Circuit.of(
                WATER,
                "out",
                "in",
                Branch.of("main", "out", "tap", new Loss("pipe", 1)),
                Branch.terminal("a", "tap", "in", litres(2), new Loss("coil", 4)),
                Branch.terminal("b", "tap", "in", litres(2), new Loss("coil", 1)));
        BandPoint point = HeadBand.at(circuit, circuit.designDemands(), litres(2))
                .points()
                .get(0);
        assertEquals(4 + 16.0 / 9, point.least().head().metres(), 1e-8);
        assertEquals(20, point.greatest().head().metres(), 1e-8);
        assertEquals("a", point.greatest().decides());
        assertEquals(2, point.greatest().pattern().flows().get("a").toLitresPerSecond(), 1e-9);
    }

    @Test
    void at_the_sum_of_the_demands_both_edges_are_one() {
        Circuit circuit = tree(3, 6);
        HeadBand band = HeadBand.of(circuit, circuit.designDemands(), 5);
        BandPoint last = band.points().get(4);
        assertEquals(last.least().head().metres(), last.greatest().head().metres(), 1e-6);
    }

    @Test
    void with_reverse_return_or_a_ring_the_upper_edge_is_searched_and_says_so() {
        for (Circuit circuit : List.of(reverseReturn(), ring())) {
            CircuitSolver solver = CircuitSolver.of(circuit);
            Demands most = circuit.designDemands();
            HeadBand band = HeadBand.of(circuit, most, 4);
            assertTrue(band.searched());
            assertTrue(band.notes().has(CircuitProblem.BAND_SEARCHED));
            Random random = new Random(9);
            for (int i = 0; i < 400; i++) {
                BandPoint point = band.points().get(random.nextInt(4));
                double head = headOf(solver, shared(most, point.flow().si(), random));
                assertTrue(head >= point.least().head().metres() - 1e-6);
                assertTrue(head <= point.greatest().head().metres() + 1e-6);
                assertEquals(
                        headOf(solver, point.greatest().pattern()),
                        point.greatest().head().metres(),
                        1e-6);
            }
        }
    }

    @Test
    void a_flow_beyond_the_demands_is_refused() {
        Circuit circuit = tree(3, 3);
        Refusal refusal = assertThrows(Refusal.class, () -> HeadBand.at(circuit, circuit.designDemands(), litres(50)));
        assertEquals(CircuitProblem.FLOW_OUTSIDE_DEMANDS, refusal.problem());
    }
}
