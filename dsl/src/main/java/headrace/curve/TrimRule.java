package headrace.curve;

import headrace.problem.Refusal;
import headrace.units.Length;
import headrace.units.Numbers;
import headrace.units.Ratio;

/**
 * What becomes of flow and head when the impeller is turned down: a rule, named wherever it is used.
 *
 * <p>Each point of the full diameter moves to {@code flowFactor} times its flow and {@code headFactor} times its head.
 * The rules disagree materially for one duty; a test of the trimmed impeller, or interpolation between tested
 * diameters, is always preferred.
 */
public sealed interface TrimRule {
    /** Returns the rule in words, with its source. */
    String name();

    /** Returns the share of the flow that is left. */
    double flowFactor(Length full, Length trimmed);

    /** Returns the share of the head that is left. */
    double headFactor(Length full, Length trimmed);

    /** Returns the reduction in diameter up to which the rule is held to be valid. */
    Ratio validUpTo();

    /** Returns the rule that takes the diameter like a speed: flow with it, head with its square. */
    static TrimRule radial() {
        return new Radial();
    }

    /**
     * Returns the rule by which flow and head both go with a power of the diameter.
     *
     * @param exponent from 2 to 3: about 3 for the first 5 %, 2 to 2.5 beyond
     */
    static TrimRule exponent(double exponent) {
        return new Exponent(exponent);
    }

    /**
     * Returns the rule of ISO 9906, with the mean diameter of the impeller's inlet.
     *
     * @param inlet the mean diameter of the inlet, below the trimmed diameter
     */
    static TrimRule inlet(Length inlet) {
        return new Inlet(inlet);
    }

    /** The diameter like a speed. */
    record Radial() implements TrimRule {
        @Override
        public String name() {
            return "flow with the diameter, head with its square (radial similarity)";
        }

        @Override
        public double flowFactor(Length full, Length trimmed) {
            return trimmed.over(full).value();
        }

        @Override
        public double headFactor(Length full, Length trimmed) {
            return Math.pow(trimmed.over(full).value(), 2);
        }

        @Override
        public Ratio validUpTo() {
            return Ratio.percent(5);
        }
    }

    /**
     * Flow and head with one power of the diameter.
     *
     * @param exponent the power
     */
    record Exponent(double exponent) implements TrimRule {
        /** Refuses with {@code IMPOSSIBLE_TRIM} a power outside 1 to 4. */
        public Exponent {
            if (!(exponent >= 1 && exponent <= 4)) {
                throw new Refusal(
                        CurveProblem.IMPOSSIBLE_TRIM,
                        "Asked for flow and head to go with the diameter to the power of " + exponent,
                        "Trims have been described by powers from 2 to 3",
                        "Take 3 for up to 5 % off the diameter, and 2 to 2.5 beyond");
            }
        }

        @Override
        public String name() {
            return "flow and head with the diameter to the power of " + Numbers.print(exponent)
                    + " (Gülich, Centrifugal Pumps)";
        }

        @Override
        public double flowFactor(Length full, Length trimmed) {
            return Math.pow(trimmed.over(full).value(), exponent);
        }

        @Override
        public double headFactor(Length full, Length trimmed) {
            return flowFactor(full, trimmed);
        }

        /** A power near 3 describes slight trims, one of 2 to 2.5 those beyond. */
        @Override
        public Ratio validUpTo() {
            return Ratio.percent(exponent > 2.5 ? 5 : 10);
        }
    }

    /**
     * With R² = (D'² − D₁²)/(D² − D₁²) flow goes with R and head with R².
     *
     * @param diameter the mean diameter of the inlet, D₁
     */
    record Inlet(Length diameter) implements TrimRule {
        /** Refuses with {@code IMPOSSIBLE_TRIM} an inlet without a diameter. */
        public Inlet {
            if (diameter.si() <= 0) {
                throw new Refusal(
                        CurveProblem.IMPOSSIBLE_TRIM,
                        "Asked for a trim with an inlet of " + diameter,
                        "The mean diameter of the inlet is above 0",
                        "Take it from the drawing, or choose another rule");
            }
        }

        @Override
        public String name() {
            return "flow and the root of head with (D'² − D₁²)/(D² − D₁²) to the power of ½, D₁ = " + diameter
                    + " (ISO 9906:2012, from a summary)";
        }

        @Override
        public double flowFactor(Length full, Length trimmed) {
            return Math.sqrt(headFactor(full, trimmed));
        }

        @Override
        public double headFactor(Length full, Length trimmed) {
            double inlet = diameter.si() * diameter.si();
            double factor = (trimmed.si() * trimmed.si() - inlet) / (full.si() * full.si() - inlet);
            if (!(factor > 0 && factor <= 1)) {
                throw new Refusal(
                        CurveProblem.IMPOSSIBLE_TRIM,
                        "Asked for a trim from " + full + " to " + trimmed + " with an inlet of " + diameter,
                        "The inlet is smaller than both",
                        "Check the mean diameter of the inlet");
            }
            return factor;
        }

        @Override
        public Ratio validUpTo() {
            return Ratio.percent(5);
        }
    }
}
