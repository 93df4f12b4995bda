package headrace.kernel.server;

import headrace.problem.Problem;

/** What can keep the kernel from serving. */
public enum ServerProblem implements Problem {
    /** The kernel cannot listen at a port, most often because another program does. */
    PORT_TAKEN
}
