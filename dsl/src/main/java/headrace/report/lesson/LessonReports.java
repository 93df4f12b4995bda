package headrace.report.lesson;

import headrace.lesson.Check;
import headrace.lesson.Check.Verdict;
import headrace.lesson.Exercise;
import headrace.report.Composed;
import headrace.report.Shown;

/** How exercises and what was said to answers show themselves. */
public final class LessonReports {
    private LessonReports() {}

    /** Shows an exercise: its question, and what an answer looks like. */
    public static Shown exercise(Exercise exercise) {
        Composed composed = Composed.titled("Exercise '" + exercise.name() + "'")
                .line(exercise.question())
                .line("The answer is " + exercise.wanted() + ".");
        int hints = exercise.hints().size();
        return hints == 0
                ? composed.shown()
                : composed.line(hints == 1 ? "There is a hint." : "There are " + hints + " hints.")
                        .shown();
    }

    /** Shows what was said to an answer. */
    public static Shown check(Check check) {
        Exercise exercise = check.exercise();
        if (check.verdict() == Verdict.NOT_ANSWERED) {
            return Composed.titled("Exercise '" + exercise.name() + "' is not answered yet")
                    .line("Write your answer, " + exercise.wanted() + ", behind a comma in the brackets.")
                    .shown();
        }
        Composed composed = Composed.titled(
                        (check.isRight() ? "✓ " : "✗ ") + "Exercise '" + exercise.name() + "': " + check.given())
                .line(check.said());
        int more = exercise.hints().size() - 1;
        return check.isRight() || more < 1
                ? composed.shown()
                : composed.line(more == 1 ? "One more hint: hint(…, 2)." : more + " more hints: hint(…, 2) and on.")
                        .shown();
    }
}
