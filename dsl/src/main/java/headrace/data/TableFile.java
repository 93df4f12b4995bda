package headrace.data;

import headrace.problem.Place;
import headrace.problem.Refusal;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/**
 * A table as a CSV file that a spreadsheet opens and this class reads back to the same values.
 *
 * <dl>
 *   <dt>Units
 *   <dd>The head of each column of numbers says its unit in square brackets, {@code flow [m³/h]}; plain numbers say
 *       {@code [1]}. Numbers stand at full precision, with a decimal point.
 *   <dt>Limits
 *   <dd>A first line {@code # title: …}, one row of heads, then the rows; UTF-8 with a byte-order mark, without which
 *       some spreadsheets show {@code m³/h} garbled. A text that a spreadsheet would take for a formula, starting with
 *       {@code =}, {@code +}, {@code -}, {@code @} or an apostrophe, is written after one apostrophe, and read without
 *       it.
 *   <dt>Errors
 *   <dd>{@link Refusal} with line and column.
 *   <dt>Source
 *   <dd>RFC 4180 for the quoting; line ends are single line feeds.
 * </dl>
 */
public final class TableFile {
    private static final String TITLE = "# title: ";
    private static final String MARK = "\uFEFF";
    private static final String FORMULA_STARTS = "=+-@'";
    private static final CSVFormat FORMAT =
            CSVFormat.DEFAULT.builder().setRecordSeparator('\n').get();

    private TableFile() {}

    /** Returns the text of the file, without the byte-order mark. */
    public static String text(Table table) {
        StringWriter text = new StringWriter();
        try (CSVPrinter printer = new CSVPrinter(text, FORMAT)) {
            printer.printRecord(TITLE + table.title());
            printer.printRecord(table.columns().stream()
                    .map(column -> guarded(column.header()))
                    .toList());
            for (List<Cell> row : table.rows()) {
                printer.printRecord(row.stream().map(TableFile::written).toList());
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    /**
     * Writes the file, over an earlier one of that name.
     *
     * @throws Refusal with {@code FILE_NOT_WRITTEN} if the system does not let it
     */
    public static void write(Table table, Path path) {
        try {
            Files.writeString(path, MARK + text(table));
        } catch (IOException e) {
            throw new Refusal(
                            DataProblem.FILE_NOT_WRITTEN,
                            "Asked to write a table where the system does not let a file be written",
                            "The folder must exist and allow it: "
                                    + path.toAbsolutePath().normalize().getParent(),
                            "Name another folder, or close the file where it is open")
                    .at(Place.of(path.toString()));
        }
    }

    /**
     * Reads such a file.
     *
     * @throws Refusal with its place if it is not a table as {@link #write} leaves it
     */
    public static Table read(Path path) {
        TextFile file = TextFile.read(path);
        List<List<Entry>> lines = lines(file);
        String title = path.getFileName().toString();
        String first = lines.get(0).get(0).text();
        if (first.startsWith(TITLE.strip())) {
            title = first.substring(TITLE.strip().length());
            lines = lines.subList(1, lines.size());
        }
        if (lines.isEmpty()) {
            throw new Refusal(
                            DataProblem.MISSING_COLUMN,
                            "Asked to read a table that ends before its columns",
                            "A table has a row of column heads",
                            "Save it again from where it came")
                    .at(file.place(file.lines().size(), 0));
        }
        List<Column> columns = lines.get(0).stream().map(TableFile::column).toList();
        List<List<Cell>> rows =
                lines.stream().skip(1).map(entries -> row(columns, entries)).toList();
        try {
            return new Table(title, columns, rows);
        } catch (Refusal refusal) {
            throw refusal.at(lines.get(0).get(0).place());
        }
    }

    private static List<List<Entry>> lines(TextFile file) {
        return IntStream.rangeClosed(1, file.lines().size())
                .filter(number -> !file.lines().get(number - 1).isBlank())
                .mapToObj(number -> Csv.split(file, number, ','))
                .toList();
    }

    private static Column column(Entry entry) {
        try {
            return Column.read(unguarded(entry.text()));
        } catch (Refusal refusal) {
            throw refusal.at(entry.place());
        }
    }

    private static List<Cell> row(List<Column> columns, List<Entry> entries) {
        if (entries.size() != columns.size()) {
            throw entries.get(0)
                    .refused(
                            DataProblem.ROW_DOES_NOT_FIT,
                            "Asked to read a row of " + entries.size() + " cells",
                            "The table has " + columns.size() + " columns",
                            "Write the missing cells, empty if need be, or take the extra ones away");
        }
        return IntStream.range(0, columns.size())
                .mapToObj(i -> cell(columns.get(i), entries.get(i)))
                .toList();
    }

    private static Cell cell(Column column, Entry entry) {
        if (entry.empty()) {
            return Cell.NOTHING;
        }
        return column.numeric()
                ? new Cell.Number(entry.number(NumberStyle.DECIMAL_POINT, column.name()))
                : new Cell.Text(unguarded(entry.text()));
    }

    private static String written(Cell cell) {
        if (cell instanceof Cell.Number number) {
            return number(number.value());
        }
        return cell instanceof Cell.Text text ? guarded(text.text()) : "";
    }

    /** Returns the shortest text that reads back to the same bits. */
    private static String number(double value) {
        String text = Double.toString(value);
        return text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
    }

    private static String guarded(String text) {
        return !text.isEmpty() && FORMULA_STARTS.indexOf(text.charAt(0)) >= 0 ? "'" + text : text;
    }

    private static String unguarded(String text) {
        return text.startsWith("'") ? text.substring(1) : text;
    }
}
