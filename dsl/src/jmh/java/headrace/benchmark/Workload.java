package headrace.benchmark;

import java.util.Map;

/** A fixed amount of work, ready to be done: what a call does is what is timed. */
interface Workload {
    /** Returns the name under which it is compared. */
    String name();

    /** Does the work once. */
    void call();

    /** Returns how often one timing repeats a short call. */
    default int inner() {
        return 1;
    }

    /** Returns the results of the last call by name: numbers, or arrays of them. */
    Map<String, Object> outputs();
}
