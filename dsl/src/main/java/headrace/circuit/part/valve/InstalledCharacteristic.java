package headrace.circuit.part.valve;

import headrace.circuit.part.PartProblem;
import headrace.problem.Refusal;
import headrace.units.Numbers;
import headrace.units.Ratio;

/**
 * How the flow of a circuit goes with the stroke of its valve where the head across the circuit stays as it is:
 * {@code q = 1/√(1 − N + N/κ²)}.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Openings as shares of the stroke, flows as shares of that with the valve fully open.
 *   <dt>Limits
 *   <dd>An authority above 0 and 1 at most; the rest of the circuit takes head with the square of flow.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_AUTHORITY}.
 *   <dt>Source
 *   <dd>Textbook knowledge; hand calculation from {@code h = r·Q²} of valve and rest.
 * </dl>
 *
 * @param characteristic that of the valve
 * @param authority {@code N}, the head of the open valve over that across the circuit
 */
public record InstalledCharacteristic(Characteristic characteristic, Ratio authority) {
    /** Refuses an authority that cannot be. */
    public InstalledCharacteristic {
        if (!(authority.si() > 0 && authority.si() <= 1)) {
            throw new Refusal(
                    PartProblem.IMPOSSIBLE_AUTHORITY,
                    "Asked for an installed characteristic with an authority of " + authority,
                    "It is above 0 and 100 % at most where the head across the circuit is constant",
                    "Use the head of the open valve over the head across the whole circuit");
        }
    }

    /** Returns the flow, as a share of that with the valve open, at an opening. */
    public Ratio flowAt(Ratio opening) {
        double kappa = characteristic.shareAt(opening.si());
        double n = authority.si();
        return Ratio.of(kappa / Math.sqrt((1 - n) * kappa * kappa + n));
    }

    /** Returns the opening at which the circuit has a share of the flow with the valve open, from 0 to 1. */
    public Ratio openingFor(Ratio flow) {
        double q = Math.min(1, Math.max(0, flow.si()));
        double n = authority.si();
        return Ratio.of(characteristic.openingAt(q * Math.sqrt(n / (1 - (1 - n) * q * q))));
    }

    @Override
    public String toString() {
        return characteristic + " at an authority of " + Numbers.print(authority.si());
    }
}
