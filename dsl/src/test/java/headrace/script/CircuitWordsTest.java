package headrace.script;

import static headrace.script.Scripts.refused;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.circuit.Circuit;
import headrace.circuit.CircuitSolution;
import headrace.circuit.part.PartProblem;
import headrace.circuit.part.pipe.Pipe;
import headrace.circuit.part.valve.BalancingValve;
import headrace.circuit.part.valve.ControlValve;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The words for circuits and their parts, as a script uses them. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class CircuitWordsTest {
    private static final List<String> SUBJECTS = List.of("Circuits", "Parts of a circuit", "Valves");

    private static final String LOOP = """
            loop = directReturn(water(12.degC), resistance(80.m3ph, 45.kPa), [
                branch('foyer',        coil(16.m3ph, 25.kPa), controlValve(25.kv), main: pipe(24.m, steel: 150)),
                branch('reading room', coil(12.m3ph, 22.kPa), controlValve(20.kv), main: pipe(18.m, steel: 125)),
                branch('stacks',       coil(20.m3ph, 27.kPa), controlValve(32.kv), main: pipe(30.m, steel: 125)),
                branch('offices',      coil(14.m3ph, 24.kPa), controlValve(25.kv), main: pipe(22.m, steel: 100)),
                branch('attic',        coil(18.m3ph, 30.kPa), controlValve(32.kv), main: pipe(26.m, steel: 80))])
            """;

    @BeforeEach
    void stand_beside_the_demo_data() {
        ScriptFolder.of(Path.of(".."), Path.of("target", "words")).choose();
    }

    static List<String> examples() {
        return Vocabulary.all().words().stream()
                .filter(word -> SUBJECTS.contains(word.subject()))
                .flatMap(word -> word.methods().stream())
                .map(method -> method.getAnnotation(Word.class).example())
                .distinct()
                .toList();
    }

    @ParameterizedTest
    @MethodSource("examples")
    void each_example_of_the_help_runs(String example) {
        assertNotNull(Scripts.run(LOOP + example));
    }

    @Test
    void a_loop_of_five_branches_is_built_in_at_most_ten_lines() {
        assertTrue(LOOP.lines().count() <= 10);
        Circuit loop = (Circuit) Scripts.run(LOOP + "loop");
        assertEquals(5, loop.terminals().size());
        assertEquals(80, loop.designFlow().toCubicMetresPerHour(), 1e-9);
    }

    /** By hand: what the branch takes beside its valve, and the valve's opening from the rest of the head across it. */
    @Test
    void flows_say_how_the_circuit_stands() {
        CircuitSolution all = (CircuitSolution) Scripts.run(LOOP + "flows(loop, 14.m)");
        assertTrue(all.starvedBranches().isEmpty());
        double density = all.circuit().liquid().density().si();
        double coil = 30_000 / (density * 9.80665);
        double available = all.branch("attic").available().metres();
        // Kv = Q/√(Δp/bar); equal percentage: x = 1 + ln κ/ln 50
        double kv = 18 / Math.sqrt((available - coil) * 1000 * 9.80665 / 1e5);
        assertEquals(
                1 + Math.log(kv / 32) / Math.log(50),
                all.branch("attic").opening().orElseThrow().si(),
                1e-6);
        CircuitSolution half =
                (CircuitSolution) Scripts.run(LOOP + "flows(loop, 14.m, load: 50.percent, demands: [foyer: 0.m3ph])");
        assertEquals(32, half.flow().toCubicMetresPerHour(), 1e-6);
        assertEquals(0, half.branch("foyer").flow().si(), 0);
        CircuitSolution little = (CircuitSolution) Scripts.run(LOOP + "flows(loop, 8.m)");
        assertFalse(little.starvedBranches().isEmpty());
    }

    @Test
    void a_part_without_a_name_is_called_after_its_branch() {
        Circuit loop = (Circuit) Scripts.run(LOOP + "loop");
        assertEquals("coil of foyer", loop.branch("foyer").parts().get(0).name());
        assertEquals(
                "pipe of main to foyer",
                loop.branch("main to foyer").parts().get(0).name());
        Circuit named = (Circuit) Scripts.run("directReturn(water(12.degC), [], [branch('foyer', coil(16.m3ph, 25.kPa,"
                + " name: 'C 7'), controlValve(25.kv))])");
        assertEquals("C 7", named.branch("foyer").parts().get(0).name());
    }

    @Test
    void a_pipe_is_said_by_its_series_or_by_its_inside_diameter() {
        Pipe steel = (Pipe) Scripts.run("pipe(24.m, steel: 50, fittings: ['welded elbow': 4, 'gate valve': 2])");
        assertEquals(53.1, steel.bore().inside().toMillimetres(), 1e-9);
        assertEquals(2, steel.fittings().size());
        Pipe old = (Pipe) Scripts.run("pipe(24.m, steel: 50, roughness: 0.15.mm)");
        assertEquals(0.15, old.bore().roughness().toMillimetres(), 1e-12);
        Pipe own = (Pipe) Scripts.run("pipe(24.m, inside: 41.9.mm, roughness: 0.045.mm, k: 4.5)");
        assertEquals(41.9, own.bore().inside().toMillimetres(), 1e-12);
        refused(ScriptProblem.WRONG_VALUE, "pipe(24.m, name: 'riser')");
        refused(ScriptProblem.WRONG_VALUE, "pipe(24.m, steel: 50, copper: 28)");
        refused(ScriptProblem.MISSING_CHOICE, "pipe(24.m, inside: 41.9.mm)");
        refused(PartProblem.UNKNOWN_PIPE_SIZE, "pipe(24.m, steel: 55)");
        String negative = refused(PartProblem.IMPOSSIBLE_PART, "pipe(-24.m, steel: 50, name: 'riser')");
        assertTrue(negative.contains("riser"), negative);
        String two = refused(
                PartProblem.MIXED_FITTING_METHODS,
                "pipe(24.m, steel: 50, fittings: ['welded elbow': 4], diameters: 30, name: 'riser')");
        assertTrue(two.contains("riser"), two);
    }

    @Test
    void a_flow_coefficient_says_whether_it_is_a_kv_or_a_cv() {
        assertEquals(
                0.8649776554 * 10,
                ((ControlValve) Scripts.run("controlValve(10.cv)")).open().kv(),
                1e-8);
        String bare = refused(PartProblem.MIXED_FLOW_COEFFICIENTS, "controlValve(10)");
        assertTrue(bare.contains("10.kv or 10.cv"), bare);
    }

    @Test
    void a_balancing_valve_is_set_from_the_excess_head() {
        // by hand: 9 m³/h at 10⁵/(1000·9.80665) m is Kv 9, which the table has at 2
        BalancingValve valve = (BalancingValve) Scripts.run(
                "settingFor(balancingValve(settings: [[1, 4.kv], [2, 9.kv], [3, 16.kv]]), 10.19716213.m, 9.m3ph)");
        assertEquals(2, valve.setting(), 1e-6);
    }

    @Test
    void reverse_return_and_loops_are_as_short() {
        Circuit reverse =
                (Circuit) Scripts.run("reverseReturn(water(12.degC), resistance(34.m3ph, 45.kPa), [branch('foyer',"
                        + " coil(16.m3ph, 25.kPa), controlValve(25.kv)), branch('attic', coil(18.m3ph, 30.kPa),"
                        + " controlValve(32.kv), main: pipe(24.m, steel: 80))], home: pipe(60.m, steel: 100))");
        assertEquals("attic, return", reverse.branch("main home").from());
        CircuitSolution ring = (CircuitSolution)
                Scripts.run(
                        "flows(circuit(water(12.degC), pump: ['return', 'supply'], ["
                                + "branch('west', pipe(40.m, steel: 50), from: 'supply', to: 'end'),"
                                + "branch('east', pipe(40.m, steel: 50), from: 'supply', to: 'end'),"
                                + "branch('served', coil(6.m3ph, 25.kPa), controlValve(10.kv), from: 'end', to: 'return')]), 8.m)");
        // two equal pipes side by side share the flow
        assertEquals(3, ring.branch("west").flow().toCubicMetresPerHour(), 1e-6);
        assertEquals(3, ring.branch("east").flow().toCubicMetresPerHour(), 1e-6);
    }

    /** By hand: at 10 % load the two coils take 3.4 m³/h, so 11.6 of the 15 m³/h are bypassed; at full load none. */
    @Test
    void a_minimum_flow_valve_bypasses_what_the_pump_lacks() {
        String loop = "loop = directReturn(water(12.degC), resistance(34.m3ph, 45.kPa), ["
                + "branch('bypass', minimumFlowValve(15.m3ph, 16.kv)),"
                + "branch('foyer', coil(16.m3ph, 25.kPa), controlValve(25.kv)),"
                + "branch('attic', coil(18.m3ph, 30.kPa), controlValve(32.kv))]);";
        CircuitSolution little = (CircuitSolution) Scripts.run(loop + "flows(loop, 14.m, load: 10.percent)");
        assertEquals(15, little.flow().toCubicMetresPerHour(), 1e-6);
        assertEquals(11.6, little.branch("bypass").flow().toCubicMetresPerHour(), 1e-6);
        CircuitSolution full = (CircuitSolution) Scripts.run(loop + "flows(loop, 14.m)");
        assertEquals(34, full.flow().toCubicMetresPerHour(), 1e-6);
        assertEquals(0, full.branch("bypass").flow().si(), 0);
        // a bypass too small for it passes what it can, and is said to be starved
        CircuitSolution small =
                (CircuitSolution) Scripts.run(loop.replace("16.kv", "2.kv") + "flows(loop, 14.m, load: 10.percent)");
        assertEquals(List.of("bypass"), small.starvedBranches());
    }

    @Test
    void a_branch_without_a_design_flow_is_refused_with_its_name() {
        String without = refused(ScriptProblem.MISSING_CHOICE, "branch('foyer', controlValve(25.kv))");
        assertTrue(without.contains("'foyer'"), without);
        String mixed = refused(ScriptProblem.WRONG_VALUE, "directReturn(water(12.degC), [], [controlValve(25.kv)])");
        assertTrue(mixed.contains("branch of directReturn"), mixed);
    }
}
