package headrace.data;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.curve.CurveProblem;
import headrace.curve.PumpTest;
import headrace.curve.TestPoint;
import headrace.problem.Place;
import headrace.problem.Problem;
import headrace.problem.Refusal;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class PumpFileTest {
    private static final String HEAD = """
            # name: Wren 25
            # speed: 1450 rpm
            # impeller diameter: 120 mm
            # liquid: water 20 °C
            # poles: 4
            # source: invented
            # date: 2026-01-17
            """;
    private static final String COLUMNS = "flow [m3/h], head [m], shaft power [kW]\n";
    private static final String POINTS = "0, 12, 0.5\n10, 11, 0.8\n20, 8, 1\n";

    @TempDir
    Path folder;

    @Test
    void reads_what_stands_in_it() throws IOException {
        PumpTest test = read(HEAD + COLUMNS + POINTS);
        assertEquals("Wren 25", test.name());
        assertEquals(1450, test.speed().toRevolutionsPerMinute(), 1e-9);
        assertEquals(120, test.impellerDiameter().orElseThrow().toMillimetres(), 1e-9);
        assertEquals("water at 20 °C", test.liquid().toString());
        assertEquals(4, test.poles().orElseThrow());
        assertEquals("2026-01-17", test.date().orElseThrow().toString());
        assertEquals(3, test.points().size());
        assertPoint(test.points().get(1), 10, 11, 0.8, 1450);
        assertTrue(test.notes().isEmpty());
        assertEquals("invented", test.basis().inputs().get(0).source());
        assertEquals("pump.csv", test.basis().inputs().get(0).name());
    }

    @Test
    void reads_the_same_after_a_spreadsheet_has_saved_it() throws IOException {
        String saved = "\uFEFF\"# name: Wren 25\",,\r\n# speed: 1450 rpm,,\r\n# source: invented, by hand,,\r\n,,\r\n"
                + "flow [m3/h],head [m],shaft power [kW]\r\n\"0\",12,0.5\r\n10,11,0.80\r\n20,8,1\r\n,,\r\n";
        PumpTest test = read(saved);
        assertEquals("Wren 25", test.name());
        assertEquals("invented, by hand", test.source());
        assertPoint(test.points().get(1), 10, 11, 0.8, 1450);
        assertTrue(test.notes().has(DataProblem.BYTE_ORDER_MARK));
    }

    @Test
    void reads_decimal_commas_when_told_so() throws IOException {
        Path file = write(HEAD + "flow [m3/h]; head [m]; shaft power [kW]\n0;12,5;0,5\n10,5;11;0,8\n20;8;1\n");
        PumpTest test = PumpFile.read(file, NumberStyle.DECIMAL_COMMA);
        assertPoint(test.points().get(1), 10.5, 11, 0.8, 1450);
        Refusal refusal = assertThrows(Refusal.class, () -> PumpFile.read(file));
        assertEquals(DataProblem.WRONG_SEPARATOR, refusal.problem());
        assertTrue(refusal.getMessage().contains("decimalComma: true"), refusal.getMessage());
    }

    @Test
    void puts_unordered_rows_in_order_and_keeps_repeated_flows_with_a_note() throws IOException {
        PumpTest test = read(HEAD + COLUMNS + "20, 8, 1\n0, 12, 0.5\n10, 11, 0.8\n10, 11.1, 0.81\n");
        assertEquals(
                List.of(0.0, 10.0, 10.0, 20.0),
                test.points().stream()
                        .map(point -> (double) Math.round(point.flow().toCubicMetresPerHour()))
                        .toList());
        assertTrue(test.notes().has(DataProblem.UNORDERED_ROWS));
        assertTrue(test.notes().has(CurveProblem.REPEATED_FLOWS));
        assertFalse(test.notes().has(DataProblem.SPEED_OF_EACH_POINT));
    }

    @Test
    void takes_the_mean_speed_where_only_the_points_state_one() throws IOException {
        PumpTest test = read("# name: Wren 25\nflow [m3/h], head [m], shaft power [kW], speed [rpm]\n"
                + "0, 12, 0.5, 1490\n10, 11, 0.8, 1475\n20, 8, 1, 1460\n");
        assertEquals(1475, test.speed().toRevolutionsPerMinute(), 1e-9);
        assertPoint(test.points().get(2), 20, 8, 1, 1460);
        assertTrue(test.notes().has(DataProblem.SPEED_OF_EACH_POINT));
        assertTrue(test.notes().has(DataProblem.ASSUMED_HEAD_LINE));
    }

    /** 20 m³/h at 8 m of water at 20 °C is 435 W (hand calculation), 43.5 % of 1 kW; the file says 47 %. */
    @Test
    void notes_an_efficiency_that_the_other_columns_do_not_give() throws IOException {
        PumpTest test = read(HEAD + "flow [m3/h], head [m], shaft power [kW], efficiency [%]\n"
                + "0, 12, 0.5, 0\n10, 11, 0.8, 37.4\n20, 8, 1, 47\n");
        String notes = test.notes().toString();
        assertEquals(1, test.notes().list().size(), notes);
        assertTrue(notes.contains("line 11") && notes.contains("47 %") && notes.contains("43.5"), notes);
    }

    static List<Arguments> bad_files() {
        return List.of(
                bad("", DataProblem.FILE_EMPTY, 0, 0),
                bad(" \n\n", DataProblem.FILE_EMPTY, 0, 0),
                bad(HEAD, DataProblem.MISSING_COLUMN, 7, 0),
                bad(HEAD + COLUMNS, DataProblem.TOO_FEW_ROWS, 8, 0),
                bad(HEAD + COLUMNS + "0, 12, 0.5\n10, 11, 0.8\n", DataProblem.TOO_FEW_ROWS, 10, 0),
                bad(HEAD + COLUMNS + "0, 12, 0.5\n10, 11, 0.8\n10, 11, 0.8\n", DataProblem.TOO_FEW_ROWS, 11, 0),
                bad(HEAD + "flow [m3/h], head [m]\n0, 12\n", DataProblem.MISSING_COLUMN, 8, 0),
                bad(HEAD + "flow [m3/h], head, shaft power [kW]\n" + POINTS, DataProblem.MISSING_UNIT, 8, 14),
                bad(HEAD + "flow [m3/h], head [], shaft power [kW]\n" + POINTS, DataProblem.MISSING_UNIT, 8, 14),
                bad(HEAD + "flow [m3/h], head (m), shaft power [kW]\n" + POINTS, DataProblem.MISSING_UNIT, 8, 14),
                bad(HEAD + "flow [m3/h], head [kPa], shaft power [kW]\n" + POINTS, DataProblem.WRONG_UNIT, 8, 14),
                bad(HEAD + "flow [furlong], head [m], shaft power [kW]\n" + POINTS, DataProblem.WRONG_UNIT, 8, 1),
                bad(HEAD + "flow [m3/h], head [m], shaft power [kW], colour [1]\n", DataProblem.WRONG_COLUMN, 8, 42),
                bad(HEAD + "flow [m3/h], head [m], shaft power [kW], head [ft]\n", DataProblem.WRONG_COLUMN, 8, 42),
                bad(HEAD + COLUMNS + "0, twelve, 0.5\n", DataProblem.NOT_A_NUMBER, 9, 4),
                bad(HEAD + COLUMNS + "0, , 0.5\n", DataProblem.NOT_A_NUMBER, 9, 4),
                bad(HEAD + COLUMNS + "0, NaN, 0.5\n", DataProblem.NOT_A_NUMBER, 9, 4),
                bad(HEAD + COLUMNS + "0, Infinity, 0.5\n", DataProblem.NOT_A_NUMBER, 9, 4),
                bad(HEAD + COLUMNS + "0, 1e999, 0.5\n", DataProblem.NOT_A_NUMBER, 9, 4),
                bad(HEAD + COLUMNS + "0, 0x12, 0.5\n", DataProblem.NOT_A_NUMBER, 9, 4),
                bad(HEAD + COLUMNS + "0, 12d, 0.5\n", DataProblem.NOT_A_NUMBER, 9, 4),
                bad(HEAD + COLUMNS + "0, ١٢, 0.5\n", DataProblem.NOT_A_NUMBER, 9, 4),
                bad(HEAD + COLUMNS + "0, \u221212, 0.5\n", DataProblem.NOT_A_NUMBER, 9, 4),
                bad(HEAD + COLUMNS + "0, \"12,5\", 0.5\n", DataProblem.NOT_A_NUMBER, 9, 4),
                bad(HEAD + COLUMNS + "0, -12, 0.5\n", DataProblem.VALUE_NOT_POSSIBLE, 9, 4),
                bad(HEAD + COLUMNS + "-1, 12, 0.5\n", DataProblem.VALUE_NOT_POSSIBLE, 9, 1),
                bad(HEAD + COLUMNS + "0, 12, 0\n", DataProblem.VALUE_NOT_POSSIBLE, 9, 8),
                bad(HEAD + COLUMNS + "0, 12\n", DataProblem.ROW_DOES_NOT_FIT, 9, 1),
                bad(HEAD + COLUMNS + "0, 12, 0.5, 7\n", DataProblem.ROW_DOES_NOT_FIT, 9, 1),
                bad(HEAD + COLUMNS + "0, \"12, 0.5\n", DataProblem.MALFORMED_LINE, 9, 4),
                bad(HEAD + COLUMNS + "0, 1\u00002, 0.5\n", DataProblem.MALFORMED_LINE, 9, 5),
                bad(HEAD + COLUMNS + "0, 12, 0.5\n36, 10, 0.8\n20, 8, 1\n", CurveProblem.EFFICIENCY_ABOVE_ONE, 10, 9),
                bad(HEAD + COLUMNS + POINTS + "# poles: 4\n", DataProblem.WRONG_HEAD_LINE, 12, 1),
                bad(HEAD + "# name: Wren 26\n" + COLUMNS + POINTS, DataProblem.WRONG_HEAD_LINE, 8, 1),
                bad("# nme: Wren 25\n" + COLUMNS + POINTS, DataProblem.WRONG_HEAD_LINE, 1, 1),
                bad("# Wren 25\n" + COLUMNS + POINTS, DataProblem.WRONG_HEAD_LINE, 1, 1),
                bad("# name: \n" + COLUMNS + POINTS, DataProblem.WRONG_HEAD_LINE, 1, 1),
                bad("# speed: 1450 rpm\n" + COLUMNS + POINTS, DataProblem.MISSING_HEAD_LINE, 5, 0),
                bad("# name: Wren 25\n" + COLUMNS + POINTS, DataProblem.MISSING_HEAD_LINE, 5, 0),
                bad("# name: W\n# speed: 1450\n" + COLUMNS + POINTS, DataProblem.MISSING_UNIT, 2, 10),
                bad("# name: W\n# speed: fast rpm\n" + COLUMNS + POINTS, DataProblem.NOT_A_NUMBER, 2, 10),
                bad("# name: W\n# speed: 50 Hz\n" + COLUMNS + POINTS, DataProblem.WRONG_UNIT, 2, 10),
                bad(
                        "# name: W\n# speed: 2900 rpm\n# poles: 4\n" + COLUMNS + POINTS,
                        DataProblem.CONTRADICTING_STATEMENTS,
                        3,
                        10),
                bad(
                        "# name: W\n# speed: 1450 rpm\n# poles: 3\n" + COLUMNS + POINTS,
                        DataProblem.VALUE_NOT_POSSIBLE,
                        3,
                        10),
                bad(
                        "# name: W\n# speed: 1450 rpm\n# liquid: beer 4 °C\n" + COLUMNS + POINTS,
                        DataProblem.WRONG_HEAD_LINE,
                        3,
                        11),
                bad(
                        "# name: W\n# speed: 1450 rpm\n# liquid: water 400 °C\n" + COLUMNS + POINTS,
                        DataProblem.VALUE_NOT_POSSIBLE,
                        3,
                        11),
                bad(
                        "# name: W\n# speed: 1450 rpm\n# date: 17.1.2026\n" + COLUMNS + POINTS,
                        DataProblem.WRONG_HEAD_LINE,
                        3,
                        9),
                bad(
                        "# name: W\n# speed: 1450 rpm\nflow [m3/h], head [m], shaft power [kW], speed [rpm]\n"
                                + "0, 12, 0.5, 2900\n",
                        DataProblem.CONTRADICTING_STATEMENTS,
                        4,
                        13),
                bad(HEAD + COLUMNS.replace(',', '\t') + POINTS, DataProblem.WRONG_SEPARATOR, 8, 12));
    }

    @ParameterizedTest(name = "{1} at {2}:{3}")
    @MethodSource
    void bad_files(String text, Problem problem, int line, int column) throws IOException {
        Path file = write(text);
        Refusal refusal = assertThrows(Refusal.class, () -> PumpFile.read(file));
        assertEquals(problem, refusal.problem(), refusal.getMessage());
        assertEquals(new Place(file.toString(), line, column), refusal.place().orElseThrow(), refusal.getMessage());
    }

    @Test
    void names_both_kinds_where_a_unit_measures_something_else() throws IOException {
        Path file = write(HEAD + "flow [m3/h], head [kPa], shaft power [kW]\n" + POINTS);
        assertEquals(
                file
                        + ":8:14: Asked to read the head in 'kPa', which is a unit of pressure difference. Wanted is"
                        + " a head, in m, ft."
                        + " Convert it with the density of the liquid first: a pressure becomes a head only in a liquid."
                        + " [wrong-unit]",
                assertThrows(Refusal.class, () -> PumpFile.read(file)).getMessage());
    }

    @Test
    void refuses_what_is_no_file_of_text() throws IOException {
        assertProblem(DataProblem.FILE_NOT_FOUND, folder.resolve("nowhere.csv"));
        assertProblem(DataProblem.FILE_NOT_READABLE, folder);
        Path latin = folder.resolve("latin.csv");
        Files.write(latin, (HEAD + COLUMNS + POINTS).getBytes(StandardCharsets.ISO_8859_1));
        Refusal refusal = assertProblem(DataProblem.FILE_NOT_UTF8, latin);
        assertEquals(new Place(latin.toString(), 4, 20), refusal.place().orElseThrow());
        Path huge = folder.resolve("huge.csv");
        Files.write(huge, new byte[TextFile.MOST_BYTES + 1]);
        assertProblem(DataProblem.FILE_TOO_LARGE, huge);
    }

    private static Refusal assertProblem(Problem problem, Path file) {
        Refusal refusal = assertThrows(Refusal.class, () -> PumpFile.read(file));
        assertEquals(problem, refusal.problem());
        assertTrue(refusal.place().isPresent());
        return refusal;
    }

    private PumpTest read(String text) throws IOException {
        return PumpFile.read(write(text));
    }

    private Path write(String text) throws IOException {
        return Files.writeString(folder.resolve("pump.csv"), text);
    }

    private static Arguments bad(String text, Problem problem, int line, int column) {
        return Arguments.of(text, problem, line, column);
    }

    private static void assertPoint(TestPoint point, double m3ph, double metres, double kilowatts, double rpm) {
        assertEquals(m3ph, point.flow().toCubicMetresPerHour(), 1e-9);
        assertEquals(metres, point.head().metres(), 1e-9);
        assertEquals(kilowatts, point.shaftPower().toKilowatts(), 1e-9);
        assertEquals(rpm, point.speed().toRevolutionsPerMinute(), 1e-9);
    }
}
