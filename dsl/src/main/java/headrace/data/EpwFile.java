package headrace.data;

import headrace.energy.load.HourlyLoad;
import headrace.energy.load.HourlyWeather;
import headrace.energy.load.LoadProblem;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Input;
import headrace.units.Temperature;
import headrace.work.Work;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;

/**
 * Reads the dry-bulb temperatures of an EPW weather file, an open text format: eight lines of head, then a line for
 * each hour with year, month, day, hour from 1 to 24, minute, flags and the temperature in °C.
 *
 * <dl>
 *   <dt>Units
 *   <dd>°C, local standard time.
 *   <dt>Limits
 *   <dd>8760 or 8784 hours in the order of the calendar. The years of the months may differ, as in typical years made
 *       of real months.
 *   <dt>Errors
 *   <dd>{@link Refusal} with file, line and column; {@code VALUE_NOT_POSSIBLE} for a missing reading, 99.9 °C.
 *   <dt>Source
 *   <dd>The EPW format as its documentation describes it, from memory.
 * </dl>
 */
final class EpwFile {
    private static final int MOST_BYTES = 1 << 23;
    private static final int HEAD_LINES = 8;
    private static final int FEWEST_CELLS = 7;
    private static final int CITY = 1;
    private static final int TEMPERATURE = 6;

    /** Stands for the years of the file. */
    private static final int YEAR = 2025;

    private static final int LEAP_YEAR = 2024;

    private final TextFile file;
    private final List<Temperature> outdoor = new ArrayList<>();
    private LocalDateTime next;

    private EpwFile(TextFile file) {
        this.file = file;
    }

    static HourlyWeather read(Path path) {
        return new EpwFile(TextFile.read(path, MOST_BYTES)).weather();
    }

    private HourlyWeather weather() {
        List<Entry> location = Csv.split(file, 1, ',');
        if (file.lines().size() <= HEAD_LINES || !location.get(0).text().equals("LOCATION")) {
            throw location.get(0)
                    .refused(
                            DataProblem.MALFORMED_LINE,
                            "Asked to read an EPW file that does not begin with LOCATION",
                            "It has eight lines of head, the first of them LOCATION, and then a line for each hour",
                            "Name another file, or save it as CSV with the columns time and outdoor [degC]");
        }
        for (int number = HEAD_LINES + 1; number <= file.lines().size(); number++) {
            Work.poll();
            if (!file.lines().get(number - 1).isBlank()) {
                read(Csv.split(file, number, ','));
            }
        }
        if (!HourlyLoad.YEARS.contains(outdoor.size())) {
            throw new Refusal(
                            LoadProblem.IMPOSSIBLE_YEAR,
                            "Asked to read an EPW file that ends after " + outdoor.size() + " hours",
                            "A year has 8760 hours, or 8784 with a leap day",
                            "See whether the file was saved whole")
                    .at(file.place(file.lines().size(), 1));
        }
        String place = location.size() > CITY ? location.get(CITY).text() : "";
        Path name = Path.of(file.path()).getFileName();
        return HourlyWeather.of(
                        place.isEmpty() ? name.toString() : place,
                        LocalDateTime.of(outdoor.size() == 8784 ? LEAP_YEAR : YEAR, 1, 1, 0, 0),
                        outdoor,
                        Basis.of(Input.of(name.toString(), "an EPW weather file", file.bytes())))
                .with(file.notes());
    }

    private void read(List<Entry> cells) {
        if (cells.size() < FEWEST_CELLS) {
            throw cells.get(0)
                    .refused(
                            DataProblem.ROW_DOES_NOT_FIT,
                            "Asked to read an hour of " + cells.size() + " cells",
                            "The temperature is the seventh cell of an hour",
                            "See whether the file was saved whole");
        }
        requireNext(cells);
        Entry entry = cells.get(TEMPERATURE);
        double celsius = entry.number(NumberStyle.DECIMAL_POINT, "a temperature in °C");
        if (celsius < HourlyWeather.COLDEST.toCelsius() || celsius > HourlyWeather.WARMEST.toCelsius()) {
            throw entry.refused(
                    DataProblem.VALUE_NOT_POSSIBLE,
                    "Asked to read an outdoor temperature of " + entry.text() + " °C",
                    "It lies between " + HourlyWeather.COLDEST + " and " + HourlyWeather.WARMEST
                            + "; 99.9 stands for a missing reading",
                    "Fill the gap, or take another file");
        }
        outdoor.add(Temperature.celsius(celsius));
    }

    /** Holds month, day and hour to the calendar; a leap day is there or not. */
    private void requireNext(List<Entry> cells) {
        int month = whole(cells.get(1), "a month");
        int day = whole(cells.get(2), "a day");
        int hour = whole(cells.get(3), "an hour");
        LocalDateTime at;
        try {
            at = LocalDateTime.of(LEAP_YEAR, month, day, 0, 0).plusHours(hour - 1L);
        } catch (DateTimeException e) {
            throw cells.get(1)
                    .refused(
                            DataProblem.VALUE_NOT_POSSIBLE,
                            "Asked to read the month " + month + " and the day " + day,
                            "There is no such day",
                            "See whether the file was saved whole");
        }
        boolean leapDayLeftOut = next != null
                && next.getMonthValue() == 2
                && next.getDayOfMonth() == 29
                && at.equals(LocalDateTime.of(LEAP_YEAR, 3, 1, 0, 0));
        LocalDateTime expected = next == null ? LocalDateTime.of(LEAP_YEAR, 1, 1, 0, 0) : next;
        if (!at.equals(expected) && !leapDayLeftOut) {
            throw cells.get(1)
                    .refused(
                            at.isAfter(expected) ? LoadProblem.HOUR_MISSING : LoadProblem.HOUR_TWICE,
                            "Asked to read hour " + hour + " of month " + month + ", day " + day + ", where hour "
                                    + (expected.getHour() + 1) + " of month " + expected.getMonthValue() + ", day "
                                    + expected.getDayOfMonth() + " comes next",
                            "Every hour of the year stands once, in order",
                            "Put the rows in order, or fill the gap");
        }
        next = at.plusHours(1);
    }

    private static int whole(Entry entry, String what) {
        return (int) Math.rint(entry.number(NumberStyle.DECIMAL_POINT, what));
    }
}
