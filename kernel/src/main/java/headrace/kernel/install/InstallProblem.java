package headrace.kernel.install;

import headrace.problem.Problem;

/** What can keep the kernel from being made known. */
public enum InstallProblem implements Problem {
    /** The folder in which front ends look for kernels cannot be written. */
    KERNELS_NOT_WRITABLE
}
