package headrace.script;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import groovy.lang.Binding;
import groovy.lang.GroovyShell;
import headrace.problem.Refusal;
import headrace.report.Reports;
import headrace.rule.index.CirculatorEnergyIndex;
import headrace.rule.index.JudgedPump;
import headrace.rule.index.MinimumEfficiencyIndex;
import headrace.units.Ratio;
import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class IndexWordsTest {
    private static final String FOUR =
            "circulatorEnergyIndex([[2.4.m3ph, 4.m, 50.W], [1.8.m3ph, 3.5.m, 36.W], [1.2.m3ph, 3.m, 25.W], ['0.6 m3/h',"
                    + " '2.5 m', '17 W']])";

    @ParameterizedTest
    @ValueSource(
            strings = {
                "minimumEfficiencyIndex(curve, 'ESOB')",
                "pumpEnergyIndex(at3600, 'ESFM')",
                "pumpEnergyIndex(at3600, 'IL', stages: 1)",
                FOUR
            })
    void show_themselves_as_calculation_aids(String script) {
        String text = Reports.of(run(script)).orElseThrow().toText();
        assertTrue(text.contains("calculation aid, not a certified rating"), text);
        assertTrue(text.contains("from memory"), text);
    }

    /** P_avg = 0.06·50 + 0.15·36 + 0.35·25 + 0.44·17 = 24.63 W; P_h = 998.2·9.80665·2.4/3600·4 = 26.1040 W. */
    @Test
    void judge_a_circulator_by_readings() {
        CirculatorEnergyIndex index = (CirculatorEnergyIndex) run(FOUR);
        assertEquals(24.63, index.average().watts(), 1e-9);
        assertEquals(0.49 * 24.63 / (1.7 * 26.1040 + 17 * (1 - Math.exp(-0.3 * 26.1040))), index.index(), 1e-6);
    }

    @Test
    void take_the_number_of_stages() {
        assertEquals(3, ((MinimumEfficiencyIndex) run("minimumEfficiencyIndex(curve, 'MS-V', stages: 3)")).stages());
    }

    @Test
    void run_as_their_help_shows() {
        for (Vocabulary.Entry word : Vocabulary.all().words("Energy indices")) {
            String curve = word.name().equals("pumpEnergyIndex") ? "curve = at3600\n" : "";
            assertFalse(run(curve + word.example()).toString().isEmpty());
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "minimumEfficiencyIndex('curve', 'ESOB')",
                "minimumEfficiencyIndex(curve, 3)",
                "circulatorEnergyIndex(3)",
                "circulatorEnergyIndex([[1.m3ph, 2.m]])",
                "circulatorEnergyIndex([1, 2, 3, 4])",
                "pumpEnergyIndex(at3600, 'ESFM', stage: 2)"
            })
    void answer_a_mistake_like_a_colleague(String script) {
        assertThrows(Refusal.class, () -> run(script));
    }

    private static Object run(String script) {
        Binding binding = new Binding(new HashMap<>(Map.of(
                "curve", JudgedPump.of(Ratio.percent(75), 2900), "at3600", JudgedPump.of(Ratio.percent(75), 3600))));
        return new GroovyShell(binding, ScriptLanguage.configuration()).evaluate(script);
    }
}
