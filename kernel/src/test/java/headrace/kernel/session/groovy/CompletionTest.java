package headrace.kernel.session.groovy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.kernel.session.Completion;
import headrace.kernel.session.Completion.Candidate;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
@Timeout(60)
class CompletionTest extends CellTest {
    @Test
    void a_word_is_completed_with_how_it_is_called() {
        Candidate found = candidate("pri|", "printedUnits");
        assertEquals("word", found.type());
        assertEquals("printedUnits()", found.signature());
    }

    @Test
    void the_replaced_text_is_the_name_before_the_cursor() {
        Completion completion = at("x = pri| + 1");
        assertEquals(4, completion.start());
        assertEquals(7, completion.end());
    }

    @Test
    void the_cursor_is_counted_in_utf16_units() {
        Completion completion = at("x = '🙂'; pri|");
        assertEquals(10, completion.start());
        assertTrue(texts(completion).contains("printedUnits"));
    }

    @Test
    void variables_methods_and_classes_of_earlier_cells_are_completed() {
        value("designFlow = 52.m3ph\ndef designHead(x) { x }\nclass DesignBook {}");
        assertEquals("variable", candidate("des|", "designFlow").type());
        assertEquals("Flow", candidate("des|", "designFlow").signature());
        assertEquals("method", candidate("des|", "designHead").type());
        assertEquals("designHead(x)", candidate("des|", "designHead").signature());
        assertTrue(texts(at("new Des|")).contains("DesignBook"));
    }

    @Test
    void names_that_only_this_cell_uses_are_completed() {
        assertTrue(texts(at("annualEnergy = 3\nprintln ann|")).contains("annualEnergy"));
    }

    @Test
    void units_follow_a_number_and_a_dot() {
        Candidate unit = candidate("52.m3|", "m3ph");
        assertEquals("unit", unit.type());
        assertEquals("flow, m³/h", unit.signature());
        assertTrue(texts(at("x = 5.5.k|")).contains("kW"));
        assertEquals(5, at("52.m3|").end());
        assertEquals(3, at("52.m3|").start());
    }

    @Test
    void inside_of_a_word_the_units_of_its_example_come_first() {
        assertEquals("flow, m³/s", at("duty(52.|").candidates().get(0).signature());
        assertEquals("length, m", at("duty(52.m3ph, 16.|").candidates().get(0).signature());
        assertTrue(at("motor(5.5.|").candidates().get(0).signature().startsWith("power, "));
        assertEquals("unit", candidate("price = 0.18.E|", "EUR").type());
    }

    @Test
    void the_named_choices_of_a_word_come_first_inside_its_parentheses() {
        List<String> texts = texts(at("show(curve, |"));
        assertEquals("place: ", texts.get(0));
        assertEquals("choice", candidate("show(curve, pl|", "place: ").type());
    }

    @Test
    void a_choice_that_was_made_is_not_offered_again() {
        assertFalse(texts(at("show(place: 'a', |")).contains("place: "));
    }

    @Test
    void members_of_a_variable_follow_its_dot() {
        value("flow = 52.m3ph; text = 'abc'; list = [1, 2]; map = [depth: 3, width: 4]");
        assertTrue(texts(at("flow.to|")).contains("toCubicMetresPerHour"));
        assertEquals(
                "property", candidate("flow.toCubic|", "toCubicMetresPerHour").type());
        assertTrue(texts(at("text.toUp|")).contains("toUpperCase"));
        assertTrue(texts(at("list.coll|")).contains("collect"));
        assertEquals(List.of("depth"), texts(at("map.dep|")));
        assertFalse(texts(at("flow.|")).contains("metaClass"));
    }

    @Test
    void members_follow_a_chain_of_calls_without_running_it() {
        value(
                "text = 'abc'; calls = 0; class Book { Book other() { throw new Error('ran') }\nint pages }\nbook = new Book()");
        assertTrue(texts(at("text.trim().toUp|")).contains("toUpperCase"));
        assertTrue(texts(at("book.other().pag|")).contains("pages"));
        assertTrue(texts(at("quantity('230 gpm').k|")).contains("kind"));
        assertTrue(texts(at("52.m3ph.toCubic|")).contains("toCubicMetresPerHour"));
        assertTrue(texts(at("'abc'.toUp|")).contains("toUpperCase"));
        assertTrue(texts(at("[1, 2].coll|")).contains("collect"));
        assertTrue(texts(at("new Book().oth|")).contains("other"));
        assertTrue(texts(at("[3, 1].collect { it + 1 }\ntext.trim().toUp|")).contains("toUpperCase"));
    }

    @Test
    void static_members_follow_the_name_of_a_class() {
        assertTrue(texts(at("Flow.cubicMetresPerH|")).contains("cubicMetresPerHour"));
        assertTrue(texts(at("Math.sq|")).contains("sqrt"));
        assertTrue(texts(at("java.time.LocalDate.no|")).contains("now"));
    }

    @Test
    void no_getter_runs_when_members_are_listed() {
        value(
                "class Trap { def getBait() { throw new Error('ran') }\nString toString() { throw new Error('ran') } }\ntrap = new Trap()");
        assertTrue(texts(at("trap.ba|")).contains("bait"));
        assertTrue(session.inspect("trap", 4, 1).isPresent());
    }

    @Test
    void imports_are_completed_package_by_package_and_class_by_class() {
        assertTrue(texts(at("import java.ut|")).contains("util"));
        assertTrue(texts(at("import java.util.concurrent.Count|")).contains("CountDownLatch"));
        assertTrue(texts(at("import headrace.units.Fl|")).contains("Flow"));
        assertTrue(texts(at("import static java.lang.Ma|")).contains("Math"));
    }

    @Test
    void files_are_completed_inside_the_string_of_a_word_that_reads(@TempDir Path folder) throws IOException {
        Files.createDirectories(folder.resolve("pumps"));
        Files.writeString(folder.resolve("pumps/heron-65.csv"), "");
        Files.writeString(folder.resolve("plain.txt"), "");
        String there = folder.toString().replace('\\', '/');
        assertEquals(List.of("pumps/", "plain.txt"), texts(at("readPumpTest('" + there + "/p|")));
        Completion file = at("x = readPumpTest('" + there + "/pumps/he|");
        assertEquals(List.of("heron-65.csv"), texts(file));
        assertEquals(2, file.end() - file.start());
    }

    @Test
    void files_are_completed_from_the_folder_of_the_script_and_those_above(@TempDir Path folder) throws IOException {
        Files.createDirectories(folder.resolve("data/pumps"));
        Files.createDirectories(folder.resolve("scripts"));
        Files.writeString(folder.resolve("scripts/day.csv"), "");
        try (GroovySession there = GroovySession.in(folder.resolve("scripts"), folder)) {
            assertEquals(List.of("data/", "day.csv"), texts(there.complete("readLoadProfile('da", 19)));
            assertEquals(List.of("pumps/"), texts(there.complete("readLoadProfile('data/p", 23)));
            assertEquals(List.of("day.csv"), texts(there.complete("readLoadProfile('", 17)));
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "// pri|",
                "/* pri|",
                "x = 'pri|",
                "x = \"\"\"pri|",
                "unknown.pri|",
                "unknown().x.|",
                "52.m3ph.|.."
            })
    void nothing_wrong_is_offered(String code) {
        assertFalse(texts(at(code)).contains("printedUnits"));
    }

    @Test
    void words_are_completed_inside_of_an_expression_in_a_string() {
        assertTrue(texts(at("x = \"in ${pri|")).contains("printedUnits"));
    }

    @Test
    void completion_answers_while_a_cell_runs() throws InterruptedException {
        value("flow = 1.m3ph");
        CountDownLatch begun = new CountDownLatch(1);
        Recorded heard = new Recorded() {
            @Override
            public void print(String text) {
                begun.countDown();
            }
        };
        CompletableFuture<?> cell =
                CompletableFuture.supplyAsync(() -> session.run("print 'b'; while (true) { flow }", true, heard));
        begun.await();
        assertTrue(texts(at("flo|")).contains("flow"));
        assertFalse(cell.isDone());
        session.interrupt();
        cell.join();
    }

    @Test
    void no_place_in_any_text_makes_it_fail() {
        value("flow = 52.m3ph; list = [1]; map = [a: 1]");
        String code =
                "import java.util.*\nx = show(flow.toCubic, place: \"a${map.a + list[0].b}c\") /* d */ { a -> a.b }\n"
                        + "y = 52.m3ph + /r+/ - $/d/$ ? [a: 1].a : (1 + 2).abs() // e\n'''f\n''' }) ]";
        for (int place = 0; place <= code.length(); place++) {
            session.complete(code, place);
            session.complete(code.substring(0, place), place);
            session.inspect(code, place, 0);
            session.completeness(code.substring(0, place));
        }
        session.complete(code, -5);
        session.complete(code, 5000);
        session.inspect("", 0, 1);
    }

    private Candidate candidate(String code, String text) {
        return at(code).candidates().stream()
                .filter(each -> each.text().equals(text))
                .findFirst()
                .orElseThrow(() -> new AssertionError("No " + text + " among " + texts(at(code))));
    }

    private Completion at(String code) {
        int cursor = code.indexOf('|');
        return session.complete(code.replace("|", ""), cursor);
    }

    private static List<String> texts(Completion completion) {
        return completion.candidates().stream().map(Candidate::text).toList();
    }
}
