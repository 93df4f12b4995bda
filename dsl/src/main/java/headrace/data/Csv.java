package headrace.data;

import headrace.problem.Refusal;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** Splits a line into its cells, each with its place. A cell never runs over the end of its line. */
final class Csv {
    private Csv() {}

    static List<Entry> split(TextFile file, int number, char separator) {
        String line = file.lines().get(number - 1);
        CSVFormat format = CSVFormat.DEFAULT
                .builder()
                .setDelimiter(separator)
                .setIgnoreSurroundingSpaces(true)
                .get();
        try (CSVParser parser = CSVParser.parse(line, format)) {
            CSVRecord record = parser.iterator().next();
            List<Integer> starts = starts(line, separator);
            List<Entry> cells = new ArrayList<>();
            for (int i = 0; i < record.size(); i++) {
                cells.add(new Entry(record.get(i).strip(), file.place(number, starts.get(i) + 1)));
            }
            return cells;
        } catch (IOException | UncheckedIOException e) {
            throw new Refusal(
                            DataProblem.MALFORMED_LINE,
                            "Asked to read a line whose quotation marks do not pair up",
                            "A cell that starts with a quotation mark ends with one, and then comes " + separator,
                            "Put the marks right, or take them away")
                    .at(file.place(number, line.indexOf('"') + 1));
        }
    }

    /** Returns where each cell starts: after the blanks that follow a separator outside quotation marks. */
    private static List<Integer> starts(String line, char separator) {
        List<Integer> starts = new ArrayList<>();
        boolean atStart = true;
        boolean marked = false;
        boolean inside = false;
        for (int i = 0; i < line.length(); i++) {
            char c = line.charAt(i);
            if (c == separator && !inside) {
                if (atStart) {
                    starts.add(i);
                }
                atStart = true;
            } else if (atStart && !Character.isWhitespace(c)) {
                starts.add(i);
                atStart = false;
                marked = c == '"';
                inside = marked;
            } else if (marked && c == '"') {
                inside = !inside;
            }
        }
        if (atStart) {
            starts.add(line.length());
        }
        return starts;
    }
}
