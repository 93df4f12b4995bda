package headrace.problem;

/**
 * Where in a user's file something stands.
 *
 * @param file the file as the user named it
 * @param line the line, counted from 1; 0 for the file as a whole
 * @param column the column of the line, counted from 1; 0 for the line as a whole
 */
public record Place(String file, int line, int column) {
    /** Returns the file as a whole. */
    public static Place of(String file) {
        return new Place(file, 0, 0);
    }

    /** Returns the place as tools print it: {@code heron-65.csv:12:5}. */
    @Override
    public String toString() {
        if (line == 0) {
            return file;
        }
        return column == 0 ? file + ":" + line : file + ":" + line + ":" + column;
    }
}
