package headrace.circuit.solve;

import headrace.numeric.Roots;
import java.util.ArrayList;
import java.util.List;

/**
 * A piece of a pump's curve on which its head only rises or only falls, or the pump shut behind its check valve; in
 * either case the flow is a function of the head.
 *
 * @param pump the pump
 * @param from the flow at one end of the piece
 * @param to the flow at the other; the same for a pump that is shut
 * @param least the least head of the piece
 * @param most the greatest head of the piece
 */
record HeadPiece(HeaderPump pump, double from, double to, double least, double most) {
    private static final double FINE = 1e-13;

    /** Returns the pump shut, then the pieces of its curve from no flow on. */
    static List<HeadPiece> of(HeaderPump pump) {
        List<HeadPiece> all = new ArrayList<>();
        all.add(new HeadPiece(pump, 0, 0, pump.head().metresAt(0), Double.POSITIVE_INFINITY));
        double[] stops = Roots.stopsIn(pump.head()::metresAt, 0, pump.most());
        int from = 0;
        for (int i = 1; i < stops.length - 1; i++) {
            double change = pump.head().metresAt(stops[i]) - pump.head().metresAt(stops[i - 1]);
            double next = pump.head().metresAt(stops[i + 1]) - pump.head().metresAt(stops[i]);
            if (change < 0 == next >= 0) {
                all.add(between(pump, stops[from], stops[i]));
                from = i;
            }
        }
        all.add(between(pump, stops[from], pump.most()));
        return all;
    }

    private static HeadPiece between(HeaderPump pump, double from, double to) {
        double a = pump.head().metresAt(from);
        double b = pump.head().metresAt(to);
        return new HeadPiece(pump, from, to, Math.min(a, b), Math.max(a, b));
    }

    boolean isShut() {
        return from == to;
    }

    /** Returns whether the flow falls, or does not move, as the head grows. */
    boolean isFalling() {
        return isShut() || pump.head().metresAt(from) >= pump.head().metresAt(to);
    }

    /** Returns the flow at a head of the piece, by bisection. */
    double flowAt(double metres) {
        double low = from;
        double high = to;
        boolean falling = isFalling();
        while (high - low > FINE * pump.most()) {
            double middle = low + (high - low) / 2;
            if (pump.head().metresAt(middle) > metres == falling) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low + (high - low) / 2;
    }
}
