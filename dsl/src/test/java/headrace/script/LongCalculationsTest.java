package headrace.script;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import groovy.lang.Binding;
import groovy.lang.GroovyShell;
import groovy.lang.Script;
import headrace.work.Stopped;
import headrace.work.Watcher;
import headrace.work.Work;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The calculations that take long at sizes an engineer uses, here at small ones: each says how far it is, and ends when
 * its user asks for that. Whoever adds a calculation that can take half a second adds it here.
 */
@DisplayNameGeneration(ReplaceUnderscores.class)
class LongCalculationsTest {
    private static final Binding VARIABLES = new Binding();

    @BeforeAll
    static void given() {
        run("""
                curve = fit(readPumpTest('demo-data/pumps/heron-65.csv'))
                set = pumpSet(curve, motor(5.5.kW, ie: 3, poles: 4), drive(5.5.kW), minimumSpeed: 30.percent)
                design = duty(52.m3ph, 16.m)
                q = quadratic(design, minimumHead: 25.percent)
                loop = directReturn(water(12.degC), resistance(52.m3ph, 45.kPa), [
                    branch('foyer', coil(16.m3ph, 25.kPa), controlValve(32.kv)),
                    branch('hall', coil(18.m3ph, 25.kPa), controlValve(32.kv), main: pipe(24.m, steel: 100)),
                    branch('attic', coil(18.m3ph, 30.kPa), controlValve(32.kv), main: pipe(40.m, steel: 80))])
                valves = directReturn(water(12.degC), resistance(6.m3ph, 25.kPa), (1..3).collect {
                    branch('b' + it, coil(2.m3ph, 25.kPa), balancingValve(settings: [[1, 1.kv], [2, 3.kv], [3, 6.kv]]),
                        main: pipe(10.m, steel: 50)) })
                days = readTypicalDays('demo-data/loads/otterbank-days.csv')
                profile = readLoadProfile('demo-data/loads/otterbank.csv')
                year = branchYear(days, branches: loop)
                estimator = flowEstimator(set, errors: readingErrors(power: 1.percent, speed: 0.2.percent,
                    powerMap: 3.percent))
                comparison = compare(set, profile, price: 0.18.EUR.perKWh, laws: [q])
                clean = cleanLog(readTrendLog('demo-data/logs/otterbank-week.csv', set), set)
                check = mapCheck(clean, set, until: '2026-06-04 12:00')
                plant = staging(set, quadratic(duty(150.m3ph, 16.m), minimumHead: 35.percent), pumps: 3)
                range = paybackRange(comparison, firstCost: triangle(3200.EUR, 4200.EUR, 6000.EUR),
                    discount: 6.percent, price: aboutByFactor(0.18.EUR.perKWh, 12.percent), years: 15, seed: 7)
                """);
    }

    private static Object run(String script) {
        return script(script).run();
    }

    private static Script script(String text) {
        return new GroovyShell(VARIABLES, ScriptLanguage.configuration()).parse(text);
    }

    /** Remembers what it hears, and asks to stop at one of the polls. */
    private static final class Listening implements Watcher {
        private final long stopAt;
        private final List<String> words = new ArrayList<>();
        private final List<Double> shares = new ArrayList<>();
        private long polls;

        Listening(long stopAt) {
            this.stopAt = stopAt;
        }

        @Override
        public boolean stopped() {
            return ++polls >= stopAt;
        }

        @Override
        public void progress(String what, double share) {
            words.add(what);
            shares.add(share);
        }
    }

    private static Listening heard(String calculation) {
        Script script = script(calculation);
        Listening listening = new Listening(Long.MAX_VALUE);
        Work.watched(listening, script::run);
        return listening;
    }

    @ParameterizedTest(name = "{0}: {1}")
    @CsvSource(delimiter = '|', textBlock = """
            hours of the year                      | compare(set, loop, year, price: 0.18.EUR.perKWh, laws: [q, neediestValve(design)])
            hours of the year                      | powerYear(set, q, 2025) { hour -> hour % 24 in 7..19 ? 60.percent : 0.percent }
            hours of the branches                  | branchYear(days, branches: loop, sharing: 'random')
            years of the branches                  | branchYears(days, branches: loop)
            branches of the survey                 | survey(loop, 16.m, load: 50.percent)
            branches of the survey                 | survey(set, q, loop, load: 50.percent)
            valves to balance                      | balance(valves)
            flows of the head band                 | headBand(loop)
            making patterns of load                | loadPatterns(loop)
            minimum head over patterns of load     | minimumHeadWindow(set, design, loop, patterns, partLoadRule)
            choosing among pumps                   | choose('demo-data/pumps', q, profile)
            drawing estimates                      | drawFlows(estimateFlow(estimator, power: 2.1.kW, speed: 1250.rpm), draws: 50000)
            speeds of the uncertainty map          | uncertaintyMap(estimator)
            drawing pumps under a law on estimates | estimatedYear(set, onEstimates(q, estimator), profile)
            drawing paybacks                       | paybackRange(comparison, firstCost: between(3.EUR, 4.EUR), discount: 6.percent, years: 15)
            what drives the paybacks               | range.drivers(range.againstConstantSpeed())
            what drives the paybacks               | headrace.report.Reports.of(range)
            cleaning the log                       | cleanLog(readings, set)
            holding the log against the map        | mapCheck(clean, set, until: '2026-06-04 12:00')
            drawing years of load                  | yearLoad(clean, design: 52.m3ph, outdoor: outdoorYear([[10.degC, 5000.h], [20.degC, 3760.h]]))
            steps of the pumps                     | runStaged(plant, (0..<200).collect { (it % 140).m3ph }, step: 15.minute)
            following duty and standby             | dutyRecord(dutyPlan(every: 1.h, faultDelay: 30.s), 1.year)
            minutes of the day                     | dayTrace(set, q, date: '2026-03-02', step: 15.minute) { minute -> 50.percent }
            frames of the what-if                  | whatIf(head: [20.percent, 30.percent]) { h -> compare(set, loop, year, price: 0.18.EUR.perKWh, laws: [q]) }.frames()
            """)
    void says_how_far_it_is_as_one_calculation_whose_share_never_goes_back(String what, String calculation) {
        VARIABLES.setVariable("patterns", run("loadPatterns(loop)"));
        VARIABLES.setVariable("readings", run("readTrendLog('demo-data/logs/otterbank-week.csv', set)"));
        Listening heard = heard(calculation);
        assertFalse(heard.words.isEmpty(), "says nothing");
        assertEquals(List.of(what), heard.words.stream().distinct().toList());
        assertEquals(heard.shares.stream().sorted().toList(), heard.shares);
        assertTrue(heard.shares.get(0) < 0.5, () -> "begins at " + heard.shares.get(0));
        assertEquals(1, heard.shares.get(heard.shares.size() - 1));
        ends(calculation, heard.polls);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "flows(loop, 14.m)",
                "headNeeded(loop)",
                "settle(set, neediestValve(design), loop, load: 60.percent)",
                "headProfile(flows(loop, 14.m))",
                "headBand(loop, set: set, laws: [q, neediestValve(design)])",
                "readTrendLog('demo-data/logs/otterbank-week.csv', set)",
                "readHourlyLoad('demo-data/loads/tern-court-hours.csv')",
                "readWeather('demo-data/weather/fenmouth.csv')",
                "readPumpTest('demo-data/pumps/heron-65.csv')",
                "faults(check)",
                "headrace.report.Reports.of(clean)",
                "compare(set, loadFlows(days), price: 0.18.EUR.perKWh, laws: [q])",
                "bill(tariff('one', [rate('ever', 0.15.EUR.perKWh)]), powerYear('steady', 2025, [3.kW] * 8760))",
                "chart(curve).toPng(1600, 1)",
                "headrace.report.Reports.of(map(set, design, q))"
            })
    void can_be_stopped_on_its_way(String calculation) {
        ends(calculation, heard(calculation).polls);
    }

    /** Stops at the first poll, in the middle and at the last, and sees that nothing goes on after it. */
    private static void ends(String calculation, long polls) {
        assertTrue(polls > 0, "asks nobody whether to stop");
        for (long at : new long[] {1, polls / 2 + 1, polls}) {
            Script script = script(calculation);
            Listening listening = new Listening(at);
            assertThrows(Stopped.class, () -> Work.watched(listening, script::run), () -> "stopped at poll " + at);
            assertEquals(at, listening.polls, "polls after the stop");
        }
    }
}
