package headrace.energy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.control.ControlLaw;
import headrace.control.EstimatedLaw;
import headrace.curve.Duty;
import headrace.estimate.Cause;
import headrace.estimate.ErrorBudget;
import headrace.estimate.FlowEstimator;
import headrace.estimate.MapFactors;
import headrace.estimate.Sets;
import headrace.estimate.ThroughLosses;
import headrace.problem.Refusal;
import headrace.pump.PumpSet;
import headrace.record.Basis;
import headrace.units.EnergyPrice;
import headrace.units.Head;
import headrace.units.Ratio;
import headrace.units.Time;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class EstimatedYearTest {
    private static final PumpSet SET = Sets.set();
    private static final Duty DESIGN = new Duty(Sets.m3ph(60), Head.metres(24));
    private static final ControlLaw LAW = ControlLaw.quadratic(DESIGN, Ratio.percent(40));
    private static final LoadProfile YEAR = LoadProfile.of(
            "two loads",
            List.of(
                    new LoadBin(Ratio.percent(100), Time.hours(1000)),
                    new LoadBin(Ratio.percent(50), Time.hours(5000))),
            Basis.NONE);

    private static EstimatedYear year(ErrorBudget errors, MapFactors believed) {
        FlowEstimator estimator = FlowEstimator.of(ThroughLosses.of(SET).calibrated(believed, "believed"), errors);
        return EstimatedYear.of(SET, EstimatedLaw.of(LAW, estimator), YEAR, 200, 1);
    }

    @Test
    void without_errors_a_year_on_estimates_is_the_year_with_sensors() {
        EstimatedYear year = year(ErrorBudget.NONE, MapFactors.NONE);
        double sensors = year.energyWithSensors().joules();
        assertEquals(sensors, year.energy().joules(), 1e-8 * sensors);
        assertEquals(sensors, year.joules().low(), 1e-8 * sensors);
        assertEquals(0, year.secondsShort().high());
        assertEquals(0, year.rows().get(1).excess().value(), 1e-8);
    }

    @Test
    void the_energy_with_sensors_is_that_of_the_comparison_of_laws() {
        double compared = StrategyComparison.of(SET, YEAR, EnergyPrice.parse("0.2 EUR/kWh"), List.of(LAW))
                .laws()
                .get(0)
                .wireEnergy()
                .joules();
        assertEquals(
                compared,
                year(ErrorBudget.NONE, MapFactors.NONE).energyWithSensors().joules(),
                1e-9 * compared);
    }

    @Test
    void a_tolerance_of_the_map_becomes_a_band_of_heads_and_energy_about_the_value() {
        EstimatedYear year = year(ErrorBudget.NONE.with(Cause.POWER_MAP, 0.04, 0), MapFactors.NONE);
        for (EstimatedYear.Row row : year.rows()) {
            assertTrue(row.excess().low() < -0.05 && row.excess().high() > 0.05, row::toString);
        }
        assertTrue(year.joules().low() < year.energy().joules()
                && year.joules().high() > year.energy().joules());
        EstimatedYear wider = year(ErrorBudget.NONE.with(Cause.POWER_MAP, 0.08, 0), MapFactors.NONE);
        assertTrue(wider.joules().high() > year.joules().high());
        assertTrue(wider.secondsShort().high() >= year.secondsShort().high());
    }

    /** At 50 % of flow the law asks for 9.6 + 14.4·0.25 = 13.2 m; 2 % of 24 m short begins below 12.72 m. */
    @Test
    void a_map_that_believes_in_too_much_head_is_short_in_every_hour() {
        EstimatedYear year = year(ErrorBudget.NONE, new MapFactors(1, 0, 1.1));
        assertEquals(
                13.2,
                year.rows().stream()
                        .mapToDouble(row -> row.asked().metres())
                        .min()
                        .orElseThrow(),
                1e-9);
        assertEquals(6000 * 3600.0, year.secondsShort().value());
        assertTrue(year.energy().joules() < year.energyWithSensors().joules());
    }

    @Test
    void a_law_for_no_design_has_no_year() {
        FlowEstimator estimator = FlowEstimator.of(ThroughLosses.of(SET), ErrorBudget.NONE);
        EstimatedLaw own = EstimatedLaw.of(ControlLaw.of("own", now -> Head.metres(12)), estimator);
        assertEquals(
                EnergyProblem.DESIGN_MISSING,
                assertThrows(Refusal.class, () -> EstimatedYear.of(SET, own, YEAR, 200, 1))
                        .problem());
    }
}
