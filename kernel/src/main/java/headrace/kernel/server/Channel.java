package headrace.kernel.server;

/** The ways between the kernel and its front ends. */
enum Channel {
    /** Requests that may take their time, and their replies. */
    SHELL,
    /** Requests that cannot wait for a cell, and their replies. */
    CONTROL,
    /** Questions to the user, and the answers. */
    STDIN,
    /** What every front end hears. */
    IOPUB
}
