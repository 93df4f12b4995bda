package headrace.script;

import static headrace.script.Scripts.refused;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.circuit.Circuit;
import headrace.circuit.CircuitProblem;
import headrace.circuit.CircuitSolution;
import headrace.circuit.answer.CircuitSurvey;
import headrace.circuit.answer.HeadProfile;
import headrace.circuit.answer.ProportionalBalance;
import headrace.circuit.band.HeadBand;
import headrace.circuit.part.PartProblem;
import headrace.circuit.part.valve.BalancingValve;
import headrace.control.BandWithLaws;
import headrace.problem.Notes;
import headrace.report.Reports;
import headrace.report.Shown;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The words that ask a circuit, as a script uses them. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class CircuitAnswerWordsTest {
    private static final String LOOP = """
            set = pumpSet(fit(readPumpTest('demo-data/pumps/heron-65.csv')), motor(5.5.kW, ie: 3, poles: 4), drive(5.5.kW))
            design = duty(36.m3ph, 16.m)
            loop = directReturn(water(12.degC), resistance(36.m3ph, 45.kPa), [
                branch('foyer', coil(16.m3ph, 25.kPa), controlValve(25.kv), main: pipe(24.m, steel: 100)),
                branch('attic', coil(20.m3ph, 30.kPa), controlValve(32.kv), main: pipe(50.m, steel: 80))])
            """;

    @BeforeEach
    void stand_beside_the_demo_data() {
        ScriptFolder.of(Path.of(".."), Path.of("target", "words")).choose();
    }

    static List<String> examples() {
        return Vocabulary.all().words().stream()
                .filter(word -> word.subject().equals("What a circuit needs"))
                .flatMap(word -> word.methods().stream())
                .map(method -> method.getAnnotation(Word.class).example())
                .distinct()
                .toList();
    }

    @ParameterizedTest
    @MethodSource("examples")
    void each_example_of_the_help_runs_and_shows_itself(String example) {
        Object result = Scripts.run(LOOP + example);
        assertNotNull(result);
        Shown shown = Reports.of(result).orElseThrow();
        assertTrue(shown.blocks().size() > 0);
    }

    @Test
    void a_survey_under_constant_head_gives_less_authority_than_under_a_head_that_falls() {
        CircuitSurvey constant =
                (CircuitSurvey) Scripts.run(LOOP + "survey(set, constantHead(design), loop, load: 40.percent)");
        CircuitSurvey falling = (CircuitSurvey)
                Scripts.run(LOOP + "survey(set, quadratic(design, minimumHead: 35.percent), loop, load: 40.percent)");
        double less =
                constant.branch("attic").authority().orElseThrow().effective().value();
        double more =
                falling.branch("attic").authority().orElseThrow().effective().value();
        assertTrue(more > less, more + " over " + less);
        assertEquals(
                constant.branch("attic").authority().orElseThrow().design(),
                falling.branch("attic").authority().orElseThrow().design());
        assertTrue(constant.greatest().isPresent());
    }

    /** L = q/(q + 0.4·(1 − q)) by hand from the share that the branch gets. */
    @Test
    void a_starved_branch_misses_the_heat_of_its_emission_law() {
        CircuitSurvey survey = (CircuitSurvey) Scripts.run(LOOP + "survey(loop, 8.m, heat: emission(0.4))");
        double q = survey.branch("attic").state().delivered().value();
        assertTrue(q < 1);
        assertEquals(
                1 - q / (q + 0.4 * (1 - q)),
                survey.branch("attic").heatMissing().orElseThrow().value(),
                1e-9);
    }

    @Test
    void balancing_valves_with_a_table_get_their_settings_and_the_set_circuit_gives_every_branch_its_flow() {
        String valves = LOOP.replace(
                "controlValve(25.kv)",
                "controlValve(25.kv), balancingValve(settings: [[1, 4.kv], [2, 13.kv], [3, 25.kv], [4, 47.kv]])");
        ProportionalBalance balance = (ProportionalBalance) Scripts.run(valves + "balance(loop)");
        assertEquals("attic", balance.reference());
        double setting = balance.steps().get(1).setting().orElseThrow();
        assertTrue(setting > 1 && setting < 4);
        assertTrue(balance.balanced().branch("foyer").parts().stream().anyMatch(BalancingValve.class::isInstance));
        assertEquals(1, balance.steps().get(1).after().value(), 1e-8);
        assertEquals(1, balance.steps().get(1).reference().value(), 1e-8);
    }

    @Test
    void a_band_without_laws_is_a_band_and_one_with_laws_says_where_they_give_too_little() {
        HeadBand band = (HeadBand) Scripts.run(LOOP + "headBand(loop, steps: 6)");
        assertEquals(6, band.points().size());
        BandWithLaws with = (BandWithLaws) Scripts.run(LOOP
                + "headBand(loop, steps: 6, set: set, laws: [quadratic(design, minimumHead: 5.percent),"
                + " constantHead(design)])");
        assertTrue(with.gap(with.laws().get(0)).isPresent());
        assertTrue(with.gap(with.laws().get(1)).isEmpty());
        assertEquals(5, with.points().get(0).size());
    }

    @Test
    void a_profile_is_drawn_from_flows_and_from_settle() {
        HeadProfile given = (HeadProfile) Scripts.run(LOOP + "headProfile(flows(loop, 14.m))");
        HeadProfile settled =
                (HeadProfile) Scripts.run(LOOP + "headProfile(settle(set, constantHead(duty(36.m3ph, 14.m)), loop))");
        assertEquals(74, given.farthest().metres(), 1e-9);
        assertEquals(given.across("attic").metres(), settled.across("attic").metres(), 1e-6);
    }

    /**
     * 60 kPa at 40 m³/h in water of 999.5 kg/m³ are 6.121 m: 6 m move 39.60 m³/h, 50 are asked for, 10.40 come back.
     */
    @Test
    void a_plant_loop_and_a_load_loop_are_built_and_drawn_with_their_decoupler_and_the_pump_of_the_load() {
        String loops = """
                flows(circuit(water(12.degC), pump: ['plant in', 'plant supply'], [
                    branch('decoupler', decoupler(), from: 'plant supply', to: 'plant return'),
                    branch('chiller', resistance(40.m3ph, 60.kPa), from: 'plant return', to: 'plant in'),
                    branch('load pump', pumpBranch(fit(readPumpTest('demo-data/pumps/heron-65.csv'))), from: 'plant supply', to: 'header'),
                    branch('room', coil(50.m3ph, 30.kPa), controlValve(63.kv), from: 'header', to: 'plant return')]), 6.m)
                """;
        CircuitSolution found = (CircuitSolution) Scripts.run(loops);
        double chiller =
                40 * Math.sqrt(6 / (60_000 / (found.circuit().liquid().density().si() * 9.80665)));
        assertEquals(chiller - 50, found.branch("decoupler").flow().toCubicMetresPerHour(), 1e-6);
        assertTrue(found.notes().has(PartProblem.DECOUPLER_REVERSED));
        String drawn = (String) Scripts.run("chart(" + loops.strip() + ").altText()");
        assertTrue(drawn.contains("decoupler: -10.4 m³/h"), drawn);
        assertTrue(drawn.contains("pump, chiller: 39.6 m³/h"), drawn);
    }

    @Test
    void what_cannot_be_asked_is_refused() {
        refused(CircuitProblem.NO_HEAD_AT_PUMP, LOOP + "survey(loop, -3.m)");
        refused(CircuitProblem.NO_HEAD_AT_PUMP, LOOP + "flows(loop, -3.m)");
        refused(CircuitProblem.NO_HEAD_AT_PUMP, LOOP + "balance(loop, head: 0.m)");
        refused(CircuitProblem.FLOW_OUTSIDE_DEMANDS, LOOP + "headNeeded(loop, load: 0.percent)");
        refused(CircuitProblem.FLOW_OUTSIDE_DEMANDS, LOOP + "headBand(loop, steps: 0)");
        refused(CircuitProblem.FLOW_OUTSIDE_DEMANDS, LOOP + "headBand(loop, load: 0.percent)");
        refused(CircuitProblem.UNKNOWN_BRANCH, LOOP + "survey(loop, 8.m, heat: [atic: emission(0.4)])");
        refused(ScriptProblem.WRONG_VALUE, LOOP + "survey(loop, 8.m, heat: 0.4)");
        refused(ScriptProblem.WRONG_VALUE, LOOP + "headBand(loop, set: set, laws: [constantHead(design)], loads: 0)");
        refused(ScriptProblem.MISSING_CHOICE, LOOP + "headBand(loop, laws: [constantHead(design)])");
    }

    @Test
    void a_table_of_settings_in_kv_and_cv_is_refused_by_the_name_of_its_valve_and_a_circuit_with_both_says_so() {
        String mixed = refused(
                PartProblem.MIXED_FLOW_COEFFICIENTS,
                "balancingValve(settings: [[1, 4.kv], [2, 9.cv], [3, 16.kv]], name: 'BV 3')");
        assertTrue(mixed.contains("'BV 3'"), mixed);
        Circuit both = (Circuit) Scripts.run(LOOP.replace("32.kv", "32.cv") + "loop");
        assertTrue(both.notes().has(PartProblem.MIXED_FLOW_COEFFICIENTS));
        assertTrue(both.notes().toString().contains("control valve of attic"), both.notes()::toString);
    }

    @Test
    void a_demand_that_the_open_valve_cannot_pass_is_noted_by_the_name_of_the_valve() {
        Notes notes = ((CircuitSurvey)
                        Scripts.run(LOOP.replace("controlValve(32.kv)", "controlValve(4.kv)") + "survey(loop, 12.m)"))
                .notes();
        assertTrue(notes.has(PartProblem.DEMAND_ABOVE_OPEN_VALVE));
        assertTrue(notes.toString().contains("'control valve of attic' takes"), notes::toString);
    }
}
