package headrace.script;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.units.Money;
import headrace.units.Quantities;
import headrace.units.Unit;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

/** Keeps {@code docs/words.md} true. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class WordsPageTest {
    private static final Pattern LINE = Pattern.compile("(\\S.*?)\\s+// (.+)");

    private static String page() throws IOException {
        return Files.readString(Path.of("..", "docs", "words.md"));
    }

    @Test
    void lists_each_unit_with_its_kind_its_symbol_and_its_spellings() throws IOException {
        List<String> expected = new ArrayList<>();
        Quantities.KINDS.forEach(kind -> kind.units().forEach(unit -> expected.add(row(kind.name(), unit))));
        String table = page().substring(page().indexOf("## Units"));
        List<String> listed = table.lines()
                .filter(line -> line.matches("\\| [a-z ]+ \\| `.*"))
                .toList();
        assertEquals(String.join("\n", expected), String.join("\n", listed));
    }

    @Test
    void lists_each_currency_that_is_a_word() throws IOException {
        for (String currency : Money.CURRENCIES) {
            assertTrue(page().contains("`" + currency + "`"), currency);
        }
    }

    @Test
    void each_line_of_its_examples_prints_what_stands_beside_it() throws IOException {
        String block = page().substring(page().indexOf("```groovy") + 9);
        List<String> lines =
                block.substring(0, block.indexOf("```")).strip().lines().toList();
        assertTrue(lines.size() >= 10);
        for (String line : lines) {
            var parts = LINE.matcher(line);
            assertTrue(parts.matches(), line);
            assertEquals(parts.group(2), Scripts.run(parts.group(1)).toString(), line);
        }
    }

    private static String row(String kind, Unit unit) {
        String symbol = unit.symbol().isEmpty() ? "–" : unit.symbol();
        return "| " + kind + " | `" + unit.word() + "` | " + symbol + " | " + String.join("; ", unit.spellings())
                + " |";
    }
}
