package headrace.circuit.part;

import headrace.liquid.Liquid;
import headrace.problem.Notes;
import headrace.record.Basis;
import headrace.units.Flow;
import headrace.units.Head;

/**
 * Something that the liquid passes through: a pipe, a fitting, a valve, a coil. Parts in a row make a branch.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Quantities in the values; the law is in SI.
 *   <dt>Limits
 *   <dd>Each part says its own when it is made.
 *   <dt>Errors
 *   <dd>{@link headrace.problem.Refusal} with the part's own name.
 *   <dt>Source
 *   <dd>Each part its own.
 * </dl>
 */
public interface Part {
    /** Returns the name by which results and refusals speak of it. */
    String name();

    /** Returns the head that it loses in a liquid; of a valve that throttles, when it stands fully open. */
    LinkLaw in(Liquid liquid);

    /** Returns which way it lets the liquid pass. */
    default Passage passage() {
        return Passage.BOTH_WAYS;
    }

    /** Returns what has to be said about it when it stands in a liquid. */
    default Notes notes(Liquid liquid) {
        return Notes.NONE;
    }

    /** Returns what has to be said about it at a flow in a liquid: a velocity, a limit of its formula. */
    default Notes notesAt(Flow flow, Liquid liquid) {
        return Notes.NONE;
    }

    /** Returns where its numbers come from, beyond what is given in it. */
    default Basis basis() {
        return Basis.NONE;
    }

    /** Returns the head that it loses at a flow in a liquid. */
    default Head headAt(Flow flow, Liquid liquid) {
        return Head.metres(in(liquid).headMetres(flow.si()));
    }
}
