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
 * @param looked how many heads were looked at
 * @param to the greatest of them, in m
 * @param offAtFirst by how much the head is above what the law asks for at the first
 * @param offAtLast and at the last
 */
public record Scan(List<Double> heads, int looked, double to, double offAtFirst, double offAtLast) {
    private static final int POINTS = 96;

    /** Copies the list. */
    public Scan {
        heads = List.copyOf(heads);
    }

    static Scan of(DoubleUnaryOperator off, double to) {
        List<Double> heads = new ArrayList<>();
        double before = 0;
        double offBefore = off.applyAsDouble(0);
        double first = offBefore;
        for (int i = 1; i <= POINTS; i++) {
            Work.poll();
            double share = (double) i / POINTS;
            double here = to * share * share;
            double offHere = off.applyAsDouble(here);
            if (offBefore < 0 == offHere >= 0) {
                heads.add(Roots.between(off, before, here));
            }
            before = here;
            offBefore = offHere;
        }
        return new Scan(heads, POINTS + 1, to, first, offBefore);
    }
}
