package headrace.script;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.problem.Refusal;
import headrace.report.Shown;
import headrace.report.run.RunProblem;
import java.util.List;
import java.util.TreeMap;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class RunWordsTest {
    private static final String YEAR = """
            curve  = fit(pumpTest('made up', speed: 1450.rpm, liquid: water(20.degC), points: [
                [0.m3ph, 20.m, 1.2.kW], [20.m3ph, 19.m, 1.8.kW], [40.m3ph, 16.m, 2.5.kW], [60.m3ph, 11.m, 3.kW]]))
            set    = pumpSet(curve, motor(4.kW, ie: 3, poles: 4), drive(4.kW), minimumSpeed: 20.percent)
            design = duty(40.m3ph, 14.m)
            hours  = loadProfile('a year', [[50.percent, 4000.h], [100.percent, 1000.h]])
            run    = { price -> runRecord('at ' + price, compare(set, hours, price: price, laws: [fixedSpeed(design)])) }
            """;

    @Test
    void two_runs_of_the_same_are_the_same() {
        Shown shown = changed("whatChanged(run(0.18.perKWh), run(0.18.perKWh))");
        assertTrue(shown.title().startsWith("Nothing changed"), shown.title());
    }

    /** Money goes with the price: 0.27 for 0.18 is half as much again. */
    @Test
    void the_one_input_that_changed_is_named_with_what_it_moved() {
        Shown shown = changed("whatChanged(run(0.18.perKWh), run(0.27.perKWh))");
        String said = String.join(" ", shown.lines());
        assertTrue(said.contains("One thing changed: energy price from 0.18"), said);
        assertTrue(said.contains("+50 %"), said);
    }

    @Test
    void a_record_that_was_made_a_table_is_compared_like_the_record() {
        Shown shown = changed("whatChanged(table(run(0.18.perKWh)), run(0.18.perKWh))");
        assertTrue(shown.title().startsWith("Nothing changed"), shown.toText());
    }

    @Test
    void what_is_no_record_is_refused() {
        Scripts.refused(RunProblem.NO_RUN_RECORD, "whatChanged(table('x', [[a: 1]]), table('x', [[a: 1]]))");
        Scripts.refused(RunProblem.NOTHING_TO_RECORD, "runRecord('x', 3)");
    }

    @Test
    void a_script_says_for_which_version_it_was_written_and_hears_what_differs() {
        assertTrue(String.valueOf(Scripts.run("writtenFor(1)")).endsWith("nothing differs"));
        Scripts.refused(ScriptProblem.UNKNOWN_LANGUAGE_VERSION, "writtenFor(99)");
        LanguageChanges later = new LanguageChanges(3, new TreeMap<>());
        later.changes().put(2, List.of("compare wants a price"));
        later.changes().put(3, List.of("linear was renamed"));
        assertEquals("Written for version 2, run by version 3; since version 3: linear was renamed", later.since(2));
        assertTrue(later.since(1).contains("since version 2: compare wants a price"));
        assertThrows(Refusal.class, () -> later.since(0));
    }

    private static Shown changed(String line) {
        return assertInstanceOf(Shown.class, Scripts.run(YEAR + line));
    }
}
