package headrace.kernel.history;

import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import java.util.function.Consumer;

/**
 * The cells of this session and of those before it, kept for the sessions to come.
 *
 * <p>Each session writes a file of its own, named by its number, so that kernels that run at once cannot spoil each
 * other's. The file is made with the first cell. The oldest files go when there are too many or they are too large.
 * What cannot be read is passed over, and what cannot be written is not: no cell fails for its place in a history.
 */
public final class History implements AutoCloseable {
    private static final String ENDING = ".cells";
    private static final int MOST_SESSIONS = 200;
    private static final long MOST_BYTES = 16L << 20;
    private static final long MOST_BYTES_OF_A_SESSION = 2L << 20;

    private final Path folder;
    private final Consumer<String> complaints;
    private int number;
    private Writer out;
    private long written;
    private boolean closed;
    private boolean secretive;

    private History(Path folder, Consumer<String> complaints) {
        this.folder = folder;
        this.complaints = complaints;
        closed = folder == null;
    }

    /**
     * Keeps cells in a folder, which is made when it is needed.
     *
     * @param complaints hears once what keeps cells from being kept
     */
    public static History in(Path folder, Consumer<String> complaints) {
        return new History(folder, complaints);
    }

    /** Keeps nothing beyond the session, which has the number 1. */
    public static History none() {
        return new History(null, complaint -> {});
    }

    /** Returns the number of this session. */
    public synchronized int session() {
        return number > 0 ? number : 1 + files().keySet().stream().reduce(0, Math::max);
    }

    /**
     * Keeps a cell.
     *
     * @param count its number in the session
     * @param result its result as plain text, or empty
     */
    public synchronized void keep(int count, String code, String result) {
        if (closed) {
            return;
        }
        try {
            String line = CellLine.of(count, code, secretive ? "" : result);
            written += line.length();
            if (written > MOST_BYTES_OF_A_SESSION) {
                close();
                return;
            }
            if (out == null) {
                out = begin();
            }
            out.write(line);
            out.flush();
        } catch (IOException | RuntimeException failed) {
            complaints.accept("Cells are not kept for later sessions: " + failed);
            close();
        }
    }

    /** Hears that a cell has asked for something secret. No result is kept from here on, since it might show it. */
    public synchronized void secretAsked() {
        secretive = true;
    }

    /** Returns the cells of the sessions before this one, oldest first. */
    public synchronized List<PastCell> earlier() {
        List<PastCell> cells = new ArrayList<>();
        files().forEach((session, file) -> {
            if (number == 0 || session < number) {
                cells.addAll(CellLine.read(session, file));
            }
        });
        return cells;
    }

    /** Ends the keeping. */
    @Override
    public synchronized void close() {
        closed = true;
        try {
            if (out != null) {
                out.close();
            }
        } catch (IOException late) {
            return; // every line was written when it came
        }
    }

    /** Takes the next free number. Another kernel may take it at the same moment, and then the one after is tried. */
    private Writer begin() throws IOException {
        Owned.folder(folder);
        thinOut();
        number = 1 + files().keySet().stream().reduce(0, Math::max);
        while (true) {
            Path file = folder.resolve(String.format("%06d%s", number, ENDING));
            try {
                Owned.file(file);
                return Files.newBufferedWriter(file, StandardCharsets.UTF_8, StandardOpenOption.APPEND);
            } catch (FileAlreadyExistsException taken) {
                number++;
            }
        }
    }

    private void thinOut() throws IOException {
        TreeMap<Integer, Path> files = files();
        long bytes = 0;
        int kept = 0;
        for (Path file : files.descendingMap().values()) {
            bytes += Files.size(file);
            kept++;
            if (kept >= MOST_SESSIONS || bytes > MOST_BYTES) {
                Files.deleteIfExists(file);
            }
        }
    }

    private TreeMap<Integer, Path> files() {
        TreeMap<Integer, Path> files = new TreeMap<>();
        if (folder == null || !Files.isDirectory(folder)) {
            return files;
        }
        try (var all = Files.newDirectoryStream(folder, "*" + ENDING)) {
            for (Path file : all) {
                String name = file.getFileName().toString().replace(ENDING, "");
                if (name.matches("\\d{1,9}")) {
                    files.put(Integer.parseInt(name), file);
                }
            }
        } catch (IOException | java.nio.file.DirectoryIteratorException unreadable) {
            files.clear();
        }
        return files;
    }
}
