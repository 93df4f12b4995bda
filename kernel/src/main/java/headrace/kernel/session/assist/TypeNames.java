package headrace.kernel.session.assist;

import headrace.kernel.session.cell.OwnLibraries;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.file.DirectoryStream;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import java.util.zip.ZipFile;

/** The packages and classes that an import could name: those of the JDK and those on the class path. */
final class TypeNames {
    private static final Map<String, Set<String>> OF_PACKAGE = new ConcurrentHashMap<>();
    private static volatile Map<String, Set<String>> onClassPath;

    private TypeNames() {}

    /** Returns the simple names of the classes of a package, given without its last dot. */
    static Set<String> inPackage(String name) {
        return OF_PACKAGE.computeIfAbsent(name, each -> {
            Set<String> all = new TreeSet<>(ofJdk(each));
            all.addAll(classPath().getOrDefault(each, Set.of()));
            return all;
        });
    }

    /**
     * Returns the names that can follow in a package's name, such as {@code util} and {@code lang} after {@code java}.
     */
    static Set<String> packagesUnder(String name) {
        String front = name.isEmpty() ? "" : name + ".";
        Stream<String> ofJdk = ModuleLayer.boot().modules().stream()
                .flatMap(module -> module.getPackages().stream().filter(module::isExported));
        Set<String> next = new TreeSet<>();
        Stream.concat(ofJdk, classPath().keySet().stream())
                .filter(each -> each.startsWith(front))
                .map(each -> each.substring(front.length()).split("\\.", 2)[0])
                .filter(each -> !each.isEmpty())
                .forEach(next::add);
        return next;
    }

    private static Set<String> ofJdk(String name) {
        Set<String> found = new TreeSet<>();
        FileSystem jdk = FileSystems.getFileSystem(URI.create("jrt:/"));
        ModuleLayer.boot().modules().stream()
                .filter(module -> module.isExported(name))
                .map(module -> jdk.getPath("modules", module.getName()).resolve(name.replace('.', '/')))
                .filter(Files::isDirectory)
                .forEach(folder -> list(folder, found));
        return found;
    }

    private static void list(Path folder, Set<String> into) {
        try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, "*.class")) {
            files.forEach(file -> add(file.getFileName().toString(), into));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Takes the class of a file, unless it is inside of another or only describes its package. */
    private static void add(String file, Set<String> into) {
        String simple = file.substring(0, file.length() - ".class".length());
        if (!simple.contains("$") && !simple.contains("-")) {
            into.add(simple);
        }
    }

    private static Map<String, Set<String>> classPath() {
        if (onClassPath == null) {
            Map<String, Set<String>> found = new HashMap<>();
            for (String entry : System.getProperty("java.class.path").split(java.io.File.pathSeparator)) {
                try {
                    read(Path.of(entry), found);
                } catch (IOException | RuntimeException e) {
                    // An entry that cannot be read holds nothing that could be imported.
                    continue;
                }
            }
            onClassPath = Collections.unmodifiableMap(new TreeMap<>(found));
        }
        return onClassPath;
    }

    private static void read(Path entry, Map<String, Set<String>> into) throws IOException {
        if (Files.isDirectory(entry)) {
            try (Stream<Path> files = Files.walk(entry)) {
                files.sorted(Comparator.naturalOrder())
                        .map(file -> entry.relativize(file).toString().replace('\\', '/'))
                        .forEach(name -> file(name, into));
            }
        } else if (Files.isRegularFile(entry)) {
            try (ZipFile jar = new ZipFile(entry.toFile())) {
                jar.stream().forEach(each -> file(each.getName(), into));
            }
        }
    }

    private static void file(String name, Map<String, Set<String>> into) {
        int slash = name.lastIndexOf('/');
        boolean internal = name.startsWith("META-INF") || name.contains("jarjar");
        if (slash > 0 && name.endsWith(".class") && !internal) {
            String folder = name.substring(0, slash).replace('/', '.');
            if (OwnLibraries.hidePackage(folder)) {
                return;
            }
            add(name.substring(slash + 1), into.computeIfAbsent(folder, each -> new TreeSet<>()));
        }
    }
}
