package headrace.lesson;

import headrace.units.Kind;
import headrace.units.Quantity;
import headrace.units.Ratio;
import headrace.units.Unit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Tells when a number is off by the factor between two units, or by a power of ten. */
final class Factors {
    /** A factor nearer to 1 than this is an error of calculation, not of a unit. */
    private static final double TELLING = 1.15;

    private static final double[] TENS = {1e3, 1e2, 1e1, 1e6};

    private Factors() {}

    /**
     * Says which factor a number is off by.
     *
     * @param off the number over the answer
     * @param share the tolerance, as a share
     * @param asked the answer; empty if it has no unit
     */
    static Optional<String> said(double off, double share, Optional<Quantity<?>> asked) {
        if (off <= 0 || off < TELLING && off > 1 / TELLING) {
            return Optional.empty();
        }
        return asked.flatMap(answer -> betweenUnits(off, share, answer)).or(() -> ten(off, share));
    }

    /** A number in one unit that was given another: 229 gpm written as 229 m³/h is 4.40 times too much. */
    private static Optional<String> betweenUnits(double off, double share, Quantity<?> asked) {
        record Pair(Unit meant, Unit written, int rank) {}
        List<Unit> units = asked.kind().units();
        List<Pair> pairs = new ArrayList<>();
        for (Unit meant : units) {
            for (Unit written : units) {
                double factor = written.factor() / meant.factor();
                boolean plain = meant.offset() == 0 && written.offset() == 0;
                if (plain && isNear(factor, off, share)) {
                    pairs.add(new Pair(meant, written, rank(asked.kind(), meant) + rank(asked.kind(), written)));
                }
            }
        }
        return pairs.stream()
                .min(Comparator.comparingInt(Pair::rank))
                .map(pair ->
                        "It is off by the factor between " + symbol(pair.meant()) + " and " + symbol(pair.written())
                                + ": a number in " + symbol(pair.meant()) + " seems to have been given in "
                                + symbol(pair.written()) + ".");
    }

    /** Units that a reader is likely to mix up come first: those of printing, then in the order of their kind. */
    private static int rank(Kind<?> kind, Unit unit) {
        boolean usual = unit.word().equals(kind.metric()) || unit.word().equals(kind.usCustomary());
        return usual ? 0 : 1 + kind.units().indexOf(unit);
    }

    private static String symbol(Unit unit) {
        return unit.symbol().isEmpty() ? "a plain " + Ratio.KIND.name() : unit.symbol();
    }

    private static Optional<String> ten(double off, double share) {
        for (double ten : TENS) {
            if (isNear(ten, off, share) || isNear(1 / ten, off, share)) {
                return Optional.of("It is " + (long) ten + " times too " + (off > 1 ? "high" : "low") + ".");
            }
        }
        return Optional.empty();
    }

    private static boolean isNear(double factor, double off, double share) {
        boolean telling = factor > TELLING || factor < 1 / TELLING;
        return telling && Math.abs(off / factor - 1) <= Math.max(share, 1e-9);
    }
}
