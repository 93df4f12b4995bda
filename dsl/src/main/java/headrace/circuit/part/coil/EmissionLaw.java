package headrace.circuit.part.coil;

import headrace.circuit.part.PartProblem;
import headrace.problem.Refusal;
import headrace.units.Ratio;

/**
 * How the heat of an emitter goes with its flow, with one number: {@code L = q/(q + a·(1 − q))}, and back {@code q =
 * a·L/(1 − L + a·L)}, both as shares of design.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Shares from 0 to 1.
 *   <dt>Limits
 *   <dd>{@code a} above 0 and 1 at most: 1 is a straight line, 0.3 to 0.7 are usual. Shares from 0 to 1. Supply
 *       temperature and air flow stay as at design.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_PART}.
 *   <dt>Source
 *   <dd>Textbook form; the range of {@code a} is common practice, no source.
 * </dl>
 *
 * @param a the one number
 */
public record EmissionLaw(double a) {
    /** Refuses what cannot be. */
    public EmissionLaw {
        if (!(a > 0 && a <= 1)) {
            throw new Refusal(
                    PartProblem.IMPOSSIBLE_PART,
                    "Asked for an emission law with a = " + a,
                    "It is above 0 and 1 at most; 1 is a straight line, 0.3 to 0.7 are usual",
                    "Use about 0.4 for a coil without further knowledge");
        }
    }

    /** Returns the share of design heat at a share of design flow. */
    public Ratio heatAt(Ratio flow) {
        double q = share(flow, "flow");
        return Ratio.of(q / (q + a * (1 - q)));
    }

    /** Returns the share of design flow that gives a share of design heat. */
    public Ratio flowFor(Ratio heat) {
        double load = share(heat, "heat");
        return Ratio.of(a * load / (1 - load + a * load));
    }

    private double share(Ratio given, String what) {
        if (given.si() >= 0 && given.si() <= 1) {
            return given.si();
        }
        throw new Refusal(
                PartProblem.IMPOSSIBLE_PART,
                "Asked for an emission law at " + given + " of design " + what,
                "It holds from 0 to 100 %",
                "Use a coil by effectiveness for flows above design");
    }
}
