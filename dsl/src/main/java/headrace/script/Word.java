package headrace.script;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * Makes a public static method a word of a script: it can be called by its bare name, is completed, and explains
 * itself.
 *
 * <p>Choices by name arrive as the first parameter, a {@code Map<String, ?>}; {@link #choices()} says which there are.
 */
@Target(ElementType.METHOD)
@Retention(RetentionPolicy.RUNTIME)
public @interface Word {
    /** In place of a choice's name: the script names as many as it likes, as it likes. */
    String ANY_NAME = "anyName";

    /** What the word does, with units and limits, in one or two sentences. */
    String help();

    /** A line that a reader could type. */
    String example();

    /** The named choices, each as {@code name: what it is, its unit and its default}. */
    String[] choices() default {};
}
