package headrace.data;

import headrace.data.Form.Field;
import headrace.energy.load.HourlyWeather;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.units.Temperature;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;

/**
 * Reads the outdoor temperature of every hour of a year.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Named by the columns: {@code time}, local or with its offset from UTC, and {@code outdoor [degC]}. A file whose
 *       name ends in {@code .epw} is read as {@link EpwFile} has it.
 *   <dt>Limits
 *   <dd>8760 or 8784 rows, an hour each, in order; a change of clock is noted.
 *   <dt>Errors
 *   <dd>{@link Refusal} with file, line and column.
 *   <dt>Source
 *   <dd>A format of our own, described in {@code docs/load-files.md}; ISO 8601 for the times.
 * </dl>
 */
public final class WeatherFile {
    private static final Field<Temperature> OUTDOOR =
            new Field<>("outdoor", Temperature.KIND, true, HourlyWeather.COLDEST, HourlyWeather.WARMEST);

    private static final Form FORM =
            new Form("year of weather", List.of("name", "source", "date"), List.of(ClockCell.CLOCK, OUTDOOR));

    private WeatherFile() {}

    /** Reads a file with decimal points and commas between the cells, or an EPW file. */
    public static HourlyWeather read(Path path) {
        return read(path, NumberStyle.DECIMAL_POINT);
    }

    /** Reads a file whose numbers are written in a style; an EPW file has one of its own. */
    public static HourlyWeather read(Path path, NumberStyle style) {
        if (path.toString().toLowerCase(Locale.ROOT).endsWith(".epw")) {
            return EpwFile.read(path);
        }
        Sheet sheet = Sheet.read(path, FORM, style);
        Entry name = sheet.requiredHead("name", "Harbour Reach");
        if (sheet.size() == 0) {
            throw sheet.refused(
                    DataProblem.TOO_FEW_ROWS,
                    "Asked to read a year of weather without rows",
                    "A year has 8760 or 8784",
                    "Add the rows");
        }
        List<Temperature> outdoor = IntStream.range(0, sheet.size())
                .mapToObj(row -> sheet.quantity(row, OUTDOOR))
                .toList();
        HourRows rows = HourRows.of(HourlyLoadFile.times(sheet));
        String source = sheet.head("source").map(Entry::text).orElse("not stated");
        return HourlyWeather.of(name.text(), rows.start(), outdoor, Basis.of(sheet.input(source)))
                .with(sheet.notes())
                .with(rows.notes());
    }
}
