package headrace.kernel.wire;

import headrace.problem.Problem;

/** What can be wrong with the file that a front end hands to the kernel. */
public enum WireProblem implements Problem {
    /** The connection file is missing, or is no connection file. */
    UNREADABLE_CONNECTION_FILE,
    /** The connection file asks for a transport that this kernel does not speak. */
    UNSUPPORTED_TRANSPORT,
    /** The connection file asks for a signature that this kernel cannot make. */
    UNSUPPORTED_SIGNATURE
}
