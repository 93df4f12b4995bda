package headrace.kernel.session;

import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/** The texts of the cells that have run, by the names of their classes. */
final class CellSources {
    /**
     * The text of a cell.
     *
     * @param label what the user calls it
     * @param code its text
     */
    record Source(String label, String code) {
        /** Returns a line, counted from 1, or empty if there is none. */
        String line(int number) {
            return code.lines().skip(Math.max(0, number - 1)).findFirst().orElse("");
        }
    }

    private final Map<String, Source> byFile = new ConcurrentHashMap<>();

    void put(String className, String label, String code) {
        byFile.put(className + ".groovy", new Source(label, code));
    }

    /** Returns the cell that was compiled under a file name, if it is one. */
    Optional<Source> ofFile(String file) {
        return file == null ? Optional.empty() : Optional.ofNullable(byFile.get(file));
    }
}
