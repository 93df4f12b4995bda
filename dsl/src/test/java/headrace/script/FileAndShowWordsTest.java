package headrace.script;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import groovy.lang.Binding;
import groovy.lang.GroovyShell;
import headrace.chart.Chart;
import headrace.curve.PumpTest;
import headrace.data.Column;
import headrace.data.DataProblem;
import headrace.data.Table;
import headrace.data.TableFile;
import headrace.problem.Place;
import headrace.problem.Problem;
import headrace.problem.Refusal;
import headrace.report.SpeedMap;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@DisplayNameGeneration(ReplaceUnderscores.class)
class FileAndShowWordsTest {
    private static final String PUMP = """
            # name: Wren 25
            # speed: 1450 rpm
            flow [m3/h]; head [m]; shaft power [kW]
            0;12;0,5
            10;11;0,8
            20;8;1,0
            """;
    private static final String SET = """
            curve  = fit(readPumpTest('demo-data/pumps/heron-65.csv'))
            set    = pumpSet(curve, motor(5.5.kW, ie: 3, poles: 4), drive(5.5.kW), minimumSpeed: 30.percent)
            design = duty(52.m3ph, 16.m)
            """;

    @TempDir
    Path folder;

    private Path scripts;
    private Path results;

    @BeforeEach
    void choose_folders() throws IOException {
        scripts = Files.createDirectories(folder.resolve("notebooks/mine"));
        results = Files.createDirectories(folder.resolve("results"));
        ScriptFolder.of(scripts, results).choose();
    }

    @AfterEach
    void go_back_to_the_current_folder() {
        ScriptFolder.of(Path.of(""), Path.of("")).choose();
    }

    @Test
    void a_file_is_found_beside_the_script_before_the_folders_above() throws IOException {
        Files.writeString(folder.resolve("pump.csv"), PUMP.replace("Wren", "Above"));
        assertEquals("Above 25", ((PumpTest) run("readPumpTest('pump.csv', decimalComma: true)")).name());
        Files.writeString(scripts.resolve("pump.csv"), PUMP);
        assertEquals("Wren 25", ((PumpTest) run("readPumpTest('pump.csv', decimalComma: true)")).name());
    }

    @Test
    void the_demo_data_are_found_above_the_current_folder() {
        ScriptFolder.of(Path.of(""), results).choose();
        assertEquals("Heron 65", ((PumpTest) run("readPumpTest('demo-data/pumps/heron-65.csv')")).name());
    }

    @Test
    void a_refusal_names_the_file_as_the_script_does() throws IOException {
        Files.writeString(folder.resolve("pump.csv"), PUMP);
        Refusal refusal = refused(DataProblem.WRONG_SEPARATOR, "readPumpTest('pump.csv')");
        assertEquals(new Place("pump.csv", 3, 12), refusal.place().orElseThrow());
        refusal = refused(DataProblem.FILE_NOT_FOUND, "readLoadProfile('pumps/nowhere.csv')");
        assertEquals(Place.of("pumps/nowhere.csv"), refusal.place().orElseThrow());
        assertTrue(refusal.getMessage().contains("It was looked for in " + scripts), refusal.getMessage());
    }

    @Test
    void a_table_is_saved_where_it_says_and_read_back_to_the_same_values() {
        Object said = run("save(table('Heads', [[flow: 20.m3ph, head: 16.1.m, law: '=none']]), 'heads.csv')");
        assertEquals("Saved the table 'Heads' to " + results.resolve("heads.csv"), said);
        Table made = Table.of("Heads", Column.in("flow", "m³/h"), Column.in("head", "m"), Column.text("law"))
                .row(20, 16.1, "=none");
        assertEquals(made, TableFile.read(results.resolve("heads.csv")));
    }

    @Test
    void a_chart_is_saved_by_the_ending_of_its_name() throws IOException {
        ScriptFolder.of(Path.of(""), results).choose();
        run(SET + "save(curve, 'heron.svg'); save(curve, 'heron.png', width: 400); save(curve, 'heron.txt')");
        assertTrue(Files.readString(results.resolve("heron.svg")).contains("<svg"));
        byte[] png = Files.readAllBytes(results.resolve("heron.png"));
        assertEquals("PNG", new String(png, 1, 3, StandardCharsets.US_ASCII));
        assertTrue(Files.readString(results.resolve("heron.txt")).startsWith("Pump curve of Heron 65 at 1450 rpm\n"));
        refused(DataProblem.UNKNOWN_FILE_KIND, SET + "save(curve, 'heron.pdf')");
        run(SET + "save(curve, 'heron.svg'); save(curve, 'heron.png')");
    }

    @Test
    void what_save_did_not_write_gives_way_only_when_told_so() throws IOException {
        String save = "save(table('T', [[a: 1]]), 'mine.csv'";
        Files.writeString(results.resolve("mine.csv"), "a,b\n1,2\n");
        refused(DataProblem.FILE_IN_THE_WAY, save + ")");
        assertEquals("a,b\n1,2\n", Files.readString(results.resolve("mine.csv")));
        run(save + ", over: true)");
        run(save + ")");
        assertEquals(1, TableFile.read(results.resolve("mine.csv")).numbers("a")[0]);
    }

    @Test
    void what_the_script_has_read_is_never_written_over() throws IOException {
        ScriptFolder.of(results, results).choose();
        Files.writeString(results.resolve("pump.csv"), PUMP);
        refused(
                DataProblem.FILE_IN_THE_WAY,
                "readPumpTest('pump.csv', decimalComma: true); save(table('T', [[a: 1]]), 'pump.csv', over: true)");
        assertEquals(PUMP, Files.readString(results.resolve("pump.csv")));
    }

    @Test
    void a_map_takes_what_is_drawn_upon_it_one_by_one_or_in_lists() {
        ScriptFolder.of(Path.of(""), results).choose();
        SpeedMap map = assertInstanceOf(
                SpeedMap.class,
                run(SET + "map(set, design, systemCurve(design), [constantHead(design), linear(design, minimumHead:"
                        + " 50.percent)])"));
        assertEquals("52 m³/h at 16 m", map.design().orElseThrow().toString());
        assertEquals(1, map.systems().size());
        assertEquals(2, map.laws().size());
        refused(ScriptProblem.WRONG_VALUE, SET + "map(set, 16.m)");
    }

    @Test
    void a_result_with_several_charts_asks_which() {
        ScriptFolder.of(Path.of(""), results).choose();
        String comparison = SET
                + "comparison = compare(set, readLoadProfile('demo-data/loads/otterbank.csv'), price: 0.18.perKWh,"
                + " laws: [fixedSpeed(design), constantHead(design)])\n";
        assertEquals(
                "Head and wire power over flow", ((Chart) run(comparison + "chart(comparison, 'over flow')")).title());
        assertEquals("Part loads", ((Table) run(comparison + "table(comparison, 'part')")).title());
        Refusal refusal = refused(DataProblem.NOTHING_TO_SHOW, comparison + "chart(comparison)");
        assertTrue(refusal.getMessage().contains("'Head and wire power over flow'"), refusal.getMessage());
        refused(DataProblem.NOTHING_TO_SHOW, "table('52 m', 'x')");
    }

    private static Refusal refused(Problem problem, String script) {
        Refusal refusal = assertThrows(Refusal.class, () -> run(script));
        assertEquals(problem, refusal.problem(), refusal.getMessage());
        return refusal;
    }

    private static Object run(String script) {
        return new GroovyShell(new Binding(), ScriptLanguage.configuration()).evaluate(script);
    }
}
