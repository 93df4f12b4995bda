package headrace.energy.load;

import headrace.numeric.RandomStreams;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * How the branches of a circuit share a load: which of them are asked for how much, given how much all of them are
 * asked for together. The same total can ask very different heads of a pump, so that a law is shown on several of
 * these.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Shares of the design load of a branch.
 *   <dt>Limits
 *   <dd>The branches stand in the order from the pump outwards. The shares make up the total to rounding, and none is
 *       above 100 % unless the total is.
 *   <dt>Errors
 *   <dd>None.
 *   <dt>Source
 *   <dd>Common practice, no source.
 * </dl>
 */
public sealed interface Sharing {
    /**
     * Fills in the share of each branch.
     *
     * @param total the share of the design load of all, 0 or more
     * @param weights the design load of each branch as a share of all, together 1
     * @param hour the hour, for what changes from hour to hour
     * @param shares to be filled, as long
     */
    void fill(double total, double[] weights, int hour, double[] shares);

    /** Returns how it stands in a sentence. */
    String name();

    /** Every branch is asked for the same share. */
    static Sharing even() {
        return new Even();
    }

    /** The branches nearest to the pump are asked for all, those beyond for what is left. */
    static Sharing near() {
        return new Filled(false);
    }

    /** The branches farthest from the pump are asked for all, those before for what is left. */
    static Sharing far() {
        return new Filled(true);
    }

    /**
     * One branch is off and the others share evenly; it takes only what they cannot.
     *
     * @param branch its place from the pump outwards, from 0
     */
    static Sharing oneOff(int branch) {
        return new OneOff(branch);
    }

    /** Another random share for every branch in every hour, the same for the same seed. */
    static Sharing random(long seed) {
        return new Random(seed);
    }

    /** Returns the set on which a law is shown: even, near and far first, each branch off in turn, and random. */
    static List<Sharing> all(int branches, long seed) {
        List<Sharing> all = new ArrayList<>(List.of(even(), near(), far()));
        for (int i = 0; branches > 1 && i < branches; i++) {
            all.add(oneOff(i));
        }
        all.add(random(seed));
        return List.copyOf(all);
    }

    /** All branches alike. */
    record Even() implements Sharing {
        @Override
        public void fill(double total, double[] weights, int hour, double[] shares) {
            Arrays.fill(shares, total);
        }

        @Override
        public String name() {
            return "even";
        }
    }

    /**
     * One branch after the other.
     *
     * @param fromFarEnd whether the farthest is filled first
     */
    record Filled(boolean fromFarEnd) implements Sharing {
        @Override
        public void fill(double total, double[] weights, int hour, double[] shares) {
            if (total >= 1) {
                Arrays.fill(shares, total);
                return;
            }
            double left = total;
            for (int i = 0; i < shares.length; i++) {
                int at = fromFarEnd ? shares.length - 1 - i : i;
                shares[at] = Math.min(1, left / weights[at]);
                left = Math.max(0, left - weights[at]);
            }
        }

        @Override
        public String name() {
            return fromFarEnd ? "far branches first" : "near branches first";
        }
    }

    /**
     * All but one.
     *
     * @param branch the one
     */
    record OneOff(int branch) implements Sharing {
        @Override
        public void fill(double total, double[] weights, int hour, double[] shares) {
            if (total >= 1) {
                Arrays.fill(shares, total);
                return;
            }
            double others = 1 - weights[branch];
            Arrays.fill(shares, others > 0 ? Math.min(1, total / others) : 0);
            shares[branch] = Math.max(0, total - others) / weights[branch];
        }

        @Override
        public String name() {
            return "branch " + (branch + 1) + " off";
        }
    }

    /**
     * Weights drawn anew in every hour, none above what a branch can be asked for.
     *
     * @param seed the seed
     */
    record Random(long seed) implements Sharing {
        @Override
        public void fill(double total, double[] weights, int hour, double[] shares) {
            if (total >= 1) {
                Arrays.fill(shares, total);
                return;
            }
            RandomStreams numbers = RandomStreams.of(seed);
            for (int i = 0; i < shares.length; i++) {
                shares[i] = -Math.log(1 - numbers.uniform(i, hour));
            }
            scale(total, weights, shares);
        }

        /**
         * Scales the drawn numbers to the total; those that would pass 100 % stay there, and the others make up for it.
         */
        private static void scale(double total, double[] weights, double[] shares) {
            boolean[] full = new boolean[shares.length];
            for (int round = 0; round <= shares.length; round++) {
                double left = total;
                double drawn = 0;
                for (int i = 0; i < shares.length; i++) {
                    left -= full[i] ? weights[i] : 0;
                    drawn += full[i] ? 0 : weights[i] * shares[i];
                }
                double factor = drawn > 0 ? Math.max(0, left) / drawn : 0;
                boolean passed = false;
                for (int i = 0; i < shares.length; i++) {
                    if (!full[i] && shares[i] * factor > 1) {
                        full[i] = true;
                        passed = true;
                    }
                }
                if (!passed) {
                    for (int i = 0; i < shares.length; i++) {
                        shares[i] = full[i] ? 1 : shares[i] * factor;
                    }
                    return;
                }
            }
        }

        @Override
        public String name() {
            return "random, seed " + seed;
        }
    }
}
