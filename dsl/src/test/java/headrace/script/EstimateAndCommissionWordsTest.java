package headrace.script;

import static headrace.script.Scripts.refused;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.chart.Layout;
import headrace.commission.CommissioningSheet;
import headrace.commission.SiteVerdict;
import headrace.estimate.Cause;
import headrace.estimate.ErrorBudget;
import headrace.estimate.EstimateProblem;
import headrace.estimate.FlowDraws;
import headrace.estimate.FlowEstimate;
import headrace.estimate.FlowEstimator;
import headrace.estimate.Method;
import headrace.estimate.UncertaintyMap;
import headrace.estimate.site.AgainstTruth;
import headrace.estimate.site.Calibration;
import headrace.report.Block;
import headrace.report.Reports;
import headrace.report.Shown;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The words for flow without a flow meter and for commissioning, as a script uses them. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class EstimateAndCommissionWordsTest {
    private static final String MADE = """
            curve = fit(readPumpTest('demo-data/pumps/heron-65.csv'))
            set = pumpSet(curve, motor(5.5.kW, ie: 3, poles: 4), drive(5.5.kW), minimumSpeed: 30.percent)
            design = duty(52.m3ph, 16.m)
            errors = readingErrors(power: [1.percent, 10.W], speed: 0.2.percent, head: 1.percent, powerMap: 3.percent,
                headMap: 2.percent, losses: 10.percent, meterScale: 0.5.percent, density: 0.2.percent, torque: 2.percent)
            estimator = flowEstimator(set, errors: errors, design: 52.m3ph)
            estimate = estimateFlow(estimator, readingAt(set, 40.m3ph, 1250.rpm))
            sheet = commissioningSheet(estimator, design)
            year = readLoadProfile('demo-data/loads/otterbank.csv')
            """;

    @BeforeEach
    void stand_beside_the_demo_data() {
        ScriptFolder.of(Path.of(".."), Path.of("target", "words")).choose();
    }

    private static Object run(String line) {
        return Scripts.run(MADE + line);
    }

    @Test
    void every_example_of_these_subjects_runs_as_it_stands() {
        String measured = """
                measured = [[0.m3ph, 20.m, 1.2.kW, 1450.rpm], [30.m3ph, 18.m, 2.1.kW, 1450.rpm],
                    [60.m3ph, 12.m, 2.9.kW, 1450.rpm], [0.m3ph, 5.m, 0.2.kW, 725.rpm], [15.m3ph, 4.5.m, 0.33.kW, 725.rpm],
                    [30.m3ph, 3.m, 0.45.kW, 725.rpm]]
                """;
        for (String subject : List.of("Readings and maps", "Flow without a flow meter", "Commissioning")) {
            for (Vocabulary.Entry word : Vocabulary.all().words(subject)) {
                Object result = Scripts.run(MADE + measured + word.example());
                assertFalse(Reports.of(result).isEmpty() && result.toString().isBlank(), word.name());
            }
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "errors",
                "estimator",
                "estimate",
                "drawFlows(estimate, draws: 5000)",
                "uncertaintyMap(estimator)",
                "againstTruth(estimator, changedMap(set, power: 103.percent), speed: 1300.rpm)",
                "calibrate(estimator, [[40.m3ph, readingAt(set, 40.m3ph, 1250.rpm).power().get(), 1250.rpm]])",
                "sheet",
                "estimatedYear(set, onEstimates(quadratic(design, minimumHead: 35.percent), estimator), year, draws: 100)",
                "judgeReadings(sheet, [[speed: 1300.rpm, shutOffHead: 16.m]])"
            })
    void each_result_shows_itself(String line) {
        Shown shown = Reports.of(run(line)).orElseThrow();
        assertFalse(shown.toText().isBlank());
        for (Block block : shown.blocks()) {
            if (block instanceof Block.ChartBlock chart) {
                assertTrue(chart.chart().toSvg(800).length() > 1000);
                labelsKeepApart(chart.chart().layout(800).texts());
            }
        }
    }

    private static void labelsKeepApart(List<Layout.Text> texts) {
        for (int i = 0; i < texts.size(); i++) {
            for (int j = 0; j < i; j++) {
                assertFalse(texts.get(i).box().crosses(texts.get(j).box()), texts.get(i) + " and " + texts.get(j));
            }
        }
    }

    @Test
    void errors_are_taken_as_they_are_stated() {
        ErrorBudget errors = (ErrorBudget) run("errors");
        assertEquals(0.01, errors.of(Cause.POWER_READING).relative());
        assertEquals(10, errors.of(Cause.POWER_READING).fixed());
        assertEquals(0.03, errors.of(Cause.POWER_MAP).relative(), 1e-15);
        assertEquals(9, errors.parts().size());
        assertFalse(errors.assumed());
    }

    @Test
    void an_acceptance_grade_gives_the_tolerance_of_the_map() {
        ErrorBudget errors = (ErrorBudget) run("readingErrors(grade: '2B', headMap: 2.percent)");
        assertEquals(0.08, errors.of(Cause.POWER_MAP).relative());
        assertEquals(0.02, errors.of(Cause.HEAD_MAP).relative());
        refused(EstimateProblem.IMPOSSIBLE_ERROR, MADE + "readingErrors(grade: '4Z')");
    }

    @Test
    void what_was_read_decides_the_method() {
        assertEquals(
                Method.POWER_AND_SPEED,
                ((FlowEstimate) run("estimateFlow(estimator, power: 2.kW, speed: 1250.rpm)")).method());
        assertEquals(
                Method.HEAD_AND_SPEED,
                ((FlowEstimate) run("estimateFlow(estimator, head: 12.m, speed: 1250.rpm)")).method());
        assertEquals(Method.MIX, ((FlowEstimate) run("estimate")).method());
        assertEquals(40, ((FlowEstimate) run("estimate")).flow().toCubicMetresPerHour(), 1e-6);
    }

    @Test
    void the_design_flow_the_liquid_and_the_number_of_readings_are_choices() {
        assertEquals(52, ((FlowEstimator) run("estimator")).design().toCubicMetresPerHour(), 1e-9);
        FlowEstimate glycol = (FlowEstimate)
                run("estimateFlow(flowEstimator(set, liquid: propyleneGlycol(30.percent, 10.degC), errors: errors),"
                        + " power: 2.kW, speed: 1250.rpm, readings: 60)");
        assertTrue(glycol.notes().has(EstimateProblem.AVERAGED_READINGS));
        assertTrue(glycol.basis().choices().toString().contains("propylene"));
    }

    @Test
    void calibration_gives_an_estimator_to_go_on_with() {
        Calibration made = (Calibration) run("truth = changedMap(set, power: 104.percent)\n"
                + "calibrate(estimator, [[40.m3ph, readingAt(truth, 40.m3ph, 1250.rpm).power().get(), 1250.rpm]])");
        assertEquals(1.04, made.factors().power(), 1e-9);
        AgainstTruth swept = (AgainstTruth) run("truth = changedMap(set, power: 104.percent)\n"
                + "made = calibrate(estimator, [[40.m3ph, readingAt(truth, 40.m3ph, 1250.rpm).power().get(), 1250.rpm]])\n"
                + "againstTruth(made.after(), truth, speed: 1250.rpm)");
        assertEquals(0, swept.greatestError().value(), 1e-6);
    }

    @Test
    void a_sheet_takes_a_number_or_a_list_of_speeds_and_judges_what_was_read() {
        assertEquals(
                3,
                ((CommissioningSheet) run("commissioningSheet(estimator, design, speeds: 3)"))
                        .rows()
                        .size());
        assertEquals(
                2,
                ((CommissioningSheet) run("commissioningSheet(estimator, design, speeds: [900.rpm, 1400.rpm])"))
                        .rows()
                        .size());
        SiteVerdict verdict = (SiteVerdict)
                run(
                        "judgeReadings(sheet, sheet.rows().collect { row -> [speed: row.speed(),"
                                + " shutOffHead: row.shutOffHead().value() * 0.6, closedPower: row.closedPower().value() * 1.1] })");
        assertEquals(headrace.commission.Cause.TURNS_BACKWARDS, verdict.likeliest());
    }

    @Test
    void draws_and_maps_are_made_as_chosen() {
        assertEquals(
                2000,
                ((FlowDraws) run("drawFlows(estimate, draws: 2000)")).counts().kept());
        assertEquals(
                Method.HEAD_AND_SPEED,
                ((UncertaintyMap) run("uncertaintyMap(estimator, by: 'head and speed')")).method());
    }

    @Test
    void mistakes_are_answered() {
        refused(ScriptProblem.WRONG_VALUE, MADE + "uncertaintyMap(estimator, by: 'magic')");
        refused(ScriptProblem.WRONG_VALUE, MADE + "drawFlows(estimate, draws: 3)");
        refused(EstimateProblem.READING_MISSING, MADE + "estimateFlow(estimator, power: 2.kW)");
        refused(
                EstimateProblem.READING_MISSING,
                MADE
                        + "estimator.estimate(estimate.method(), readingNone)"
                                .replace("readingNone", "headrace.estimate.Reading.NONE"));
        refused(ScriptProblem.WRONG_VALUE, MADE + "readingAt(set, 400.m3ph, 1250.rpm)");
        refused(ScriptProblem.WRONG_VALUE, MADE + "flowEstimator(curve)");
    }
}
