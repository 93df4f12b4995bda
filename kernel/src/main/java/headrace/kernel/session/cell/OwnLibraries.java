package headrace.kernel.session.cell;

import java.util.List;

/** What the kernel uses for itself, and cells do not see: they may bring other versions, and must not lean on ours. */
public final class OwnLibraries {
    private static final List<String> HIDDEN = List.of(
            "com.google.gson.",
            "org.zeromq.",
            "zmq.",
            "com.neilalexander.",
            "picocli.",
            "org.commonmark.",
            "org.jline.");
    private static final String OURS = "headrace.kernel.";

    /** What woven code calls, and the words of cells, which cells see as they run. */
    private static final List<String> NEEDED = List.of("headrace.kernel.session.");

    private OwnLibraries() {}

    /** Returns whether cells do not see a class of this full name. */
    public static boolean hide(String type) {
        return HIDDEN.stream().anyMatch(type::startsWith)
                || type.startsWith(OURS) && NEEDED.stream().noneMatch(type::startsWith);
    }

    /** Returns whether the compiler finds no class in this package, given without its last dot. */
    public static boolean hidePackage(String name) {
        String front = name + ".";
        boolean called = name.equals(OwnLibraries.class.getPackageName());
        return HIDDEN.stream().anyMatch(front::startsWith) || front.startsWith(OURS) && !called;
    }

    /** Returns the classes that another loader knows, but for these. */
    static ClassLoader without(ClassLoader all) {
        return new Rest(all);
    }

    /** Passes on what is not hidden. */
    private static final class Rest extends ClassLoader {
        Rest(ClassLoader all) {
            super(all);
        }

        @Override
        protected Class<?> loadClass(String name, boolean resolve) throws ClassNotFoundException {
            if (hide(name)) {
                throw new ClassNotFoundException(name);
            }
            return super.loadClass(name, resolve);
        }

        @Override
        public java.net.URL getResource(String name) {
            boolean ofClass = name.endsWith(".class");
            return ofClass && hide(name.substring(0, name.length() - 6).replace('/', '.'))
                    ? null
                    : super.getResource(name);
        }
    }
}
