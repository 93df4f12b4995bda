package headrace.circuit;

import headrace.circuit.solve.ClosingLaw;

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

    /** Returns the law of the least head at which all demands are met with no valve further open than a stroke. */
    ClosingLaw neediestValve(double opening);
}
