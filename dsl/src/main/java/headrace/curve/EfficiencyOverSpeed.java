package headrace.curve;

import headrace.problem.Refusal;
import headrace.units.Power;

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

    /** Returns the share of the tested speed that the model must stay above. */
    default double slowest(double bestEfficiency) {
        return 0;
    }

    /** Returns the share of the tested speed that the model must not exceed. */
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

        @Override
        public String name() {
            return "(1−η)/(1−η₀) = (n₀/n)^0.1 at best efficiency, the whole curve scaled by it (Sârbu and Borza 1998)";
        }

        /** Where the best efficiency would come to nothing: far below any speed at which a pump is run. */
        @Override
        public double slowest(double bestEfficiency) {
            return Math.pow(1 - bestEfficiency, 10);
        }

        @Override
        public double shaftWatts(double affinityWatts, double speedRatio, double bestEfficiency) {
            double best = 1 - (1 - bestEfficiency) * Math.exp(-0.1 * Math.log(speedRatio));
            return affinityWatts * bestEfficiency / Math.max(best, LEAST_SHARE * bestEfficiency);
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
}
