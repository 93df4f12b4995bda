package headrace.kernel.headless;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import headrace.kernel.headless.ScriptCells.ScriptCell;
import headrace.kernel.notebook.Cell;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class ScriptCellsTest {
    @Test
    void a_script_without_marks_is_one_cell() {
        List<ScriptCell> cells = ScriptCells.of("a = 1\n\nb = 2\n");
        assertEquals(List.of("a = 1\n\nb = 2"), sources(cells));
        assertInstanceOf(Cell.Code.class, cells.get(0).cell());
    }

    @Test
    void a_mark_begins_a_cell_and_its_words_become_a_heading() {
        List<ScriptCell> cells = ScriptCells.of("a = 1\n// %% Half flow\nb = 2\n//%%\nc = 3\n");
        assertEquals(List.of("a = 1", "## Half flow", "b = 2", "c = 3"), sources(cells));
        assertInstanceOf(Cell.Markdown.class, cells.get(1).cell());
    }

    @Test
    void the_comments_of_a_markdown_cell_become_text() {
        List<ScriptCell> cells = ScriptCells.of("// %% [markdown]\n// # Title\n//\n// Text.\n// %%\na = 1\n");
        assertEquals(List.of("# Title\n\nText.", "a = 1"), sources(cells));
        assertInstanceOf(Cell.Markdown.class, cells.get(0).cell());
    }

    @Test
    void each_cell_knows_the_line_where_its_text_begins() {
        List<ScriptCell> cells = ScriptCells.of("\n\na = 1\n// %% Two\n\nb = 2\n");
        assertEquals(List.of(3, 4, 6), cells.stream().map(ScriptCell::firstLine).toList());
    }

    @Test
    void empty_cells_and_an_empty_script_leave_no_cell() {
        assertEquals(List.of(), ScriptCells.of(""));
        assertEquals(List.of(), ScriptCells.of("// %%\n \n// %%\n"));
    }

    @Test
    void an_indented_mark_or_one_in_the_middle_of_a_line_is_no_mark() {
        assertEquals(1, ScriptCells.of("a = 1 // %% no\n  // %% no\nb = 2").size());
    }

    private static List<String> sources(List<ScriptCell> cells) {
        return cells.stream().map(each -> each.cell().source()).toList();
    }
}
