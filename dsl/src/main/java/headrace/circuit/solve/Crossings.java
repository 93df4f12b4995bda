package headrace.circuit.solve;

import headrace.work.Work;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.DoubleBinaryOperator;
import java.util.function.DoubleUnaryOperator;

/**
 * All points at which pumps on one header and a circuit agree, drooping curves included.
 *
 * <p>Seen from the header the circuit is one function: the flow that it takes never falls as the head grows. The curve
 * of each pump is cut where it turns, so that on every piece its flow is a function of the head too. For each choice of
 * pieces the heads are searched by halves: a stretch of heads in which what the circuit can take and what the pumps can
 * give do not overlap holds no solution; where all pieces fall there is at most one, and it is bracketed.
 *
 * <dl>
 *   <dt>Units
 *   <dd>m³/s, m.
 *   <dt>Limits
 *   <dd>Two solutions nearer to each other than a 20,000th of the heads searched may be taken for none or for one; such
 *       a place is counted in {@link #unclear}. Turns of a pump's curve narrower than a 128th of its range are not
 *       seen.
 *   <dt>Errors
 *   <dd>An {@link IllegalArgumentException} for more than {@link #MOST_CHOICES} choices of pieces.
 *   <dt>Source
 *   <dd>Exclusion by interval bounds of monotone functions; textbook knowledge.
 * </dl>
 *
 * @param points the points, by rising flow
 * @param unclear how many shortest stretches of head could neither be excluded nor shown to hold a solution
 */
public record Crossings(List<Point> points, int unclear) {
    /** How many choices of pieces of all pumps are searched at most. */
    public static final int MOST_CHOICES = 4096;

    private static final int DEPTH = 15;
    private static final double SAME = 1e-9;

    /**
     * A point at which pumps and circuit agree.
     *
     * @param cubicMetresPerSecond the flow of the circuit
     * @param metres the head of the header
     * @param pumpFlows the flow of each pump; 0 behind a shut check valve
     * @param settled whether the circuit pulls the flow back when it strays: its head grows faster with flow than that
     *     of the pumps
     */
    public record Point(double cubicMetresPerSecond, double metres, double[] pumpFlows, boolean settled) {
        /** Copies the flows. */
        public Point {
            pumpFlows = pumpFlows.clone();
        }

        /** Returns the flow of each pump. */
        @Override
        public double[] pumpFlows() {
            return pumpFlows.clone();
        }
    }

    /** Copies the list. */
    public Crossings {
        points = List.copyOf(points);
    }

    /**
     * Returns all points at which pumps and a circuit agree.
     *
     * @param flowAtHead the flow that the circuit takes at a head of the header; it never falls
     * @param pumps the pumps
     */
    public static Crossings of(DoubleUnaryOperator flowAtHead, List<HeaderPump> pumps) {
        Search search = new Search(flowAtHead, pumps);
        search.choose(0, new ArrayList<>());
        return search.found();
    }

    /** One search. */
    private static final class Search {
        private final DoubleUnaryOperator circuit;
        private final List<List<HeadPiece>> pieces = new ArrayList<>();
        private final List<Point> points = new ArrayList<>();
        private int unclear;

        Search(DoubleUnaryOperator circuit, List<HeaderPump> pumps) {
            this.circuit = circuit;
            long choices = 1;
            for (HeaderPump pump : pumps) {
                pieces.add(HeadPiece.of(pump));
                choices *= pieces.get(pieces.size() - 1).size();
                if (choices > MOST_CHOICES) {
                    throw new IllegalArgumentException("more than " + MOST_CHOICES + " choices of pieces");
                }
            }
        }

        Crossings found() {
            points.sort(Comparator.comparingDouble(Point::cubicMetresPerSecond));
            return new Crossings(points, unclear);
        }

        void choose(int pump, List<HeadPiece> chosen) {
            if (pump < pieces.size()) {
                for (HeadPiece piece : pieces.get(pump)) {
                    chosen.add(piece);
                    choose(pump + 1, chosen);
                    chosen.remove(chosen.size() - 1);
                }
                return;
            }
            Work.poll();
            double low = Double.NEGATIVE_INFINITY;
            double high = Double.POSITIVE_INFINITY;
            for (HeadPiece piece : chosen) {
                low = Math.max(low, piece.least());
                high = Math.min(high, piece.most());
            }
            boolean allShut = chosen.stream().allMatch(HeadPiece::isShut);
            if (low <= high && !allShut) {
                search(new Ends(end(chosen, low), end(chosen, high)), chosen, 0);
            }
        }

        private void search(Ends ends, List<HeadPiece> chosen, int depth) {
            if (ends.circuitAboveAll() || ends.circuitBelowAll()) {
                return;
            }
            double off = ends.low.off();
            double offHigh = ends.high.off();
            if (chosen.stream().allMatch(HeadPiece::isFalling) || depth == DEPTH) {
                if (off * offHigh <= 0) {
                    add(root(ends, chosen), chosen);
                } else if (depth == DEPTH && turns(ends, chosen)) {
                    unclear++;
                }
                return;
            }
            End middle = end(chosen, ends.low.metres + (ends.high.metres - ends.low.metres) / 2);
            search(new Ends(ends.low, middle), chosen, depth + 1);
            search(new Ends(middle, ends.high), chosen, depth + 1);
        }

        /** Returns whether the difference of the flows turns inside so short a stretch, so that it may touch 0. */
        private boolean turns(Ends ends, List<HeadPiece> chosen) {
            double middle = end(chosen, ends.low.metres + (ends.high.metres - ends.low.metres) / 2)
                    .off();
            return (middle - ends.low.off()) * (ends.high.off() - middle) < 0;
        }

        private End root(Ends ends, List<HeadPiece> chosen) {
            End low = ends.low;
            End high = ends.high;
            boolean rising = low.off() <= high.off();
            for (int i = 0; i < 100 && high.metres - low.metres > 1e-14 * Math.abs(high.metres); i++) {
                End middle = end(chosen, low.metres + (high.metres - low.metres) / 2);
                if (middle.off() < 0 == rising) {
                    low = middle;
                } else {
                    high = middle;
                }
            }
            return Math.abs(low.off()) <= Math.abs(high.off()) ? low : high;
        }

        private void add(End at, List<HeadPiece> chosen) {
            for (Point each : points) {
                boolean same = Math.abs(each.metres - at.metres) <= SAME * Math.abs(at.metres);
                for (int i = 0; i < at.flows.length; i++) {
                    double size = SAME * pieces.get(i).get(0).pump().most();
                    same &= Math.abs(each.pumpFlows[i] - at.flows[i]) <= size;
                }
                if (same) {
                    return;
                }
            }
            points.add(new Point(at.circuit, at.metres, at.flows, settles(at, chosen)));
        }

        private boolean settles(End at, List<HeadPiece> chosen) {
            if (chosen.stream().allMatch(HeadPiece::isFalling)) {
                return true;
            }
            double rise = 0;
            for (int i = 0; i < at.flows.length; i++) {
                if (!chosen.get(i).isShut()) {
                    rise += 1 / chosen.get(i).pump().head().slopeAt(at.flows[i]);
                }
            }
            double step = 1e-5 * Math.abs(at.metres);
            double response =
                    (circuit.applyAsDouble(at.metres + step) - circuit.applyAsDouble(at.metres - step)) / (2 * step);
            return rise <= 0 || response < rise;
        }

        private End end(List<HeadPiece> chosen, double metres) {
            double[] flows =
                    chosen.stream().mapToDouble(piece -> piece.flowAt(metres)).toArray();
            return new End(metres, circuit.applyAsDouble(metres), flows);
        }
    }

    /** A head, what the circuit takes there and what the pumps give. */
    private record End(double metres, double circuit, double[] flows) {
        double off() {
            double sum = circuit;
            for (double flow : flows) {
                sum -= flow;
            }
            return sum;
        }
    }

    /** Two heads. */
    private record Ends(End low, End high) {
        boolean circuitAboveAll() {
            return low.circuit > pumps(Math::max);
        }

        boolean circuitBelowAll() {
            return high.circuit < pumps(Math::min);
        }

        private double pumps(DoubleBinaryOperator which) {
            double sum = 0;
            for (int i = 0; i < low.flows.length; i++) {
                sum += which.applyAsDouble(low.flows[i], high.flows[i]);
            }
            return sum;
        }
    }
}
