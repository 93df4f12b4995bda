package headrace.data.log;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.data.DataProblem;
import headrace.data.NumberStyle;
import headrace.drive.LossModel;
import headrace.problem.Problem;
import headrace.problem.Refusal;
import headrace.pump.KnownPump;
import headrace.pump.PumpSet;
import headrace.trend.Change;
import headrace.trend.Change.Kind;
import headrace.trend.Channel;
import headrace.trend.TrendLog;
import headrace.trend.TrendProblem;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.function.IntFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class LogFileTest {
    private static final PumpSet SET = KnownPump.set(LossModel.all().get(0));
    private static final String HEAD = "time,power [kW],speed [rpm]\n";
    private static final String ROWS = "2026-03-02T00:00:00Z,4.1,1400\n2026-03-02T00:10:00Z,4.2,1410\n";

    @TempDir
    Path folder;

    private TrendLog read(String text) {
        return read(text, LogOptions.NONE);
    }

    private TrendLog read(String text, LogOptions options) {
        try {
            Path file = folder.resolve("log.csv");
            Files.writeString(file, text);
            return LogFile.read(file, SET, options);
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    private Refusal refused(Problem problem, String text, LogOptions options) {
        Refusal refusal = assertThrows(Refusal.class, () -> read(text, options));
        assertEquals(problem, refusal.problem(), refusal.getMessage());
        return refusal;
    }

    /** Returns the line and the column that a refusal names. */
    private static String where(Refusal refusal) {
        return refusal.place().orElseThrow().line() + ":"
                + refusal.place().orElseThrow().column();
    }

    private static String rows(int count, IntFunction<String> cells) {
        return IntStream.range(0, count)
                .mapToObj(i -> String.format("2026-03-02T%02d:%02d:00Z,%s%n", i / 60, i % 60, cells.apply(i)))
                .collect(Collectors.joining())
                .replace("\r\n", "\n");
    }

    @Test
    void reads_each_column_in_the_unit_of_its_head() {
        TrendLog log = read("timestamp,kW,rpm,m3/h,m,outdoor temperature [degC]\n"
                + "2026-03-02T00:00:00Z,4.100,1400.0,72.00,20.500,-3.5\n2026-03-02T00:01:00Z,4.2,1410,73,21,-3\n");
        assertArrayEquals(new double[] {4100, 4200}, log.values(Channel.POWER), 1e-9);
        assertArrayEquals(new double[] {1400 * Math.PI / 30, 1410 * Math.PI / 30}, log.values(Channel.SPEED), 1e-9);
        assertArrayEquals(new double[] {72 / 3600.0, 73 / 3600.0}, log.values(Channel.FLOW), 1e-15);
        assertArrayEquals(new double[] {20.5, 21}, log.values(Channel.HEAD));
        assertArrayEquals(new double[] {269.65, 270.15}, log.values(Channel.OUTDOOR), 1e-9);
        assertEquals(Instant.parse("2026-03-02T00:00:00Z"), log.start());
        assertEquals(60, log.interval().seconds());
        assertEquals(
                "'kW' read as power in kW, as its head says",
                log.basis().choices().get(0));
    }

    /** Every way to write a number gives the double that Java itself reads. */
    @Test
    void a_number_is_read_to_the_last_bit() {
        Random random = new Random(5);
        StringBuilder text = new StringBuilder(HEAD);
        double[] expected = new double[2000];
        for (int i = 0; i < expected.length; i++) {
            int places = random.nextInt(14);
            String number = String.format(Locale.ROOT, "%." + places + "f", 7 * random.nextDouble());
            number = random.nextInt(5) == 0 ? number + "e0" : random.nextInt(5) == 0 ? "\"" + number + "\"" : number;
            expected[i] = Double.parseDouble(number.replace("\"", "")) * 1000;
            text.append(Instant.parse("2026-03-02T00:00:00Z").plusSeconds(60L * i))
                    .append(',')
                    .append(number);
            text.append(",1400\n");
        }
        assertArrayEquals(expected, read(text.toString()).values(Channel.POWER));
    }

    @ParameterizedTest
    @ValueSource(strings = {"\n", "\r\n", "\r"})
    void reads_lines_however_they_end(String lineEnd) {
        TrendLog log =
                read(("# made by hand\n\n" + HEAD + ROWS).replace("\n", lineEnd).stripTrailing());
        assertEquals(2, log.count());
        assertArrayEquals(new double[] {4100, 4200}, log.values(Channel.POWER), 1e-9);
    }

    @Test
    void quoted_cells_may_hold_separators_marks_and_line_ends() {
        TrendLog log = read("time,remark,\"power [kW]\",speed [rpm]\n"
                + "2026-03-02 00:00,\"a, \"\"b\"\"\nc\",\"4.1\",1400\n2026-03-02 00:10,,4.2,text\n");
        assertArrayEquals(new double[] {4100, 4200}, log.values(Channel.POWER), 1e-9);
        Change text = log.changes().get(0);
        assertEquals(Kind.TEXT_FOR_NUMBER, text.kind());
        assertEquals(4, text.from().line());
        assertEquals("2026-03-02 00:10,,4.2,".length() + 1, text.from().column());
        assertTrue(log.notes().has(LogProblem.COLUMNS_NOT_USED));
    }

    @Test
    void a_row_on_the_edge_of_a_block_is_read_as_any_other() {
        int count = 80_000;
        StringBuilder text = new StringBuilder("\uFEFF" + HEAD);
        Instant start = Instant.parse("2026-03-02T00:00:00Z");
        for (int i = 0; i < count; i++) {
            text.append(start.plusSeconds(60L * i))
                    .append(',')
                    .append(i % 7000 / 1000.0)
                    .append(",1400\n");
        }
        assertTrue(text.length() > 2 << 20, "Several blocks of the reader");
        TrendLog log = read(text.toString());
        assertEquals(count, log.count());
        double[] power = log.values(Channel.POWER);
        for (int i = 0; i < count; i++) {
            assertEquals(i % 7000, power[i], 1e-9);
        }
    }

    @ParameterizedTest
    @CsvSource({
        "2026-03-02T07:15:00Z, 2026-03-02T07:15:00Z",
        "2026-03-02 07:15, 2026-03-02T07:15:00Z",
        "2026-03-02T07:15:30, 2026-03-02T07:15:30Z",
        "2026-03-02T07:15:30.250Z, 2026-03-02T07:15:30Z",
        "2026-03-02T07:15+02:00, 2026-03-02T05:15:00Z",
        "2026-03-02T07:15:00-0330, 2026-03-02T10:45:00Z",
        "02.03.2026 7:15, 2026-03-02T07:15:00Z",
        "2024-02-29 00:00, 2024-02-29T00:00:00Z",
    })
    void reads_the_ways_in_which_times_are_written(String written, String time) {
        TrendLog log = read(HEAD + written + ",4.1,1400\n2027-01-01T00:00:00Z,4.2,1400\n");
        assertEquals(Instant.parse(time), log.start());
    }

    @Test
    void a_date_that_can_be_read_in_two_ways_is_asked_for() {
        String text = HEAD + "03/02/2026 00:00,4.1,1400\n03/02/2026 00:10,4.2,1400\n";
        assertEquals("2:1", where(refused(LogProblem.DOUBTFUL_DATE, text, LogOptions.NONE)));
        assertEquals(
                Instant.parse("2026-02-03T00:00:00Z"),
                read(text, LogOptions.NONE.with(LogOptions.Dates.DAY_FIRST)).start());
        assertEquals(
                Instant.parse("2026-03-02T00:00:00Z"),
                read(text, LogOptions.NONE.with(LogOptions.Dates.MONTH_FIRST)).start());
    }

    @Test
    void a_missing_column_is_named_with_those_that_are_there() {
        Refusal refusal = refused(DataProblem.MISSING_COLUMN, "# a\ntime,flow [m3/h],rpm\n" + ROWS, LogOptions.NONE);
        assertEquals("2:1", where(refusal));
        assertTrue(refusal.getMessage().contains("without a column of power; its columns are time, flow [m3/h], rpm"));
        refused(DataProblem.MISSING_COLUMN, "time,power [kW]\n" + ROWS, LogOptions.NONE);
        refused(LogProblem.TIME_COLUMN_MISSING, "clock,kW,rpm\n" + ROWS, LogOptions.NONE);
    }

    @Test
    void a_column_under_another_name_is_taken_when_the_user_says_so() {
        LogOptions options =
                LogOptions.NONE.withColumns(Map.of(Channel.POWER, "P-A 17")).withUnits(Map.of(Channel.POWER, "kW"));
        TrendLog log = read("time,P-A 17,rpm\n" + ROWS, options);
        assertArrayEquals(new double[] {4100, 4200}, log.values(Channel.POWER), 1e-9);
        refused(
                DataProblem.MISSING_COLUMN,
                "time,P-A 17,rpm\n" + ROWS,
                LogOptions.NONE.withColumns(Map.of(Channel.POWER, "P-B 17")));
    }

    @Test
    void two_columns_for_one_reading_are_refused_at_the_second() {
        String text = "time,power [kW],speed [rpm],motor power [kW]\n2026-03-02T00:00:00Z,4.1,1400,4\n";
        assertEquals("1:29", where(refused(DataProblem.WRONG_COLUMN, text, LogOptions.NONE)));
    }

    @Test
    void texts_in_numbers_are_listed_and_never_become_numbers() {
        String text =
                HEAD + rows(120, i -> i == 30 ? "offline,1400" : i == 31 ? "4.1 kW,1400" : "4.1,14" + (10 + i % 7));
        TrendLog log = read(text);
        assertEquals(2, log.rows(Kind.TEXT_FOR_NUMBER));
        Change first = log.changes().get(0);
        assertEquals("power 'offline'", first.about());
        assertEquals(32, first.from().line());
        assertEquals(22, first.from().column());
        assertTrue(Double.isNaN(log.values(Channel.POWER)[30]));
        assertTrue(Double.isNaN(log.values(Channel.POWER)[31]));
    }

    @Test
    void a_column_that_is_mostly_text_is_refused_at_its_first_text() {
        String text = HEAD + rows(60, i -> i < 20 ? "4.1,1400" : "\"4,1\",1400");
        Refusal refusal = refused(LogProblem.COLUMN_OF_TEXT, text, LogOptions.NONE);
        assertEquals("22:22", where(refusal));
        assertTrue(refusal.getMessage().contains("decimalComma: true"));
    }

    @Test
    void decimal_commas_are_read_when_they_are_told() {
        String text = "time;power [kW];speed [rpm]\n2026-03-02 00:00;4,1;1400\n2026-03-02 00:10;4,25;1400,5\n";
        TrendLog log = read(text, LogOptions.NONE.with(NumberStyle.DECIMAL_COMMA));
        assertArrayEquals(new double[] {4100, 4250}, log.values(Channel.POWER), 1e-9);
        refused(LogProblem.COLUMN_OF_TEXT, text, LogOptions.NONE);
    }

    @Test
    void a_few_rows_that_do_not_fit_are_listed_and_many_are_refused() {
        IntFunction<String> some = i -> i % 200 == 50 ? "4.1" : "4.1,1400";
        TrendLog log = read(HEAD + rows(1000, some));
        assertEquals(5, log.rows(Kind.MISFIT_ROW));
        assertEquals(995, log.count());
        assertEquals(52, log.changes().get(0).from().line());
        Refusal refusal = refused(
                LogProblem.TOO_MANY_MISFITS,
                HEAD + rows(1000, i -> i % 50 == 7 ? "4.1,1400,1" : "4.1,1400"),
                LogOptions.NONE);
        assertEquals("9:1", where(refusal));
        assertTrue(refusal.getMessage().contains("20 of 1000 rows do not fit"));
    }

    @Test
    void a_quotation_mark_that_is_never_closed_is_refused_where_it_stands() {
        String text = HEAD + "2026-03-02T00:00:00Z,\"4.1,1400\n" + ROWS;
        assertEquals(
                2,
                refused(DataProblem.MALFORMED_LINE, text, LogOptions.NONE)
                        .place()
                        .orElseThrow()
                        .line());
    }

    @ParameterizedTest
    @CsvSource({
        "speed [rpm], 23, 48, Hz",
        "speed [rpm], 48, 98, %",
        "power [kW], 1900, 5600, W",
        "flow [L/s], 45, 99, m³/h",
        "outdoor temperature [degC], 41, 95, °F",
        "valve [ratio], 12, 96, %"
    })
    void values_in_another_unit_than_said_are_refused_with_the_one_that_fits(
            String column, double from, double to, String fits) {
        String head = "time,power [kW],speed [rpm]," + column + "\n";
        IntFunction<String> cells = i -> "4." + i % 9 + ",14" + (10 + i % 40) + "," + (from + (to - from) * i / 119);
        if (column.startsWith("speed")) {
            head = "time,power [kW]," + column + "\n";
            cells = i -> "4." + i % 9 + "," + (from + (to - from) * i / 119);
        } else if (column.startsWith("power")) {
            head = "time," + column + ",speed [rpm]\n";
            cells = i -> (from + (to - from) * i / 119) + ",1400";
        }
        Refusal refusal = refused(LogProblem.UNIT_NOT_CONFIRMED, head + rows(120, cells), LogOptions.NONE);
        assertTrue(refusal.getMessage().contains("they would fit "), refusal.getMessage());
        assertTrue(refusal.getMessage().contains(fits), refusal.getMessage());
        assertEquals(1, refusal.place().orElseThrow().line());
        assertTrue(refusal.place().orElseThrow().column() > 5);
    }

    /** L/s for m³/h is within the range of the pump; power and speed tell the two apart. */
    @Test
    void a_flow_in_another_unit_is_found_out_by_the_pump_map() {
        String inside = "time,power [kW],speed [rpm],flow [m3/h]\n" + onMap(1);
        assertEquals(120, read(inside).count());
        Refusal refusal = refused(
                LogProblem.UNIT_NOT_CONFIRMED,
                "time,power [kW],speed [rpm],flow [m3/h]\n" + onMap(3.6),
                LogOptions.NONE);
        assertTrue(refusal.getMessage().contains("they would fit L/s"), refusal.getMessage());
        TrendLog sniffed = read("time,power [kW],speed [rpm],flow\n" + onMap(3.6));
        assertTrue(sniffed.notes().has(LogProblem.UNIT_FROM_VALUES));
        assertEquals(0.030, sniffed.values(Channel.FLOW)[119], 1e-4);
    }

    /** Rows on the map at 1450 rpm and 60 to 108 m³/h, the flow divided by a factor. */
    private static String onMap(double by) {
        return rows(120, i -> {
            double flow = 60 + 48.0 * i / 119;
            double watts = SET.wireWatts(flow / 3600, 1);
            return watts / 1000 + ",1450," + flow / by;
        });
    }

    @Test
    void a_speed_without_a_unit_is_taken_in_the_only_one_that_fits_and_said() {
        TrendLog log = read("time,power [kW],speed\n" + rows(120, i -> "4.1," + (900 + i)));
        assertEquals(900 * Math.PI / 30, log.values(Channel.SPEED)[0], 1e-9);
        assertTrue(log.notes().has(LogProblem.UNIT_FROM_VALUES));
        String share = "time,power [kW],speed\n" + rows(120, i -> "4.1," + (30 + i / 6.0));
        assertTrue(refused(LogProblem.DOUBTFUL_UNIT, share, LogOptions.NONE)
                .getMessage()
                .contains("fit Hz or % for this pump set"));
    }

    /** Four poles at 1450 rpm belong to 50 Hz; 30 Hz is 60 % of that. */
    @Test
    void a_frequency_stands_for_a_share_of_the_rated_speed_and_says_so() {
        TrendLog log = read("time,power [kW],drive frequency [Hz]\n" + rows(120, i -> "4.1," + (30 + i / 6.0)));
        assertEquals(SET.ratedSpeed().si() * 0.6, log.values(Channel.SPEED)[0], 1e-9);
        assertTrue(log.basis().choices().stream().anyMatch(line -> line.contains("50 Hz taken as 1450 rpm")));
    }

    @Test
    void a_unit_that_stays_doubtful_is_asked_for() {
        String text =
                "time,power [kW],speed [rpm],outdoor temperature\n" + rows(120, i -> "4.1,1400," + (10 + i / 10.0));
        Refusal refusal = refused(LogProblem.DOUBTFUL_UNIT, text, LogOptions.NONE);
        assertTrue(refusal.getMessage().contains("°C or °F"), refusal.getMessage());
        assertEquals("1:29", where(refusal));
        TrendLog log = read(text, LogOptions.NONE.withUnits(Map.of(Channel.OUTDOOR, "°C")));
        assertEquals(283.15, log.values(Channel.OUTDOOR)[0], 1e-9);
    }

    @Test
    void a_unit_that_the_user_states_is_taken_and_noted_if_it_does_not_fit() {
        String text = HEAD + rows(120, i -> "4100,1400");
        refused(LogProblem.UNIT_NOT_CONFIRMED, text, LogOptions.NONE);
        assertFalse(read(text, LogOptions.NONE.withUnits(Map.of(Channel.POWER, "W")))
                .notes()
                .has(LogProblem.UNIT_STATED_AGAINST_VALUES));
        assertTrue(read(text, LogOptions.NONE.withUnits(Map.of(Channel.POWER, "kW")))
                .notes()
                .has(LogProblem.UNIT_STATED_AGAINST_VALUES));
        refused(DataProblem.WRONG_UNIT, text, LogOptions.NONE.withUnits(Map.of(Channel.POWER, "m3/h")));
    }

    /** 1 kPa of water at 20 °C is 1000/(998.2·9.80665) m. */
    @Test
    void a_pressure_becomes_a_head_in_the_liquid_of_the_pump_set() {
        TrendLog log = read("time,kW,rpm,pump differential pressure [kPa]\n" + rows(120, i -> "4.1,1400,200"));
        double density = KnownPump.WATER.density().kilogramsPerCubicMetre();
        assertEquals(200_000 / (density * 9.80665), log.values(Channel.HEAD)[0], 1e-9);
    }

    /** In Central European time the clock goes from 03:00 back to 02:00 on 2026-10-25. */
    @Test
    void the_hour_after_the_clock_was_set_back_is_told_from_the_hour_before() {
        StringBuilder text = new StringBuilder(HEAD);
        String[] local = {"01:30", "02:00", "02:30", "02:00", "02:30", "03:00"};
        for (int i = 0; i < local.length; i++) {
            text.append("2026-10-25 ").append(local[i]).append(",4.").append(i).append(",1400\n");
        }
        Refusal refusal = refused(LogProblem.CLOCK_WITHOUT_ZONE, text.toString(), LogOptions.NONE);
        assertEquals("5:1", where(refusal));
        TrendLog log = read(text.toString(), LogOptions.NONE.with(ZoneId.of("CET")));
        long[] seconds = log.seconds();
        for (int i = 1; i < seconds.length; i++) {
            assertEquals(1800, seconds[i] - seconds[i - 1]);
        }
        assertEquals(Instant.parse("2026-10-24T23:30:00Z"), log.start());
        assertEquals(2, log.rows(Kind.CLOCK_SET_BACK));
        assertEquals(5, log.changes().get(0).from().line());
        assertEquals(
                6, read(text.toString(), LogOptions.NONE.with(ZoneId.of("UTC"))).count());
    }

    @Test
    void hourly_readings_keep_both_hours_too() {
        String text = HEAD + "2026-10-25 01:00,4.1,1400\n2026-10-25 02:00,4.2,1400\n2026-10-25 02:00,4.3,1400\n"
                + "2026-10-25 03:00,4.4,1400\n";
        long[] seconds = read(text, LogOptions.NONE.with(ZoneId.of("CET"))).seconds();
        for (int i = 1; i < seconds.length; i++) {
            assertEquals(3600, seconds[i] - seconds[i - 1]);
        }
    }

    @Test
    void a_time_that_the_clock_skipped_is_moved_on_and_listed() {
        String text = HEAD + "2026-03-29 01:30,4.1,1400\n2026-03-29 02:30,4.2,1400\n2026-03-29 03:30,4.3,1400\n";
        TrendLog log = read(text, LogOptions.NONE.with(ZoneId.of("CET")));
        assertEquals(1, log.rows(Kind.CLOCK_SET_AHEAD));
        assertEquals(Instant.parse("2026-03-29T01:30:00Z").getEpochSecond(), log.seconds()[1]);
    }

    @Test
    void a_file_that_is_none_empty_or_no_text_is_refused() throws IOException {
        Path missing = folder.resolve("missing.csv");
        assertEquals(
                DataProblem.FILE_NOT_FOUND,
                assertThrows(Refusal.class, () -> LogFile.read(missing, SET)).problem());
        assertEquals(
                DataProblem.FILE_NOT_READABLE,
                assertThrows(Refusal.class, () -> LogFile.read(folder, SET)).problem());
        refused(DataProblem.FILE_EMPTY, "", LogOptions.NONE);
        refused(DataProblem.FILE_EMPTY, "# nothing\n\n", LogOptions.NONE);
        refused(TrendProblem.TOO_SHORT_LOG, HEAD + "2026-03-02T00:00:00Z,4.1,1400\n", LogOptions.NONE);
        Path wide = folder.resolve("wide.csv");
        Files.write(wide, (HEAD + ROWS).getBytes(StandardCharsets.UTF_16LE));
        assertEquals(
                DataProblem.FILE_NOT_UTF8,
                assertThrows(Refusal.class, () -> LogFile.read(wide, SET)).problem());
    }

    /** Whatever is done to a file, it is read or refused with its place; nothing else is thrown. */
    @Test
    void a_damaged_file_is_read_or_refused_and_never_breaks_the_reader() {
        String good = "time,power [kW],speed [rpm],flow [m3/h]\n" + onMap(1);
        Random random = new Random(11);
        int refused = 0;
        for (int i = 0; i < 400; i++) {
            StringBuilder text = new StringBuilder(good);
            for (int j = random.nextInt(6); j >= 0; j--) {
                int at = random.nextInt(text.length());
                switch (random.nextInt(4)) {
                    case 0 -> text.deleteCharAt(at);
                    case 1 -> text.insert(at, "\"\n,;-.Zé\0".charAt(random.nextInt(9)));
                    case 2 -> text.setCharAt(at, (char) (32 + random.nextInt(96)));
                    default -> text.delete(at, Math.min(text.length(), at + random.nextInt(400)));
                }
            }
            try {
                TrendLog log = read(text.toString());
                assertTrue(log.count() <= 122);
            } catch (Refusal refusal) {
                refused++;
                assertTrue(refusal.place().isPresent(), refusal.getMessage());
            }
        }
        assertTrue(refused > 0 && refused < 400, "Some are read and some refused: " + refused);
    }
}
