package headrace.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.data.Column;
import headrace.data.Table;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class TableTextTest {
    /** Two rows for each pump, told apart by the second column alone. */
    private static final Table PAIRS = Table.of(
                    "Pairs",
                    Column.text("pump"),
                    Column.text("season"),
                    Column.in("energy", "kWh"),
                    Column.in("power", "kW"),
                    Column.number("starts"))
            .row("P1", "summer", 1000, 2, 31)
            .row("P1", "winter", 2000, 3, 32)
            .row("P2", "summer", 1500, 4, 33)
            .row("P2", "winter", 2500, 5, 34);

    @Test
    void a_table_that_goes_on_beneath_repeats_the_columns_that_tell_its_rows_apart() {
        assertEquals("""
                Pairs
                  pump  season  energy  power
                                   kWh     kW
                  ────  ──────  ──────  ─────
                  P1    summer    1000      2
                  P1    winter    2000      3
                  P2    summer    1500      4
                  P2    winter    2500      5

                  pump  season  starts
                  ────  ──────  ──────
                  P1    summer      31
                  P1    winter      32
                  P2    summer      33
                  P2    winter      34\
                """, String.join("\n", TableText.lines(PAIRS, 30)));
    }

    @Test
    void where_there_is_no_room_for_them_the_first_column_stands_for_the_row() {
        List<String> lines = TableText.lines(PAIRS, 16);
        assertEquals(4, lines.stream().filter(line -> line.startsWith("  pump")).count(), lines::toString);
        assertTrue(lines.stream().allMatch(line -> line.length() <= 16), lines::toString);
    }

    @Test
    void a_table_alone_says_its_title_once() {
        String text = Reports.of(PAIRS).orElseThrow().toText();
        assertEquals(1, text.lines().filter(line -> line.equals("Pairs")).count(), text);
        assertTrue(text.startsWith("Pairs\n"), text);
    }

    /** Letters of East Asia are two columns wide, and an accent of its own takes none. */
    @Test
    void columns_stand_straight_under_wide_letters_and_accents() {
        Table table = Table.of("T", Column.text("name"), Column.number("n"))
                .row("\u6c34\u6cf5", 3)
                .row("e\u0301tage", 44);
        assertEquals(
                List.of("  \u6c34\u6cf5    3", "  e\u0301tage  44"),
                TableText.lines(table, 40).subList(3, 5));
    }

    @Test
    void a_narrow_column_of_text_is_chosen_where_it_spares_a_second_table() {
        Table table =
                Table.of("T", Column.text("law"), Column.in("energy", "kWh")).row("quadratic, 25 % minimum head", 7962);
        assertTrue(TableText.lines(table, 40).contains("  quadratic, 25 % minimum head    7962"));
        assertEquals(
                List.of("  quadratic, 25 %    7962", "  minimum head"),
                TableText.lines(table, 30).subList(4, 6));
    }
}
