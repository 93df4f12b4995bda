package headrace.economics;

import headrace.problem.Refusal;
import headrace.units.Ratio;
import java.util.List;
import java.util.stream.Collectors;

/**
 * What is left of a calculated saving in a real building, reason by reason.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Each reason keeps a share of the saving; the shares multiply.
 *   <dt>Limits
 *   <dd>Shares from 0 to 100 %.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_TERM}.
 *   <dt>Source
 *   <dd>That actual savings of variable flow are often about 40 % of the ideal ones, for bypasses, the place of the
 *       sensor and its set point: Gopalakrishnan and Kissock, University of Dayton, in an ACEEE paper (abstract read).
 *       Shares of single reasons are the user's.
 * </dl>
 *
 * @param reasons the reasons, none for a saving that comes in full
 */
public record Realisation(List<Reason> reasons) {
    /** Nothing is lost. */
    public static final Realisation FULL = new Realisation(List.of());

    /** What the field study found. */
    public static final Realisation FIELD_STUDY = new Realisation(List.of(new Reason(
            "bypasses, place and set point of the sensor (Gopalakrishnan and Kissock, University of Dayton, ACEEE)",
            Ratio.percent(40))));

    /**
     * A reason why a part of the saving does not come.
     *
     * @param why the reason in words
     * @param kept the share of the saving that is left
     */
    public record Reason(String why, Ratio kept) {
        /** Refuses a share outside 0 to 100 %. */
        public Reason {
            if (kept.value() < 0 || kept.value() > 1) {
                throw new Refusal(
                        EconomicsProblem.IMPOSSIBLE_TERM,
                        "Asked to keep " + kept + " of a saving for '" + why + "'",
                        "A reason keeps 0 to 100 % of the saving",
                        "State what is left of the saving, not what is lost");
            }
        }

        @Override
        public String toString() {
            return why + " keeps " + kept;
        }
    }

    /** Keeps the reasons from changing. */
    public Realisation {
        reasons = List.copyOf(reasons);
    }

    /** Returns the share of the calculated saving that is counted. */
    public Ratio share() {
        return Ratio.of(
                reasons.stream().mapToDouble(reason -> reason.kept().value()).reduce(1, (a, b) -> a * b));
    }

    @Override
    public String toString() {
        return reasons.isEmpty()
                ? "the saving in full"
                : share() + " of the saving: "
                        + reasons.stream().map(Reason::toString).collect(Collectors.joining("; "));
    }
}
