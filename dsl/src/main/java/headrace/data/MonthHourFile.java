package headrace.data;

import headrace.data.Form.Field;
import headrace.energy.load.HourlyLoad;
import headrace.energy.load.LoadProblem;
import headrace.energy.load.MonthHourLoad;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.units.Ratio;
import headrace.units.Time;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * Reads a typical day for each month: 24 rows, a column for each month.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Named by the columns: {@code hour [h]}, at which the hour begins, and {@code january [%]} to {@code december
 *       [%]}, shares of design load.
 *   <dt>Limits
 *   <dd>The hours 0 to 23, each once and in any order; 0 to 120 % of design load.
 *   <dt>Errors
 *   <dd>{@link Refusal} with file, line and column.
 *   <dt>Source
 *   <dd>A format of our own, described in {@code docs/load-files.md}.
 * </dl>
 */
public final class MonthHourFile {
    private static final int HOURS = 24;
    private static final Field<Time> HOUR = new Field<>("hour", Time.KIND, true, Time.ZERO, Time.hours(HOURS - 1));

    private static final List<Field<Ratio>> MONTHS = Stream.of(
                    "january",
                    "february",
                    "march",
                    "april",
                    "may",
                    "june",
                    "july",
                    "august",
                    "september",
                    "october",
                    "november",
                    "december")
            .map(month -> new Field<>(month, Ratio.KIND, true, Ratio.ZERO, Ratio.percent(100 * HourlyLoad.MOST)))
            .toList();

    private static final Form FORM = form();

    private MonthHourFile() {}

    private static Form form() {
        List<Field<?>> columns = new ArrayList<>(List.of(HOUR));
        columns.addAll(MONTHS);
        return new Form("year of typical days", List.of("name", "source", "date"), columns);
    }

    /** Reads a file with decimal points and commas between the cells. */
    public static HourlyLoad read(Path path) {
        return read(path, NumberStyle.DECIMAL_POINT);
    }

    /** Reads a file whose numbers are written in a style. */
    public static HourlyLoad read(Path path, NumberStyle style) {
        Sheet sheet = Sheet.read(path, FORM, style);
        Entry name = sheet.requiredHead("name", "Otterbank Library, chilled water");
        double[][] shares = new double[MONTHS.size()][HOURS];
        boolean[] there = new boolean[HOURS];
        for (int row = 0; row < sheet.size(); row++) {
            int hour = hour(sheet, row);
            if (there[hour]) {
                throw sheet.entry(row, HOUR)
                        .refused(
                                LoadProblem.HOUR_TWICE,
                                "Asked to read the hour " + hour + " of the typical days for the second time",
                                "Each of the hours 0 to 23 stands once",
                                "Delete the row that is wrong");
            }
            there[hour] = true;
            for (int month = 0; month < shares.length; month++) {
                shares[month][hour] = sheet.quantity(row, MONTHS.get(month)).value();
            }
        }
        requireAll(sheet, there);
        String source = sheet.head("source").map(Entry::text).orElse("not stated");
        return MonthHourLoad.of(name.text(), shares, Basis.of(sheet.input(source)))
                .with(sheet.notes());
    }

    private static int hour(Sheet sheet, int row) {
        double hour = sheet.quantity(row, HOUR).toHours();
        int whole = (int) Math.rint(hour);
        if (Math.abs(hour - whole) > 1e-9) {
            Entry entry = sheet.entry(row, HOUR);
            throw entry.refused(
                    DataProblem.VALUE_NOT_POSSIBLE,
                    "Asked to read '" + entry.text() + "' as an hour of a typical day",
                    "The hours are 0 to 23, each by when it begins",
                    "Write whole hours");
        }
        return whole;
    }

    private static void requireAll(Sheet sheet, boolean[] there) {
        for (int hour = 0; hour < HOURS; hour++) {
            if (!there[hour]) {
                throw sheet.refused(
                        LoadProblem.HOUR_MISSING,
                        "Asked to read typical days without the hour " + hour,
                        "Each of the hours 0 to 23 stands once",
                        "Add the row");
            }
        }
    }
}
