package headrace.script;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.lesson.Check;
import headrace.lesson.LessonProblem;
import headrace.report.Reports;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class LessonWordsTest {
    private static final String HEAD =
            "head = exercise('head', 'How high?', answer: 10.m, within: 0.5.m, hints: ['Divide by g.', 'And by density.'])\n";

    private static Check checked(String script) {
        return (Check) Scripts.run(script);
    }

    @Test
    void an_exercise_is_answered_with_a_unit() {
        assertTrue(checked(HEAD + "check(head, 10.4.m)").isRight());
        // 33 ft are 10.06 m.
        assertTrue(checked(HEAD + "check(head, 33.ft)").isRight());
        assertEquals(Check.Verdict.WRONG, checked(HEAD + "check(head, 10)").verdict());
        assertEquals(Check.Verdict.NOT_ANSWERED, checked(HEAD + "check(head)").verdict());
        assertEquals("And by density.", Scripts.run(HEAD + "hint(head, 2)"));
    }

    @Test
    void an_exercise_shows_its_question_and_in_what_it_is_answered_and_not_its_answer() {
        String text = Reports.of(Scripts.run(HEAD + "head")).orElseThrow().toText();
        assertTrue(text.contains("How high?") && text.contains("a length, within 0.5 m"), text);
        assertTrue(!text.contains("10 m"), text);
        String waiting =
                Reports.of(Scripts.run(HEAD + "check(head)")).orElseThrow().toText();
        assertTrue(waiting.contains("not answered yet"), waiting);
        String wrong = Reports.of(Scripts.run(HEAD + "check(head, 12.m)"))
                .orElseThrow()
                .toText();
        assertTrue(wrong.contains("✗") && wrong.contains("Hint: Divide by g.") && wrong.contains("hint(…, 2)"), wrong);
    }

    @Test
    void a_number_that_is_drawn_has_a_seed_and_two_ends_of_one_kind() {
        assertEquals(Scripts.run("drawn('a', 3.m, 5.m, seed: 4)"), Scripts.run("drawn('a', 3.m, 5.m, seed: 4)"));
        Scripts.refused(ScriptProblem.MISSING_CHOICE, "drawn('a', 3.m, 5.m, steps: 4)");
        Scripts.refused(ScriptProblem.WRONG_VALUE, "drawn('a', 3.m, 5.kW, seed: 1)");
        Scripts.refused(ScriptProblem.WRONG_VALUE, "drawn('a', 3.m, 5.m, seed: 1, steps: 0)");
    }

    @Test
    void an_exercise_without_an_answer_or_with_a_tolerance_of_another_kind_is_refused() {
        Scripts.refused(ScriptProblem.MISSING_CHOICE, "exercise('a', 'What?', within: 2.percent)");
        Scripts.refused(ScriptProblem.WRONG_VALUE, "exercise('a', 'What?', answer: 3.m, within: 2.kW)");
        Scripts.refused(LessonProblem.INCOMPLETE_EXERCISE, "exercise('', 'What?', answer: 3.m)");
        Scripts.refused(LessonProblem.UNREADABLE_SEAL, "exercise('a', 'What?', seal: '3 m')");
    }
}
