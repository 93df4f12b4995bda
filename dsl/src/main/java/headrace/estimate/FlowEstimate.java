package headrace.estimate;

import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Flow;
import headrace.units.Head;
import java.util.Comparator;
import java.util.List;

/**
 * What a reading says of flow and head: every flow that it can mean.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Uncertainties are standard ones; what is printed is expanded with k = 2 and says so.
 *   <dt>Limits
 *   <dd>To first order; {@link FlowDraws} says what that leaves out.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code TWO_FLOWS} where one flow is asked for and there are several.
 *   <dt>Source
 *   <dd>JCGM 100:2008.
 * </dl>
 *
 * @param estimator what made it
 * @param reading what was read
 * @param method from what it was made
 * @param roots the flows, increasing, one at least
 * @param notes limits touched
 * @param basis what it rests on
 */
public record FlowEstimate(
        FlowEstimator estimator, Reading reading, Method method, List<FlowRoot> roots, Notes notes, Basis basis)
        implements Traced {
    /** Keeps the roots from changing. */
    public FlowEstimate {
        roots = List.copyOf(roots);
    }

    /**
     * Returns the only flow that the reading can mean.
     *
     * @throws Refusal with {@code TWO_FLOWS} if it can mean several
     */
    public FlowRoot only() {
        if (roots.size() > 1) {
            throw new Refusal(
                    EstimateProblem.TWO_FLOWS,
                    "Asked for the one flow that " + reading + " means",
                    "It can mean " + flows(),
                    toTellApart());
        }
        return roots.get(0);
    }

    private String toTellApart() {
        String near = "ay which flow is near by nearest(flow)";
        return switch (method) {
            case POWER_AND_SPEED, TORQUE_AND_SPEED -> "Read the head too, which tells them apart, or s" + near;
            case HEAD_AND_SPEED -> "Read the power too, which tells them apart, or s" + near;
            case POWER_AND_HEAD, MIX -> "S" + near;
        };
    }

    private String flows() {
        return String.join(
                " or ",
                roots.stream().map(root -> root.flow().value().toString()).toList());
    }

    /** Returns the flow that is nearest one known from elsewhere, such as the flow a moment ago. */
    public FlowRoot nearest(Flow flow) {
        return roots.stream()
                .min(Comparator.comparingDouble(
                        root -> Math.abs(root.flow().value().si() - flow.si())))
                .orElseThrow();
    }

    /** Returns the only flow; refuses as {@link #only()} does. */
    public Flow flow() {
        return only().flow().value();
    }

    /** Returns the head at the only flow; refuses as {@link #only()} does. */
    public Head head() {
        return only().head().value();
    }

    /** Returns the flows with their uncertainties in one line. */
    @Override
    public String toString() {
        return String.join(" or ", roots.stream().map(FlowRoot::toString).toList()) + ", from " + method;
    }
}
