package headrace.data;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.problem.Place;
import headrace.problem.Refusal;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Money;
import headrace.units.UnitProblem;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@DisplayNameGeneration(ReplaceUnderscores.class)
class TableFileTest {
    private static final String[] AWKWARD = {
        "=1+1",
        "+49",
        "-12",
        "@home",
        "'quoted'",
        "a,b",
        "say \"so\"",
        "#5",
        "m³/h, η",
        "12.5",
        "–",
        "1;2",
        "a\\b",
        "NaN"
    };

    @TempDir
    Path folder;

    @Test
    void says_units_in_the_heads_and_numbers_in_full() {
        Table table = Table.of(
                        "Points, tested",
                        Column.text("law"),
                        Column.in("flow", "m³/h"),
                        Column.number("n"),
                        Column.in("cost", "EUR"))
                .row("throttled", Flow.cubicMetresPerHour(0.1), 3, new Money(1234.5, "EUR"))
                .row("none", null, 1e-7, null);
        assertEquals(
                "\"# title: Points, tested\"\nlaw,flow [m³/h],n [1],cost [EUR]\nthrottled,0.1,3,1234.5\nnone,,1.0E-7,\n",
                TableFile.text(table));
    }

    @Test
    void comes_back_as_it_was_written() {
        Random random = new Random(20260117);
        for (int round = 0; round < 300; round++) {
            Table table = random(random);
            Path file = folder.resolve("table.csv");
            TableFile.write(table, file);
            Table again = TableFile.read(file);
            assertEquals(table, again);
            for (Column column : table.columns()) {
                assertArrayEquals(bits(table, column), bits(again, column));
            }
        }
    }

    @Test
    void never_starts_a_cell_of_text_like_a_formula() throws IOException {
        Table table = Table.of("=cmd", Column.text("=name"));
        for (String text : AWKWARD) {
            table = table.row(text);
        }
        Path file = folder.resolve("table.csv");
        TableFile.write(table, file);
        for (String line : Files.readString(file).lines().skip(1).toList()) {
            assertTrue("=+-@".indexOf(line.replaceFirst("^\"", "").charAt(0)) < 0, line);
        }
        assertEquals(table, TableFile.read(file));
    }

    @Test
    void writes_the_same_in_every_locale() {
        Table table = Table.of("t", Column.in("head", "m")).row(Head.metres(1234.5));
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag("hi-IN-u-nu-deva"));
            assertEquals("\"# title: t\"\nhead [m]\n1234.5\n", TableFile.text(table));
        } finally {
            Locale.setDefault(before);
        }
    }

    @Test
    void says_where_a_row_does_not_fit() throws IOException {
        Path file = folder.resolve("bad.csv");
        Files.writeString(file, "a [m], b\n1,x\n2\n");
        assertPlace(DataProblem.ROW_DOES_NOT_FIT, new Place(file.toString(), 3, 1), file);
        Files.writeString(file, "a [m], b\n1,x\n\"two\",y\n");
        assertPlace(DataProblem.NOT_A_NUMBER, new Place(file.toString(), 3, 1), file);
        Files.writeString(file, "a [m], b\n1,\"x\n2,y\n");
        assertPlace(DataProblem.MALFORMED_LINE, new Place(file.toString(), 2, 3), file);
        Files.writeString(file, "b, a [m], a [m]\nx,1,2\n");
        assertPlace(DataProblem.WRONG_COLUMN, new Place(file.toString(), 1, 1), file);
        Files.writeString(file, "# title: nothing else\n");
        assertPlace(DataProblem.MISSING_COLUMN, new Place(file.toString(), 1, 0), file);
    }

    @Test
    void refuses_a_value_of_another_kind_than_its_column() {
        Table table = Table.of("t", Column.in("flow", "m³/h"), Column.in("cost", "EUR"));
        assertEquals(
                UnitProblem.UNKNOWN_UNIT,
                assertThrows(Refusal.class, () -> table.row(Head.metres(3), null))
                        .problem());
        assertEquals(
                DataProblem.ROW_DOES_NOT_FIT,
                assertThrows(Refusal.class, () -> table.row(null, new Money(1, "USD")))
                        .problem());
        assertEquals(
                DataProblem.ROW_DOES_NOT_FIT,
                assertThrows(Refusal.class, () -> table.row(Double.NaN, null)).problem());
        assertEquals(
                DataProblem.ROW_DOES_NOT_FIT,
                assertThrows(Refusal.class, () -> table.row(1)).problem());
    }

    private static void assertPlace(DataProblem problem, Place place, Path file) {
        Refusal refusal = assertThrows(Refusal.class, () -> TableFile.read(file));
        assertEquals(problem, refusal.problem());
        assertEquals(place, refusal.place().orElseThrow());
    }

    private static long[] bits(Table table, Column column) {
        return java.util.Arrays.stream(table.numbers(column.name()))
                .mapToLong(Double::doubleToRawLongBits)
                .toArray();
    }

    private static Table random(Random random) {
        Table table = Table.of(
                pick(random),
                Column.text("law"),
                Column.in("flow", "m³/h"),
                Column.number("share"),
                Column.text("why"));
        for (int i = random.nextInt(12); i > 0; i--) {
            table = table.row(
                    pick(random),
                    random.nextInt(5) == 0 ? null : anyFinite(random),
                    random.nextGaussian(),
                    random.nextBoolean() ? null : pick(random));
        }
        return table;
    }

    private static String pick(Random random) {
        return AWKWARD[random.nextInt(AWKWARD.length)];
    }

    private static double anyFinite(Random random) {
        double value = Double.longBitsToDouble(random.nextLong());
        return Double.isFinite(value) ? value : 0;
    }
}
