package headrace.kernel.session.java;

import headrace.kernel.session.cell.Weaver;
import headrace.script.java.JavaWords;
import java.lang.instrument.ClassDefinition;
import java.lang.instrument.Instrumentation;
import java.lang.instrument.UnmodifiableClassException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import jdk.jshell.spi.ExecutionControl.ClassBytecodes;

/** The classes of Java cells, each woven so that it can be stopped. */
final class LiveClasses extends ClassLoader {
    /** The package of what the shell compiles. */
    static final String PACKAGE = "REPL.";

    private final Map<String, byte[]> bytecode = new ConcurrentHashMap<>();

    /** Creates a loader that knows the words, and the classes of Groovy cells through its parent. */
    LiveClasses(ClassLoader groovy) {
        super(groovy);
        bytecode.put(JavaWords.NAME, JavaWords.bytecode());
    }

    /** Returns the class of the words. */
    Map<String, byte[]> words() {
        return Map.of(JavaWords.NAME, bytecode.get(JavaWords.NAME));
    }

    void add(ClassBytecodes... compiled) {
        for (ClassBytecodes each : compiled) {
            bytecode.put(each.name(), Weaver.weave(each.bytecodes()));
        }
    }

    /**
     * Changes what loaded classes do, their objects staying as they are.
     *
     * @return whether that was possible: the members of a class cannot change
     */
    boolean redefine(ClassBytecodes... compiled) {
        List<ClassDefinition> loaded = new ArrayList<>();
        for (ClassBytecodes each : compiled) {
            Class<?> known = findLoadedClass(each.name());
            if (known != null) {
                loaded.add(new ClassDefinition(known, Weaver.weave(each.bytecodes())));
            }
        }
        if (!loaded.isEmpty() && !redefined(loaded.toArray(ClassDefinition[]::new))) {
            return false;
        }
        add(compiled);
        return true;
    }

    private static boolean redefined(ClassDefinition... definitions) {
        Optional<Instrumentation> changing = Redefining.instrumentation();
        try {
            if (changing.isPresent()) {
                changing.get().redefineClasses(definitions);
            }
            return changing.isPresent();
        } catch (UnsupportedOperationException | ClassNotFoundException | UnmodifiableClassException | LinkageError e) {
            return false;
        }
    }

    @Override
    protected Class<?> loadClass(String name, boolean resolve) throws ClassNotFoundException {
        if (!name.startsWith(PACKAGE) && !name.equals(JavaWords.NAME)) {
            return super.loadClass(name, resolve);
        }
        synchronized (getClassLoadingLock(name)) {
            Class<?> known = findLoadedClass(name);
            byte[] compiled = bytecode.get(name);
            if (known == null && compiled == null) {
                throw new ClassNotFoundException(name);
            }
            return known == null ? defineClass(name, compiled, 0, compiled.length) : known;
        }
    }
}
