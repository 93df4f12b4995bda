package headrace.script;

import static headrace.script.Scripts.refused;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.energy.LoadProfile;
import headrace.energy.StrategyComparison;
import headrace.energy.load.BranchYear;
import headrace.energy.load.LoadProblem;
import headrace.report.Reports;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The words for the load of a year, as a script uses them. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class LoadWordsTest {
    private static final String MADE = """
            weather = readWeather('demo-data/weather/fenmouth.csv')
            load = weatherLoad(weather, changePoint: 15.degC, design: -10.degC, base: 5.percent)
            """;

    @BeforeEach
    void stand_beside_the_demo_data() {
        ScriptFolder.of(Path.of(".."), Path.of("target", "words")).choose();
    }

    private static Object run(String line) {
        return Scripts.run(MADE + line);
    }

    static List<String> examples() {
        return Vocabulary.all().words().stream()
                .filter(word -> word.subject().equals("Load of a year"))
                .flatMap(word -> word.methods().stream())
                .map(method -> method.getAnnotation(Word.class).example())
                .distinct()
                .toList();
    }

    @ParameterizedTest
    @MethodSource("examples")
    void each_example_of_a_help_runs_and_shows_itself(String example) {
        Object result = run(example);
        String text = Reports.of(result).orElseThrow().toText();
        assertFalse(text.isBlank() || text.contains("NaN") || text.contains("Optional"), text);
        assertTrue(text.lines().allMatch(line -> line.codePointCount(0, line.length()) <= 100), text);
    }

    @Test
    void a_year_of_hours_is_compared_as_it_is_with_a_constant_temperature_difference() {
        StrategyComparison comparison = (StrategyComparison) run("""
                set = pumpSet(fit(readPumpTest('demo-data/pumps/heron-65.csv')), motor(5.5.kW, ie: 3, poles: 4),
                    drive(5.5.kW), minimumSpeed: 30.percent)
                compare(set, load, price: 0.18.perKWh, laws: [quadratic(duty(52.m3ph, 16.m), minimumHead: 40.percent)])
                """);
        assertEquals(8760, comparison.profile().hours().toHours(), 1e-9);
        assertTrue(comparison.basis().toString().contains("by a constant temperature difference"));
    }

    @Test
    void load_becomes_flow_by_what_is_said() {
        LoadProfile plain = (LoadProfile) run("loadFlows(load)");
        LoadProfile emitted = (LoadProfile) run("loadFlows(load, by: emission(0.4))");
        assertTrue(emitted.meanFlowFraction().compareTo(plain.meanFlowFraction()) < 0);
        refused(ScriptProblem.WRONG_VALUE, MADE + "loadFlows(load, by: 0.4)");
    }

    @Test
    void branches_share_a_load_as_it_is_said() {
        String branches = "branches: [near: 20.m3ph, far: 12.m3ph]";
        BranchYear far = (BranchYear) run("branchYear(load, " + branches + ", sharing: 'far')");
        assertEquals("far branches first", far.shared());
        assertEquals(
                "'near' off", ((BranchYear) run("branchYear(load, " + branches + ", sharing: 'off near')")).shared());
        assertEquals(6, ((List<?>) run("branchYears(load, " + branches + ", seed: 3)")).size());
        refused(ScriptProblem.WRONG_VALUE, MADE + "branchYear(load, " + branches + ", sharing: 'off attic')");
        refused(ScriptProblem.WRONG_ARGUMENTS, MADE + "branchYear(load)");
    }

    @Test
    void the_terminals_of_a_circuit_are_branches() {
        BranchYear year = (BranchYear) run(
                "branchYear(load, branches: readCircuit('demo-data/circuits/otterbank-wings.csv', water(12.degC)))");
        assertTrue(year.branches().size() > 1);
    }

    @Test
    void a_load_that_passes_120_per_cent_is_refused_or_capped_by_choice() {
        refused(LoadProblem.LOAD_OUT_OF_RANGE, MADE + "weatherLoad(weather, changePoint: 15.degC, design: 5.degC)");
        Object capped = run("weatherLoad(weather, changePoint: 15.degC, design: 5.degC, most: 100.percent).notes()");
        assertTrue(capped.toString().contains("the weather asks for up to"), capped.toString());
    }
}
