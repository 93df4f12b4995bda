package headrace.kernel.session.cell;

import groovy.lang.GroovyClassLoader;
import java.util.Arrays;
import org.codehaus.groovy.control.CompilationFailedException;
import org.codehaus.groovy.control.CompilerConfiguration;
import org.codehaus.groovy.runtime.InvokerHelper;

/** Loads the classes of cells. The newest class of a name is the one that later cells see. */
final class CellLoader extends GroovyClassLoader {
    /** Where the compiler of Java puts the classes of cells. */
    private static final String JAVA = "REPL.";

    private volatile ClassLoader java;

    CellLoader(ClassLoader parent, CompilerConfiguration configuration) {
        super(OwnLibraries.without(parent), configuration);
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
