package headrace.circuit.solve;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.circuit.part.LinkLaw;
import headrace.circuit.part.SquareLaw;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The quick way through a direct-return circuit, against the general one. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class LadderTest {
    private static final double DESIGN = 10;

    /** Two mains of pipes in rows, some links turned round, several branches at some places. */
    private static Network ladder(long seed, int branches) {
        Random random = new Random(seed);
        List<Link> links = new ArrayList<>();
        int supply = 1;
        int back = 0;
        int nodes = 2;
        for (int j = 0; j < branches; j++) {
            double through = branches - j;
            double k = 3.0 / branches / (through * through);
            int steps = random.nextInt(3);
            for (int s = 0; s < steps; s++) {
                links.add(main(supply, nodes, k * random.nextDouble(), random));
                supply = nodes++;
            }
            if (random.nextBoolean()) {
                links.add(main(nodes, back, k, random));
                back = nodes++;
            }
            double demand = random.nextInt(6) == 0 ? 0 : 0.2 + random.nextDouble();
            links.add(Link.terminal(supply, back, new SquareLaw(2 + 4 * random.nextDouble()), demand));
        }
        Collections.shuffle(links, random);
        return Network.closed(nodes, 1, links, new Network.Scale(branches * 0.7, DESIGN));
    }

    private static Link main(int from, int to, double k, Random random) {
        return random.nextBoolean() ? Link.plain(from, to, new SquareLaw(k)) : Link.plain(to, from, new SquareLaw(k));
    }

    /** The same network with laws that only the general way takes. */
    private static Network disguised(Network network) {
        List<Link> links = new ArrayList<>();
        for (Link link : network.links()) {
            LinkLaw law = new SeededNetworks.MixedLaw(0, ((SquareLaw) link.law()).metresPerSquaredFlow());
            links.add(new Link(link.from(), link.to(), law, link.least(), link.most()));
        }
        return Network.closed(network.nodes(), 1, links, network.scale());
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 5, 40, 300})
    void agrees_with_the_general_way_in_every_flow_head_and_state(int branches) {
        for (int seed = 0; seed < 60; seed++) {
            Network network = ladder(seed, branches);
            double rise = 3 / Math.pow(network.scale().cubicMetresPerSecond(), 2);
            ClosingLaw law =
                    seed % 2 == 0 ? ClosingLaw.constant(3 + seed % 9) : ClosingLaw.ofFlow(q -> 4 + rise * q * q);
            assertNotNull(Ladder.of(network), "seed " + seed);
            NetworkSolution quick = NetworkSolver.of(network).solve(law);
            NetworkSolution general = NetworkSolver.of(disguised(network)).solve(law);
            assertTrue(quick.converged() && general.converged(), "seed " + seed);
            for (int l = 0; l < network.links().size(); l++) {
                assertEquals(general.flow(l), quick.flow(l), 1e-8, "flow " + l + " of seed " + seed);
                assertEquals(
                        general.state(l) == LinkState.REMOVED,
                        quick.state(l) == LinkState.REMOVED,
                        "state " + l + " of seed " + seed);
            }
            for (int i = 0; i < network.nodes(); i++) {
                assertEquals(general.headAt(i), quick.headAt(i), 1e-8, "head " + i + " of seed " + seed);
            }
            assertTrue(quick.residuals().massCubicMetresPerSecond() < 1e-12 * branches, "seed " + seed);
        }
    }

    @Test
    void many_rows_at_once_are_what_each_is_alone() {
        int rows = 1300;
        Network network = ladder(11, 7);
        ManyLoads many = ManyLoads.of(network).orElseThrow();
        int[] links = many.links();
        Random random = new Random(3);
        double[][] demands = new double[links.length][rows];
        for (double[] row : demands) {
            for (int i = 0; i < rows; i++) {
                row[i] = random.nextInt(5) == 0 ? 0 : 1.2 * random.nextDouble();
            }
        }
        RowLaw law = new RowLaw() {
            @Override
            public double metresAt(int row, double q) {
                return 2 + row % 7 + 0.05 * q * q;
            }

            @Override
            public double slopeAt(int row, double q) {
                return 0.1 * q;
            }
        };
        double[][] flows = new double[links.length][rows];
        double[] totals = new double[rows];
        double[] heads = new double[rows];
        double[] neediest = new double[rows];
        assertTrue(many.solve(law, demands, flows, totals, heads));
        many.fillNeediest(demands, 0.9, neediest);
        NetworkSolver solver = NetworkSolver.of(disguised(network));
        int starved = 0;
        for (int i = 0; i < rows; i++) {
            int row = i;
            double[] wanted = new double[links.length];
            for (int j = 0; j < links.length; j++) {
                solver.ask(links[j], demands[j][i]);
                double open = network.links().get(links[j]).law().headMetres(demands[j][i]);
                wanted[j] = demands[j][i] > 0 ? open / 0.81 : Double.NEGATIVE_INFINITY;
            }
            NetworkSolution alone = solver.solve(ClosingLaw.ofFlow(q -> law.metresAt(row, q)));
            assertTrue(alone.converged());
            assertEquals(alone.pump().metres(), heads[i], 1e-8);
            for (int j = 0; j < links.length; j++) {
                assertEquals(alone.flow(links[j]), flows[j][i], 1e-8, "row " + i);
                starved += flows[j][i] < demands[j][i] ? 1 : 0;
            }
            double least =
                    solver.solve(ClosingLaw.neediest(links, wanted)).pump().metres();
            assertEquals(totals[i] > 0 ? least : 0, neediest[i], 1e-7, "row " + i);
        }
        assertTrue(starved > 100 && starved < rows * links.length / 2, starved + " starved");
    }

    @Test
    void a_circuit_in_which_branches_cross_is_left_to_the_general_way() {
        // a reverse return: the first branch from the pump is the last to come back
        Network reverse = Network.closed(
                4,
                1,
                List.of(
                        Link.plain(1, 2, new SquareLaw(1)),
                        Link.plain(3, 0, new SquareLaw(1)),
                        Link.terminal(1, 3, new SquareLaw(1), 1),
                        Link.terminal(2, 0, new SquareLaw(1), 1)),
                new Network.Scale(2, DESIGN));
        assertNull(Ladder.of(reverse));
    }

    @Test
    void a_reverse_return_of_equal_branches_gives_each_the_same() {
        // 1 m³/s each, main 1·1² on either way, branch 3·1²: 4 m for both
        Network reverse = Network.closed(
                4,
                1,
                List.of(
                        Link.plain(1, 2, new SquareLaw(1)),
                        Link.plain(3, 0, new SquareLaw(1)),
                        Link.terminal(1, 3, new SquareLaw(3), 2),
                        Link.terminal(2, 0, new SquareLaw(3), 2)),
                new Network.Scale(2, DESIGN));
        NetworkSolution solution = NetworkSolver.of(reverse).solve(ClosingLaw.constant(4));
        assertEquals(1, solution.flow(2), 1e-10);
        assertEquals(1, solution.flow(3), 1e-10);
    }

    @Test
    void mains_so_narrow_that_the_far_end_gets_almost_nothing_are_still_solved() {
        List<Link> links = new ArrayList<>();
        for (int j = 0; j < 60; j++) {
            links.add(Link.plain(j == 0 ? 1 : j + 1, j + 2, new SquareLaw(5)));
            links.add(Link.terminal(j + 2, 0, new SquareLaw(1), 1));
        }
        Network network = Network.closed(62, 1, links, new Network.Scale(60, DESIGN));
        NetworkSolution solution = NetworkSolver.of(network).solve(ClosingLaw.constant(10));
        assertTrue(solution.converged());
        for (int j = 1; j < 60; j++) {
            assertTrue(solution.headAt(j + 2) <= solution.headAt(j + 1) + 1e-8);
        }
    }
}
