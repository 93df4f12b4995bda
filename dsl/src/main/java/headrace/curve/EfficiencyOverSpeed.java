package headrace.curve;

import headrace.numeric.FixedPower;
import headrace.numeric.InverseTenthRoot;
import headrace.numeric.MonotoneCubic;
import headrace.problem.Refusal;
import headrace.units.Power;
import headrace.units.Ratio;
import java.util.SortedMap;
import java.util.stream.DoubleStream;

/**
 * How the efficiency of a pump changes with its speed: a model, named wherever it is used.
 *
 * <p>Each says what shaft power becomes of the one that the affinity laws give, and is linear in that power.
 */
public sealed interface EfficiencyOverSpeed {
    /** Returns the model in words, with its source. */
    String name();

    /**
     * Returns the shaft power at a speed.
     *
     * @param affinityWatts the shaft power by the affinity laws alone, in W
     * @param speedRatio the speed as a share of the tested speed, above 0
     * @param bestEfficiency the best efficiency at the tested speed
     */
    double shaftWatts(double affinityWatts, double speedRatio, double bestEfficiency);

    /**
     * Replaces shaft powers by the affinity laws alone by those that {@link #shaftWatts} gives.
     *
     * @param watts the shaft powers in W, replaced
     * @param speedRatios the speed of each as a share of the tested speed, above 0
     * @param count how many of them there are
     * @param bestEfficiency the best efficiency at the tested speed
     */
    default void replaceAffinity(double[] watts, double[] speedRatios, int count, double bestEfficiency) {
        for (int i = 0; i < count; i++) {
            watts[i] = shaftWatts(watts[i], speedRatios[i], bestEfficiency);
        }
    }

    /** Returns whether the shaft power is a multiple of the one by the affinity laws, without a term beside it. */
    default boolean scales() {
        return true;
    }

    /** Returns the least share of the tested speed for which the model holds, 0 if for all. */
    default double slowest(double bestEfficiency) {
        return 0;
    }

    /** Returns the greatest share of the tested speed for which the model holds. */
    default double fastest() {
        return Double.POSITIVE_INFINITY;
    }

    /** Returns the affinity laws alone: the same efficiency at every speed. */
    static EfficiencyOverSpeed affinity() {
        return new Affinity();
    }

    /** Returns the correlation {@code (1−η)/(1−η₀) = (n₀/n)^0.1}, taken at best efficiency for the whole curve. */
    static EfficiencyOverSpeed correlation() {
        return new Correlation();
    }

    /**
     * Returns the split of the shaft power into a hydraulic part, which goes with the cube of speed, and a mechanical
     * loss, which goes with a lower power of it.
     *
     * @param loss the loss in bearings and seals at the tested speed, commonly 1 to 5 % of rated power
     * @param exponent the power of speed with which it goes, from 1 (constant torque) to 3
     */
    static EfficiencyOverSpeed mechanicalLoss(Power loss, double exponent) {
        return new MechanicalLoss(loss, exponent);
    }

    /**
     * Returns best efficiencies as measured at other speeds, between which it goes on smoothly.
     *
     * @param shares the best efficiency at each share of the tested speed, as a share of the one at the tested speed,
     *     which is 1 there; two at least, and the tested speed among them
     */
    static EfficiencyOverSpeed measured(SortedMap<Ratio, Ratio> shares) {
        return Measured.of(shares);
    }

    /** The affinity laws alone. */
    record Affinity() implements EfficiencyOverSpeed {
        @Override
        public String name() {
            return "unchanged over speed, by the affinity laws alone";
        }

        @Override
        public double shaftWatts(double affinityWatts, double speedRatio, double bestEfficiency) {
            return affinityWatts;
        }
    }

    /**
     * The correlation of Sârbu and Borza.
     *
     * <p>It is taken at best efficiency and scales the whole curve. Taken point by point it would give efficiencies
     * below 0 near shut-off. It was found on pumps slowed to about half speed; assessed by Marchi, Simpson and Ertugrul
     * (2012) and by Simpson and Marchi (2013), who find larger drops on small pumps.
     */
    record Correlation() implements EfficiencyOverSpeed {
        /** The least share of the best efficiency that is left, however slow, so that power stays finite. */
        private static final double LEAST_SHARE = 1e-3;

        private static final FixedPower MINUS_TENTH = FixedPower.of(-0.1);

        @Override
        public String name() {
            return "(1−η)/(1−η₀) = (n₀/n)^0.1 at best efficiency, the whole curve scaled by it (Sârbu and Borza 1998)";
        }

        /** Where the best efficiency comes to nothing: far below any speed at which a pump is run. */
        @Override
        public double slowest(double bestEfficiency) {
            return Math.pow((1 - bestEfficiency) / (1 - LEAST_SHARE * bestEfficiency), 10);
        }

        @Override
        public double shaftWatts(double affinityWatts, double speedRatio, double bestEfficiency) {
            double best = 1 - (1 - bestEfficiency) * MINUS_TENTH.at(speedRatio);
            double least = LEAST_SHARE * bestEfficiency;
            return affinityWatts * bestEfficiency / (best > least ? best : least);
        }

        /** Where all speeds lie in the usual range, in loops without a branch. */
        @Override
        public void replaceAffinity(double[] watts, double[] speedRatios, int count, double bestEfficiency) {
            double slowest = Math.max(InverseTenthRoot.LOW, slowest(bestEfficiency));
            for (int i = 0; i < count; i++) {
                if (!(speedRatios[i] >= slowest && speedRatios[i] <= InverseTenthRoot.HIGH)) {
                    EfficiencyOverSpeed.super.replaceAffinity(watts, speedRatios, count, bestEfficiency);
                    return;
                }
            }
            double lost = 1 - bestEfficiency;
            for (int i = 0; i < count; i++) {
                double best = 1 - lost * InverseTenthRoot.inside(speedRatios[i]);
                watts[i] = watts[i] * bestEfficiency / best;
            }
        }
    }

    /**
     * A mechanical loss apart from the hydraulic part.
     *
     * @param loss the loss at the tested speed
     * @param exponent the power of speed with which it goes
     */
    record MechanicalLoss(Power loss, double exponent) implements EfficiencyOverSpeed {
        /** Refuses with {@code IMPOSSIBLE_LOSS} a negative loss and an exponent outside 1 to 3. */
        public MechanicalLoss {
            if (loss.watts() < 0 || !(exponent >= 1 && exponent <= 3)) {
                throw new Refusal(
                        CurveProblem.IMPOSSIBLE_LOSS,
                        "Asked for a mechanical loss of " + loss + " that goes with speed to the power of " + exponent,
                        "The loss is 0 or more, and the power of speed from 1 to 3",
                        "Use 1 for a constant friction torque and 2 for one that grows with speed");
            }
        }

        @Override
        public boolean scales() {
            return loss.watts() == 0;
        }

        @Override
        public String name() {
            return "mechanical loss of " + loss + " at the tested speed goes with speed to the power of " + exponent
                    + ", the rest with its cube";
        }

        @Override
        public double shaftWatts(double affinityWatts, double speedRatio, double bestEfficiency) {
            double cube = speedRatio * speedRatio * speedRatio;
            return affinityWatts + loss.watts() * (Math.pow(speedRatio, exponent) - cube);
        }
    }

    /**
     * Best efficiencies measured at several speeds; the whole curve is scaled by them.
     *
     * @param shares the best efficiency as a share of that at the tested speed, over the share of the tested speed
     * @param slowest the least measured speed
     * @param fastest the greatest measured speed
     */
    record Measured(MonotoneCubic shares, double slowest, double fastest) implements EfficiencyOverSpeed {
        /** Refuses with {@code IMPOSSIBLE_EFFICIENCIES} shares that are not above 0, or not 1 at the tested speed. */
        static Measured of(SortedMap<Ratio, Ratio> shares) {
            double[] speeds = shares.keySet().stream().mapToDouble(Ratio::value).toArray();
            double[] best = shares.values().stream().mapToDouble(Ratio::value).toArray();
            boolean possible = speeds.length > 1
                    && speeds[0] > 0
                    && DoubleStream.of(best).allMatch(share -> share > 0)
                    && Ratio.of(1).equals(shares.get(Ratio.of(1)));
            if (!possible) {
                throw new Refusal(
                        CurveProblem.IMPOSSIBLE_EFFICIENCIES,
                        "Given measured efficiencies over speed of " + shares,
                        "There must be two or more, all above 0, and the whole at the tested speed",
                        "Give each as a share of the best efficiency at the tested speed");
            }
            return new Measured(MonotoneCubic.through(speeds, best), speeds[0], speeds[speeds.length - 1]);
        }

        @Override
        public String name() {
            return "as measured from " + Ratio.of(slowest) + " to " + Ratio.of(fastest) + " of the tested speed";
        }

        @Override
        public double slowest(double bestEfficiency) {
            return slowest;
        }

        @Override
        public double shaftWatts(double affinityWatts, double speedRatio, double bestEfficiency) {
            return affinityWatts / shares.valueAt(Math.min(Math.max(speedRatio, slowest), fastest));
        }
    }
}
