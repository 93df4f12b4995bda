package headrace.circuit.solve;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.circuit.part.LinkLaw;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What every solution must fulfil, tested on the equations themselves, written here a second time. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class SeededNetworksTest {
    private static final double TOLERANCE = 1e-9;

    @ParameterizedTest
    @CsvSource({"3, 200", "6, 200", "12, 200", "30, 100", "100, 40", "300, 20"})
    void trees_keep_every_balance_and_every_complementarity(int branches, int count) {
        for (int seed = 0; seed < count; seed++) {
            Network network = SeededNetworks.of(seed, branches, false);
            holds(network, law(seed, network), "tree " + seed);
        }
    }

    @ParameterizedTest
    @CsvSource({"3, 200", "6, 200", "12, 200", "30, 100", "100, 40", "300, 20"})
    void meshes_keep_every_balance_and_every_complementarity(int branches, int count) {
        for (int seed = 0; seed < count; seed++) {
            Network network = SeededNetworks.of(seed, branches, true);
            holds(network, law(seed, network), "mesh " + seed);
        }
    }

    /** Plenty of head, too little, a falling pump, a law that rises with flow and levels off. */
    private static ClosingLaw law(int seed, Network network) {
        double design = network.scale().cubicMetresPerSecond() * (0.5 + new Random(seed).nextDouble());
        return switch (seed % 4) {
            case 0 -> ClosingLaw.constant(12);
            case 1 -> ClosingLaw.constant(3);
            case 2 -> ClosingLaw.ofFlow(q -> 14 - 6 * q * Math.abs(q) / (design * design));
            default -> ClosingLaw.ofFlow(q -> 4 + 6 * q * q / (design * design + q * q));
        };
    }

    private static void holds(Network network, ClosingLaw law, String which) {
        NetworkSolution solution = NetworkSolver.of(network).solve(law);
        assertTrue(solution.converged(), which + " after " + solution.iterations() + ": " + solution.residuals());
        balanced(network, solution, which);
        for (int l = 0; l < network.links().size(); l++) {
            Link link = network.links().get(l);
            double q = solution.flow(l);
            double spare = solution.headAt(link.from())
                    - solution.headAt(link.to())
                    - link.law().headMetres(q);
            if (link.most() == 0 || solution.state(l) == LinkState.REMOVED) {
                assertEquals(0, q, 0, which);
                continue;
            }
            double size = TOLERANCE * network.scale().metres();
            assertTrue(q >= link.least() && q <= link.most(), which + ": flow " + q + " in " + link);
            assertTrue(spare <= size || q == link.most(), which + ": head to spare in link " + l + ": " + spare);
            assertTrue(spare >= -size || q == link.least(), which + ": head missing in link " + l + ": " + spare);
        }
    }

    private static void balanced(Network network, NetworkSolution solution, String which) {
        double[] balance = new double[network.nodes()];
        for (int l = 0; l < network.links().size(); l++) {
            balance[network.links().get(l).from()] += solution.flow(l);
            balance[network.links().get(l).to()] -= solution.flow(l);
        }
        for (int i = 2; i < balance.length; i++) {
            assertEquals(0, balance[i], TOLERANCE * network.scale().cubicMetresPerSecond(), which + ": node " + i);
        }
        assertEquals(
                solution.pump().cubicMetresPerSecond(),
                balance[1],
                TOLERANCE * network.scale().cubicMetresPerSecond());
    }

    @ParameterizedTest
    @CsvSource({"12, 20", "60, 10", "300, 3"})
    void order_and_splitting_of_links_change_nothing(int branches, int count) {
        for (int seed = 0; seed < count; seed++) {
            Network network = SeededNetworks.of(seed, branches, true);
            NetworkSolution first = NetworkSolver.of(network).solve(law(seed, network));
            NetworkSolution turned = NetworkSolver.of(shuffled(network, seed)).solve(law(seed, network));
            NetworkSolution split = NetworkSolver.of(split(network)).solve(law(seed, network));
            for (NetworkSolution other : List.of(turned, split)) {
                assertTrue(other.converged());
                assertEquals(first.pump().metres(), other.pump().metres(), 1e-7, "head of " + seed);
                assertEquals(
                        first.pump().cubicMetresPerSecond(),
                        other.pump().cubicMetresPerSecond(),
                        1e-7 * network.scale().cubicMetresPerSecond(),
                        "flow of " + seed);
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"6, 100", "30, 40", "100, 10"})
    void the_interior_path_comes_to_the_same_solution(int branches, int count) {
        for (int seed = 0; seed < count; seed++) {
            Network network = SeededNetworks.of(seed, branches, true);
            ClosingLaw law = ClosingLaw.constant(seed % 2 == 0 ? 12 : 3);
            NetworkSolution direct = NetworkSolver.of(network).solve(law);
            NetworkSolution around = NetworkSolver.of(network).solveRoundabout(law);
            assertTrue(around.converged(), "seed " + seed + ": " + around.residuals());
            assertTrue(around.iterations() > direct.iterations(), "seed " + seed);
            assertEquals(
                    direct.pump().cubicMetresPerSecond(),
                    around.pump().cubicMetresPerSecond(),
                    1e-7 * network.scale().cubicMetresPerSecond(),
                    "seed " + seed);
        }
    }

    private static Network shuffled(Network network, long seed) {
        List<Integer> names = new ArrayList<>();
        for (int i = 2; i < network.nodes(); i++) {
            names.add(i);
        }
        Collections.shuffle(names, new Random(seed));
        List<Link> links = new ArrayList<>();
        for (Link link : network.links()) {
            links.add(new Link(
                    renamed(link.from(), names), renamed(link.to(), names), link.law(), link.least(), link.most()));
        }
        Collections.shuffle(links, new Random(seed));
        return Network.closed(network.nodes(), 1, links, network.scale());
    }

    private static int renamed(int node, List<Integer> names) {
        return node < 2 ? node : names.get(node - 2);
    }

    /** Each plain link becomes two of half its law each. */
    private static Network split(Network network) {
        List<Link> links = new ArrayList<>();
        int nodes = network.nodes();
        for (Link link : network.links()) {
            if (link.least() == 0) {
                links.add(link);
                continue;
            }
            LinkLaw half = new LinkLaw() {
                @Override
                public double headMetres(double q) {
                    return link.law().headMetres(q) / 2;
                }

                @Override
                public double slope(double q) {
                    return link.law().slope(q) / 2;
                }
            };
            links.add(Link.plain(link.from(), nodes, half));
            links.add(Link.plain(nodes++, link.to(), half));
        }
        return Network.closed(nodes, 1, links, network.scale());
    }
}
