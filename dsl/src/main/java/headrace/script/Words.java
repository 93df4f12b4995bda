package headrace.script;

/**
 * The words of one subject: a class of public static methods marked {@link Word}.
 *
 * <p>It registers itself by its line in {@code META-INF/services/headrace.script.Words}.
 */
public interface Words {
    /** Returns the subject as a heading of the help, such as {@code Pump curves}. */
    String subject();
}
