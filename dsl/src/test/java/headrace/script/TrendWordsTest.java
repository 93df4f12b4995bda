package headrace.script;

import static headrace.script.Scripts.refused;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.data.Table;
import headrace.energy.StrategyComparison;
import headrace.problem.Problem;
import headrace.record.Traced;
import headrace.report.Reports;
import headrace.trend.Drift;
import headrace.trend.FaultTable;
import headrace.trend.MeasuredSaving;
import headrace.trend.TrendLog;
import headrace.trend.TrendProblem;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The words for trend logs, as a script uses them. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class TrendWordsTest {
    private static final String MADE = """
            set = pumpSet(fit(readPumpTest('demo-data/pumps/heron-65.csv')), motor(5.5.kW, ie: 3, poles: 4), drive(5.5.kW))
            log = readTrendLog('demo-data/logs/otterbank-week.csv', set)
            clean = cleanLog(log, set)
            check = mapCheck(clean, set, until: '2026-06-05 12:00')
            before = powerBaseline(part(clean, to: '2026-06-05 12:00'), by: 'flow')
            after = part(clean, from: '2026-06-05 12:00')
            """;

    @BeforeEach
    void stand_beside_the_demo_data() {
        ScriptFolder.of(Path.of(".."), Path.of("target", "words")).choose();
    }

    private static Object run(String line) {
        return Scripts.run(MADE + line);
    }

    @Test
    void the_example_of_each_word_runs_and_shows_itself() {
        for (Vocabulary.Entry word : Vocabulary.all().words()) {
            if (word.subject().equals("Trend logs") || word.subject().equals("Measurement and verification")) {
                Object result = run(word.example());
                if (result instanceof Traced) {
                    assertTrue(Reports.of(result).isPresent(), word.name());
                }
            }
        }
    }

    @Test
    void a_log_is_read_in_other_units_when_the_script_says_so() {
        TrendLog stated = (TrendLog) run("readTrendLog('demo-data/logs/otterbank-week.csv', set, units: [speed: '%'],"
                + " zone: 'UTC', dates: 'day first')");
        assertEquals(((TrendLog) run("log")).count(), stated.count());
        assertTrue(stated.basis().choices().stream().anyMatch(line -> line.contains("as the user says")));
    }

    /** The flow meter of the demo log is stuck for 24 rows. */
    @Test
    void how_many_equal_rows_are_stuck_is_for_the_script_to_say() {
        assertEquals(
                24, ((TrendLog) run("cleanLog(log, set, stuckRows: 25)")).count() - ((TrendLog) run("clean")).count());
    }

    @Test
    void the_parts_of_a_log_are_its_rows() {
        assertEquals(
                ((TrendLog) run("clean")).count(),
                ((TrendLog) run("part(clean, to: '2026-06-05 12:00')")).count() + ((TrendLog) run("after")).count());
    }

    @Test
    void results_are_what_the_words_promise() {
        assertEquals(6, ((Table) run("changes(clean)")).rows().size());
        assertEquals(1, ((FaultTable) run("faults(check)")).findings().size());
        assertTrue(((Drift) run("drift(check, of: 'plantHead')")).alarm().isPresent());
        MeasuredSaving saving =
                (MeasuredSaving) run("measuredSaving(before, after, option: 'c', confidence: 90.percent)");
        assertEquals("C", saving.option().name());
        assertEquals(0.9, saving.confidence().value(), 1e-12);
        assertTrue(run("""
                design = duty(52.m3ph, 16.m)
                year = yearLoad(clean, design: 52.m3ph, outdoor: outdoorYear([[15.degC, 4000.h], [25.degC, 3000.h]]))
                compare(set, year.profile(), price: 0.18.perKWh, laws: [fixedSpeed(design), quadratic(design, minimumHead:
                    40.percent)])
                """) instanceof StrategyComparison);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "readTrendLog('demo-data/logs/otterbank-week.csv', set, units: [sped: 'Hz'])|UNKNOWN_CHOICE|nearest is speed",
                "readTrendLog('demo-data/logs/otterbank-week.csv', set, zone: 'Nowhere')|WRONG_VALUE|a time zone such as",
                "readTrendLog('demo-data/logs/otterbank-week.csv', set, dates: 'year')|WRONG_VALUE|'day first' or",
                "readTrendLog('demo-data/logs/otterbank-week.csv', 5)|WRONG_VALUE|pump set",
                "mapCheck(clean, set, until: 'noon')|WRONG_VALUE|2026-06-01 00:00",
                "mapCheck(clean, set, until: '2026-06-05 12:00', power: 'heat')|WRONG_VALUE|'wire' or 'shaft'",
                "drift(check, of: 'valve')|CHANNEL_MISSING|power, head, plant head",
                "drift(check, of: 'head', falseAlarms: 0)|IMPOSSIBLE_TREND_CHOICE|up to 100",
                "powerBaseline(clean, by: 'wind')|WRONG_VALUE|'flow', 'outdoor' or 'map'",
                "powerBaseline(clean, by: 'map')|MISSING_CHOICE|set:",
                "measuredSaving(before, after, option: 'E')|WRONG_VALUE|'A', 'B', 'C' or 'D'",
                "measuredSaving(before, after)|WRONG_ARGUMENTS|option: 'B'",
                "loggedLoad(log, 52.m3ph)|LOG_NOT_CLEANED|cleanLog",
                "outdoorYear([[5.degC, 9000.h]])|IMPOSSIBLE_TREND_CHOICE|8784",
            })
    void a_mistake_is_answered_with_what_is_possible(String line, String problem, String says) {
        String message = refused(problem(problem), MADE + line);
        assertTrue(message.contains(says), message);
    }

    private static Problem problem(String name) {
        try {
            return TrendProblem.valueOf(name);
        } catch (IllegalArgumentException e) {
            return ScriptProblem.valueOf(name);
        }
    }
}
