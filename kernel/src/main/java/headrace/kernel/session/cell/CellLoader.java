package headrace.kernel.session.cell;

import groovy.lang.GroovyClassLoader;
import java.io.IOException;
import java.net.URL;
import java.security.CodeSource;
import java.util.Arrays;
import java.util.Collections;
import java.util.Enumeration;
import org.codehaus.groovy.control.CompilationFailedException;
import org.codehaus.groovy.control.CompilationUnit;
import org.codehaus.groovy.control.CompilerConfiguration;
import org.codehaus.groovy.runtime.InvokerHelper;

/** Loads the classes of cells. The newest class of a name is the one that later cells see. */
final class CellLoader extends GroovyClassLoader {
    private static final String TRANSFORMATIONS = "META-INF/services/org.codehaus.groovy.transform.ASTTransformation";

    /** Where the compiler of Java puts the classes of cells. */
    private static final String JAVA = "REPL.";

    private final CellNames names;
    private volatile ClassLoader java;

    CellLoader(ClassLoader parent, CompilerConfiguration configuration) {
        super(OwnLibraries.without(parent), configuration);
        names = new CellNames(getParent(), this::ofCells);
    }

    /** Finds the classes of Java cells there from now on. */
    void alsoIn(ClassLoader loader) {
        java = loader;
    }

    @Override
    public Class<?> loadClass(String name, boolean scripts, boolean preferClass, boolean resolve)
            throws ClassNotFoundException, CompilationFailedException {
        return java != null && name.startsWith(JAVA)
                ? java.loadClass(name)
                : super.loadClass(name, scripts, preferClass, resolve);
    }

    /** Returns the newest class of that name that a cell has defined, or null. */
    private Class<?> ofCells(String name) {
        if (java == null || !name.startsWith(JAVA)) {
            return getClassCacheEntry(name);
        }
        try {
            return java.loadClass(name);
        } catch (ClassNotFoundException | LinkageError none) {
            return null;
        }
    }

    @Override
    protected CompilationUnit createCompilationUnit(CompilerConfiguration configuration, CodeSource source) {
        CompilationUnit unit = super.createCompilationUnit(configuration, source);
        unit.setClassNodeResolver(names.resolver());
        return unit;
    }

    /**
     * Finds resources as ever, but none that transforms all cells: Groovy would open and read its jar for each cell to
     * learn of the only one there is, which fetches libraries by a tool that is not here.
     */
    @Override
    public Enumeration<URL> getResources(String name) throws IOException {
        return name.equals(TRANSFORMATIONS) ? Collections.emptyEnumeration() : super.getResources(name);
    }

    /**
     * Lets the class of a cell that has ended be collected, with those of its closures and of classes without a name,
     * unless something still holds them. Groovy's tables would hold each for ever, some 40 kB of heap.
     */
    void forget(Class<?> script) {
        String parts = script.getName() + "$";
        Arrays.stream(getLoadedClasses())
                .filter(each -> each == script || each.getName().startsWith(parts))
                .forEach(each -> {
                    removeClassCacheEntry(each.getName());
                    InvokerHelper.removeClass(each);
                });
    }
}
