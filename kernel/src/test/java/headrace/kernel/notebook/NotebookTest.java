package headrace.kernel.notebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.kernel.display.MimeBundle;
import headrace.problem.Place;
import headrace.problem.Refusal;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class NotebookTest {
    private static final String CELL = "{\"cell_type\": \"code\", \"metadata\": {}, \"source\": \"%s\"}";

    @Test
    void text_is_read_from_a_list_of_lines_and_from_one_text() {
        Notebook notebook = sample();
        assertEquals(
                "# Two pumps – a day’s work\n\nFlow Q in m³/h, head H in m. ![dot](attachment:dot.png)",
                notebook.cells().get(0).source());
        assertEquals(
                "throw new IllegalStateException('as meant')",
                notebook.cells().get(2).source());
        assertEquals("", notebook.cells().get(3).source());
    }

    @Test
    void stored_outputs_and_stored_controls_are_left_behind() {
        Notebook notebook = sample();
        assertEquals(List.of(), ((Cell.Code) notebook.cells().get(1)).outputs());
        assertEquals(0, ((Cell.Code) notebook.cells().get(1)).count());
        assertFalse(notebook.toJson().contains("alert"));
    }

    @Test
    void a_notebook_without_outputs_is_written_as_it_was_read() {
        String text = sample().toJson();
        assertEquals(text, Notebook.of(text, "again.ipynb").toJson());
        String original = resource()
                .replaceAll("(?s)\"outputs\": \\[\n    \\{.*?\n   \\],", "\"outputs\": [],")
                .replace("\"execution_count\": 12", "\"execution_count\": null")
                .replaceAll("(?s),\n  \"widgets\": \\{.*?\n  \\}", "")
                .replace(
                        "\"source\": \"throw new IllegalStateException('as meant')\"",
                        "\"source\": [\n    \"throw new IllegalStateException('as meant')\"\n   ]");
        assertEquals(original, text);
    }

    @Test
    void numbers_and_their_digits_in_unknown_metadata_survive() {
        assertTrue(sample().toJson().contains("\"b\": 1.50"));
    }

    @Test
    void tags_are_found() {
        assertTrue(sample().cells().get(2).isTagged("raises-exception"));
        assertFalse(sample().cells().get(1).isTagged("raises-exception"));
    }

    @Test
    void a_file_of_the_format_4_0_gets_ids_and_the_same_ones_each_time() {
        String text = notebook(0, CELL.formatted("a"), CELL.formatted("a"), CELL.formatted("b"));
        List<String> ids = ids(Notebook.of(text, "old.ipynb"));
        assertEquals(ids, ids(Notebook.of(text, "old.ipynb")));
        assertEquals(3, Set.copyOf(ids).size());
        assertTrue(ids.stream().allMatch(id -> id.matches("[a-zA-Z0-9_-]{1,64}")), ids.toString());
    }

    @Test
    void an_id_that_stands_twice_or_is_ill_formed_is_replaced_and_the_first_one_kept() {
        String cell = "{\"id\": \"%s\", \"cell_type\": \"raw\", \"metadata\": {}, \"source\": \"\"}";
        List<String> ids = ids(Notebook.of(
                notebook(5, cell.formatted("one"), cell.formatted("one"), cell.formatted("two words")), "n.ipynb"));
        assertEquals("one", ids.get(0));
        assertEquals(3, new HashSet<>(ids).size());
        assertFalse(ids.contains("two words"));
    }

    @Test
    void other_editions_of_the_format_are_refused_where_they_say_so() {
        for (String edition : List.of("3", "5")) {
            Refusal refusal = refused("{\n \"nbformat\": " + edition + ",\n \"cells\": []\n}");
            assertEquals(NotebookProblem.NOTEBOOK_FORMAT_NOT_READ, refusal.problem());
            assertEquals(Optional.of(new Place("bad.ipynb", 2, 14)), refusal.place());
        }
        assertEquals(
                NotebookProblem.NOTEBOOK_FORMAT_NOT_READ, refused(notebook(6)).problem());
    }

    @Test
    void what_is_no_notebook_is_refused() {
        assertEquals(NotebookProblem.NOT_A_NOTEBOOK, refused("[1, 2]").problem());
        assertEquals(NotebookProblem.NOT_A_NOTEBOOK, refused("{\"a\": 1}").problem());
        assertEquals(
                NotebookProblem.NOT_A_NOTEBOOK, refused("{\"nbformat\": 4}").problem());
        assertEquals(NotebookProblem.BROKEN_NOTEBOOK, refused("").problem());
        assertEquals(NotebookProblem.BROKEN_NOTEBOOK, refused("test = 1").problem());
        assertEquals(NotebookProblem.BROKEN_NOTEBOOK, refused(notebook(5) + "x").problem());
    }

    @Test
    void broken_json_is_refused_with_its_line() {
        Refusal refusal = refused("{\n \"nbformat\": 4,\n \"cells\": [,]\n}");
        assertEquals(NotebookProblem.BROKEN_NOTEBOOK, refusal.problem());
        assertEquals(3, refusal.place().orElseThrow().line());
    }

    @Test
    void a_cell_without_text_is_refused_where_it_stands() {
        Refusal refusal = refused(notebook(4, CELL.formatted("a"), "{\"cell_type\": \"code\",\n \"source\": [1]}"));
        assertEquals(NotebookProblem.NOT_A_NOTEBOOK, refusal.problem());
        assertEquals(Optional.of(new Place("bad.ipynb", 2, 12)), refusal.place());
        assertTrue(refusal.getMessage().contains("Cell 2"), refusal.getMessage());
    }

    @Test
    void a_cell_of_an_unknown_kind_is_refused_where_it_stands() {
        Refusal refusal = refused(notebook(4, "{\n \"cell_type\": \"heading\", \"source\": \"\"}"));
        assertEquals(Optional.of(new Place("bad.ipynb", 2, 15)), refusal.place());
    }

    @Test
    void bytes_that_are_not_utf_8_are_refused_with_line_and_column() {
        byte[] latin = "{\n \"nbformat\": 4, \"a\": \"m³\"}".getBytes(StandardCharsets.ISO_8859_1);
        Refusal refusal = assertThrows(Refusal.class, () -> Notebook.of(latin, "latin.ipynb"));
        assertEquals(NotebookProblem.BROKEN_NOTEBOOK, refusal.problem());
        assertEquals(Optional.of(new Place("latin.ipynb", 2, 24)), refusal.place());
    }

    @Test
    void a_byte_order_mark_is_passed_over() {
        byte[] marked = ("\uFEFF" + notebook(5)).getBytes(StandardCharsets.UTF_8);
        assertEquals(List.of(), Notebook.of(marked, "marked.ipynb").cells());
    }

    @Test
    void half_a_character_is_refused_where_it_stands() {
        Refusal refusal = refused(notebook(5, "\n" + CELL.formatted("\\ud83d x")));
        assertEquals(NotebookProblem.BROKEN_NOTEBOOK, refusal.problem());
        assertEquals(2, refusal.place().orElseThrow().line());
    }

    @Test
    void outputs_are_written_as_the_format_has_them() {
        Cell.Code code = Cell.code("x")
                .ran(
                        3,
                        List.of(
                                new CellOutput.Stream("stdout", "a\nb"),
                                new CellOutput.Shown(new MimeBundle(Map.of(
                                        "text/plain", "chart", "image/png", "AAAA", "application/json", "{\"a\":1}"))),
                                new CellOutput.Result(MimeBundle.plain("2"), 3),
                                new CellOutput.Failure("flow-out-of-range", "Asked", List.of("one", "two"))));
        String text = new Notebook(Fields.NONE, List.of(code)).toJson();
        assertTrue(text.contains("\"text\": [\n      \"a\\n\",\n      \"b\"\n     ]"), text);
        assertTrue(text.contains("\"image/png\": \"AAAA\""), text);
        assertTrue(text.contains("\"application/json\": {\n       \"a\": 1\n      }"), text);
        assertTrue(text.contains("\"execution_count\": 3"), text);
        assertTrue(text.contains("\"ename\": \"flow-out-of-range\""), text);
    }

    private static List<String> ids(Notebook notebook) {
        return notebook.cells().stream().map(Cell::id).toList();
    }

    private static Refusal refused(String text) {
        return assertThrows(Refusal.class, () -> Notebook.of(text, "bad.ipynb"));
    }

    private static String notebook(int minor, String... cells) {
        return "{\"nbformat\": 4, \"nbformat_minor\": " + minor + ", \"metadata\": {}, \"cells\": ["
                + String.join(", ", cells) + "]}";
    }

    private static Notebook sample() {
        return Notebook.of(resource(), "two-pumps.ipynb");
    }

    static String resource() {
        try (var in = NotebookTest.class.getResourceAsStream("two-pumps.ipynb")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }
}
