package headrace.kernel.install;

import java.util.List;
import java.util.stream.Collectors;

/**
 * What Java's costly second compiler is to leave alone: the code that reads and compiles cells, loads classes and
 * carries messages.
 *
 * <p>Such code is busy for the first second of a kernel and hardly afterwards. On two processors the second compiler
 * takes away as much time as all the rest of a start needs, and gives nothing back. The calculations, the user's own
 * classes, the libraries they use and what Groovy does while they run are compiled as ever.
 */
final class LightlyCompiled {
    private static final List<String> PACKAGES = List.of(
            "org/codehaus/groovy/antlr",
            "org/codehaus/groovy/ast",
            "org/codehaus/groovy/classgen",
            "org/codehaus/groovy/control",
            "org/codehaus/groovy/syntax",
            "org/codehaus/groovy/transform",
            "org/apache/groovy/ast",
            "org/apache/groovy/parser",
            "groovyjarjarantlr4",
            "groovyjarjarasm",
            "headrace/kernel/server",
            "headrace/kernel/wire",
            "com/google/gson",
            "org/zeromq",
            "zmq",
            "java/lang/module",
            "java/util/jar",
            "java/util/zip",
            "jdk/internal/jimage",
            "jdk/internal/jrtfs",
            "jdk/internal/loader",
            "jdk/internal/module",
            "jdk/internal/org",
            "jdk/internal/perf",
            "jdk/nio/zipfs");

    private LightlyCompiled() {}

    /** Returns the directives as Java reads them. */
    static String directives() {
        return PACKAGES.stream()
                .map(each -> "\"" + each + "/*.*\"")
                .collect(Collectors.joining(",\n  ", "[{\n match: [\n  ", "],\n c2: { Exclude: true }\n}]\n"));
    }
}
