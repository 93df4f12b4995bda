package headrace.script;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.chart.Chart;
import headrace.chart.Layout;
import headrace.chart.Layout.Role;
import headrace.report.Block.ChartBlock;
import headrace.report.Reports;
import headrace.units.UnitSystem;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Charts follow the units that a script chose, and name what they draw. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class ChartedResultsTest {
    private static final String MADE = """
            curve = fit(readPumpTest('demo-data/pumps/heron-65.csv'))
            set = pumpSet(curve, motor(5.5.kW, ie: 3, poles: 4), drive(5.5.kW))
            design = duty(36.m3ph, 16.m)
            law = quadratic(design, minimumHead: 60.percent)
            loop = directReturn(water(12.degC), resistance(36.m3ph, 45.kPa), [
                branch('foyer', coil(16.m3ph, 25.kPa), controlValve(25.kv), main: pipe(24.m, steel: 100)),
                branch('attic', coil(20.m3ph, 30.kPa), controlValve(32.kv), main: pipe(50.m, steel: 80))])
            """;

    private static final Pattern METRIC = Pattern.compile("m³/h|kW\\b|°C|\\bin m\\b|\\d m\\b");

    @BeforeEach
    void stand_beside_the_demo_data() {
        ScriptFolder.of(Path.of(".."), Path.of("target", "words")).choose();
    }

    @AfterEach
    void print_as_before() {
        UnitSystem.METRIC.choose();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "curve",
                "map(set, design, systemCurve(design), law)",
                "systemCurve(design)",
                "limits(set)",
                "headBand(loop)",
                "headBand(loop, set: set, laws: [law])",
                "headProfile(flows(loop, 14.m))",
                "flows(loop, 14.m)",
                "readWeather('demo-data/weather/fenmouth.csv')",
                "inParallel([pumpBranch(curve)], systemCurve(design))",
                "staging(set, quadratic(duty(90.m3ph, 16.m), minimumHead: 35.percent), pumps: 3)"
            })
    void in_us_units_no_chart_speaks_of_a_metric_one(String line) {
        for (Chart chart : charts("printedUnits('US')\n" + line)) {
            assertFalse(METRIC.matcher(chart.altText()).find(), chart.altText());
        }
    }

    /** 14 m of head are 45.93 ft, and the attic lies 74 m or 242.8 ft down the main. */
    @Test
    void the_numbers_go_with_the_unit() {
        String said = charts("printedUnits('US')\nheadProfile(flows(loop, 14.m))")
                .get(0)
                .altText();
        assertTrue(said.contains("Head above the suction of the pump in ft (0 to 45.93)"), said);
        assertTrue(said.contains("Length of pipe from the pump in ft (0 to 242.8)"), said);
    }

    /** Twice the same pump at two speeds: a reader must know which line is which. */
    @Test
    void pumps_of_one_name_are_told_apart_by_their_speeds() {
        List<String> texts = charts("inParallel([pumpBranch(curve), pumpBranch(atSpeed(curve, 1300.rpm))],"
                        + " systemCurve(duty(80.m3ph, 16.m)))")
                .get(0)
                .layout(800)
                .texts()
                .stream()
                .filter(text -> text.role() == Role.LABEL || text.role() == Role.LEGEND)
                .map(Layout.Text::text)
                .toList();
        assertTrue(texts.containsAll(List.of("Heron 65 at 1450 rpm", "Heron 65 at 1300 rpm")), texts.toString());
    }

    /** A plant that takes most of the head leaves the return above half of it; it is the return all the same. */
    @Test
    void the_return_is_drawn_as_the_return_however_high_its_heads_are() {
        String svg = charts("""
                        high = directReturn(water(12.degC), resistance(36.m3ph, 90.kPa), [
                            branch('near', coil(16.m3ph, 5.kPa), controlValve(63.kv), main: pipe(24.m, steel: 100)),
                            branch('far', coil(20.m3ph, 5.kPa), controlValve(63.kv), main: pipe(50.m, steel: 80))])
                        headProfile(flows(high, 14.m))""").get(0).toSvg(800).toLowerCase(Locale.ROOT);
        assertEquals(2, svg.split("stroke=\"#0072b2\"", -1).length - 1, "two supply mains");
        assertEquals(2, svg.split("stroke=\"#009e73\"", -1).length - 1, "two return mains");
    }

    /**
     * Constant speed and fixed design speed are what every law is held against; asked for as a law it is no third one.
     */
    @Test
    void a_law_that_is_a_baseline_too_stands_in_the_chart_of_a_year_once() {
        String said = charts("""
                        load = branchYear(readTypicalDays('demo-data/loads/otterbank-days.csv'), branches: loop)
                        compare(set, loop, load, price: 0.2.EUR.perKWh, laws: [constantSpeed(), law])""").get(0).altText();
        assertEquals(2, said.split("constant speed", -1).length, said);
        assertTrue(said.contains(", 60 % minimum head"), said);
    }

    private static List<Chart> charts(String lines) {
        List<Chart> charts = Reports.of(Scripts.run(MADE + lines)).orElseThrow().blocks().stream()
                .filter(ChartBlock.class::isInstance)
                .map(block -> ((ChartBlock) block).chart())
                .toList();
        assertFalse(charts.isEmpty(), lines);
        return charts;
    }
}
