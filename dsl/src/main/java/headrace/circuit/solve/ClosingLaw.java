package headrace.circuit.solve;

import java.util.Arrays;

/**
 * The one equation that closes the loop: the head that stands at the pump, from what is seen of the network. A pump
 * curve at a speed, a control law, a sensor at a far branch, the neediest valve.
 *
 * <p>The equation is {@code head = headMetres(loop)}. The law must answer for every state, flows below 0 included, and
 * be continuous; where it bends, it may. Its derivative is not asked for: it is taken along the line on which the
 * network can move.
 */
@FunctionalInterface
public interface ClosingLaw {
    /** Returns the head at the pump in m, which may itself depend on the head that is seen. */
    double headMetres(LoopView loop);

    /** Returns the law of a given head whatever happens. */
    static ClosingLaw constant(double metres) {
        return new GivenHead(metres);
    }

    /** Returns the law of a head that depends on the flow through the pump only. */
    static ClosingLaw ofFlow(HeadSource source) {
        return source;
    }

    /**
     * Returns the least head at which every sensor sees what it wants: {@code max(wanted − head across)} is 0.
     *
     * @param links the links across which the sensors stand
     * @param wantedMetres the head that each wants; negative infinity for one that wants nothing now
     */
    static ClosingLaw neediest(int[] links, double[] wantedMetres) {
        int[] at = links.clone();
        double[] wanted = wantedMetres.clone();
        return loop -> {
            double most = Double.NEGATIVE_INFINITY;
            for (int i = 0; i < at.length; i++) {
                most = Math.max(most, wanted[i] - loop.headAcross(at[i]));
            }
            return most == Double.NEGATIVE_INFINITY ? 0 : loop.head() + most;
        };
    }

    /**
     * Returns the least head at which all but some sensors see what they want.
     *
     * @param links the links across which the sensors stand
     * @param wantedMetres the head that each wants; negative infinity for one that wants nothing now
     * @param ignored how many of the neediest do not count
     */
    static ClosingLaw neediest(int[] links, double[] wantedMetres, int ignored) {
        int[] at = links.clone();
        double[] wanted = wantedMetres.clone();
        double[] missing = new double[at.length];
        return loop -> {
            for (int i = 0; i < at.length; i++) {
                missing[i] = wanted[i] - loop.headAcross(at[i]);
            }
            Arrays.sort(missing);
            int counts = missing.length - 1 - ignored;
            boolean none = counts < 0 || missing[counts] == Double.NEGATIVE_INFINITY;
            return none ? 0 : loop.head() + missing[counts];
        };
    }

    /** A head whatever happens. */
    record GivenHead(double metres) implements HeadSource {
        @Override
        public double metresAt(double cubicMetresPerSecond) {
            return metres;
        }

        @Override
        public double slopeAt(double cubicMetresPerSecond) {
            return 0;
        }
    }
}
