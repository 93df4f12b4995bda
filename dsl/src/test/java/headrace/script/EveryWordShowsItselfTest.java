package headrace.script;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.chart.Layout;
import headrace.chart.paint.Box;
import headrace.record.Traced;
import headrace.report.Block;
import headrace.report.Block.ChartBlock;
import headrace.report.Reports;
import headrace.report.Shown;
import headrace.report.whatif.WhatIf;
import headrace.units.EnergyPrice;
import headrace.units.Money;
import headrace.units.Quantity;
import headrace.units.UnitSystem;
import java.lang.reflect.Method;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.Type;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a word returns shows itself as the last value of a cell: by a report, or by a text that says all there is. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class EveryWordShowsItselfTest {
    /** What has no report, with the reason. */
    private static final Map<Class<?>, String> PLAIN = Map.ofEntries(
            Map.entry(String.class, "a text says itself"),
            Map.entry(Quantity.class, "a number with its unit"),
            Map.entry(Money.class, "an amount with its currency"),
            Map.entry(EnergyPrice.class, "an amount with its currency and unit"),
            Map.entry(UnitSystem.class, "its text names the units"),
            Map.entry(SpreadWords.WrittenSpread.class, "a choice for another word; its text is all of it"),
            Map.entry(WhatIfWords.Positions.class, "a choice for another word; its text is all of it"),
            Map.entry(WhatIfWords.Slider.class, "a choice for another word; its text is all of it"),
            Map.entry(WhatIf.class, "moves; the doors show it as controls or where it begins"));

    /** Words that return one of several types, and these. */
    private static final Map<String, List<String>> SEVERAL = Map.of(
            "branch", List.of("headrace.circuit.Branch", "headrace.circuit.shape.Tap"),
            "drawn", List.of("headrace.units.Quantity"),
            "headBand", List.of("headrace.circuit.band.HeadBand", "headrace.control.BandWithLaws"));

    private static final String MADE = """
            curve = fit(readPumpTest('demo-data/pumps/heron-65.csv'))
            set = pumpSet(curve, motor(5.5.kW, ie: 3, poles: 4), drive(5.5.kW), minimumSpeed: 30.percent)
            design = duty(52.m3ph, 16.m)
            loop = directReturn(water(12.degC), resistance(52.m3ph, 45.kPa), [
                branch('foyer', coil(26.m3ph, 25.kPa), controlValve(40.kv), main: pipe(24.m, steel: 100)),
                branch('attic', coil(26.m3ph, 30.kPa), controlValve(63.kv), main: pipe(30.m, steel: 100))])
            """;

    /** An object as the language prints it: a name with a hash, or a record with its parts in brackets. */
    private static final Pattern BARE = Pattern.compile("\\w@[0-9a-f]{4,}|\\b[A-Z]\\w+\\[\\w+=|Optional\\b");

    @BeforeEach
    void stand_beside_the_demo_data() {
        ScriptFolder.of(Path.of(".."), Path.of("target", "words")).choose();
    }

    @Test
    void every_type_that_a_word_returns_has_a_report_or_a_reason_to_have_none() throws ClassNotFoundException {
        TreeSet<String> without = new TreeSet<>();
        int asked = 0;
        for (Vocabulary.Entry word : Vocabulary.all().words()) {
            for (Method method : word.methods()) {
                for (Class<?> type : types(word.name(), method.getGenericReturnType())) {
                    asked++;
                    if (!Reports.has(type)
                            && PLAIN.keySet().stream().noneMatch(plain -> plain.isAssignableFrom(type))) {
                        without.add(word.name() + ": " + type.getName());
                    }
                }
            }
        }
        assertTrue(asked > 150, asked + " ways to call a word");
        assertEquals(List.of(), List.copyOf(without));
    }

    /** Held so that the list of exceptions does not outlive its reasons. */
    @Test
    void nothing_is_excused_that_has_a_report() {
        PLAIN.keySet().forEach(type -> assertFalse(Reports.has(type), type.getName()));
    }

    private static List<Class<?>> types(String word, Type returned) throws ClassNotFoundException {
        if (returned == void.class) {
            return List.of();
        }
        if (returned instanceof ParameterizedType listed && listed.getRawType() == List.class) {
            return types(word, listed.getActualTypeArguments()[0]);
        }
        Class<?> raw = (Class<?>) (returned instanceof ParameterizedType generic ? generic.getRawType() : returned);
        if (raw != Object.class && raw != Traced.class) {
            return List.of(raw);
        }
        assertTrue(SEVERAL.containsKey(word), word + " returns anything: say what in this test");
        List<Class<?>> all = new ArrayList<>();
        for (String name : SEVERAL.get(word)) {
            all.add(Class.forName(name));
        }
        return all;
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "design",
                "branch('foyer', coil(16.m3ph, 25.kPa), controlValve(25.kv), main: pipe(24.m, steel: 150))",
                "branch('west', pipe(40.m, steel: 50), from: 'supply', to: 'end')",
                "coil(16.m3ph, 25.kPa)",
                "pipe(24.m, steel: 100, fittings: ['welded elbow': 4, 'gate valve': 1])",
                "controlValve(25.kv, characteristic: 'linear')",
                "balancingValve(30.kv)",
                "balancingValve(settings: [[1, 4.kv], [2, 9.kv], [3, 16.kv], [4, 25.kv]], at: 3)",
                "bypassValve(10.kv, opensAt: 120.kPa)",
                "checkValve(90.kv, opensAt: 3.kPa)",
                "pressureIndependentValve(16.m3ph, floor: 20.kPa)",
                "minimumFlowValve(15.m3ph, 10.kv)",
                "decoupler()",
                "resistance(80.m3ph, 45.kPa)",
                "strainer(80.m3ph, 6.kPa)",
                "coilHeat(heat: 90.kW, water: 5.2.m3ph, liquid: water(70.degC), air: 3.kgps, enteringAir: 10.degC)",
                "valveAuthority(4.m, 9.m, 13.m)",
                "loadPatterns(loop)",
                "loadPatterns(loop)[0]",
                "randomFaults(dutyPlan(every: 24.h), 1.year, between: 90.day, repair: 24.h, seed: 3)",
                "cost('pump', 5000.USD)",
                "[cost('pump', 5000.USD), cost('energy', 900.USD, when: 'every year')]",
                "realisation([['bypass left open', 90.percent]])",
                "rate('day', 0.25.EUR.perKWh, from: 7, to: 22)",
                "outdoorYear([[5.degC, 3000.h], [15.degC, 4000.h], [25.degC, 1760.h]])",
                "changedMap(set, power: 104.percent, offset: 60.W, head: 97.percent)",
                "readingAt(set, 40.m3ph, 1250.rpm)",
                "operatingRegion(preferred: [75.percent, 115.percent], allowable: [40.percent, 125.percent])",
                "set",
                "[constantSpeed(), constantHead(design), quadratic(design, minimumHead: 35.percent)]",
                "settle(set, quadratic(design, minimumHead: 35.percent), loop)",
                "readTrendLog('demo-data/logs/otterbank-week.csv', set)",
                "flows(loop, 14.m).branches()",
                "flows(loop, 14.m).branches()[0]",
                "readPumpTest('demo-data/pumps/heron-65.csv').points()",
                "curve.basis()",
                "survey(loop, 14.m)",
                "compare(set, readLoadProfile('demo-data/loads/otterbank.csv'), price: 0.18.EUR.perKWh,"
                        + " laws: [quadratic(design, minimumHead: 35.percent)]).laws()[0]",
                "powerBaseline(cleanLog(readTrendLog('demo-data/logs/otterbank-week.csv', set), set), by: 'flow')"
            })
    void a_result_shows_facts_and_charts_and_nothing_as_the_language_prints_it(String line) {
        for (String units : List.of("metric", "US")) {
            Shown shown = Reports.of(Scripts.run("printedUnits('" + units + "')\n" + MADE + line))
                    .orElseThrow();
            String text = shown.toText();
            assertTrue(text.lines().count() > 1, text);
            assertFalse(BARE.matcher(text).find(), text);
            assertTrue(text.lines().allMatch(each -> each.codePointCount(0, each.length()) <= 100), text);
            for (Block block : shown.blocks()) {
                if (block instanceof ChartBlock chart) {
                    for (int width : new int[] {400, 640, 800, 1200, 1600}) {
                        standsWell(chart.chart().layout(width), line + " at " + width);
                    }
                }
            }
        }
        UnitSystem.METRIC.choose();
    }

    private static void standsWell(Layout layout, String where) {
        Box page = new Box(0, 0, layout.width(), layout.height());
        for (int i = 0; i < layout.texts().size(); i++) {
            Layout.Text text = layout.texts().get(i);
            assertTrue(page.holds(text.box()), where + ": " + text);
            for (int j = 0; j < i; j++) {
                assertFalse(text.box().crosses(layout.texts().get(j).box()), where + ": " + text);
            }
        }
    }
}
