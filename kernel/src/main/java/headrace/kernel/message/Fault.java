package headrace.kernel.message;

import java.util.List;

/**
 * What a failed request carries, in its reply and as it is published.
 *
 * @param name {@code ename}: a short name of the kind of error
 * @param value {@code evalue}: the message
 * @param traceback what a front end shows, a line each
 */
public record Fault(String name, String value, List<String> traceback) {
    /** Keeps the lines from changing. */
    public Fault {
        traceback = List.copyOf(traceback);
    }

    /** Returns a fault of one line. */
    public static Fault of(String name, String value) {
        return new Fault(name, value, List.of(name + ": " + value));
    }
}
