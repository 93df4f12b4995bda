package headrace.numeric;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class GraphFactorTest {
    /** Two nodes: 3·x − 2·y = 4 and −2·x + 2.5·y = 1, so x = 24/7 and y = 22/7. Hand calculation. */
    @Test
    void solves_two_coupled_nodes_as_by_hand() {
        double[] right = {4, 1};
        assertTrue(
                GraphFactor.of(2, new int[] {0}, new int[] {1}).solve(new double[] {2}, new double[] {1, 0.5}, right));
        assertArrayEquals(new double[] {24 / 7.0, 22 / 7.0}, right, 1e-14);
    }

    @Test
    void fills_nothing_in_on_a_tree() {
        int nodes = 500;
        int[] a = new int[nodes - 1];
        int[] b = new int[nodes - 1];
        Random random = new Random(17);
        for (int i = 1; i < nodes; i++) {
            a[i - 1] = random.nextInt(i);
            b[i - 1] = i;
        }
        assertEquals(nodes - 1, GraphFactor.of(nodes, a, b).entries());
    }

    @Test
    void agrees_with_a_dense_factorisation_on_random_meshes() {
        for (int seed = 0; seed < 40; seed++) {
            Random random = new Random(seed);
            int nodes = 3 + random.nextInt(60);
            int edges = nodes - 1 + random.nextInt(2 * nodes);
            int[] a = new int[edges];
            int[] b = new int[edges];
            double[] weight = new double[edges];
            double[] ground = new double[nodes];
            ground[random.nextInt(nodes)] = 0.5 + random.nextDouble();
            double[][] dense = new double[nodes][nodes];
            for (int e = 0; e < edges; e++) {
                a[e] = e < nodes - 1 ? e + 1 : random.nextInt(nodes);
                b[e] = e < nodes - 1 ? random.nextInt(e + 1) : random.nextInt(nodes);
                weight[e] = Math.pow(10, 3 * random.nextDouble() - 1);
                dense[a[e]][a[e]] += weight[e];
                dense[b[e]][b[e]] += weight[e];
                dense[a[e]][b[e]] -= weight[e];
                dense[b[e]][a[e]] -= weight[e];
            }
            double[] right = new double[nodes];
            for (int i = 0; i < nodes; i++) {
                dense[i][i] += ground[i];
                right[i] = random.nextGaussian();
            }
            double[] expected = new CholeskyDecomposition(new Array2DRowRealMatrix(dense), 1e-12, 1e-14)
                    .getSolver()
                    .solve(new ArrayRealVector(right))
                    .toArray();
            assertTrue(GraphFactor.of(nodes, a, b).solve(weight, ground, right));
            double size = new ArrayRealVector(expected).getLInfNorm();
            assertArrayEquals(expected, right, 1e-9 * size, "seed " + seed);
        }
    }

    @Test
    void says_so_where_a_part_is_tied_to_nothing_and_leaves_the_right_side_alone() {
        double[] right = {1, 2, 3};
        assertFalse(
                GraphFactor.of(3, new int[] {0}, new int[] {1}).solve(new double[] {2}, new double[] {1, 0, 0}, right));
        assertArrayEquals(new double[] {1, 2, 3}, right);
    }

    @Test
    void adds_parallel_edges_and_passes_over_an_edge_from_a_node_to_itself() {
        double[] twice = {4, 1};
        double[] once = {4, 1};
        GraphFactor.of(2, new int[] {0, 1, 1}, new int[] {1, 0, 1})
                .solve(new double[] {0.5, 1.5, 9}, new double[] {1, 0.5}, twice);
        GraphFactor.of(2, new int[] {0}, new int[] {1}).solve(new double[] {2}, new double[] {1, 0.5}, once);
        assertArrayEquals(once, twice, 1e-14);
    }
}
