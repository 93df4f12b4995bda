package headrace.lesson;

import headrace.problem.Problem;

/** What can be wrong with an exercise. */
public enum LessonProblem implements Problem {
    /** An exercise without a name, a question or an answer. */
    INCOMPLETE_EXERCISE,
    /** A tolerance that no answer can be held against. */
    IMPOSSIBLE_TOLERANCE,
    /** A seal that is damaged, or is none. */
    UNREADABLE_SEAL,
    /** The seal holds no answer for the seed of this student. */
    NO_ANSWER_FOR_SEED,
    /** A hint that the exercise does not have. */
    NO_SUCH_HINT,
    /** An exercise was posed twice with different answers, or cannot be found in the text of its notebook. */
    EXERCISE_NOT_SEALED
}
