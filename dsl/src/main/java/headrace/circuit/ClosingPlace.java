package headrace.circuit;

import headrace.circuit.solve.ClosingLaw;
import java.util.OptionalDouble;

/** Where a closing finds the branches and junctions of a circuit by name. */
public interface ClosingPlace {
    /**
     * Returns the link of a branch.
     *
     * @throws headrace.problem.Refusal with {@code UNKNOWN_BRANCH}
     */
    int link(String branch);

    /**
     * Returns the node of a junction.
     *
     * @throws headrace.problem.Refusal with {@code UNKNOWN_JUNCTION}
     */
    int node(String junction);

    /**
     * Returns the stroke at which the valve of a branch stands.
     *
     * @param link the link of the branch
     * @param cubicMetresPerSecond the flow in it
     * @param available the head across it in m
     * @return the stroke from 0 to 1, or nothing if it has no valve
     */
    OptionalDouble opening(int link, double cubicMetresPerSecond, double available);

    /** Returns the law of the least head at which all demands are met with no valve further open than a stroke. */
    ClosingLaw neediestValve(double opening);

    /**
     * Returns the law of the least head at which all but some demands are met with no valve further open than a stroke.
     */
    ClosingLaw needierThan(double opening, int ignored);
}
