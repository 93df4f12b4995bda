package headrace.script;

import static headrace.script.Scripts.refused;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.curve.CurveProblem;
import headrace.energy.RegionHours;
import headrace.operation.ParallelOperation;
import headrace.operation.SeriesOperation;
import headrace.operation.limit.DeadHead;
import headrace.operation.limit.LimitProblem;
import headrace.operation.limit.OperatingRegion;
import headrace.operation.limit.PumpLimits;
import headrace.operation.suction.Filling;
import headrace.operation.suction.NpshCheck;
import headrace.operation.suction.NpshOverReach;
import headrace.operation.suction.SuctionProblem;
import headrace.operation.suction.WorkingPressure;
import headrace.pump.PumpBranch;
import headrace.pump.PumpProblem;
import headrace.record.Traced;
import headrace.report.Reports;
import headrace.units.AbsolutePressure;
import headrace.units.GaugePressure;
import headrace.units.Ratio;
import headrace.units.TemperatureDifference;
import headrace.units.Time;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The words for limits, suction and several pumps, as a script uses them. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class LimitAndParallelWordsTest {
    private static final List<String> SUBJECTS = List.of("Limits of a pump", "Suction and pressures", "Several pumps");

    private static final String MADE = """
            test = readPumpTest('demo-data/pumps/bittern-150.csv')
            curve = fit(test, shape: 'never rising')
            liquid = water(20.degC)
            required = npshCurve(test)
            set = pumpSet(curve, motor(22.kW, ie: 3, poles: 4), drive(22.kW))
            design = duty(200.m3ph, 32.m)
            comparison = compare(set, readLoadProfile('demo-data/loads/otterbank.csv'), price: 0.18.perKWh,
                laws: [fixedSpeed(design), quadratic(design, minimumHead: 40.percent)])
            """;

    @BeforeEach
    void stand_beside_the_demo_data() {
        ScriptFolder.of(Path.of(".."), Path.of("target", "words")).choose();
    }

    private static Object run(String line) {
        return Scripts.run(MADE + line);
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
    void each_example_of_a_help_runs_and_shows_itself(String example) {
        Object result = run(example.replace("duty(50.m3ph, 0.8.m)", "duty(200.m3ph, 0.8.m)"));
        assertFalse(result.toString().isBlank());
        assertFalse(Reports.of(result).map(shown -> shown.toText().isBlank()).orElse(false));
    }

    @Test
    void limits_take_what_was_stated() {
        PumpLimits limits = (PumpLimits) run(
                "limits(set, region: operatingRegion(allowable: [40.percent, 125.percent]), leastStable: 28.percent,"
                        + " rise: 1.K, from: 20.m3ph, to: 200.m3ph, liquid: water(5.degC))");
        assertTrue(limits.overload().nonOverloading());
        assertEquals(Ratio.percent(40), limits.region().allowableFrom());
        assertFalse(limits.notes().has(LimitProblem.REGION_ASSUMED));
        assertFalse(limits.notes().has(LimitProblem.MINIMUM_FLOW_ASSUMED));
        assertEquals(5, limits.reach().set().curve().liquid().temperature().toCelsius(), 1e-9);
        assertTrue(((PumpLimits) run("limits(set)")).notes().has(LimitProblem.OVERLOAD_WITHIN_REACH));
    }

    @Test
    void an_operating_region_is_made_of_two_pairs_of_shares() {
        OperatingRegion region = (OperatingRegion)
                run("operatingRegion(preferred: [80.percent, 110.percent], allowable: ['30 %', '130 %'])");
        assertEquals(Ratio.percent(30), region.allowableFrom());
        assertEquals(Ratio.percent(110), region.preferredTo());
        refused(ScriptProblem.WRONG_VALUE, "operatingRegion(allowable: [30.percent])");
        refused(ScriptProblem.MISSING_CHOICE, "operatingRegion(preferred: [80.percent, 110.percent])");
    }

    @Test
    void npsh_goes_with_the_impeller_of_the_pump_set_that_is_checked() {
        String trimmed = "small = pumpSet(trim(curve, 320.mm), motor(22.kW, ie: 3, poles: 4), drive(22.kW))\n";
        assertTrue(((Traced) run(trimmed + "checkNpsh(small, suction: openSuction(3.m), npsh: required)"))
                .notes()
                .has(CurveProblem.NPSH_IMPELLER_ASSUMED));
        assertTrue(((Traced) run("npshAt(pointAt(trim(curve, 320.mm), 200.m3ph), suction: openSuction(3.m),"
                        + " npsh: npshCurve(test, as: trim(curve, 320.mm)), liquid: liquid)"))
                .notes()
                .has(CurveProblem.NPSH_IMPELLER_ASSUMED));
        assertFalse(((Traced) run("checkNpsh(set, suction: openSuction(3.m), npsh: required)"))
                .notes()
                .has(CurveProblem.NPSH_IMPELLER_ASSUMED));
    }

    @Test
    void hours_are_counted_for_each_law_and_make_up_its_year() {
        List<?> hours = (List<?>) run("regionHours(comparison)");
        assertEquals(2, hours.size());
        double all = ((Time) run("comparison.profile().hours()")).toHours();
        for (Object law : hours) {
            RegionHours year = (RegionHours) law;
            assertEquals(all, year.running().plus(year.off()).toHours(), 1e-9);
        }
        assertTrue(Reports.of(hours).isPresent());
    }

    @Test
    void the_time_against_a_closed_valve_is_told_in_minutes() {
        DeadHead time = (DeadHead) run("deadHeadTime(curve, filling: 20.litre, limit: 80.degC)");
        assertTrue(time.toString().contains(" min "), time.toString());
        assertTrue(((TemperatureDifference) run("heatRise(curve, 200.m3ph)")).kelvins() > 0);
    }

    @Test
    void air_thins_and_suction_may_be_measured_on_either_side() {
        assertTrue(((AbsolutePressure) run("airAt(1600.m)")).toKilopascals() < 84);
        NpshOverReach far = (NpshOverReach) run(
                "checkNpsh(set, suction: closedSuction(500.kPaGauge, tank: 'discharge', height: 2.m, bore: 150.mm), npsh:"
                        + " required, times: 1.3, plus: 0.5.m, to: 250.m3ph)");
        assertTrue(far.notes().has(SuctionProblem.TANK_ON_DISCHARGE_SIDE));
        assertFalse(far.notes().has(SuctionProblem.NPSH_MARGIN_ASSUMED));
        refused(ScriptProblem.WRONG_VALUE, "closedSuction(500.kPaGauge, tank: 'left')");
        NpshCheck check = (NpshCheck)
                run("npshAt(pointAt(curve, 200.m3ph), suction: openSuction(-9.m), npsh: required, liquid: liquid)");
        assertTrue(check.notes().has(SuctionProblem.NPSH_MARGIN));
    }

    @Test
    void pressures_are_found_for_filling_and_for_the_weakest_part() {
        WorkingPressure pressure = (WorkingPressure)
                run("highestPressure(set, atRest: 150.kPaGauge, parts: [casing: 10.barGauge, seal: '5 bar gauge'])");
        assertEquals("seal", pressure.weakest().orElseThrow().name());
        assertTrue(pressure.notes().has(SuctionProblem.OVER_RATING));
        Filling filling = (Filling)
                run("filling(water(10.degC), water(80.degC), topAboveTank: 0.m, top: 50.kPa, aboveBoiling: 20.kPa)");
        assertEquals(GaugePressure.kilopascals(50), filling.cold());
    }

    @Test
    void pumps_run_in_parallel_and_in_series() {
        PumpBranch branch = (PumpBranch)
                run("pumpBranch(curve, name: 'P-2', checkValve: 0.25.m, loss: duty(200.m3ph, 1.m), running: false)");
        assertEquals("P-2, standing still", branch.toString());
        ParallelOperation together = (ParallelOperation)
                run("inParallel([curve, pumpBranch(atSpeed(curve, 800.rpm), name: 'P-2')], systemCurve(design))");
        assertTrue(together.notes().has(PumpProblem.DEAD_HEADED_PUMP));
        SeriesOperation behind = (SeriesOperation) run("inSeries([curve, curve], systemCurve(duty(200.m3ph, 64.m)))");
        assertEquals(2, behind.point().points().size());
        refused(PumpProblem.NO_PUMPS, "inParallel([], systemCurve(duty(50.m3ph, 16.m)))");
        refused(ScriptProblem.WRONG_VALUE, "inParallel([3], systemCurve(duty(50.m3ph, 16.m)))");
    }

    @Test
    void npsh_can_be_written_in_the_script() {
        Object required = Scripts.run("""
                npshCurve(pumpTest('P-A', speed: 1450.rpm, liquid: water(20.degC), points: [[0.m3ph, 32.m, 1.2.kW],
                    [30.m3ph, 28.m, 3.1.kW], [60.m3ph, 17.m, 4.4.kW]],
                    npsh: [[20.m3ph, 1.4.m], [40.m3ph, 2.6.m], [60.m3ph, 4.6.m]]))
                """);
        assertTrue(required.toString().startsWith("NPSH required by P-A: 4.6 m"), required.toString());
    }
}
