package headrace.kernel.session.java;

import headrace.kernel.session.cell.OwnLibraries;
import java.io.ByteArrayInputStream;
import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import javax.tools.ForwardingJavaFileManager;
import javax.tools.JavaFileObject;
import javax.tools.JavaFileObject.Kind;
import javax.tools.SimpleJavaFileObject;
import javax.tools.StandardJavaFileManager;
import javax.tools.StandardLocation;

/** What the compiler of Java finds: the class path without the kernel's own libraries, and classes that live here. */
final class LiveFiles extends ForwardingJavaFileManager<StandardJavaFileManager> implements StandardJavaFileManager {
    private final Supplier<Map<String, byte[]>> live;

    /**
     * Creates the view.
     *
     * @param live answers with the classes that are in no file, by their full names
     */
    LiveFiles(StandardJavaFileManager all, Supplier<Map<String, byte[]>> live) {
        super(all);
        this.live = live;
    }

    /** A class that is in no file. */
    private static final class LiveClass extends SimpleJavaFileObject {
        private final String type;
        private final byte[] bytecode;

        LiveClass(String type, byte[] bytecode) {
            super(URI.create("live:///" + type.replace('.', '/').replace("$", "%24") + ".class"), Kind.CLASS);
            this.type = type;
            this.bytecode = bytecode;
        }

        @Override
        public InputStream openInputStream() {
            return new ByteArrayInputStream(bytecode);
        }
    }

    @Override
    public Iterable<JavaFileObject> list(Location location, String packageName, Set<Kind> kinds, boolean deep)
            throws IOException {
        if (location != StandardLocation.CLASS_PATH) {
            return super.list(location, packageName, kinds, deep);
        }
        if (OwnLibraries.hidePackage(packageName)) {
            return List.of();
        }
        List<JavaFileObject> found = new ArrayList<>();
        super.list(location, packageName, kinds, deep).forEach(found::add);
        if (kinds.contains(Kind.CLASS)) {
            live.get().forEach((type, bytecode) -> {
                int dot = type.lastIndexOf('.');
                if (dot == packageName.length() && type.startsWith(packageName)) {
                    found.add(new LiveClass(type, bytecode));
                }
            });
        }
        return found;
    }

    @Override
    public String inferBinaryName(Location location, JavaFileObject file) {
        return file instanceof LiveClass known ? known.type : super.inferBinaryName(location, file);
    }

    @Override
    public Iterable<? extends JavaFileObject> getJavaFileObjectsFromFiles(Iterable<? extends File> files) {
        return fileManager.getJavaFileObjectsFromFiles(files);
    }

    @Override
    public Iterable<? extends JavaFileObject> getJavaFileObjects(File... files) {
        return fileManager.getJavaFileObjects(files);
    }

    @Override
    public Iterable<? extends JavaFileObject> getJavaFileObjectsFromStrings(Iterable<String> names) {
        return fileManager.getJavaFileObjectsFromStrings(names);
    }

    @Override
    public Iterable<? extends JavaFileObject> getJavaFileObjects(String... names) {
        return fileManager.getJavaFileObjects(names);
    }

    @Override
    public void setLocation(Location location, Iterable<? extends File> files) throws IOException {
        fileManager.setLocation(location, files);
    }

    @Override
    public Iterable<? extends File> getLocation(Location location) {
        return fileManager.getLocation(location);
    }
}
