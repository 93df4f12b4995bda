package headrace.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.control.ControlLaw;
import headrace.control.Demand;
import headrace.control.LoopState;
import headrace.control.Observed;
import headrace.control.SteadyState;
import headrace.curve.Duty;
import headrace.curve.ImpellerSizing;
import headrace.curve.NpshCurve;
import headrace.curve.PumpCurve;
import headrace.curve.PumpTest;
import headrace.curve.SpeedCollapse;
import headrace.curve.TrimComparison;
import headrace.curve.TrimRule;
import headrace.data.Column;
import headrace.data.LoadFile;
import headrace.data.PumpFile;
import headrace.data.Table;
import headrace.data.TableFile;
import headrace.drive.Drive;
import headrace.drive.DriveTrain;
import headrace.drive.Motor;
import headrace.drive.SeparateLosses;
import headrace.energy.LoadBin;
import headrace.energy.LoadProfile;
import headrace.liquid.Liquid;
import headrace.pump.PumpSet;
import headrace.record.Basis;
import headrace.report.Block.ChartBlock;
import headrace.report.Block.TableBlock;
import headrace.report.Block.TextBlock;
import headrace.rule.LargestMinimumHead;
import headrace.rule.PartLoadRule;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Length;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Temperature;
import headrace.units.Time;
import headrace.units.UnitSystem;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class ReportsTest {
    private static final Path DEMO = Path.of("..", "demo-data");
    private static final PartLoadRule RULE = PartLoadRule.THIRTY_PERCENT_AT_HALF_FLOW;
    private static final SeededSet SEEDED = new SeededSet(7);

    @TempDir
    Path folder;

    /** A set may give what it holds in any order, and does so anew in every run. */
    private record Observing(ControlLaw law, Set<Observed> observes) implements ControlLaw {
        @Override
        public String name() {
            return law.name();
        }

        @Override
        public String statement() {
            return law.statement();
        }

        @Override
        public Optional<Duty> design() {
            return law.design();
        }

        @Override
        public Demand demand(LoopState state, PumpSet set) {
            return law.demand(state, set);
        }
    }

    @Test
    void what_a_law_observes_is_said_in_one_order() {
        Set<Observed> other = new LinkedHashSet<>(List.of(Observed.VALVE_OPENING, Observed.PUMP_HEAD, Observed.FLOW));
        String text = Reports.of(new Observing(SEEDED.laws.get(4), other))
                .orElseThrow()
                .toText();
        assertTrue(text.contains("flow, pump head, valve opening"), text);
    }

    static List<Object> results() {
        PumpTest dunlin = PumpFile.read(DEMO.resolve("pumps/dunlin-100.csv"));
        PumpTest plover = PumpFile.read(DEMO.resolve("pumps/plover-40.csv"));
        ControlLaw law = SEEDED.laws.get(4);
        return List.of(
                TrimComparison.of(PumpCurve.fit(plover), Length.millimetres(165), Optional.empty(), Optional.empty()),
                new ImpellerSizing(PumpCurve.fit(plover), TrimRule.radial())
                        .sideBySide(new Duty(Flow.cubicMetresPerHour(18), Head.metres(30)), Power.kilowatts(0.3)),
                SpeedCollapse.of(dunlin),
                PumpCurve.fit(plover).inLiquid(Liquid.propyleneGlycol(Ratio.percent(40), Temperature.celsius(0))),
                SEEDED.map().points(),
                List.of(SEEDED.curve.bestEfficiencyPoint(), SEEDED.curve.at(SEEDED.design.flow())),
                SEEDED.comparison().savingsAt(Ratio.percent(50)),
                SEEDED.comparison().yearSavings(),
                RULE.judge(SEEDED.comparison()),
                dunlin,
                plover,
                PumpCurve.fit(dunlin),
                PumpCurve.fit(plover),
                PumpCurve.fit(plover).extendedTo(plover.points().get(10).flow().times(1.1)),
                SEEDED.curve.bestEfficiencyPoint(),
                SEEDED.test.liquid(),
                SEEDED.set,
                SEEDED.set.driveTrain().motor(),
                SEEDED.set.driveTrain().drive().orElseThrow(),
                SEEDED.map(),
                SEEDED.map().systems().get(0),
                SEEDED.map().points().get(0),
                law,
                SEEDED.laws.get(0),
                SteadyState.of(law, SEEDED.set, SEEDED.design.flow().times(0.5)),
                SEEDED.comparison(),
                RULE,
                RULE.judge(SEEDED.set, law),
                LargestMinimumHead.of(SEEDED.set, SEEDED.design, RULE),
                LoadFile.read(DEMO.resolve("loads/otterbank.csv")),
                Table.of("a", Column.text("b")).row("c"));
    }

    @ParameterizedTest
    @MethodSource("results")
    void a_result_shows_itself_in_at_most_100_columns_of_text(Object result) {
        Shown shown = Reports.of(result).orElseThrow();
        for (String line : shown.toText().split("\n", -1)) {
            assertTrue(line.codePointCount(0, line.length()) <= PlainText.WIDTH, line);
            assertEquals(line.stripTrailing(), line);
            assertFalse(line.contains("NaN") || line.contains("Infinity") || line.contains("Optional"), line);
        }
    }

    @ParameterizedTest
    @MethodSource("results")
    void every_table_that_is_shown_can_be_saved_and_read_back(Object result) {
        for (Block block : Reports.of(result).orElseThrow().blocks()) {
            if (block instanceof TableBlock shown) {
                Path file = folder.resolve("table.csv");
                TableFile.write(shown.table(), file);
                assertEquals(shown.table(), TableFile.read(file));
            }
        }
    }

    @ParameterizedTest
    @MethodSource("results")
    void a_result_shows_the_same_in_every_locale(Object result) {
        Locale before = Locale.getDefault();
        String here = Reports.of(result).orElseThrow().toText();
        try {
            Locale.setDefault(Locale.forLanguageTag("tr-TR"));
            assertEquals(here, Reports.of(result).orElseThrow().toText());
        } finally {
            Locale.setDefault(before);
        }
    }

    @Test
    void a_drooping_curve_says_by_how_much_and_where() {
        String text = text(PumpCurve.fit(PumpFile.read(DEMO.resolve("pumps/plover-40.csv"))));
        assertTrue(text.contains("The head droops: it rises by "), text);
        assertTrue(text.contains("[head-droop]"), text);
        text = text(PumpCurve.fit(PumpFile.read(DEMO.resolve("pumps/heron-65.csv"))));
        assertTrue(text.contains("The head falls all the way"), text);
    }

    @Test
    void a_result_names_its_files_with_their_hashes_at_its_foot() {
        Shown shown = Reports.of(PumpCurve.fit(PumpFile.read(DEMO.resolve("pumps/heron-65.csv"))))
                .orElseThrow();
        TextBlock foot = (TextBlock) shown.blocks().get(shown.blocks().size() - 1);
        assertEquals("Basis", foot.heading());
        assertTrue(foot.lines().get(0).startsWith("heron-65.csv: invented"), foot.toString());
        assertTrue(foot.lines().get(0).matches(".*\\(SHA-256 [0-9a-f]{12}…\\)"), foot.toString());
    }

    @Test
    void a_comparison_draws_every_law_over_flow_and_over_the_year() {
        String alt = "";
        for (Block block : Reports.of(SEEDED.comparison()).orElseThrow().blocks()) {
            alt += block instanceof ChartBlock chart ? chart.chart().altText() : "";
        }
        for (ControlLaw law : SEEDED.laws) {
            assertTrue(alt.contains("line " + law.name()), alt);
            assertTrue(alt.contains(law.name() + ": "), alt);
        }
    }

    @Test
    void a_map_shows_power_efficiency_and_npsh_at_the_speeds_of_its_head_curves() {
        PumpTest bittern = PumpFile.read(DEMO.resolve("pumps/bittern-150.csv"));
        PumpSet set = SEEDED.set;
        String without = text(SpeedMap.of(set)).replaceAll("\\s+", " ");
        assertTrue(without.contains("Shaft power in kW") && without.contains("Pump efficiency in %"), without);
        assertFalse(without.contains("NPSH required"), without);
        Power rated = Power.kilowatts(30);
        PumpSet large = PumpSet.of(
                PumpCurve.fit(bittern),
                DriveTrain.of(Motor.ofClass(rated, 3, 4), Drive.reference(rated), SeparateLosses.ASSUMED));
        String with = text(SpeedMap.of(large).with(NpshCurve.of(bittern))).replaceAll("\\s+", " ");
        assertTrue(with.contains("NPSH required in m"), with);
        assertTrue(with.contains("NPSH required: a + b·Q² through 8 readings"), with);
    }

    /** 100 hours at each of 8 % to 87 %; from 5 % to 10 % lie two of them, from 10 % to 15 % five. */
    @Test
    void a_profile_of_many_flows_is_shown_in_steps() {
        List<LoadBin> bins = new ArrayList<>();
        for (int percent = 8; percent < 88; percent++) {
            bins.add(new LoadBin(Ratio.percent(percent + 0.5), Time.hours(100)));
        }
        Shown shown = Reports.of(LoadProfile.of("hourly", bins, Basis.NONE)).orElseThrow();
        Table table = ((TableBlock) shown.blocks().get(0)).table();
        assertEquals("5 to 10 %", table.rows().get(0).get(0).print());
        assertEquals(200, table.numbers("time")[0]);
        assertEquals(500, table.numbers("time")[1]);
        assertTrue(shown.toText().contains("Its 80 flows are shown in steps of 5 %"), shown.toText());
    }

    @Test
    void a_result_speaks_the_unit_system_of_its_thread() {
        try {
            UnitSystem.US_CUSTOMARY.choose();
            PumpCurve curve = PumpCurve.fit(PumpFile.read(DEMO.resolve("pumps/merganser-80.csv")));
            String text = text(curve);
            assertTrue(text.contains(" gpm") && text.contains(" ft") && text.contains(" hp"), text);
            assertFalse(text.contains("m³/h") || text.contains("kW"), text);
        } finally {
            UnitSystem.METRIC.choose();
        }
    }

    @Test
    void what_is_no_result_has_its_own_text_only() {
        assertTrue(Reports.of("text").isEmpty());
        assertTrue(Reports.of(SEEDED.design.flow()).isEmpty());
    }

    @Test
    void a_table_too_wide_wraps_its_text_and_then_goes_on_beneath_itself() {
        Column[] columns = new Column[14];
        Object[] values = new Object[14];
        for (int i = 0; i < columns.length; i++) {
            columns[i] = i == 0 ? Column.text("name") : Column.in("quantity " + i, "m³/h");
            values[i] = i == 0 ? "a name of more than a few words that goes on for a good while" : 1000.0 + i;
        }
        List<String> lines = TableText.lines(Table.of("wide", columns).row(values), 100);
        assertTrue(lines.stream().allMatch(line -> line.length() <= 100));
        String all = String.join("\n", lines);
        for (int i = 1; i < columns.length; i++) {
            assertTrue(all.contains(String.valueOf(1000 + i)), all);
        }
        assertFalse(all.contains("…"));
    }

    private static String text(Object result) {
        return Reports.of(result).orElseThrow().toText();
    }
}
