package headrace.circuit.solve;

import java.util.Arrays;
import java.util.List;

/**
 * Finds the links that can carry a flow: not those of which nothing is asked, not those that lead nowhere, not those
 * that hang together with neither side of the pump.
 */
final class LiveLinks {
    private static final int UNKNOWN = -1;

    private final int source;
    private final int[] from;
    private final int[] to;
    private final int[] start;
    private final int[] incident;
    private final boolean[] holds;
    private final boolean[] live;
    private final boolean[] reached;
    private final int[] degree;
    private final int[] queue;
    private final int[] like;
    private boolean found;

    LiveLinks(Network network) {
        List<Link> links = network.links();
        int nodes = network.nodes();
        source = network.source();
        from = links.stream().mapToInt(Link::from).toArray();
        to = links.stream().mapToInt(Link::to).toArray();
        start = new int[nodes + 1];
        for (int l = 0; l < from.length; l++) {
            start[from[l] + 1]++;
            start[to[l] + 1]++;
        }
        for (int i = 0; i < nodes; i++) {
            start[i + 1] += start[i];
        }
        incident = new int[2 * from.length];
        int[] next = start.clone();
        for (int l = 0; l < from.length; l++) {
            incident[next[from[l]]++] = l;
            incident[next[to[l]]++] = l;
        }
        holds = new boolean[nodes];
        double[] withdrawals = network.withdrawals();
        for (int i = 0; i < nodes; i++) {
            holds[i] = i == 0 || i == source || withdrawals[i] != 0;
        }
        live = new boolean[from.length];
        reached = new boolean[nodes];
        degree = new int[nodes];
        queue = new int[nodes];
        like = new int[nodes];
    }

    /** Marks the links that can carry a flow when the most of each is as given. */
    void find(double[] most) {
        found = false;
        for (int l = 0; l < live.length; l++) {
            live[l] = most[l] > 0;
        }
        int count = reach();
        for (int l = 0; l < live.length; l++) {
            live[l] = live[l] && reached[from[l]];
        }
        prune(count);
    }

    /** Says of a link whether it can carry a flow, where that is known already. */
    void mark(int link, boolean canCarry) {
        found = false;
        live[link] = canCarry;
    }

    boolean isLive(int link) {
        return live[link];
    }

    /** Returns whether a live link ends at the node. */
    boolean isLiveNode(int node) {
        return degree[node] > 0;
    }

    /** Gives the nodes without a live link the head of the node whose head is theirs. */
    void fillHeads(double[] head, double[] most) {
        int[] like = likes(most);
        for (int i = 0; i < like.length; i++) {
            head[i] = head[like[i]];
        }
    }

    /**
     * Returns for each node the one whose head is its own: itself, or for a node without a live link a neighbour, since
     * nothing flows between them. Of the two sides of a valve that is shut, the one counts that is not beyond it.
     */
    int[] likes(double[] most) {
        if (!found) {
            int last = 0;
            for (int i = 0; i < like.length; i++) {
                like[i] = degree[i] > 0 || i == 0 || i == source ? i : UNKNOWN;
                if (like[i] == i) {
                    queue[last++] = i;
                }
            }
            last = spread(last, most);
            spread(last, null);
            for (int i = 0; i < like.length; i++) {
                like[i] = like[i] == UNKNOWN ? i : like[i];
            }
            found = true;
        }
        return like;
    }

    private int spread(int count, double[] most) {
        int last = count;
        for (int first = 0; first < last; first++) {
            int node = queue[first];
            for (int p = start[node]; p < start[node + 1]; p++) {
                int other = other(incident[p], node);
                if (like[other] == UNKNOWN && (most == null || most[incident[p]] > 0)) {
                    like[other] = like[node];
                    queue[last++] = other;
                }
            }
        }
        return last;
    }

    private int reach() {
        Arrays.fill(reached, false);
        reached[0] = true;
        reached[source] = true;
        queue[0] = 0;
        queue[1] = source;
        int last = 2;
        for (int first = 0; first < last; first++) {
            int node = queue[first];
            for (int p = start[node]; p < start[node + 1]; p++) {
                int other = other(incident[p], node);
                if (live[incident[p]] && !reached[other]) {
                    reached[other] = true;
                    queue[last++] = other;
                }
            }
        }
        return last;
    }

    private void prune(int count) {
        Arrays.fill(degree, 0);
        for (int l = 0; l < live.length; l++) {
            if (live[l]) {
                degree[from[l]]++;
                degree[to[l]]++;
            }
        }
        int last = 0;
        for (int i = 0; i < degree.length && count > 0; i++) {
            if (degree[i] == 1 && !holds[i]) {
                queue[last++] = i;
            }
        }
        for (int first = 0; first < last; first++) {
            int node = queue[first];
            for (int p = start[node]; p < start[node + 1]; p++) {
                int link = incident[p];
                if (live[link]) {
                    live[link] = false;
                    degree[node]--;
                    int other = other(link, node);
                    degree[other]--;
                    if (degree[other] == 1 && !holds[other]) {
                        queue[last++] = other;
                    }
                }
            }
        }
    }

    private int other(int link, int node) {
        return from[link] == node ? to[link] : from[link];
    }
}
