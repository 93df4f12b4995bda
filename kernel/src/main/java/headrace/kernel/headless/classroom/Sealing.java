package headrace.kernel.headless.classroom;

import headrace.kernel.headless.RunInput;
import headrace.kernel.headless.RunParameters;
import headrace.kernel.headless.RunProblem;
import headrace.kernel.notebook.Cell;
import headrace.kernel.notebook.Fields;
import headrace.kernel.notebook.Notebook;
import headrace.kernel.session.Language;
import headrace.kernel.session.source.CellText;
import headrace.lesson.Answer;
import headrace.lesson.Exercise;
import headrace.lesson.LessonProblem;
import headrace.lesson.Seal;
import headrace.problem.Place;
import headrace.problem.Refusal;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntConsumer;

/**
 * Turns a teacher's notebook with answers in the clear into the students' with sealed ones.
 *
 * <p>The teacher's notebook is run, once for each seed, and the answers are those that came out. Cells tagged
 * {@code solution} are left out, and a check waits for its answer again.
 */
public final class Sealing {
    /** The tag of cells that only the teacher sees. */
    static final String SOLUTION = "solution";

    private static final String SEED = "seed";

    private static final String TOLD =
            "Answers and hints of the exercises are sealed: not readable at a glance. They are not secret.";

    private final RunInput input;
    private final Map<String, Exercise> exercises = new LinkedHashMap<>();

    private Sealing(RunInput input) {
        this.input = input;
    }

    /**
     * Seals the exercises of a notebook.
     *
     * @param input the teacher's notebook
     * @param seeds how many seeds get answers of their own, from 1; 0 if the numbers do not vary
     * @throws Refusal if a cell fails, if there is no exercise to seal, or if one cannot be sealed
     */
    public static Sealed of(RunInput input, int seeds, Sessions sessions) {
        return of(input, seeds, sessions, seed -> {});
    }

    /**
     * Seals the exercises of a notebook, and tells which seed it begins.
     *
     * @param seeds how many seeds get answers of their own, from 1; 0 if the numbers do not vary
     * @param begun hears of each seed
     * @throws Refusal if a cell fails, if there is no exercise to seal, or if one cannot be sealed
     */
    public static Sealed of(RunInput input, int seeds, Sessions sessions, IntConsumer begun) {
        Sealing sealing = new Sealing(input);
        if (seeds == 0) {
            sealing.run(input, sessions);
        }
        for (int seed = 1; seed <= seeds; seed++) {
            begun.accept(seed);
            RunParameters own = new RunParameters(Map.of(SEED, String.valueOf(seed)));
            sealing.run(own.in(input), sessions);
        }
        return sealing.sealed();
    }

    /**
     * A sealed notebook.
     *
     * @param notebook the students' notebook
     * @param names the names of the exercises that were sealed
     */
    public record Sealed(Notebook notebook, List<String> names) {
        /** Keeps the names from changing. */
        public Sealed {
            names = List.copyOf(names);
        }

        /** Returns the text of the students' notebook file. */
        public String toJson() {
            return notebook.toJson();
        }
    }

    private void run(RunInput own, Sessions sessions) {
        ExerciseRun run = ExerciseRun.of(own, sessions, Optional.empty());
        if (!run.failures().isEmpty()) {
            throw refusal(
                    "A cell of the teacher's notebook failed, in "
                            + run.failures().get(0),
                    "An answer is sealed as it comes out when all cells run",
                    "Mend the cell, and see that headrace run ends well");
        }
        run.book().posed().forEach(this::take);
    }

    private void take(Exercise exercise) {
        exercises.merge(exercise.name(), exercise, this::both);
    }

    private Exercise both(Exercise first, Exercise second) {
        Map<Long, Answer> answers = new HashMap<>(first.answers());
        second.answers().forEach((seed, answer) -> {
            Answer before = answers.put(seed, answer);
            if (before != null && !before.equals(answer)) {
                throw refusal(
                        "The exercise '" + first.name() + "' came out once as " + before + " and once as " + answer,
                        "One exercise has one answer, or one for each seed",
                        "Give each exercise a name of its own, and pass a seed on with seed: seed");
            }
        });
        return new Exercise(first.name(), first.question(), answers, first.tolerance(), first.hints(), second.seed());
    }

    private Sealed sealed() {
        Map<String, String> seals = new HashMap<>();
        exercises.forEach((name, exercise) -> seals.put(name, Seal.of(exercise)));
        List<String> found = new ArrayList<>();
        Set<String> variables = new LinkedHashSet<>();
        for (Cell cell : input.notebook().cells()) {
            if (RunInput.runs(cell)) {
                found.addAll(text(cell).names());
                variables.addAll(text(cell).variables());
            }
        }
        requireFound(found);
        List<Cell> cells = input.notebook().cells().stream()
                .filter(cell -> !cell.isTagged(SOLUTION))
                .map(cell -> sealed(cell, seals, variables))
                .toList();
        requireInTheClear(cells);
        Notebook notebook = input.notebook().withCells(cells);
        Fields mark = notebook.metadata().fields("headrace").with("sealed", TOLD);
        return new Sealed(notebook.withMetadata(notebook.metadata().with("headrace", mark)), found);
    }

    private void requireFound(List<String> found) {
        for (String name : exercises.keySet()) {
            if (!found.contains(name)) {
                throw refusal(
                        "The exercise '" + name + "' was posed, and stands in no cell under that name",
                        "An exercise is sealed where its name is written as a plain text, as in exercise('" + name
                                + "', …)",
                        "Write the name out in the call");
            }
        }
        if (found.isEmpty()) {
            throw refusal(
                    "The notebook has no exercise to seal",
                    "An exercise is posed by exercise('name', 'question', answer: 12.3.m)",
                    "Write one, or look at help('exercise')");
        }
    }

    private Cell sealed(Cell cell, Map<String, String> seals, Set<String> variables) {
        if (cell instanceof Cell.Code code) {
            String text = text(cell).sealed(seals, variables);
            return new Cell.Code(code.id(), code.metadata(), text, 0, List.of());
        }
        return cell;
    }

    private ExerciseText text(Cell cell) {
        return text(cell, input.language());
    }

    /** Returns the text of a cell, to look for exercises in it. */
    static ExerciseText text(Cell cell, Language usual) {
        return new ExerciseText(cell.source(), CellText.of(cell.source(), usual).isJava());
    }

    private Refusal refusal(String asked, String possible, String next) {
        return new Refusal(LessonProblem.EXERCISE_NOT_SEALED, asked, possible, next)
                .at(Place.of(input.file().toString()));
    }

    /** Refuses what has no answer in the clear: the students' notebook was given in place of the teacher's. */
    private void requireInTheClear(List<Cell> sealed) {
        List<String> before = input.notebook().cells().stream()
                .filter(cell -> !cell.isTagged(SOLUTION))
                .map(Cell::source)
                .toList();
        if (before.equals(sealed.stream().map(Cell::source).toList())) {
            throw refusal(
                    "The exercises of this notebook are sealed already",
                    "What is sealed is the teacher's notebook, in which the answers stand in the clear",
                    "Name that one; the students' notebook is made anew from it");
        }
    }

    /** Refuses a script: only a notebook is turned into another. */
    public static RunInput read(Path file) {
        RunInput input = RunInput.read(file);
        if (!file.toString().toLowerCase(Locale.ROOT).endsWith(".ipynb")) {
            throw new Refusal(
                            RunProblem.NOT_A_SCRIPT,
                            "A script was given to be sealed",
                            "Exercises are sealed in a notebook (.ipynb)",
                            "Put its cells into a notebook")
                    .at(Place.of(file.toString()));
        }
        return input;
    }
}
