package headrace.data;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.energy.LoadProfile;
import headrace.energy.load.HourlyLoad;
import headrace.energy.load.HourlyWeather;
import headrace.energy.load.LoadProblem;
import headrace.problem.Problem;
import headrace.problem.Refusal;
import headrace.units.Time;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Years of hours, typical days, weather and logs, and what is wrong with them. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class YearFilesTest {
    private static final LocalDateTime START = LocalDateTime.of(2025, 1, 1, 0, 0);

    @TempDir
    Path folder;

    private Path file(String name, List<String> lines) {
        try {
            return Files.write(folder.resolve(name), lines);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A year at 40 % whose rows, from line 3 on, are what the function makes of the hour. */
    private static List<String> year(Function<LocalDateTime, String> row) {
        List<String> lines = new ArrayList<>(List.of("# name: a year", "time, load [%]"));
        for (int i = 0; i < 8760; i++) {
            lines.add(row.apply(START.plusHours(i)));
        }
        return lines;
    }

    private static String at40(LocalDateTime at) {
        return at.toString().replace('T', ' ') + ", 40";
    }

    private HourlyLoad read(List<String> lines) {
        return HourlyLoadFile.read(file("year.csv", lines));
    }

    private Refusal refused(Problem problem, List<String> lines, int line) {
        Refusal refusal = assertThrows(Refusal.class, () -> read(lines));
        assertEquals(problem, refusal.problem(), refusal.getMessage());
        assertEquals(line, refusal.place().orElseThrow().line(), refusal.getMessage());
        return refusal;
    }

    @Test
    void a_year_of_hours_is_read_as_it_stands() {
        HourlyLoad load = read(year(YearFilesTest::at40));
        assertEquals(8760, load.hours());
        assertEquals(START, load.start());
        assertEquals(0.4, load.shareAt(8759), 0.0);
        assertTrue(load.notes().isEmpty());
        assertTrue(load.basis().toString().contains("year.csv"));
    }

    @Test
    void a_gap_is_refused_at_the_line_behind_it() {
        List<String> lines = year(YearFilesTest::at40);
        lines.subList(102, 105).clear();
        Refusal gap = refused(LoadProblem.HOUR_MISSING, lines, 103);
        assertTrue(gap.getMessage().contains("3 hours are missing before 2025-01-05 07:00"), gap.getMessage());
        List<String> one = year(YearFilesTest::at40);
        one.remove(102 + 12);
        refused(LoadProblem.HOUR_MISSING, one, 115);
    }

    @Test
    void an_hour_that_stands_twice_is_refused_at_its_second_line() {
        List<String> lines = year(YearFilesTest::at40);
        lines.add(110, lines.get(109));
        Refusal twice = refused(LoadProblem.HOUR_TWICE, lines, 111);
        assertTrue(twice.getMessage().contains("2025-01-05 11:00 stands twice"), twice.getMessage());
        List<String> back = year(YearFilesTest::at40);
        back.add(110, back.get(100));
        refused(LoadProblem.HOUR_TWICE, back, 111);
    }

    /** 2 o'clock is left out on 30 March, and stands twice on 26 October. */
    private static List<String> changed() {
        List<String> lines = year(YearFilesTest::at40);
        int spring = lines.indexOf("2025-03-30 02:00, 40");
        lines.remove(spring);
        int autumn = lines.indexOf("2025-10-26 02:00, 40");
        lines.add(autumn, lines.get(autumn));
        return lines;
    }

    @Test
    void a_change_of_clock_is_noted_and_every_hour_kept() {
        HourlyLoad load = read(changed());
        assertEquals(8760, load.hours());
        String notes = load.notes().toString();
        assertTrue(
                notes.contains("The hour before 2025-03-30 03:00 is missing and that of 2025-10-26 02:00 stands twice"),
                notes);
    }

    /** South of the equator the hour stands twice in April and is missing in October. */
    @Test
    void a_change_of_clock_may_come_in_the_other_order() {
        List<String> lines = year(YearFilesTest::at40);
        int autumn = lines.indexOf("2025-04-06 02:00, 40");
        lines.add(autumn, lines.get(autumn));
        lines.remove("2025-10-05 02:00, 40");
        HourlyLoad load = read(lines);
        assertEquals(8760, load.hours());
        assertTrue(load.notes().has(LoadProblem.DAYLIGHT_SAVING));
    }

    @Test
    void half_a_change_of_clock_is_none() {
        List<String> spring = year(YearFilesTest::at40);
        int missing = spring.indexOf("2025-03-30 02:00, 40");
        spring.remove(missing);
        refused(LoadProblem.HOUR_MISSING, spring, missing + 1);
        List<String> autumn = year(YearFilesTest::at40);
        int twice = autumn.indexOf("2025-10-26 02:00, 40");
        autumn.add(twice, autumn.get(twice));
        refused(LoadProblem.HOUR_TWICE, autumn, twice + 2);
        List<String> close = year(YearFilesTest::at40);
        close.remove("2025-03-30 02:00, 40");
        int soon = close.indexOf("2025-04-02 02:00, 40");
        close.add(soon, close.get(soon));
        assertThrows(Refusal.class, () -> read(close));
    }

    /** With their offset from UTC the times of 26 October are 00:00, 01:00, and 02:00 of two offsets, an hour apart. */
    @Test
    void times_with_their_offset_know_no_change_of_clock() {
        List<String> lines = year(at -> {
            boolean summer = !at.isBefore(LocalDateTime.of(2025, 3, 30, 2, 0))
                    && at.isBefore(LocalDateTime.of(2025, 10, 26, 2, 0));
            LocalDateTime local = summer ? at.plusHours(1) : at;
            return local.toString().replace('T', ' ') + (summer ? "+02:00" : "+01:00") + ", 40";
        });
        HourlyLoad load = read(lines);
        assertEquals(START, load.start());
        assertTrue(load.notes().isEmpty(), load.notes().toString());
        lines.set(200, lines.get(200).replace("+01:00", ""));
        Refusal mixed = assertThrows(Refusal.class, () -> read(lines));
        assertEquals(201, mixed.place().orElseThrow().line());
    }

    @Test
    void loads_above_120_per_cent_and_below_0_are_refused_in_their_cell() {
        List<String> lines = year(YearFilesTest::at40);
        lines.set(50, lines.get(50).replace(", 40", ", 120.1"));
        Refusal above = refused(DataProblem.VALUE_NOT_POSSIBLE, lines, 51);
        assertEquals(19, above.place().orElseThrow().column());
        lines.set(50, lines.get(51).replace(", 40", ", 120"));
        lines.set(50, year(YearFilesTest::at40).get(50).replace(", 40", ", 120"));
        assertTrue(read(lines).notes().has(LoadProblem.LOAD_ABOVE_DESIGN));
        lines.set(50, lines.get(50).replace(", 120", ", -1"));
        refused(DataProblem.VALUE_NOT_POSSIBLE, lines, 51);
    }

    @Test
    void what_is_no_hour_of_a_year_is_refused() {
        List<String> lines = year(YearFilesTest::at40);
        lines.set(9, "noon, 40");
        refused(DataProblem.VALUE_NOT_POSSIBLE, lines, 10);
        lines.set(9, "2025-02-30 07:00, 40");
        refused(DataProblem.VALUE_NOT_POSSIBLE, lines, 10);
        lines.set(9, "2025-01-01 07:30, 40");
        refused(DataProblem.VALUE_NOT_POSSIBLE, lines, 10);
        Refusal part =
                refused(LoadProblem.IMPOSSIBLE_YEAR, year(YearFilesTest::at40).subList(0, 8000), 8000);
        assertTrue(part.getMessage().contains("ends after 7998 hours"), part.getMessage());
        refused(DataProblem.TOO_FEW_ROWS, List.of("# name: a year", "time, load [%]"), 2);
        refused(DataProblem.MISSING_COLUMN, List.of("# name: a year", "time", "2025-01-01 00:00"), 3);
    }

    /** 120 kW of a design load of 300 kW is 40 %. */
    @Test
    void heat_is_a_share_of_the_design_load_that_the_head_states() {
        List<String> lines = year(at -> at40(at).replace(", 40", ", 120"));
        lines.set(1, "time, heat [kW]");
        lines.add(1, "# design load: 300 kW");
        assertEquals(0.4, read(lines).shareAt(5), 1e-12);
        lines.set(20, lines.get(20).replace(", 120", ", 361"));
        refused(DataProblem.VALUE_NOT_POSSIBLE, lines, 21);
        lines.remove(1);
        assertThrows(Refusal.class, () -> read(lines));
    }

    @Test
    void typical_days_have_each_hour_once() {
        List<String> lines = new ArrayList<>(List.of(
                "# name: days",
                "hour [h], january [%], february [%], march [%], april [%], may [%], june [%], july [%], august [%],"
                        + " september [%], october [%], november [%], december [%]"));
        for (int hour = 23; hour >= 0; hour--) {
            lines.add(hour + ", 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, " + (hour == 5 ? 50 : 12));
        }
        HourlyLoad load = MonthHourFile.read(file("days.csv", lines));
        assertEquals(0.01, load.shareAt(0), 1e-15);
        assertEquals(0.02, load.shareAt(31 * 24), 1e-15);
        assertEquals(0.5, load.shareAt(8760 - 24 + 5), 1e-15);
        lines.set(5, lines.get(6));
        Refusal twice = assertThrows(Refusal.class, () -> MonthHourFile.read(file("days.csv", lines)));
        assertEquals(LoadProblem.HOUR_TWICE, twice.problem());
        assertEquals(7, twice.place().orElseThrow().line());
        lines.remove(5);
        Refusal missing = assertThrows(Refusal.class, () -> MonthHourFile.read(file("days.csv", lines)));
        assertEquals(LoadProblem.HOUR_MISSING, missing.problem());
    }

    /** An EPW file with all its 35 cells, at the temperature of its hour of the day. */
    private static List<String> epw() {
        List<String> lines = new ArrayList<>(List.of(
                "LOCATION,Fenmouth,-,-,invented,0,50.0,0.0,0.0,5.0",
                "DESIGN CONDITIONS,0",
                "TYPICAL/EXTREME PERIODS,0",
                "GROUND TEMPERATURES,0",
                "HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0",
                "COMMENTS 1,invented",
                "COMMENTS 2,",
                "DATA PERIODS,1,1,Data,Wednesday,1/1,12/31"));
        for (int i = 0; i < 8760; i++) {
            LocalDateTime at = START.plusHours(i);
            lines.add(String.format(
                    Locale.ROOT,
                    "%d,%d,%d,%d,0,?9,%.1f%s",
                    1990 + at.getMonthValue(),
                    at.getMonthValue(),
                    at.getDayOfMonth(),
                    at.getHour() + 1,
                    at.getHour() / 2.0,
                    ",0".repeat(28)));
        }
        return lines;
    }

    @Test
    void an_epw_file_gives_its_dry_bulb_temperatures() {
        HourlyWeather weather = WeatherFile.read(file("fenmouth.epw", epw()));
        assertEquals("Fenmouth", weather.name());
        assertEquals(8760, weather.hours());
        assertEquals(3.5, weather.at(24 * 100 + 7).toCelsius(), 1e-9);
        assertEquals(11.5, weather.warmest().toCelsius(), 1e-9);
    }

    @Test
    void an_epw_file_is_held_to_the_calendar() {
        List<String> lines = epw();
        lines.remove(1000);
        Refusal gap = assertThrows(Refusal.class, () -> WeatherFile.read(file("a.epw", lines)));
        assertEquals(LoadProblem.HOUR_MISSING, gap.problem());
        assertEquals(1001, gap.place().orElseThrow().line());
        List<String> missing = epw();
        missing.set(20, missing.get(20).replaceFirst("\\?9,[0-9.]+", "?9,99.9"));
        Refusal reading = assertThrows(Refusal.class, () -> WeatherFile.read(file("b.epw", missing)));
        assertEquals(DataProblem.VALUE_NOT_POSSIBLE, reading.problem());
        assertEquals(21, reading.place().orElseThrow().line());
        assertTrue(reading.getMessage().contains("99.9 stands for a missing reading"), reading.getMessage());
        Refusal cut = assertThrows(Refusal.class, () -> WeatherFile.read(file("c.epw", epw().subList(0, 500))));
        assertEquals(LoadProblem.IMPOSSIBLE_YEAR, cut.problem());
        Refusal other = assertThrows(Refusal.class, () -> WeatherFile.read(file("d.epw", List.of("time, outdoor"))));
        assertEquals(DataProblem.MALFORMED_LINE, other.problem());
    }

    @Test
    void a_mark_for_a_missing_temperature_is_refused_in_its_cell() {
        List<String> lines = year(YearFilesTest::at40);
        lines.set(1, "time, outdoor [degC]");
        lines.set(30, lines.get(30).replace(", 40", ", 99.9"));
        Refusal refusal = assertThrows(Refusal.class, () -> WeatherFile.read(file("w.csv", lines)));
        assertEquals(DataProblem.VALUE_NOT_POSSIBLE, refusal.problem());
        assertEquals(31, refusal.place().orElseThrow().line());
    }

    private LoadProfile log(Optional<Time> stretched, String... rows) {
        List<String> lines = new ArrayList<>(List.of("# name: a log", "# design flow: 50 m3/h", "time, flow [m3/h]"));
        lines.addAll(List.of(rows));
        return LoadLogFile.read(file("log.csv", lines), NumberStyle.DECIMAL_POINT, stretched);
    }

    /** Quarter hours at 10, 10.2 and 40 of 50 m³/h: half an hour at 20.2 %, the mean of its cell, a quarter at 80 %. */
    @Test
    void a_log_counts_its_rows_in_steps_of_a_per_cent_and_keeps_the_mean() {
        LoadProfile profile =
                log(Optional.empty(), "2025-02-03 00:00, 10", "2025-02-03 00:15, 10.2", "2025-02-03 00:30, 40");
        assertEquals(0.75, profile.hours().toHours(), 1e-12);
        assertEquals(0.202, profile.bins().get(0).flowFraction().value(), 1e-12);
        assertEquals(0.5, profile.bins().get(0).hours().toHours(), 1e-12);
        assertEquals((10 + 10.2 + 40) / 150, profile.meanFlowFraction().value(), 1e-12);
        assertTrue(profile.notes().isEmpty());
        LoadProfile year = log(
                Optional.of(Time.hours(8760)),
                "2025-02-03 00:00, 10",
                "2025-02-03 00:15, 10.2",
                "2025-02-03 00:30, 40");
        assertEquals(8760, year.hours().toHours(), 1e-9);
        assertTrue(year.notes().has(LoadProblem.STRETCHED_TO_A_YEAR));
    }

    @Test
    void a_log_says_what_is_missing_and_refuses_what_goes_back() {
        LoadProfile gap = log(
                Optional.empty(),
                "2025-02-03 00:00, 10",
                "2025-02-03 00:15, 10",
                "2025-02-03 00:30, 10",
                "2025-02-03 02:00, 10");
        assertTrue(
                gap.notes().toString().contains("a gap of 1.25 h together"),
                gap.notes().toString());
        assertEquals(1, gap.hours().toHours(), 1e-12);
        Refusal back = assertThrows(
                Refusal.class, () -> log(Optional.empty(), "2025-02-03 00:15, 10", "2025-02-03 00:15, 10"));
        assertEquals(LoadProblem.HOUR_TWICE, back.problem());
        assertEquals(5, back.place().orElseThrow().line());
        Refusal above = assertThrows(
                Refusal.class, () -> log(Optional.empty(), "2025-02-03 00:15, 10", "2025-02-03 00:30, 61"));
        assertEquals(DataProblem.VALUE_NOT_POSSIBLE, above.problem());
        assertFalse(above.place().isEmpty());
        assertThrows(Refusal.class, () -> log(Optional.empty(), "2025-02-03 00:15, 10"));
    }
}
