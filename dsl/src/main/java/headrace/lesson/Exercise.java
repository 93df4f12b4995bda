package headrace.lesson;

import headrace.problem.Refusal;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * A question with its answer, a tolerance and hints. The answer may differ from student to student, by a seed.
 *
 * <dl>
 *   <dt>Units
 *   <dd>those of the answer; a number without a unit is right only where the answer has none
 *   <dt>Limits
 *   <dd>an answer may be sealed, which keeps it from being read at a glance and is not secret
 *   <dt>Errors
 *   <dd>{@code INCOMPLETE_EXERCISE} without name, question or answer; {@code IMPOSSIBLE_TOLERANCE};
 *       {@code NO_ANSWER_FOR_SEED}; {@code NO_SUCH_HINT}
 * </dl>
 *
 * @param name its name, unique in its notebook
 * @param question what is asked
 * @param answers the answers by seed; one of seed {@link #SAME} is that of every student
 * @param tolerance how far a number may lie from the answer
 * @param hints hints, the gentlest first
 * @param seed the seed of this student, {@link #SAME} if all have the same numbers
 */
public record Exercise(
        String name, String question, Map<Long, Answer> answers, Tolerance tolerance, List<String> hints, long seed) {
    /** The seed that stands for no seed: the answer is the same for everyone. */
    public static final long SAME = 0;

    /** Refuses what cannot be checked. */
    public Exercise {
        answers = Map.copyOf(new TreeMap<>(answers));
        hints = List.copyOf(hints);
        if (name.isBlank() || question.isBlank() || answers.isEmpty()) {
            throw new Refusal(
                    LessonProblem.INCOMPLETE_EXERCISE,
                    name.isBlank()
                            ? "An exercise was posed without a name"
                            : "The exercise '" + name + "' was posed without "
                                    + (question.isBlank() ? "a question" : "an answer"),
                    "An exercise has a name, a question, and an answer or a seal",
                    "Write it as exercise('head', 'How high is it?', answer: 12.3.m)");
        }
        for (Answer each : answers.values()) {
            if (each instanceof Answer.Measured measured) {
                tolerance.requireFor(measured.value().si());
            } else if (each instanceof Answer.Plain plain) {
                tolerance.requireFor(plain.value());
            }
        }
    }

    /**
     * Returns the answer for the seed of this student.
     *
     * @throws Refusal with {@code NO_ANSWER_FOR_SEED} if there is none
     */
    public Answer answer() {
        Answer own = answers.getOrDefault(seed, answers.get(SAME));
        if (own == null) {
            TreeMap<Long, Answer> sorted = new TreeMap<>(answers);
            throw new Refusal(
                    LessonProblem.NO_ANSWER_FOR_SEED,
                    seed == SAME
                            ? "The exercise '" + name + "' was posed without a seed"
                            : "The exercise '" + name + "' was posed with the seed " + seed,
                    sorted.size() == 1
                            ? "Its seal holds the answer of the seed " + sorted.firstKey()
                            : "Its seal holds the answers of the seeds " + sorted.firstKey() + " to "
                                    + sorted.lastKey(),
                    "Set the seed that your teacher gave you, and pass it on with seed: seed");
        }
        return own;
    }

    /** Checks an answer, with its unit and within the tolerance. */
    public Check check(Object given) {
        return Checking.of(this, Answer.of(given));
    }

    /** Returns the check of an exercise that nobody has answered yet. */
    public Check unanswered() {
        return new Check(this, "", Check.Verdict.NOT_ANSWERED, "Not answered yet.");
    }

    /**
     * Returns a hint.
     *
     * @param number which one, from 1
     * @throws Refusal with {@code NO_SUCH_HINT} if there are fewer
     */
    public String hint(int number) {
        if (number < 1 || number > hints.size()) {
            throw new Refusal(
                    LessonProblem.NO_SUCH_HINT,
                    "Asked for hint " + number + " of the exercise '" + name + "'",
                    hints.isEmpty()
                            ? "It has no hints"
                            : hints.size() == 1 ? "It has one hint" : "It has hints 1 to " + hints.size(),
                    hints.isEmpty() ? "Ask your teacher" : "Ask for one of these, such as the first");
        }
        return hints.get(number - 1);
    }

    /** Says what is asked, and in what an answer is given. */
    @Override
    public String toString() {
        return question + " (" + wanted() + ")";
    }

    /** Says in what an answer is given, and how exactly. */
    public String wanted() {
        Answer own = answer();
        return own.what() + (own instanceof Answer.Named ? "" : ", within " + tolerance.words());
    }
}
