package headrace.circuit.solve;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.circuit.part.LinkLaw;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

/** All expected numbers are hand calculations. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class NetworkSolverTest {
    private static final double EXACT = 1e-10;
    private static final Network.Scale SCALE = new Network.Scale(1, 10);

    static LinkLaw square(double k) {
        return new LinkLaw() {
            @Override
            public double headMetres(double q) {
                return k * q * Math.abs(q);
            }

            @Override
            public double slope(double q) {
                return 2 * k * Math.abs(q);
            }
        };
    }

    static NetworkSolution solved(Network network, ClosingLaw law) {
        NetworkSolution solution = NetworkSolver.of(network).solve(law);
        assertTrue(solution.converged(), solution.residuals().toString());
        return solution;
    }

    private static Network closed(int nodes, Link... links) {
        return Network.closed(nodes, 1, List.of(links), SCALE);
    }

    @Test
    void one_link_takes_the_root_of_head_over_resistance() {
        Network network = closed(2, Link.plain(1, 0, square(2.5)));
        NetworkSolution solution = solved(network, ClosingLaw.constant(10));
        assertEquals(2, solution.flow(0), EXACT);
        assertEquals(2, solution.pump().cubicMetresPerSecond(), EXACT);
    }

    @Test
    void two_branches_share_a_head_as_the_roots_of_their_resistances() {
        // main 1·Q², branches 8·q² and 2·q²: q1:q2 = 1:2, q1 = 1 gives Q = 3, branch 8 m, main 9 m
        Network network =
                closed(3, Link.plain(1, 2, square(1)), Link.plain(2, 0, square(8)), Link.plain(2, 0, square(2)));
        NetworkSolution solution = solved(network, ClosingLaw.constant(17));
        assertEquals(3, solution.flow(0), EXACT);
        assertEquals(1, solution.flow(1), EXACT);
        assertEquals(2, solution.flow(2), EXACT);
        assertEquals(8, solution.headAt(2), EXACT);
    }

    @Test
    void three_branches_on_a_tree_are_those_of_a_hand_calculation() {
        // last branch 4·1² = 4 m; main to it 1·1² → tap 2 at 5 m, branch 5·1²; main 0.5·2² = 2 → tap 1 at 7 m,
        // branch 7/9·3² ; main 0.2·5² = 5 → pump 12 m
        Network network = closed(
                5,
                Link.plain(1, 2, square(0.2)),
                Link.plain(2, 3, square(0.5)),
                Link.plain(3, 4, square(1)),
                Link.plain(2, 0, square(7.0 / 9)),
                Link.plain(3, 0, square(5)),
                Link.plain(4, 0, square(4)));
        NetworkSolution solution = solved(network, ClosingLaw.constant(12));
        assertEquals(5, solution.flow(0), EXACT);
        assertEquals(3, solution.flow(3), EXACT);
        assertEquals(1, solution.flow(4), EXACT);
        assertEquals(1, solution.flow(5), EXACT);
    }

    @Test
    void a_terminal_delivers_what_is_asked_while_there_is_head_and_stands_open_when_there_is_not() {
        // 10 m at the pump; near branch asked 1 with 2·q² open; far branch asked 3 with 1·q² open, main 1·Q²
        // far open: 10 = (1 + q)² + q² → 2q² + 2q − 9 = 0 → q = (−1 + √19)/2
        Network network = closed(
                3, Link.plain(1, 2, square(1)), Link.terminal(2, 0, square(2), 1), Link.terminal(2, 0, square(1), 3));
        NetworkSolution solution = solved(network, ClosingLaw.constant(10));
        double far = (Math.sqrt(19) - 1) / 2;
        assertEquals(1, solution.flow(1), 0);
        assertEquals(LinkState.DELIVERING, solution.state(1));
        assertEquals(far, solution.flow(2), EXACT);
        assertEquals(LinkState.OPEN, solution.state(2));
        assertEquals(far * far, solution.headAt(2), EXACT);
    }

    @Test
    void a_shut_check_valve_lets_exactly_nothing_through() {
        // a bridge of two legs; the check valve in its middle would have to flow from low to high
        Network network = closed(
                4,
                Link.plain(1, 2, square(4)),
                Link.plain(2, 0, square(1)),
                Link.plain(1, 3, square(1)),
                Link.plain(3, 0, square(4)),
                Link.check(2, 3, square(0.1)));
        NetworkSolution solution = solved(network, ClosingLaw.constant(5));
        assertEquals(0, solution.flow(4), 0);
        assertEquals(LinkState.SHUT, solution.state(4));
        assertEquals(1, solution.flow(0), EXACT);
        assertEquals(1, solution.headAt(2), EXACT);
        assertEquals(4, solution.headAt(3), EXACT);
    }

    @Test
    void the_same_check_valve_turned_round_opens() {
        Network network = closed(
                4,
                Link.plain(1, 2, square(4)),
                Link.plain(2, 0, square(1)),
                Link.plain(1, 3, square(1)),
                Link.plain(3, 0, square(4)),
                Link.check(3, 2, square(0.1)));
        NetworkSolution solution = solved(network, ClosingLaw.constant(5));
        assertTrue(solution.flow(4) > 0.1);
        assertEquals(0.1 * Math.pow(solution.flow(4), 2), solution.headAt(3) - solution.headAt(2), EXACT);
    }

    @Test
    void a_balanced_bridge_carries_nothing_though_its_law_is_flat_there() {
        Network network = closed(
                4,
                Link.plain(1, 2, square(1)),
                Link.plain(2, 0, square(1)),
                Link.plain(1, 3, square(1)),
                Link.plain(3, 0, square(1)),
                Link.plain(2, 3, square(1)));
        NetworkSolution solution = solved(network, ClosingLaw.constant(2));
        assertEquals(1, solution.flow(0), 1e-6);
        assertEquals(0, solution.flow(4), 1e-5);
    }

    @Test
    void without_a_head_nothing_flows() {
        Network network = closed(3, Link.plain(1, 2, square(1)), Link.terminal(2, 0, square(2), 1));
        NetworkSolution solution = solved(network, ClosingLaw.constant(0));
        assertEquals(0, solution.flow(0), 1e-5);
    }

    @Test
    void branches_of_which_nothing_is_asked_are_out_of_the_network_with_all_that_leads_to_them() {
        Network network = closed(
                5,
                Link.plain(1, 2, square(1)),
                Link.terminal(2, 0, square(1), 2),
                Link.plain(2, 3, square(1)),
                Link.plain(3, 4, square(1)),
                Link.terminal(4, 0, square(1), 0));
        NetworkSolution solution = solved(network, ClosingLaw.constant(2));
        assertEquals(1, solution.flow(1), EXACT);
        assertEquals(LinkState.REMOVED, solution.state(2));
        assertEquals(LinkState.REMOVED, solution.state(4));
        assertEquals(0, solution.flow(3), 0);
        assertEquals(1, solution.headAt(4), EXACT);
    }

    @Test
    void a_limiter_holds_between_floor_and_ceiling_and_gives_way_above() {
        // holds 1 from 4 m (4·q²) to 9 m; above, 9·q²: at 16 m it carries 4/3
        LinkLaw beyond = new LinkLaw() {
            @Override
            public double headMetres(double q) {
                return 9 * (1 + q) * Math.abs(1 + q);
            }

            @Override
            public double slope(double q) {
                return 18 * Math.abs(1 + q);
            }
        };
        Network network = closed(2, Link.terminal(1, 0, square(4), 1), Link.check(1, 0, beyond));
        for (double[] row : new double[][] {{1, 0.5}, {4, 1}, {6, 1}, {9, 1}, {16, 4.0 / 3}}) {
            NetworkSolution solution = solved(network, ClosingLaw.constant(row[0]));
            assertEquals(row[1], solution.pump().cubicMetresPerSecond(), 1e-9, "at " + row[0] + " m");
        }
    }

    @Test
    void a_falling_pump_curve_meets_the_circuit_where_both_heads_are_equal() {
        // 20 − Q² meets 4·Q² at Q = 2
        Network network = closed(2, Link.plain(1, 0, square(4)));
        NetworkSolution solution = solved(network, ClosingLaw.ofFlow(q -> 20 - q * q));
        assertEquals(2, solution.pump().cubicMetresPerSecond(), EXACT);
        assertEquals(16, solution.pump().metres(), EXACT);
    }

    @Test
    void a_law_of_flow_meets_a_frozen_circuit_where_theory_says() {
        // H = 6 + 2·Q² against 3.5·Q²: Q² = 6/1.5
        Network network = closed(2, Link.plain(1, 0, square(3.5)));
        NetworkSolution solution = solved(network, ClosingLaw.ofFlow(q -> 6 + 2 * q * q));
        assertEquals(2, solution.pump().cubicMetresPerSecond(), EXACT);
    }

    @Test
    void a_law_steeper_than_the_circuit_has_no_solution_and_says_so() {
        Network network = closed(2, Link.plain(1, 0, square(3.5)));
        NetworkSolution solution = NetworkSolver.of(network).solve(ClosingLaw.ofFlow(q -> 6 + 4 * q * q));
        assertFalse(solution.converged());
    }

    @Test
    void a_sensor_at_the_far_branch_sees_what_it_wants() {
        // far branch wants 4 m: it carries 2 (1·q²), near carries 2 as well at 4 m + 1·2² = 8 m (2·q²); main 0.5·4²
        Network network = closed(
                4,
                Link.plain(1, 2, square(0.5)),
                Link.plain(2, 3, square(1)),
                Link.plain(2, 0, square(2)),
                Link.plain(3, 0, square(1)));
        NetworkSolution solution =
                solved(network, ClosingLaw.neediest(new int[] {2, 3}, new double[] {Double.NEGATIVE_INFINITY, 4}));
        assertEquals(16, solution.pump().metres(), 1e-9);
        assertEquals(2, solution.flow(3), EXACT);
    }

    @Test
    void of_several_sensors_the_neediest_decides() {
        Network network = closed(
                4,
                Link.plain(1, 2, square(0.5)),
                Link.plain(2, 3, square(1)),
                Link.terminal(2, 0, square(2), 2),
                Link.terminal(3, 0, square(1), 1));
        // both delivered: main 0.5·3² = 4.5, far main 1·1² = 1; near wants 8 → 12.5, far wants 3 → 8.5
        NetworkSolution solution = solved(network, ClosingLaw.neediest(new int[] {2, 3}, new double[] {8, 3}));
        assertEquals(12.5, solution.pump().metres(), 1e-9);
        assertEquals(1, solution.flow(3), 0);
    }

    @Test
    void a_pump_in_a_branch_adds_its_head() {
        // header 5 m, booster gives 4 m at no flow and falls by 1·q²: 5 + 4 − q² = 8·q²
        LinkLaw booster = new LinkLaw() {
            @Override
            public double headMetres(double q) {
                return -(4 - q * q);
            }

            @Override
            public double slope(double q) {
                return 2 * q;
            }
        };
        Network network = closed(3, Link.check(1, 2, booster), Link.plain(2, 0, square(8)));
        assertEquals(1, solved(network, ClosingLaw.constant(5)).flow(1), EXACT);
    }

    @Test
    void two_terminals_in_a_row_deliver_the_smaller_demand() {
        Network network = closed(3, Link.terminal(1, 2, square(1), 2), Link.terminal(2, 0, square(1), 1));
        NetworkSolution solution = solved(network, ClosingLaw.constant(10));
        assertEquals(1, solution.flow(0), EXACT);
        assertEquals(1, solution.flow(1), EXACT);
    }
}
