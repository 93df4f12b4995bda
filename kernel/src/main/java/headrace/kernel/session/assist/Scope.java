package headrace.kernel.session.assist;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * What a cell could name beside the words of a script.
 *
 * @param variables the variables of the session with their values
 * @param methods the methods that its cells define, each with its parameters, such as {@code (flow, head)}
 * @param types the classes that cells define or import, by the name under which they are known
 * @param packages the packages whose classes are known by their simple names, each with its last dot
 * @param loader loads them
 * @param folder the folder of the script, in which its files are looked for first
 */
public record Scope(
        Map<String, Object> variables,
        Map<String, String> methods,
        Map<String, String> types,
        Set<String> packages,
        ClassLoader loader,
        Path folder) {
    /** What Groovy imports by itself. */
    private static final List<String> ALWAYS = List.of(
            "java.lang.", "java.util.", "java.io.", "java.net.", "groovy.lang.", "groovy.util.", "headrace.units.");

    /** Returns the class of a name, full or simple, if it is known. Runs no initialiser. */
    Optional<Class<?>> type(String name) {
        if (name.isEmpty() || !name.contains(".") && !Character.isUpperCase(name.charAt(0))) {
            return Optional.empty();
        }
        String full = types.getOrDefault(name, name);
        return load(full)
                .or(() -> packages.stream()
                        .flatMap(each -> load(each + name).stream())
                        .findFirst())
                .or(() -> ALWAYS.stream()
                        .flatMap(each -> load(each + name).stream())
                        .findFirst());
    }

    /** Returns the packages whose classes need no full name. */
    List<String> openPackages() {
        return Stream.concat(packages.stream(), ALWAYS.stream()).toList();
    }

    private Optional<Class<?>> load(String full) {
        try {
            return Optional.of(Class.forName(full, false, loader));
        } catch (ClassNotFoundException | LinkageError e) {
            return Optional.empty();
        }
    }
}
