package headrace.script;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.report.whatif.Control;
import headrace.report.whatif.WhatIf;
import headrace.report.whatif.WhatIfProblem;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class WhatIfWordsTest {
    private static Control moved(String over) {
        return ((WhatIf) Scripts.run("whatIf(n: " + over + ") { it }"))
                .controls()
                .get(0);
    }

    @Test
    void a_range_of_whole_numbers_stays_whole_however_long_it_is() {
        assertEquals(List.of(1, 2, 3), moved("1..3").positions());
        List<Object> hundred = moved("0..100").positions();
        assertEquals(41, hundred.size());
        assertTrue(hundred.stream().allMatch(Integer.class::isInstance), hundred::toString);
        // 100 in 40 steps of 2.5
        assertEquals(List.of(0, 3, 5, 8, 10), hundred.subList(0, 5));
        assertEquals(50, hundred.get(moved("0..100").start()));
        assertEquals(100, hundred.get(40));
    }

    @Test
    void a_slider_between_whole_numbers_has_whole_numbers_where_its_steps_are_whole() {
        assertEquals(List.of(1, 2, 3, 4, 5), moved("slider(1, 5, positions: 5)").positions());
        assertEquals(List.of(1, 2, 3, 4, 5), moved("slider(1, 5)").positions());
        assertEquals(List.of(1.0, 1.5, 2.0), moved("slider(1, 2, positions: 3)").positions());
        assertEquals(
                List.of(1.0, 3.0, 5.0), moved("slider(1.0, 5, positions: 3)").positions());
    }

    @Test
    void a_control_is_called_by_the_words_of_its_name() {
        assertEquals("minimum head", named("minimumHead"));
        assertEquals("load in attic", named("loadInAttic"));
        assertEquals("NPSHr", named("NPSHr"));
        assertEquals("pH", named("pH"));
        assertEquals("least NPSH", named("leastNPSH"));
        assertEquals("q max", named("qMax"));
        assertEquals("unit a", named("unitA"));
    }

    private static String named(String name) {
        WhatIf whatIf = (WhatIf) Scripts.run("whatIf(" + name + ": 1..3) { it }");
        return whatIf.controls().get(0).name();
    }

    @Test
    void a_slider_begins_between_its_ends_and_in_their_kind() {
        Scripts.refused(ScriptProblem.WRONG_VALUE, "whatIf(n: slider(1, 5, start: 'x')) { it }");
        Scripts.refused(ScriptProblem.WRONG_VALUE, "whatIf(n: slider(1, 5, start: 3.m)) { it }");
        Scripts.refused(ScriptProblem.WRONG_VALUE, "whatIf(n: slider(1.m, 5.m, start: 3.kW)) { it }");
        String said =
                Scripts.refused(WhatIfProblem.IMPOSSIBLE_CONTROL, "whatIf(n: slider(1.m, 5.m, start: 9.m)) { it }");
        assertTrue(said.contains("from 1 m to 5 m"), said);
    }
}
