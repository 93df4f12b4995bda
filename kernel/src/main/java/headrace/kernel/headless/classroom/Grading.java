package headrace.kernel.headless.classroom;

import headrace.data.Column;
import headrace.data.Table;
import headrace.kernel.headless.RunInput;
import headrace.kernel.headless.RunParameters;
import headrace.kernel.notebook.Cell;
import headrace.lesson.Check;
import headrace.lesson.Check.Verdict;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What is right, wrong and not answered in a notebook.
 *
 * @param file the notebook
 * @param marks a mark for each exercise, in the order in which they stand
 * @param failures the cells that failed, and how
 */
public record Grading(Path file, List<Mark> marks, List<String> failures) {
    /** How long a cell may take where nothing else was chosen. */
    public static final Duration USUAL = Duration.ofSeconds(60);

    /** Keeps the lists from changing. */
    public Grading {
        marks = List.copyOf(marks);
        failures = List.copyOf(failures);
    }

    /**
     * How an exercise stands.
     *
     * @param exercise its name
     * @param given the answer; empty if there is none
     * @param verdict right, wrong or not answered
     * @param said what was said to it
     */
    public record Mark(String exercise, String given, Verdict verdict, String said) {}

    /**
     * Grades a notebook: runs all its cells, those behind a cell that fails too, and heeds the last answer of each
     * exercise.
     *
     * @param parameters values for its parameters
     * @param most how long a cell may take
     */
    public static Grading of(RunInput input, RunParameters parameters, Duration most, Sessions sessions) {
        ExerciseRun run = ExerciseRun.of(parameters.in(input), sessions, Optional.of(most));
        Map<String, Mark> marks = new LinkedHashMap<>();
        for (Cell cell : input.notebook().cells()) {
            if (RunInput.runs(cell)) {
                Sealing.text(cell, input.language())
                        .names()
                        .forEach(name ->
                                marks.put(name, new Mark(name, "", Verdict.NOT_ANSWERED, "Its cell did not run.")));
            }
        }
        for (Check check : run.book().checks()) {
            String name = check.exercise().name();
            marks.put(name, new Mark(name, check.given(), check.verdict(), check.said()));
        }
        return new Grading(input.file(), new ArrayList<>(marks.values()), run.failures());
    }

    /** Returns how many exercises stand so. */
    public long count(Verdict verdict) {
        return marks.stream().filter(mark -> mark.verdict() == verdict).count();
    }

    /** Says in one line how many are right, wrong and not answered. */
    public String summary() {
        String failed = failures.isEmpty()
                ? ""
                : failures.size() == 1 ? ", 1 cell failed" : ", " + failures.size() + " cells failed";
        return file + ": " + count(Verdict.RIGHT) + " right, " + count(Verdict.WRONG) + " wrong, "
                + count(Verdict.NOT_ANSWERED) + " not answered of " + marks.size() + failed;
    }

    /**
     * Returns the table of several notebooks, a row for each exercise and each cell that failed. An exercise that most
     * of them have is listed for those too in which it does not stand any more. Notebooks of one name are told apart by
     * their folders.
     */
    public static Table table(List<Grading> all) {
        Table table = Table.of(
                "Answers",
                Column.text("notebook"),
                Column.text("exercise"),
                Column.text("answer"),
                Column.text("verdict"),
                Column.text("remark"));
        for (Grading each : all) {
            String name = each.name(all);
            for (Mark mark : each.marks()) {
                table = table.row(
                        name, mark.exercise(), mark.given(), mark.verdict().word(), mark.said());
            }
            for (String missing : each.missing(all)) {
                table = table.row(name, missing, "", Verdict.NOT_ANSWERED.word(), "Not in this notebook.");
            }
            for (String failure : each.failures()) {
                table = table.row(name, "", "", "cell failed", failure);
            }
        }
        return table;
    }

    private String name(List<Grading> all) {
        Path own = file.getFileName();
        boolean alone =
                all.stream().filter(each -> each.file.getFileName().equals(own)).count() == 1;
        return String.valueOf(alone ? own : file);
    }

    private List<String> missing(List<Grading> all) {
        return all.stream()
                .flatMap(each -> each.exercises().stream())
                .distinct()
                .filter(exercise -> !exercises().contains(exercise))
                .filter(exercise -> 2
                                * all.stream()
                                        .filter(each -> each.exercises().contains(exercise))
                                        .count()
                        > all.size())
                .toList();
    }

    private List<String> exercises() {
        return marks.stream().map(Mark::exercise).toList();
    }
}
