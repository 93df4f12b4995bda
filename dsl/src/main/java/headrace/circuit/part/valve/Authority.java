package headrace.circuit.part.valve;

import headrace.circuit.part.PartProblem;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.units.Head;
import headrace.units.Numbers;
import headrace.units.Ratio;

/**
 * How much of a circuit's head its control valve has in hand, by the two definitions that go by one name in the trade:
 *
 * <ul>
 *   <li>design authority: the head of the open valve at design flow, over that of the whole controlled circuit at
 *       design flow;
 *   <li>effective authority: the same head of the open valve, over what stands across the controlled circuit with the
 *       valve shut, in the state in which the pump then runs.
 * </ul>
 *
 * <p>The first is a matter of sizes only; the second changes with the control law, since a pump that holds its head at
 * part load puts more across a shut valve.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Heads in metres of the liquid.
 *   <dt>Limits
 *   <dd>The design authority is above 0 and 1 at most. The effective one is above 1 where the head across the circuit
 *       falls below what the open valve takes at design.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_AUTHORITY}.
 *   <dt>Source
 *   <dd>Textbook knowledge. That 0.3 to 0.5 is good and less than 0.25 is low: common practice, no source.
 * </dl>
 *
 * @param design the design authority
 * @param effective the effective authority
 */
public record Authority(Ratio design, Ratio effective) {
    /** Below this a valve hardly controls. */
    public static final double LOW = 0.25;

    /**
     * Returns both authorities of a valve.
     *
     * @param openValve the head of the open valve at design flow
     * @param circuit the head of the controlled circuit at design flow, its valve open
     * @param shut the head across the controlled circuit with the valve shut
     */
    public static Authority of(Head openValve, Head circuit, Head shut) {
        if (!(openValve.si() > 0 && circuit.compareTo(openValve) >= 0 && shut.si() > 0)) {
            throw new Refusal(
                    PartProblem.IMPOSSIBLE_AUTHORITY,
                    "Asked for the authority of a valve that takes " + openValve + " of " + circuit
                            + " at design, with " + shut + " across its circuit when it is shut",
                    "All three are above 0, and the valve takes no more than its circuit",
                    "Check that they are of one circuit");
        }
        return new Authority(Ratio.of(openValve.si() / circuit.si()), Ratio.of(openValve.si() / shut.si()));
    }

    /** Returns what is to be said of either. */
    public Notes notes() {
        Notes notes = design.si() < LOW ? low("design", design) : Notes.NONE;
        return effective.si() < LOW ? notes.and(low("effective", effective)) : notes;
    }

    private static Notes low(String which, Ratio authority) {
        return Notes.NONE.with(
                PartProblem.LOW_AUTHORITY,
                "The " + which + " authority is " + Numbers.print(authority.si()) + ", below " + LOW);
    }

    @Override
    public String toString() {
        return "design authority " + Numbers.print(design.si()) + ", effective authority "
                + Numbers.print(effective.si());
    }
}
