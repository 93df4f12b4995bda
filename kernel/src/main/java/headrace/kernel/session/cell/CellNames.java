package headrace.kernel.session.cell;

import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import org.codehaus.groovy.ast.ClassHelper;
import org.codehaus.groovy.ast.ClassNode;
import org.codehaus.groovy.control.ClassNodeResolver;
import org.codehaus.groovy.control.CompilationUnit;

/**
 * Finds the classes that a cell names: the newest of the user's, then those of the program.
 *
 * <p>What the program has, and above all what it has not, is remembered from cell to cell. Groovy asks for a class of
 * some fifty names in every cell, most of which are none, and each such question would go through all jars.
 */
final class CellNames {
    /** More names than a long session asks for; beyond, all are asked for anew. */
    private static final int REMEMBERED = 20_000;

    private final Map<String, Optional<ClassNode>> known = new ConcurrentHashMap<>();
    private final ClassLoader program;
    private final Function<String, Class<?>> defined;

    /**
     * Creates names.
     *
     * @param program loads the classes that are there before the first cell
     * @param defined gives the newest class of that name that a cell has defined, or null
     */
    CellNames(ClassLoader program, Function<String, Class<?>> defined) {
        this.program = program;
        this.defined = defined;
    }

    /** Returns what finds the classes for one cell. */
    ClassNodeResolver resolver() {
        return new ClassNodeResolver() {
            @Override
            public LookupResult findClassNode(String name, CompilationUnit unit) {
                ClassNode found = find(name);
                return found == null ? null : new LookupResult(null, found);
            }
        };
    }

    private ClassNode find(String name) {
        Class<?> own = defined.apply(name);
        if (own != null) {
            return ClassHelper.make(own);
        }
        if (known.size() > REMEMBERED) {
            known.clear();
        }
        return known.computeIfAbsent(name, this::ofProgram).orElse(null);
    }

    private Optional<ClassNode> ofProgram(String name) {
        try {
            return Optional.of(ClassHelper.make(Class.forName(name, false, program)));
        } catch (ClassNotFoundException | LinkageError none) { // on some systems Foo also finds foo.class, in vain
            return Optional.empty();
        }
    }
}
