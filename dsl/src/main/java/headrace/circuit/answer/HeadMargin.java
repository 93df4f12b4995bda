package headrace.circuit.answer;

import headrace.problem.Notes;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Head;
import headrace.units.Ratio;

/**
 * What a circuit needs beside the head that was specified for it.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Heads of the liquid at the pump.
 *   <dt>Limits
 *   <dd>As {@link HeadNeed}.
 *   <dt>Errors
 *   <dd>None of its own.
 *   <dt>Source
 *   <dd>Hand calculation.
 * </dl>
 *
 * @param need what it needs
 * @param specified what was specified
 */
public record HeadMargin(HeadNeed need, Head specified) implements Traced {
    /** Returns what was specified beyond the need; below 0 where it is too little. */
    public Head head() {
        return specified.minus(need.head());
    }

    /** Returns it as a share of the need. */
    public Ratio share() {
        return Ratio.of(head().si() / need.head().si());
    }

    /** Says it. */
    public String sentence() {
        String needs = "The circuit needs " + need.head() + " for " + need.flow() + ", decided by '" + need.index()
                + "'; specified were " + specified;
        if (head().si() >= 0) {
            return needs + ", " + head() + " or " + share() + " more than it needs";
        }
        return needs + ", " + Head.metres(-head().metres()) + " or " + Ratio.of(-share().value())
                + " less than it needs";
    }

    @Override
    public Notes notes() {
        return need.notes();
    }

    @Override
    public Basis basis() {
        return need.basis();
    }

    @Override
    public String toString() {
        return sentence();
    }
}
