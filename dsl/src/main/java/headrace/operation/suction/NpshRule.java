package headrace.operation.suction;

import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.units.Head;
import headrace.units.Numbers;

/**
 * How much NPSH must be available beyond what is required: the greater of a multiple and of a head on top.
 *
 * <p>Published advice for water runs from 1.1 to 1.5 times, more for high suction energy (common practice, no source).
 *
 * @param times the multiple, at least 1
 * @param plus the head on top, 0 or more
 * @param stated whether the user stated it
 */
public record NpshRule(double times, Head plus, boolean stated) {
    /** 1.2 times or 1 m more, whichever is greater; an assumption, noted. */
    public static final NpshRule USUAL = new NpshRule(1.2, Head.metres(1), false);

    /** Refuses with {@code IMPOSSIBLE_MARGIN} a rule that asks for less than is required. */
    public NpshRule {
        if (!(times >= 1 && times < Double.POSITIVE_INFINITY) || plus.si() < 0) {
            throw new Refusal(
                    SuctionProblem.IMPOSSIBLE_MARGIN,
                    "Asked for a margin of NPSH of " + Numbers.print(times) + " times or " + plus + " more",
                    "The multiple is at least 1 and the head on top 0 or more",
                    "Common are 1.2 times or 1 m more");
        }
    }

    /** Returns a stated rule. */
    public static NpshRule of(double times, Head plus) {
        return new NpshRule(times, plus, true);
    }

    /** Returns what must be available for what is required, in m. */
    public double neededMetres(double required) {
        return Math.max(times * required, required + plus.metres());
    }

    /** Returns that the rule was assumed, if it was. */
    public Notes notes() {
        return stated
                ? Notes.NONE
                : Notes.NONE.with(
                        SuctionProblem.NPSH_MARGIN_ASSUMED, "No margin of NPSH was stated; " + this + " is assumed");
    }

    @Override
    public String toString() {
        return Numbers.print(times) + " times the NPSH required or " + plus + " more, whichever is greater";
    }
}
