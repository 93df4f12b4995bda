package headrace.problem;

import java.util.Locale;

/**
 * A named way in which a calculation can be refused, or a result can carry a note.
 *
 * <p>Implemented by one enum in each package that raises problems. Each constant has a section of its own in
 * {@code docs/troubleshooting.md}, found by its {@link #anchor()}, and its name is unique in the whole project.
 */
public interface Problem {
    /** Returns the constant's name, such as {@code FLOW_OUT_OF_RANGE}. */
    String name();

    /** Returns the section of the troubleshooting page, such as {@code flow-out-of-range}. */
    default String anchor() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
