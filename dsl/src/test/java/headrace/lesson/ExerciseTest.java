package headrace.lesson;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.lesson.Check.Verdict;
import headrace.problem.Refusal;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Length;
import headrace.units.Power;
import headrace.units.Pressure;
import headrace.units.Quantities;
import headrace.units.Quantity;
import headrace.units.Ratio;
import headrace.units.Speed;
import headrace.units.Temperature;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class ExerciseTest {
    private static final Flow FLOW = Flow.KIND.of(52, "m3ph");

    private static Exercise asking(Object answer, Tolerance within, String... hints) {
        return new Exercise("x", "What?", Map.of(Exercise.SAME, Answer.of(answer)), within, List.of(hints), 0);
    }

    private static Check check(Object answer, Object given) {
        return asking(answer, Tolerance.USUAL).check(given);
    }

    @Test
    void an_answer_within_the_tolerance_is_right_in_every_unit_of_its_kind() {
        assertTrue(check(FLOW, Flow.KIND.of(52 * 1.019, "m3ph")).isRight());
        assertFalse(check(FLOW, Flow.KIND.of(52 * 1.021, "m3ph")).isRight());
        // 1 US gallon is 3.785411784 L, so that 52 m³/h are 228.95 gpm.
        assertTrue(check(FLOW, Flow.KIND.of(228.95, "gpm")).isRight());
        assertTrue(check(FLOW, "52 m³/h").isRight());
    }

    @Test
    void a_tolerance_with_a_unit_is_a_distance_from_the_answer() {
        Exercise exercise = asking(Head.metres(16), Tolerance.of(Head.metres(0.5)));
        assertTrue(exercise.check(Head.metres(16.49)).isRight());
        assertFalse(exercise.check(Head.metres(16.51)).isRight());
    }

    @Test
    void a_length_stands_for_a_head() {
        assertTrue(check(Head.metres(16), Length.metres(16)).isRight());
        assertTrue(check(Length.metres(16), Head.metres(16)).isRight());
    }

    @Test
    void a_number_of_another_kind_is_told_what_kind_is_asked_for() {
        assertSaid("The answer is a flow, and this is a power", check(FLOW, Power.KIND.of(5, "kW")));
        assertSaid("becomes a head only in a liquid", check(Head.metres(16), Pressure.KIND.of(157, "kPa")));
        assertSaid("becomes a pressure only in a liquid", check(Pressure.KIND.of(157, "kPa"), Head.metres(16)));
        assertSaid("multiply by what it is a share of", check(Speed.KIND.of(1450, "rpm"), Ratio.of(0.8)));
        assertSaid("The unit is missing: the answer is a flow", check(FLOW, 52));
        assertSaid("a number without a unit", check(3, FLOW));
    }

    @Test
    void a_number_in_one_unit_that_was_given_another_is_recognised() {
        assertSaid("between gpm and m³/h", check(FLOW, Flow.KIND.of(228.95, "m3ph")));
        assertSaid("between bar and kPa", check(Pressure.KIND.of(157, "kPa"), Pressure.KIND.of(1.57, "kPa")));
        // 1 ft is 0.3048 m.
        assertSaid("between ft and m", check(Head.metres(16), Head.metres(16 / 0.3048)));
        assertSaid("a plain ratio seems to have been given in %", check(Ratio.percent(75), Ratio.percent(0.75)));
        assertSaid("10 times too high", check(4.2, 42));
    }

    @Test
    void an_answer_with_the_other_sign_is_told_so() {
        assertSaid("the sign is not", check(Power.KIND.of(-2, "kW"), Power.KIND.of(2, "kW")));
    }

    @Test
    void a_temperature_has_no_factor_between_its_units() {
        assertSaid("too high", check(Temperature.KIND.of(20, "degC"), Temperature.KIND.of(68, "degC")));
    }

    /** 55 m³/h for 52 m³/h is 5.8 % off, less than five tolerances of 2 %. */
    @Test
    void a_near_answer_is_told_how_near_it_is() {
        assertSaid("off by about 6 %, and 2 % is asked for", check(FLOW, Flow.KIND.of(55, "m3ph")));
        assertSaid("It is too low", check(FLOW, Flow.KIND.of(40, "m3ph")));
        assertSaid("It is too high", check(FLOW, Flow.KIND.of(70, "m3ph")));
    }

    @Test
    void a_wrong_answer_brings_the_first_hint_and_a_right_one_none() {
        Exercise exercise = asking(FLOW, Tolerance.USUAL, "look at the coil", "add the branches");
        assertSaid("Hint: look at the coil", exercise.check(Flow.KIND.of(40, "m3ph")));
        assertFalse(exercise.check(FLOW).said().contains("Hint"));
        assertEquals("add the branches", exercise.hint(2));
        assertEquals(LessonProblem.NO_SUCH_HINT, problem(() -> exercise.hint(3)));
    }

    @Test
    void a_name_is_right_whatever_its_case_and_blanks() {
        assertTrue(check("attic", " Attic ").isRight());
        assertSaid("another one", check("attic", "foyer"));
        assertSaid("A name is asked for", check("attic", 3));
    }

    @Test
    void what_nobody_has_answered_is_neither_right_nor_wrong() {
        assertEquals(
                Verdict.NOT_ANSWERED, asking(FLOW, Tolerance.USUAL).unanswered().verdict());
    }

    @Test
    void an_exercise_that_cannot_be_checked_is_refused() {
        assertEquals(LessonProblem.INCOMPLETE_EXERCISE, problem(() -> check(Double.NaN, 1)));
        assertEquals(LessonProblem.INCOMPLETE_EXERCISE, problem(() -> check(FLOW, null)));
        assertEquals(LessonProblem.IMPOSSIBLE_TOLERANCE, problem(() -> check(0, 1)));
        assertEquals(LessonProblem.IMPOSSIBLE_TOLERANCE, problem(() -> Tolerance.of(Ratio.percent(50))));
        assertEquals(LessonProblem.IMPOSSIBLE_TOLERANCE, problem(() -> Tolerance.of(Ratio.percent(-1))));
    }

    @Test
    void each_seed_has_its_own_answer_and_a_seed_without_one_is_refused() {
        Map<Long, Answer> answers = Map.of(1L, Answer.of(3), 2L, Answer.of(5));
        assertTrue(seeded(answers, 2).check(5).isRight());
        assertFalse(seeded(answers, 1).check(5).isRight());
        assertEquals(
                LessonProblem.NO_ANSWER_FOR_SEED,
                problem(() -> seeded(answers, 3).check(5)));
    }

    private static Exercise seeded(Map<Long, Answer> answers, long seed) {
        return new Exercise("x", "What?", answers, Tolerance.USUAL, List.of(), seed);
    }

    @Test
    void a_seal_gives_back_what_was_sealed_and_does_not_show_it() {
        Map<Long, Answer> answers = Map.of(1L, Answer.of(FLOW), 2L, Answer.of(7), 3L, Answer.of("attic"));
        Exercise exercise =
                new Exercise("x", "What?", answers, Tolerance.of(Ratio.percent(3)), List.of("look, twice"), 1);
        String sealed = Seal.of(exercise);
        Seal read = Seal.read(sealed);
        assertEquals(answers, read.answers());
        assertEquals(exercise.tolerance(), read.tolerance());
        assertEquals(exercise.hints(), read.hints());
        assertTrue(sealed.startsWith("not-secret"), sealed);
        assertFalse(sealed.contains("attic") || sealed.contains("look"), sealed);
    }

    @Test
    void a_seal_keeps_an_answer_of_every_kind() {
        Quantities.KINDS.forEach(kind -> {
            Quantity<?> one = kind.of(300, kind.metric());
            Seal read = Seal.read(Seal.of(asking(one, Tolerance.USUAL)));
            assertEquals(Map.of(0L, new Answer.Measured(one)), read.answers());
        });
    }

    @Test
    void a_damaged_seal_is_refused() {
        String sealed = Seal.of(asking(FLOW, Tolerance.USUAL, "a hint"));
        for (int i = Seal.MARK.length(); i < sealed.length(); i += 5) {
            char other = sealed.charAt(i) == 'A' ? 'B' : 'A';
            String damaged = sealed.substring(0, i) + other + sealed.substring(i + 1);
            assertEquals(LessonProblem.UNREADABLE_SEAL, problem(() -> Seal.read(damaged)));
        }
        assertEquals(LessonProblem.UNREADABLE_SEAL, problem(() -> Seal.read(sealed.substring(0, sealed.length() - 8))));
        assertEquals(LessonProblem.UNREADABLE_SEAL, problem(() -> Seal.read("12 m³/h")));
    }

    @Test
    void a_drawn_number_is_the_same_for_the_same_seed_and_stays_between_its_ends() {
        Set<Flow> seen = new HashSet<>();
        for (int seed = 1; seed <= 200; seed++) {
            Flow drawn = Drawn.between("flow", Flow.KIND.of(30, "m3ph"), Flow.KIND.of(50, "m3ph"), 4, seed);
            assertEquals(drawn, Drawn.between("flow", Flow.KIND.of(30, "m3ph"), Flow.KIND.of(50, "m3ph"), 4, seed));
            assertTrue(drawn.in("m3ph") > 29.999 && drawn.in("m3ph") < 50.001, drawn::toString);
            seen.add(drawn);
        }
        assertEquals(5, seen.size(), "30, 35, 40, 45 and 50 m³/h");
    }

    @Test
    void two_numbers_of_one_student_do_not_go_together() {
        int alike = 0;
        for (int seed = 1; seed <= 100; seed++) {
            double first = Drawn.between("a", Ratio.ZERO, Ratio.of(1), 9, seed).value();
            double other = Drawn.between("b", Ratio.ZERO, Ratio.of(1), 9, seed).value();
            alike += first == other ? 1 : 0;
        }
        // One in ten is expected; 25 of 100 would be five standard deviations off.
        assertTrue(alike < 25, alike + " of 100 are the same");
    }

    @Test
    void a_gradebook_hears_the_last_answer_of_each_exercise_also_from_another_thread() throws InterruptedException {
        Gradebook book = new Gradebook();
        book.choose();
        Thread cell = new Thread(() -> {
            Exercise exercise = Gradebook.pose(asking(FLOW, Tolerance.USUAL));
            Gradebook.tell(exercise.check(3));
            Gradebook.tell(exercise.check(FLOW));
        });
        cell.start();
        cell.join();
        Gradebook.chooseNone();
        Gradebook.tell(asking(7, Tolerance.USUAL).check(8));
        assertEquals(1, book.checks().size());
        assertTrue(book.checks().get(0).isRight());
    }

    private static void assertSaid(String part, Check check) {
        assertEquals(Verdict.WRONG, check.verdict(), check.said());
        assertTrue(check.said().contains(part), check.said());
    }

    private static Object problem(org.junit.jupiter.api.function.Executable asked) {
        return assertThrows(Refusal.class, asked).problem();
    }
}
