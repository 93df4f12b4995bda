package headrace.numeric;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;

/**
 * Solves the symmetric positive definite systems that arise on a graph: each edge couples its two nodes by a weight,
 * and each node is tied to the ground by a weight of its own.
 *
 * <p>Row i reads {@code (ground_i + Σ_e w_e)·x_i − Σ_e w_e·x_other(e) = b_i}, the sums over the edges at node i. The
 * order of elimination (least degree first) and the places of all products are found once for a graph; each solve then
 * is one pass over flat arrays. On a tree nothing fills in and the cost is proportional to the nodes.
 *
 * <dl>
 *   <dt>Limits
 *   <dd>Weights must not be negative, and every connected part of the graph must be tied to the ground somewhere.
 *   <dt>Errors
 *   <dd>{@link #solve} returns false where a pivot is not positive, and leaves the right side as it was.
 *   <dt>Source
 *   <dd>Root-free Cholesky factorisation; minimum degree after Rose (1972). Textbook: Davis, Direct Methods for Sparse
 *       Linear Systems, SIAM 2006, chapters 4 and 7.
 * </dl>
 *
 * <p>Not for use by two threads at once: it keeps its work space.
 */
public final class GraphFactor {
    private static final double SINGULAR = 1e-300;

    private final int nodes;
    private final int[] place;
    private final int[] order;
    private final int[] edgeA;
    private final int[] edgeB;
    private final int[] edgeEntry;
    private final int[] columnStart;
    private final int[] row;
    private final int[] target;
    private final double[] lower;
    private final double[] pivot;
    private final double[] work;

    private GraphFactor(int nodes, int[] edgeA, int[] edgeB) {
        this.nodes = nodes;
        this.edgeA = edgeA.clone();
        this.edgeB = edgeB.clone();
        List<int[]> columns = new ArrayList<>(nodes);
        this.order = eliminate(nodes, edgeA, edgeB, columns);
        this.place = new int[nodes];
        for (int k = 0; k < nodes; k++) {
            place[order[k]] = k;
        }
        this.columnStart = new int[nodes + 1];
        for (int k = 0; k < nodes; k++) {
            columnStart[k + 1] = columnStart[k] + columns.get(k).length;
        }
        this.row = new int[columnStart[nodes]];
        for (int k = 0; k < nodes; k++) {
            int[] rows = columns.get(k);
            for (int i = 0; i < rows.length; i++) {
                rows[i] = place[rows[i]];
            }
            Arrays.sort(rows);
            System.arraycopy(rows, 0, row, columnStart[k], rows.length);
        }
        this.edgeEntry = new int[edgeA.length];
        for (int e = 0; e < edgeA.length; e++) {
            int a = place[edgeA[e]];
            int b = place[edgeB[e]];
            edgeEntry[e] = a == b ? -1 : entry(Math.min(a, b), Math.max(a, b));
        }
        this.target = targets();
        this.lower = new double[row.length];
        this.pivot = new double[nodes];
        this.work = new double[nodes];
    }

    /**
     * Prepares a graph.
     *
     * @param nodes how many nodes there are, numbered from 0
     * @param edgeA one end of each edge
     * @param edgeB the other end of each edge; edges may be parallel
     */
    public static GraphFactor of(int nodes, int[] edgeA, int[] edgeB) {
        return new GraphFactor(nodes, edgeA, edgeB);
    }

    /**
     * Solves for one set of weights.
     *
     * @param weight the weight of each edge, not negative
     * @param ground the weight that ties each node to the ground, not negative
     * @param right the right side; replaced by the solution
     * @return whether the system could be solved
     */
    public boolean solve(double[] weight, double[] ground, double[] right) {
        assemble(weight, ground);
        if (!factor()) {
            return false;
        }
        solveAgain(right);
        return true;
    }

    /**
     * Solves for another right side with the weights of the last call of {@link #solve}, which must have gone well.
     *
     * @param right the right side; replaced by the solution
     */
    public void solveAgain(double[] right) {
        for (int k = 0; k < nodes; k++) {
            work[k] = right[order[k]];
        }
        for (int k = 0; k < nodes; k++) {
            double x = work[k];
            for (int p = columnStart[k]; p < columnStart[k + 1]; p++) {
                work[row[p]] -= lower[p] * x;
            }
        }
        for (int k = nodes - 1; k >= 0; k--) {
            double x = work[k] / pivot[k];
            for (int p = columnStart[k]; p < columnStart[k + 1]; p++) {
                x -= lower[p] * work[row[p]];
            }
            work[k] = x;
        }
        for (int k = 0; k < nodes; k++) {
            right[order[k]] = work[k];
        }
    }

    /** Returns how many entries stand below the diagonal of the factor: the edges, and what filled in. */
    public int entries() {
        return row.length;
    }

    private void assemble(double[] weight, double[] ground) {
        Arrays.fill(lower, 0);
        for (int k = 0; k < nodes; k++) {
            pivot[k] = ground[order[k]];
        }
        for (int e = 0; e < edgeEntry.length; e++) {
            if (edgeEntry[e] >= 0) {
                double w = weight[e];
                lower[edgeEntry[e]] -= w;
                pivot[place[edgeA[e]]] += w;
                pivot[place[edgeB[e]]] += w;
            }
        }
    }

    /** Eliminates column after column; the products of a column go to places that were found beforehand. */
    private boolean factor() {
        int t = 0;
        for (int k = 0; k < nodes; k++) {
            double d = pivot[k];
            if (!(d > SINGULAR)) {
                return false;
            }
            int end = columnStart[k + 1];
            for (int p = columnStart[k]; p < end; p++) {
                double share = lower[p] / d;
                pivot[row[p]] -= share * lower[p];
                for (int q = p + 1; q < end; q++) {
                    lower[target[t++]] -= share * lower[q];
                }
            }
            for (int p = columnStart[k]; p < end; p++) {
                lower[p] /= d;
            }
        }
        return true;
    }

    private int[] targets() {
        int count = 0;
        for (int k = 0; k < nodes; k++) {
            int m = columnStart[k + 1] - columnStart[k];
            count += m * (m - 1) / 2;
        }
        int[] found = new int[count];
        int t = 0;
        for (int k = 0; k < nodes; k++) {
            for (int p = columnStart[k]; p < columnStart[k + 1]; p++) {
                for (int q = p + 1; q < columnStart[k + 1]; q++) {
                    found[t++] = entry(row[p], row[q]);
                }
            }
        }
        return found;
    }

    private int entry(int column, int rowPlace) {
        return Arrays.binarySearch(row, columnStart[column], columnStart[column + 1], rowPlace);
    }

    /**
     * Finds the order of elimination, and for each step the nodes that are then still coupled to the one eliminated.
     */
    private static int[] eliminate(int nodes, int[] edgeA, int[] edgeB, List<int[]> columns) {
        BitSet[] coupled = new BitSet[nodes];
        for (int i = 0; i < nodes; i++) {
            coupled[i] = new BitSet();
        }
        for (int e = 0; e < edgeA.length; e++) {
            if (edgeA[e] != edgeB[e]) {
                coupled[edgeA[e]].set(edgeB[e]);
                coupled[edgeB[e]].set(edgeA[e]);
            }
        }
        DegreeQueue queue = new DegreeQueue(nodes, coupled);
        int[] order = new int[nodes];
        for (int k = 0; k < nodes; k++) {
            int node = queue.next();
            order[k] = node;
            int[] left = coupled[node].stream().toArray();
            for (int other : left) {
                coupled[other].or(coupled[node]);
                coupled[other].clear(other);
                coupled[other].clear(node);
                queue.moved(other, coupled[other].cardinality());
            }
            coupled[node] = null;
            columns.add(left);
        }
        return order;
    }

    /**
     * Hands out the node of least degree; ties go to the lower number, so that the order is the same on every machine.
     */
    private static final class DegreeQueue {
        private final java.util.PriorityQueue<long[]> queue = new java.util.PriorityQueue<>(
                (a, b) -> a[0] != b[0] ? Long.compare(a[0], b[0]) : Long.compare(a[1], b[1]));
        private final int[] degree;

        DegreeQueue(int nodes, BitSet[] coupled) {
            degree = new int[nodes];
            for (int i = 0; i < nodes; i++) {
                degree[i] = -1;
                moved(i, coupled[i].cardinality());
            }
        }

        void moved(int node, int newDegree) {
            if (degree[node] != newDegree) {
                degree[node] = newDegree;
                queue.add(new long[] {newDegree, node});
            }
        }

        int next() {
            while (true) {
                long[] first = queue.remove();
                int node = (int) first[1];
                if (degree[node] == first[0]) {
                    degree[node] = Integer.MIN_VALUE;
                    return node;
                }
            }
        }
    }
}
