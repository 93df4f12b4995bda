package headrace.lesson;

import headrace.lesson.Check.Verdict;
import headrace.units.AbsolutePressure;
import headrace.units.GaugePressure;
import headrace.units.Head;
import headrace.units.Pressure;
import headrace.units.Quantity;
import headrace.units.Ratio;
import java.util.Optional;

/** Holds an answer against what is right, and says what may have gone wrong. */
final class Checking {
    /** Up to so many tolerances off, and below this share of the answer, an answer is called close. */
    private static final double CLOSE_TOLERANCES = 5;

    private static final double CLOSE_SHARE = 0.15;

    private Checking() {}

    static Check of(Exercise exercise, Answer given) {
        Answer right = exercise.answer();
        Answer own = given.asFor(right);
        Optional<String> wrong = wrong(exercise, right, own);
        return wrong.isEmpty()
                ? new Check(exercise, given.toString(), Verdict.RIGHT, right(exercise, own))
                : new Check(exercise, given.toString(), Verdict.WRONG, "Not right. " + hinted(exercise, wrong.get()));
    }

    private static String right(Exercise exercise, Answer own) {
        return own instanceof Answer.Named
                ? "Right."
                : "Right, within " + exercise.tolerance().words() + ".";
    }

    private static String hinted(Exercise exercise, String wrong) {
        return exercise.hints().isEmpty()
                ? wrong
                : wrong + " Hint: " + exercise.hints().get(0);
    }

    /** Says what is wrong with an answer; empty if it is right. */
    private static Optional<String> wrong(Exercise exercise, Answer right, Answer own) {
        if (right instanceof Answer.Named name) {
            boolean same = own instanceof Answer.Named other && name.isSameAs(other);
            return same ? Optional.empty() : Optional.of(anotherName(own));
        }
        if (right instanceof Answer.Measured asked && own instanceof Answer.Measured got) {
            return asked.value().kind() == got.value().kind()
                    ? wrongNumber(exercise, asked.value().si(), got.value().si(), Optional.of(asked.value()))
                    : Optional.of(wrongKind(asked.value(), got.value()));
        }
        if (right instanceof Answer.Plain asked && own instanceof Answer.Plain got) {
            return wrongNumber(exercise, asked.value(), got.value(), Optional.empty());
        }
        return Optional.of(wrongSort(right, own));
    }

    private static String anotherName(Answer own) {
        return own instanceof Answer.Named
                ? "It is another one."
                : "A name is asked for, and this is " + own.what() + ".";
    }

    private static String wrongSort(Answer right, Answer own) {
        if (right instanceof Answer.Measured asked && own instanceof Answer.Plain) {
            return "The unit is missing: the answer is " + asked.what() + ", such as 1."
                    + asked.value().kind().metric() + ".";
        }
        return "The answer is " + right.what() + ", and this is " + own.what() + ".";
    }

    private static String wrongKind(Quantity<?> asked, Quantity<?> got) {
        String both = "The answer is " + asked.kind().one() + ", and this is "
                + got.kind().one() + ".";
        if (asked instanceof Head && isPressure(got)) {
            return both + " A pressure becomes a head only in a liquid, as in 30.kPa.headOf(liquid).";
        }
        if (isPressure(asked) && got instanceof Head) {
            return both + " A head becomes a pressure only in a liquid, as in 16.m.pressureOf(liquid).";
        }
        return got instanceof Ratio
                ? both + " A ratio is a share of something: multiply by what it is a share of."
                : both;
    }

    private static boolean isPressure(Quantity<?> value) {
        return value instanceof Pressure || value instanceof GaugePressure || value instanceof AbsolutePressure;
    }

    private static Optional<String> wrongNumber(
            Exercise exercise, double right, double got, Optional<Quantity<?>> asked) {
        double width = exercise.tolerance().around(right);
        if (Math.abs(got - right) <= width) {
            return Optional.empty();
        }
        if (right != 0 && Math.abs(got + right) <= width) {
            return Optional.of("The size is right, the sign is not.");
        }
        double off = Math.abs(got - right);
        Optional<String> factor =
                right == 0 ? Optional.empty() : Factors.said(got / right, width / Math.abs(right), asked);
        if (factor.isPresent()) {
            return factor;
        }
        if (right != 0 && off <= CLOSE_TOLERANCES * width && off < CLOSE_SHARE * Math.abs(right)) {
            long percent = Math.max(1, Math.round(100 * off / Math.abs(right)));
            return Optional.of("It is close: off by about " + percent + " %, and "
                    + exercise.tolerance().words() + " is asked for.");
        }
        return Optional.of(got > right ? "It is too high." : "It is too low.");
    }
}
