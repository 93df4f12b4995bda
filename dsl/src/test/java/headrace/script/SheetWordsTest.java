package headrace.script;

import static headrace.script.Scripts.refused;
import static headrace.script.Scripts.run;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.data.Table;
import headrace.problem.Refusal;
import headrace.report.Reports;
import headrace.report.run.RunDifference.Change;
import headrace.report.sheet.Sheet;
import headrace.report.sheet.SheetPage;
import headrace.report.sheet.SheetProblem;
import headrace.selection.SelectionProblem;
import headrace.selection.Shortlist;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Sheets, the hand-over tables and the choice of a pump, as a script makes them. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class SheetWordsTest {
    private static final String SET = """
            curve  = fit(readPumpTest('demo-data/pumps/heron-65.csv'))
            set    = pumpSet(curve, motor(5.5.kW, ie: 3, poles: 4), drive(5.5.kW), minimumSpeed: 30.percent)
            design = duty(52.m3ph, 16.m)
            law    = quadratic(design, minimumHead: 25.percent)
            year   = readLoadProfile('demo-data/loads/otterbank.csv')
            """;
    private static final String SELECTION =
            "selectionSheet(set, design, project: 'Otterbank Library', date: '2026-03-02',"
                    + " by: 'A. Reader', assumptions: ['No margin was added to the head.'])";

    @TempDir
    Path folder;

    @BeforeEach
    void reads_from_the_project_and_writes_to_a_folder_of_its_own() {
        ScriptFolder.of(Path.of(".."), folder).choose();
    }

    @Test
    void a_selection_sheet_has_each_of_its_parts_its_assumptions_and_its_sources() {
        Sheet sheet = (Sheet) run(SET + SELECTION);
        assertEquals(
                List.of(
                        "Duty and liquid",
                        "Pump curve",
                        "Duty point",
                        "Motor and drive",
                        "Limits and operating region"),
                sheet.parts().stream().map(Sheet.Part::heading).toList());
        String page = SheetPage.of(sheet, 1);
        assertTrue(page.contains("No margin was added to the head."));
        assertTrue(page.contains("not a certified rating"));
        assertTrue(page.contains("heron-65.csv: invented"));
        assertTrue(page.contains("The suction side was not stated"));
        assertTrue(page.contains("2026-03-02") && page.contains("A. Reader"));
        assertTrue(page.contains("@page{margin"), "prints with margins of its own");
        assertFalse(page.contains("NaN"));
        assertTrue(Reports.of(sheet).orElseThrow().toText().contains("Duty and liquid"));
    }

    @Test
    void a_page_needs_nothing_from_outside_and_carries_no_markup_of_its_texts() {
        Sheet sheet =
                (Sheet) run("sheet('<b>Own</b>', ['A & B': table('T', [[name: '<script>x</script>', n: 1]])], project:"
                        + " '\"quoted\"')");
        String page = SheetPage.of(sheet, 1);
        assertFalse(page.contains("<b>Own") || page.contains("<script>x"));
        assertTrue(page.contains("&lt;b&gt;Own&lt;/b&gt;") && page.contains("A &amp; B"));
        assertFalse(page.contains("http://") && page.contains("src="));
    }

    /** The rated power of the motor falls from 5.5 to 4 kW, 27.27 %; the duty stays. */
    @Test
    void revision_b_lists_what_changed_since_the_page_of_revision_a() throws IOException {
        run(SET + "save(" + SELECTION + ", 'selection-a.html')");
        assertTrue(Files.exists(folder.resolve("selection-a.html")));
        ScriptFolder.of(folder, folder).choose();
        Files.createDirectories(folder.resolve("demo-data"));
        copy("demo-data/pumps/heron-65.csv");
        copy("demo-data/loads/otterbank.csv");
        Sheet later =
                (Sheet) run(SET + "small = pumpSet(curve, motor(4.kW, ie: 3, poles: 4), drive(4.kW), minimumSpeed:"
                        + " 30.percent)\nselectionSheet(small, design, project: 'Otterbank Library', revision: 'B', since:"
                        + " 'selection-a.html', assumptions: ['No margin was added to the head.'])");
        List<Change> changes = later.changes().orElseThrow().changes();
        Change motor = changes.stream()
                .filter(change -> change.what().endsWith("rated power"))
                .findFirst()
                .orElseThrow();
        assertEquals("5.5 kW", motor.before().orElseThrow());
        assertEquals("4 kW", motor.after().orElseThrow());
        assertEquals(-1.5 / 5.5, motor.moved().orElseThrow(), 1e-12);
        assertTrue(changes.stream().noneMatch(change -> change.what().endsWith("| density")));
        assertTrue(SheetPage.of(later, 1).contains("Changes since revision A"));
    }

    @Test
    void the_same_sheet_again_changed_in_nothing() {
        Sheet again = (Sheet) run(SET + "first = " + SELECTION + "\n"
                + SELECTION.replace("project:", "since: first, revision: 'B', project:"));
        assertTrue(again.changes().orElseThrow().isNothing());
    }

    @Test
    void a_page_that_is_no_sheet_is_refused() throws IOException {
        Files.writeString(folder.resolve("other.html"), "<html></html>");
        ScriptFolder.of(folder, folder).choose();
        refused(
                SheetProblem.NO_EARLIER_SHEET,
                "sheet('Own', [A: table('T', [[n: 1]])], project: 'P', since: 'other.html')");
        refused(SheetProblem.INCOMPLETE_SHEET, "sheet('Own', [A: table('T', [[n: 1]])], project: ' ')");
        refused(SheetProblem.INCOMPLETE_SHEET, "sheet('Own', [:], project: 'P')");
    }

    @Test
    void a_strategy_sheet_has_its_sequence_with_numbers() {
        Sheet sheet = (Sheet) run(SET + """
                comparison = compare(set, year, price: 0.18.EUR.perKWh, laws: [fixedSpeed(design), law])
                strategySheet(comparison, law, project: 'Otterbank Library', onFailure: 'keep 70 % speed and raise an alarm',
                    turns: dutyPlan(every: 168.h, overlap: 20.s, faultDelay: 15.s),
                    staging: staging(set, quadratic(duty(150.m3ph, 16.m), minimumHead: 35.percent), pumps: 3))
                """);
        String page = SheetPage.of(sheet, 1);
        assertTrue(page.contains("from 435 rpm to 1450 rpm"));
        assertTrue(page.contains("for 10 min 2 pumps run"));
        assertTrue(page.contains("keep 70 % speed and raise an alarm"));
        assertFalse(sheet.notes().has(SheetProblem.NOT_STATED));
    }

    @Test
    void a_strategy_sheet_is_refused_for_a_law_that_the_comparison_does_not_know() {
        String asked = SET + "strategySheet(compare(set, year, price: 0.18.perKWh, laws: [law]), constantSpeed(),"
                + " project: 'Otterbank Library')";
        Refusal refusal = assertThrows(Refusal.class, () -> run(asked));
        assertTrue(refusal.getMessage().contains("from a comparison without it"), refusal.getMessage());
    }

    @Test
    void a_strategy_sheet_says_what_was_not_stated() {
        Sheet sheet =
                (Sheet) run(SET + "strategySheet(compare(set, year, price: 0.18.perKWh, laws: [law]), law, project:"
                        + " 'Otterbank Library')");
        assertTrue(sheet.notes().has(SheetProblem.NOT_STATED));
        assertTrue(SheetPage.of(sheet, 1).contains("to be stated before this sheet is used"));
    }

    @Test
    void a_sensor_sheet_holds_the_year_with_and_without_the_sensor_side_by_side() {
        Sheet sheet = (Sheet) run(SET + """
                loop = directReturn(water(12.degC), resistance(46.m3ph, 60.kPa), [
                    branch('foyer', coil(24.m3ph, 25.kPa), controlValve(40.kv)),
                    branch('attic', resistance(22.m3ph, 14.kPa), coil(22.m3ph, 25.kPa), controlValve(40.kv))])
                load = branchYear(readTypicalDays('demo-data/loads/otterbank-days.csv'),
                    branches: [foyer: 24.m3ph, attic: 22.m3ph], sharing: 'far')
                point = duty(46.m3ph, 17.m)
                remote = remoteSensors(point, attic: 8.m)
                local = quadratic(point, minimumHead: 50.percent)
                sensorSheet(compare(set, loop, load, price: 0.18.EUR.perKWh, laws: [remote, local]), with: remote.name(),
                    without: local.name(), project: 'Otterbank Library', alarm: 'low flow for 5 min')
                """);
        String page = SheetPage.of(sheet, 1);
        assertTrue(page.contains("unmet branch-hours") && page.contains("worst shortfall"));
        assertTrue(page.contains("low flow for 5 min"));
        assertTrue(page.contains("Without the sensor the wire gives"));
    }

    @Test
    void a_points_list_and_a_set_up_table_read_back_as_they_were() {
        run(SET + "save(pointsList(set, law, prefix: 'CHW-P1'), 'points.csv')\n"
                + "save(setupTable(set, law, turns: dutyPlan(every: 168.h, overlap: 20.s)), 'set-up.csv')");
        ScriptFolder.of(folder, folder).choose();
        Table points = (Table) run("readTable('points.csv')");
        ScriptFolder.of(Path.of(".."), folder).choose();
        Table made = (Table) run(SET + "pointsList(set, law, prefix: 'CHW-P1')");
        assertEquals(made.columns(), points.columns());
        assertEquals(made.rows(), points.rows());
        assertEquals("CHW-P1-run-command", points.rows().get(0).get(0).print());
        ScriptFolder.of(folder, folder).choose();
        Table setUp = (Table) run("readTable('set-up.csv')");
        assertEquals(435.0, setUp.numbers("value")[0]);
        assertEquals(1450.0, points.numbers("high")[3]);
    }

    /** Half of 52 m³/h from 7 o'clock on: 4 + 12·0.25 = 7 m; before that the pump stands still. */
    @Test
    void a_simulated_day_has_a_time_stamp_for_each_step() {
        Table day =
                (Table) run(SET + "dayTrace(set, law, date: '2026-03-02', step: 15.minute) { minute -> minute < 420 ?"
                        + " 0.percent : 50.percent }");
        assertEquals(96, day.rows().size());
        assertEquals("2026-03-02T07:00:00", day.rows().get(28).get(0).print());
        assertEquals(0, day.numbers("flow")[27]);
        assertEquals(26, day.numbers("flow")[28], 1e-9);
        assertEquals(7, day.numbers("head")[28], 1e-9);
        refused(ScriptProblem.WRONG_VALUE, SET + "dayTrace(set, law, date: 'Monday') { minute -> 50.percent }");
        refused(
                SheetProblem.INCOMPLETE_SHEET,
                SET + "dayTrace(set, law, date: '2026-03-02', step: 7.minute) { m -> 1.ratio }");
    }

    @Test
    void a_folder_of_pump_files_is_ranked_with_a_reason_for_each_one_dropped() {
        Shortlist list = (Shortlist) run(SET + "choose('demo-data/pumps', law, year, leastMinimumHead: 15.percent)");
        assertEquals("Heron 65", list.ranked().get(0).name());
        assertEquals(5, list.ranked().size() + list.dropped().size());
        String text = Reports.of(list).orElseThrow().toText();
        assertTrue(text.contains("Dropped") && text.contains("15 % to"), text);
        refused(SelectionProblem.NO_CANDIDATES, SET + "choose('demo-data/pumps/heron-65.csv', law, year)");
        refused(SelectionProblem.NO_CANDIDATES, SET + "choose('demo-data', law, year)");
    }

    private void copy(String file) throws IOException {
        Path target = folder.resolve(file);
        Files.createDirectories(target.getParent());
        Files.copy(Path.of("..", file), target);
    }
}
