package headrace.kernel.session.cell;

import groovy.lang.DelegatingMetaClass;
import groovy.lang.GroovySystem;
import groovy.lang.MetaClass;
import java.util.Set;

/**
 * What the calls that end a process become inside a cell: an error, since the process is not the cell's own.
 *
 * <p>Woven code calls {@link #exit} in their place. Dynamic calls name the method only as they run and are met by the
 * classes' meta classes. The program itself ends as ever, since compiled Java asks neither.
 */
public final class Exits {
    private static final Set<String> NAMES = Set.of("exit", "halt");

    private Exits() {}

    /** Stands in for {@link System#exit(int)}. */
    public static void exit(int status) {
        throw new ExitAsked(status);
    }

    /** Stands in for {@link Runtime#exit(int)} and {@link Runtime#halt(int)}. */
    public static void exit(Runtime runtime, int status) {
        throw new ExitAsked(status);
    }

    /** Guards the dynamic calls, for all sessions of the process. */
    static void guard() {
        guard(System.class);
        guard(Runtime.class);
    }

    private static void guard(Class<?> type) {
        MetaClass guarded = new DelegatingMetaClass(type) {
            @Override
            public Object invokeStaticMethod(Object object, String name, Object[] arguments) {
                refuse(name, arguments);
                return super.invokeStaticMethod(object, name, arguments);
            }

            @Override
            public Object invokeMethod(Object object, String name, Object[] arguments) {
                refuse(name, arguments);
                return super.invokeMethod(object, name, arguments);
            }

            @Override
            @SuppressWarnings("rawtypes") // as Groovy declares it
            public Object invokeMethod(
                    Class sender, Object object, String name, Object[] arguments, boolean toSuper, boolean inside) {
                refuse(name, arguments);
                return super.invokeMethod(sender, object, name, arguments, toSuper, inside);
            }
        };
        guarded.initialize();
        GroovySystem.getMetaClassRegistry().setMetaClass(type, guarded);
    }

    private static void refuse(String name, Object[] arguments) {
        if (NAMES.contains(name) && arguments.length == 1 && arguments[0] instanceof Number status) {
            throw new ExitAsked(status.intValue());
        }
    }
}
