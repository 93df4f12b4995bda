package headrace.circuit.solve;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.circuit.part.SquareLaw;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

/** All expected numbers are hand calculations. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class CrossingsTest {
    /** 10 m at no flow, 11 m at a flow of 1, 10 again at 2, 0 at 1 + √11. */
    private static final HeaderPump DROOPING = new HeaderPump(q -> 11 - (q - 1) * (q - 1), 1 + Math.sqrt(11));

    /** The flow of a circuit that takes a static head and {@code k·Q²}. */
    private static DoubleUnaryOperator circuit(double metres, double k) {
        return h -> Math.sqrt(Math.max(0, h - metres) / k);
    }

    private static List<Crossings.Point> points(DoubleUnaryOperator circuit, HeaderPump... pumps) {
        Crossings found = Crossings.of(circuit, List.of(pumps));
        assertEquals(0, found.unclear());
        return found.points();
    }

    @Test
    void a_falling_curve_meets_a_circuit_once() {
        // 20 − Q² = 4·Q²
        List<Crossings.Point> points = points(circuit(0, 4), new HeaderPump(q -> 20 - q * q, 4));
        assertEquals(1, points.size());
        assertEquals(2, points.get(0).cubicMetresPerSecond(), 1e-9);
        assertTrue(points.get(0).settled());
    }

    @Test
    void a_drooping_curve_against_a_static_head_above_its_shut_off_has_two_solutions() {
        // 11 − (q−1)² = 10.5 + 0.25·q²: 1.25·q² − 2·q + 0.5 = 0 → q = (2 ± √1.5)/2.5
        List<Crossings.Point> points = points(circuit(10.5, 0.25), DROOPING);
        assertEquals(2, points.size());
        assertEquals((2 - Math.sqrt(1.5)) / 2.5, points.get(0).cubicMetresPerSecond(), 1e-8);
        assertEquals((2 + Math.sqrt(1.5)) / 2.5, points.get(1).cubicMetresPerSecond(), 1e-8);
        assertFalse(points.get(0).settled());
        assertTrue(points.get(1).settled());
    }

    @Test
    void a_static_head_above_the_whole_curve_leaves_none() {
        assertEquals(List.of(), points(circuit(11.5, 0.25), DROOPING));
    }

    @Test
    void of_two_drooping_pumps_one_may_be_held_shut_by_the_other() {
        // header at 10.75: both falling pieces give 1.5, rising ones 0.5; one shut leaves the other alone
        // circuit 10.5 + k·Q² with k so that 1.5 alone meets 10.75: k = 0.25/2.25
        List<Crossings.Point> points = points(circuit(10.5, 0.25 / 2.25), DROOPING, DROOPING);
        assertTrue(points.stream().anyMatch(p -> p.pumpFlows()[0] == 0 && Math.abs(p.pumpFlows()[1] - 1.5) < 1e-8));
        assertTrue(points.stream().anyMatch(p -> p.pumpFlows()[1] == 0 && Math.abs(p.pumpFlows()[0] - 1.5) < 1e-8));
        // both on the falling piece: h = 11 − (q−1)² and h = 10.5 + k·4·q²
        double k = 4 * 0.25 / 2.25;
        double both = (2 + Math.sqrt(4 - 4 * (1 + k) * 0.5)) / (2 * (1 + k));
        assertTrue(points.stream()
                .anyMatch(p -> Math.abs(p.pumpFlows()[0] - both) < 1e-8 && Math.abs(p.pumpFlows()[1] - both) < 1e-8));
        for (Crossings.Point point : points) {
            double sum = point.pumpFlows()[0] + point.pumpFlows()[1];
            assertEquals(point.cubicMetresPerSecond(), sum, 1e-8);
        }
    }

    @Test
    void every_solution_that_a_fine_scan_sees_is_found() {
        Random random = new Random(7);
        for (int trial = 0; trial < 200; trial++) {
            double top = 0.2 + random.nextDouble();
            double bend = 0.5 + random.nextDouble();
            double fall = 12;
            HeaderPump pump = new HeaderPump(q -> fall - bend * (q - top) * (q - top), top + Math.sqrt(fall / bend));
            double still = 12 * random.nextDouble();
            double k = 0.05 + random.nextDouble();
            int scanned = 0;
            int steps = 200_000;
            double before = Double.NaN;
            for (int i = 1; i <= steps; i++) {
                double q = pump.most() * i / steps;
                double off = pump.head().metresAt(q) - still - k * q * q;
                scanned += before * off < 0 ? 1 : 0;
                before = off;
            }
            assertEquals(
                    scanned,
                    Crossings.of(circuit(still, k), List.of(pump)).points().size(),
                    "trial " + trial);
        }
    }

    @Test
    void a_circuit_that_saturates_meets_the_pump_at_the_sum_of_its_demands() {
        Network network = Network.closed(
                3,
                1,
                List.of(
                        Link.plain(1, 2, new SquareLaw(0.2)),
                        Link.terminal(2, 0, new SquareLaw(1), 1),
                        Link.terminal(2, 0, new SquareLaw(1), 0.5)),
                new Network.Scale(1.5, 10));
        NetworkSolver solver = NetworkSolver.of(network);
        List<Crossings.Point> points = points(solver::flowAt, DROOPING);
        assertEquals(1, points.size());
        assertEquals(1.5, points.get(0).cubicMetresPerSecond(), 1e-9);
        assertEquals(10.75, points.get(0).metres(), 1e-8);
    }

    @Test
    void too_many_choices_are_refused() {
        assertThrows(
                IllegalArgumentException.class, () -> Crossings.of(circuit(0, 1), Collections.nCopies(8, DROOPING)));
    }
}
