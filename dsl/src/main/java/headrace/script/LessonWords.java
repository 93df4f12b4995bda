package headrace.script;

import headrace.lesson.Answer;
import headrace.lesson.Check;
import headrace.lesson.Drawn;
import headrace.lesson.Exercise;
import headrace.lesson.Gradebook;
import headrace.lesson.Seal;
import headrace.lesson.Tolerance;
import headrace.problem.Refusal;
import headrace.units.Length;
import headrace.units.Quantities;
import headrace.units.Quantity;
import headrace.units.Ratio;
import java.util.List;
import java.util.Map;

/** Words of lessons: exercises, answers, hints, and numbers that vary from student to student. */
public final class LessonWords implements Words {
    private static final int USUAL_STEPS = 20;

    @Override
    public String subject() {
        return "Lessons and exercises";
    }

    /** Poses an exercise. */
    @Word(
            help =
                    "Poses an exercise: its name, its question, and the answer with its unit, in the clear or sealed. `headrace"
                            + " seal` turns a notebook with answers in the clear into one with seals; sealed means not readable at a"
                            + " glance, not secret.",
            example =
                    "head = exercise('head', 'At which head does a column of water stand at 1 bar?', answer: 10.2.m, within:"
                            + " 2.percent, hints: ['Divide by density and by g.'])",
            choices = {
                "answer: a number with its unit, a plain number, or a name",
                "within: how far a number may be off: a share of the answer, or a quantity of its kind; 2 % unless chosen",
                "hints: a sentence, or a list of them, the gentlest first; none unless chosen",
                "seal: what `headrace seal` put in the place of these three",
                "seed: the seed of the student, where the numbers vary; none unless chosen"
            })
    public static Exercise exercise(Map<String, ?> given, Object name, Object question) {
        Choices choices = Choices.of("exercise", given, "answer", "within", "hints", "seal", "seed");
        String called = text(name, "the name of an exercise");
        String asked = text(question, "the question of an exercise");
        long seed = choices.whole("seed", (int) Exercise.SAME);
        if (choices.has("seal")) {
            Seal seal = Seal.read(choices.text("seal"));
            return Gradebook.pose(new Exercise(called, asked, seal.answers(), seal.tolerance(), seal.hints(), seed));
        }
        Answer answer = Answer.of(choices.object("answer", Object.class));
        Object hints = choices.object("hints", Object.class, List.of());
        Tolerance within =
                choices.has("within") ? tolerance(choices.object("within", Object.class), answer) : Tolerance.USUAL;
        List<String> said = hints instanceof List<?> several
                ? several.stream().map(String::valueOf).toList()
                : List.of(text(hints, "the choice hints: of exercise"));
        return Gradebook.pose(new Exercise(called, asked, Map.of(seed, answer), within, said, seed));
    }

    /** Checks an answer. */
    @Word(
            help =
                    "Checks an answer with its unit, says right or not right, what may have gone wrong, and the first hint.",
            example = "check(exercise('speed', 'Synchronous speed of 4 poles at 50 Hz?', answer: 1500.rpm), 1450.rpm)")
    public static Check check(Object exercise, Object answer) {
        return Gradebook.tell(posed(exercise, "check").check(answer));
    }

    /** Says that an exercise waits for its answer. */
    @Word(
            help = "Says what an exercise asks for, as long as there is no answer behind it.",
            example = "check(exercise('speed', 'Synchronous speed of 4 poles at 50 Hz?', answer: 1500.rpm))")
    public static Check check(Object exercise) {
        return Gradebook.tell(posed(exercise, "check").unanswered());
    }

    /** Gives a hint. */
    @Word(
            help = "A hint of an exercise by its number: the first is the gentlest.",
            example =
                    "hint(exercise('head', 'Head of 1 bar of water?', answer: 10.2.m, hints: ['Divide by density and by"
                            + " g.']), 1)")
    public static String hint(Object exercise, Object number) {
        return posed(exercise, "hint").hint(Wanted.whole(number, "the number of a hint"));
    }

    /** Draws a number of a student. */
    @Word(
            help =
                    "A quantity between two ends that varies from student to student: the same name and seed give the same"
                            + " number everywhere.",
            example = "drawn('flow', 30.m3ph, 50.m3ph, seed: 7)",
            choices = {
                "seed: the seed of the student, a whole number; always needed",
                "steps: into how many equal steps the way between the ends is divided; 20 unless chosen"
            })
    public static Object drawn(Map<String, ?> given, Object name, Object from, Object to) {
        Choices choices = Choices.of("drawn", given, "seed", "steps");
        int steps = choices.whole("steps", USUAL_STEPS);
        if (steps < 1) {
            throw new Refusal(
                    ScriptProblem.WRONG_VALUE,
                    steps + " was given for the choice steps: of drawn",
                    "There is at least one step between the ends",
                    "Give 1 or more, or leave it out");
        }
        return between(text(name, "the name of drawn"), end(from), to, steps, choices.whole("seed"));
    }

    private static <Q extends Quantity<Q>> Object between(
            String name, Quantity<Q> from, Object to, int steps, long seed) {
        Q first = from.kind().type().cast(from);
        return Drawn.between(name, first, Wanted.quantity(from.kind(), to, "the last end of drawn"), steps, seed);
    }

    private static Quantity<?> end(Object given) {
        return given instanceof CharSequence text
                ? Quantities.parse(text.toString())
                : Wanted.object(Quantity.class, given, "the ends of drawn");
    }

    private static Exercise posed(Object given, String word) {
        return Wanted.object(Exercise.class, given, "the exercise of " + word);
    }

    private static String text(Object given, String place) {
        return Wanted.object(CharSequence.class, given, place).toString();
    }

    private static Tolerance tolerance(Object given, Answer answer) {
        if (given instanceof Ratio share) {
            return Tolerance.of(share);
        }
        if (answer instanceof Answer.Measured measured) {
            Object like = given instanceof Length ? Answer.of(given).asFor(answer) : given;
            Object width = like instanceof Answer.Measured alike ? alike.value() : like;
            return Tolerance.of(Wanted.quantity(measured.value().kind(), width, "the choice within: of exercise"));
        }
        double width = Wanted.number(given, "the choice within: of exercise");
        return new Tolerance(width, false, new Answer.Plain(width).toString());
    }
}
