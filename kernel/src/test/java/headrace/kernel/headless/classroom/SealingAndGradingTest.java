package headrace.kernel.headless.classroom;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.data.Table;
import headrace.data.TableFile;
import headrace.kernel.headless.RunInput;
import headrace.kernel.headless.RunParameters;
import headrace.kernel.headless.classroom.Sealing.Sealed;
import headrace.kernel.notebook.Cell;
import headrace.kernel.notebook.Fields;
import headrace.kernel.notebook.Notebook;
import headrace.kernel.session.Language;
import headrace.kernel.session.groovy.GroovySession;
import headrace.lesson.Check.Verdict;
import headrace.lesson.LessonProblem;
import headrace.problem.Refusal;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@DisplayNameGeneration(ReplaceUnderscores.class)
class SealingAndGradingTest {
    private static final String POWER = """
            power = exercise('power', 'Hydraulic power at 36 m³/h and 200 kPa?', within: 1.percent,
                answer: 36.m3ph * 200.kPa, hints: ['Flow times pressure difference, in SI.'])""";

    @TempDir
    Path folder;

    private GroovySession session(RunInput input) {
        return GroovySession.in(folder, folder, input.language());
    }

    private RunInput notebook(String name, Cell... cells) throws IOException {
        return written(name, new Notebook(Fields.NONE, List.of(cells)));
    }

    private RunInput written(String name, Notebook notebook) throws IOException {
        Path file = folder.resolve(name);
        Files.writeString(file, notebook.toJson());
        return RunInput.read(file);
    }

    private static String text(Notebook notebook) {
        return notebook.cells().stream().map(Cell::source).collect(Collectors.joining("\n"));
    }

    private Grading graded(RunInput input, Map<String, String> parameters) {
        return Grading.of(input, new RunParameters(parameters), Duration.ofSeconds(20), this::session);
    }

    private static Notebook replaced(Notebook notebook, String old, String by) {
        List<Cell> cells = new ArrayList<>();
        notebook.cells().forEach(cell -> cells.add(Cell.code(cell.source().replace(old, by))));
        return notebook.withCells(cells);
    }

    @Test
    void a_sealed_notebook_has_no_answer_in_the_clear_and_checks_the_same() throws IOException {
        RunInput teacher =
                notebook("teacher.ipynb", Cell.code(POWER), Cell.code("check(power, 2.kW)"), Cell.code("power.name()"));
        Sealed sealed = Sealing.of(teacher, 0, this::session);
        assertEquals(List.of("power"), sealed.names());
        String text = text(sealed.notebook());
        assertFalse(text.contains("answer:") || text.contains("36.m3ph") || text.contains("Flow times"), text);
        assertFalse(text.contains("2.kW"), text);
        assertTrue(text.contains("check(power)") && text.contains("not-secret"), text);
        assertTrue(sealed.notebook().toJson().contains("They are not secret"));
        // 36 m³/h are 0.01 m³/s; times 200 kPa that is 2 kW.
        Notebook right = replaced(sealed.notebook(), "check(power)", "check(power, 2.kW)");
        assertEquals(1, graded(written("right.ipynb", right), Map.of()).count(Verdict.RIGHT));
        Notebook wrong = replaced(sealed.notebook(), "check(power)", "check(power, 2.W)");
        Grading grading = graded(written("wrong.ipynb", wrong), Map.of());
        assertEquals(1, grading.count(Verdict.WRONG));
        assertTrue(grading.marks().get(0).said().contains("between kW and W"), grading.toString());
        assertEquals(
                1, graded(written("open.ipynb", sealed.notebook()), Map.of()).count(Verdict.NOT_ANSWERED));
    }

    @Test
    void cells_of_the_teacher_alone_are_left_out() throws IOException {
        Cell solution = Cell.code("way = 'in the clear'").with(Fields.NONE.with("tags", List.of("solution")));
        Sealed sealed = Sealing.of(notebook("t.ipynb", Cell.code(POWER), solution), 0, this::session);
        assertEquals(1, sealed.notebook().cells().size());
    }

    @Test
    void each_seed_has_its_own_numbers_and_its_own_answer() throws IOException {
        RunInput teacher = notebook(
                "seeds.ipynb",
                Cell.code("seed = 1").with(Fields.NONE.with("tags", List.of("parameters"))),
                Cell.code("flow = drawn('flow', 10.m3ph, 90.m3ph, seed: seed)"),
                Cell.code("twice = exercise('twice', 'Twice the flow?', seed: seed, answer: flow * 2)"),
                Cell.code("check(twice)"));
        Notebook students = Sealing.of(teacher, 4, this::session).notebook();
        Notebook answered =
                replaced(students, "check(twice)", "check(twice, drawn('flow', 10.m3ph, 90.m3ph, seed: 3) * 2)");
        Notebook tagged = answered.withCells(answered.cells().stream()
                .map(cell -> cell.source().startsWith("seed")
                        ? Cell.code(cell.source()).with(Fields.NONE.with("tags", List.of("parameters")))
                        : cell)
                .toList());
        RunInput input = written("third.ipynb", tagged);
        assertEquals(1, graded(input, Map.of("seed", "3")).count(Verdict.RIGHT));
        assertEquals(1, graded(input, Map.of("seed", "1")).count(Verdict.WRONG));
        Grading strange = graded(input, Map.of("seed", "5"));
        assertEquals(1, strange.count(Verdict.NOT_ANSWERED));
        assertTrue(strange.failures().toString().contains("seeds 1 to 4"), strange.toString());
    }

    @Test
    void a_java_notebook_is_sealed_too() throws IOException {
        Fields java = Fields.NONE.with("language_info", Fields.NONE.with("name", "java"));
        Cell cell = Cell.code("var head = exercise(\"head\", \"How high?\", answer(m(10)), within(percent(3)));");
        RunInput teacher = written("java.ipynb", new Notebook(java, List.of(cell)));
        assertEquals(Language.JAVA, teacher.language());
        Notebook sealed = Sealing.of(teacher, 0, this::session).notebook();
        assertFalse(text(sealed).contains("answer("), text(sealed));
        List<Cell> cells = new ArrayList<>(sealed.cells());
        cells.add(Cell.code("check(head, m(10.2));"));
        assertEquals(
                1, graded(written("j.ipynb", sealed.withCells(cells)), Map.of()).count(Verdict.RIGHT));
    }

    @Test
    void a_cell_that_fails_or_never_ends_does_not_keep_the_others_from_being_graded() throws IOException {
        RunInput input = notebook(
                "broken.ipynb",
                Cell.code("nothing.here()"),
                Cell.code(POWER),
                Cell.code("while (true) {}"),
                Cell.code("check(power, 2.kW)"),
                Cell.code("missing()\nother = exercise('other', 'What?', answer: 3)"));
        Grading grading = Grading.of(input, new RunParameters(Map.of()), Duration.ofSeconds(2), this::session);
        assertEquals(1, grading.count(Verdict.RIGHT), grading::toString);
        assertEquals(1, grading.count(Verdict.NOT_ANSWERED), grading::toString);
        assertEquals(3, grading.failures().size(), grading::toString);
        assertTrue(grading.failures().get(1).startsWith("cell 3: took too long"), grading::toString);
        assertTrue(grading.summary().endsWith("1 right, 0 wrong, 1 not answered of 2, 3 cells failed"));
    }

    @Test
    void the_table_of_several_notebooks_is_a_table_file() throws IOException {
        Grading one = graded(notebook("a.ipynb", Cell.code(POWER), Cell.code("check(power, 2.kW)")), Map.of());
        Grading other = graded(notebook("b.ipynb", Cell.code(POWER)), Map.of());
        Path file = folder.resolve("grades.csv");
        Table table = Grading.table(List.of(one, other));
        TableFile.write(table, file);
        assertEquals(table, TableFile.read(file));
        assertEquals(2, table.rows().size());
    }

    @Test
    void notebooks_of_one_name_are_told_apart_by_their_folders() throws IOException {
        Files.createDirectories(folder.resolve("lee"));
        Cell right = Cell.code("check(power, 2.kW)");
        Grading one = graded(notebook("a.ipynb", Cell.code(POWER), right), Map.of());
        Grading other = graded(notebook("lee/a.ipynb", Cell.code(POWER), right), Map.of());
        Grading third = graded(notebook("b.ipynb", Cell.code(POWER), right), Map.of());
        assertEquals(
                List.of(
                        folder.resolve("a.ipynb").toString(),
                        folder.resolve("lee/a.ipynb").toString(),
                        "b.ipynb"),
                Grading.table(List.of(one, other, third)).rows().stream()
                        .map(row -> row.get(0).print())
                        .toList());
    }

    @Test
    void an_exercise_that_a_student_took_out_is_listed_where_most_others_have_it() throws IOException {
        Cell own = Cell.code("own = exercise('own', 'One?', answer: 1)");
        Grading one = graded(notebook("a.ipynb", Cell.code(POWER)), Map.of());
        Grading other = graded(notebook("b.ipynb", Cell.code(POWER), own), Map.of());
        Grading third = graded(notebook("c.ipynb", Cell.code("1 + 1")), Map.of());
        Table table = Grading.table(List.of(one, other, third));
        assertEquals(
                List.of("a.ipynb power", "b.ipynb power", "b.ipynb own", "c.ipynb power"),
                table.rows().stream()
                        .map(row -> row.get(0).print() + " " + row.get(1).print())
                        .toList());
        assertEquals("Not in this notebook.", table.rows().get(3).get(4).print());
    }

    @Test
    void the_students_notebook_is_not_sealed_once_more() throws IOException {
        Notebook sealed = Sealing.of(
                        notebook("t.ipynb", Cell.code(POWER), Cell.code("check(power, 2.kW)")), 0, this::session)
                .notebook();
        refused("sealed already", sealed.cells().toArray(Cell[]::new));
    }

    @Test
    void what_cannot_be_sealed_is_refused_with_the_reason() throws IOException {
        refused("no exercise", Cell.code("1 + 1"));
        refused("failed", Cell.code("nothing.here()"));
        refused("stands in no cell", Cell.code("n = 'a'\nexercise(n, 'What?', answer: 3)"));
        refused(
                "once as 3 and once as 4",
                Cell.code("exercise('a', 'What?', answer: 3)"),
                Cell.code("exercise('a', 'What?', answer: 4)"));
    }

    private void refused(String part, Cell... cells) throws IOException {
        RunInput input = notebook("bad.ipynb", cells);
        Refusal refusal = assertThrows(Refusal.class, () -> Sealing.of(input, 0, this::session));
        assertEquals(LessonProblem.EXERCISE_NOT_SEALED, refusal.problem());
        assertTrue(refusal.getMessage().contains(part), refusal.getMessage());
    }

    @Test
    void commas_and_brackets_inside_an_answer_do_not_mislead_the_seal() {
        String cell =
                "a = exercise('a', 'Which, of [these]?', answer: [3, 4].max { x, y -> x <=> y }, hints: ['(', \"b, c\"])"
                        + " // exercise('no', 'x', answer: 3)\ncheck(a, f(1, 2))";
        ExerciseText text = new ExerciseText(cell, false);
        assertEquals(List.of("a"), text.names());
        String sealed = text.sealed(Map.of("a", "S"), java.util.Set.copyOf(text.variables()));
        assertEquals(
                "a = exercise('a', 'Which, of [these]?',\n    seal: 'S') // exercise('no', 'x', answer: 3)\ncheck(a)",
                sealed);
    }
}
