package headrace.kernel.session.java;

import java.util.List;

/** A Java method or class was used that names what is not defined yet. */
public final class UnfinishedCode extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final String name;
    private final transient List<String> missing;

    UnfinishedCode(String name, List<String> missing, StackTraceElement... frames) {
        super(name + " needs " + String.join(" and ", missing));
        this.name = name;
        this.missing = List.copyOf(missing);
        setStackTrace(frames);
    }

    /** Returns what was used. */
    public String name() {
        return name;
    }

    /** Returns what it names. */
    public List<String> missing() {
        return missing;
    }
}
