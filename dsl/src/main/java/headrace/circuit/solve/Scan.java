package headrace.circuit.solve;

import headrace.numeric.Roots;
import headrace.work.Work;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/**
 * The heads at which a law and a network meet, looked for from no head upwards where Newton's method found none.
 *
 * @param heads the heads at which they meet, each between two that were looked at
 * @param jumps the heads at which the law jumps across the network without meeting it
 * @param looked how many heads were looked at
 * @param to the greatest of them, in m
 * @param offAtFirst by how much the head is above what the law asks for at the first
 * @param offAtLast and at the last
 */
public record Scan(List<Double> heads, List<Double> jumps, int looked, double to, double offAtFirst, double offAtLast) {
    private static final int POINTS = 96;

    /** What is off by more than this share of the greatest head, at a root to rounding, has jumped. */
    private static final double JUMP = 1e-7;

    /** Copies the lists. */
    public Scan {
        heads = List.copyOf(heads);
        jumps = List.copyOf(jumps);
    }

    static Scan of(DoubleUnaryOperator off, double to) {
        List<Double> heads = new ArrayList<>();
        List<Double> jumps = new ArrayList<>();
        double before = 0;
        double offBefore = off.applyAsDouble(0);
        double first = offBefore;
        for (int i = 1; i <= POINTS; i++) {
            Work.poll();
            double share = (double) i / POINTS;
            double here = to * share * share;
            double offHere = off.applyAsDouble(here);
            if (offBefore < 0 == offHere >= 0) {
                double root = Roots.between(off, before, here);
                (Math.abs(off.applyAsDouble(root)) > JUMP * to ? jumps : heads).add(root);
            }
            before = here;
            offBefore = offHere;
        }
        return new Scan(heads, jumps, POINTS + 1, to, first, offBefore);
    }
}
