package headrace.curve;

import static headrace.curve.CurveProblem.EFFICIENCY_ABOVE_ONE;
import static headrace.curve.CurveProblem.FEW_POINTS;
import static headrace.curve.CurveProblem.HEAD_FALLS_TO_ZERO;
import static headrace.curve.CurveProblem.IMPOSSIBLE_CONFIDENCE;
import static headrace.curve.CurveProblem.IMPOSSIBLE_DUTY;
import static headrace.curve.CurveProblem.IMPOSSIBLE_POINT;
import static headrace.curve.CurveProblem.IMPOSSIBLE_TEST;
import static headrace.curve.CurveProblem.OUTLYING_POINT;
import static headrace.curve.CurveProblem.POWER_FALLS_TO_ZERO;
import static headrace.curve.CurveProblem.REPEATED_FLOWS;
import static headrace.curve.CurveProblem.TOO_FEW_POINTS;
import static headrace.curve.Pumps.RATED;
import static headrace.curve.Pumps.WATER;
import static headrace.curve.Pumps.evenly;
import static headrace.curve.Pumps.m3ph;
import static headrace.curve.Pumps.point;
import static headrace.curve.Pumps.points;
import static headrace.curve.Pumps.refusal;
import static headrace.curve.Pumps.test;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.liquid.Liquid;
import headrace.problem.Notes;
import headrace.record.Basis;
import headrace.record.Input;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Length;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Speed;
import headrace.units.Temperature;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class FittedTestTest {
    private static final double[] FLOWS = evenly(11, 0, 100);

    private static double head(double q) {
        return 32 - 0.01 * q - 0.0012 * q * q;
    }

    private static double watts(double q) {
        return 3000 + 70 * q - 0.1 * q * q;
    }

    private static List<TestPoint> exact() {
        return points(FLOWS, FittedTestTest::head, FittedTestTest::watts);
    }

    private static List<TestPoint> noisy(int seed) {
        Random random = new Random(seed);
        return points(
                FLOWS,
                q -> head(q) * (1 + 0.003 * random.nextGaussian()),
                q -> watts(q) * (1 + 0.003 * random.nextGaussian()));
    }

    @Test
    void finds_the_coefficients_of_exact_points_again() {
        PumpCurve curve = PumpCurve.fit(test(exact()));
        assertEquals(2, curve.headFit().degree());
        assertEquals(32, curve.headFit().coefficients().get(0), 1e-9);
        assertEquals(-0.01 * 3600, curve.headFit().coefficients().get(1), 1e-6);
        assertEquals(-0.0012 * 3600 * 3600, curve.headFit().coefficients().get(2), 1e-4);
        assertEquals(70 * 3600, curve.powerFit().coefficients().get(1), 1e-3);
        for (double q = 0; q <= 100; q += 0.7) {
            assertEquals(head(q), curve.headAt(m3ph(q)).metres(), 1e-9);
            assertEquals(watts(q), curve.shaftPowerAt(m3ph(q)).watts(), 1e-6);
        }
    }

    @Test
    void changes_nothing_when_its_points_are_shuffled() {
        List<TestPoint> given = noisy(4);
        PumpCurve curve = PumpCurve.fit(test(given));
        for (int seed = 0; seed < 10; seed++) {
            List<TestPoint> shuffled = new ArrayList<>(given);
            Collections.shuffle(shuffled, new Random(seed));
            PumpCurve other = PumpCurve.fit(test(shuffled));
            assertEquals(curve.headFit().coefficients(), other.headFit().coefficients());
            assertEquals(curve.powerFit().coefficients(), other.powerFit().coefficients());
            assertEquals(curve.notes(), other.notes());
        }
    }

    @Test
    void does_not_depend_on_the_units_of_its_points() {
        PumpCurve metric = PumpCurve.fit(test(noisy(5)));
        List<TestPoint> converted = noisy(5).stream()
                .map(p -> new TestPoint(
                        Flow.usGallonsPerMinute(p.flow().toUsGallonsPerMinute()),
                        Head.feet(p.head().toFeet()),
                        Power.horsepower(p.shaftPower().toHorsepower()),
                        p.speed()))
                .toList();
        PumpCurve customary = PumpCurve.fit(test(converted));
        for (double q = 0; q <= 99; q += 3) {
            assertEquals(
                    metric.headAt(m3ph(q)).metres(), customary.headAt(m3ph(q)).metres(), 1e-11);
            assertEquals(
                    metric.efficiencyAt(m3ph(q)).value(),
                    customary.efficiencyAt(m3ph(q)).value(),
                    1e-13);
        }
    }

    @Test
    void brings_points_read_at_other_speeds_to_the_speed_of_the_test() {
        List<TestPoint> slipping = new ArrayList<>();
        for (int i = 0; i < FLOWS.length; i++) {
            slipping.add(exact().get(i).atSpeed(Speed.revolutionsPerMinute(1492 - 5 * i)));
        }
        PumpCurve curve = PumpCurve.fit(test(slipping));
        for (double q = 0; q <= 100; q += 5) {
            assertEquals(head(q), curve.headAt(m3ph(q)).metres(), 1e-9);
            assertEquals(watts(q), curve.shaftPowerAt(m3ph(q)).watts(), 1e-6);
        }
        assertEquals(RATED, curve.points().get(3).speed());
        assertEquals(30, curve.points().get(3).flow().toCubicMetresPerHour(), 1e-9);
    }

    /**
     * A reading of 3 m at half speed stands for 12 m at full speed, its error fourfold and its weight a sixteenth. The
     * parabola meets the points at 0 and 20 m³/h, and at 10 m³/h the mean of the two: (10 + 12/16)/(1 + 1/16).
     */
    @Test
    void gives_a_point_read_at_low_speed_less_weight() {
        List<TestPoint> points = List.of(
                point(0, 11, 5000),
                point(10, 10, 5000),
                point(20, 7, 5000),
                new TestPoint(m3ph(5), Head.metres(3), Power.watts(625), RATED.times(0.5)));
        assertEquals(172 / 17.0, PumpCurve.fit(test(points)).headAt(m3ph(10)).metres(), 1e-9);
    }

    @Test
    void leaves_head_and_doubles_power_in_a_liquid_twice_as_dense() {
        List<TestPoint> heavy = noisy(6).stream()
                .map(p -> new TestPoint(p.flow(), p.head(), p.shaftPower().times(2), p.speed()))
                .toList();
        PumpCurve light = PumpCurve.fit(test(noisy(6)));
        PumpCurve dense = PumpCurve.fit(test(heavy));
        for (double q = 0; q <= 100; q += 10) {
            assertEquals(light.headAt(m3ph(q)), dense.headAt(m3ph(q)));
            assertEquals(
                    2 * light.shaftPowerAt(m3ph(q)).watts(),
                    dense.shaftPowerAt(m3ph(q)).watts(),
                    1e-8);
        }
    }

    @Test
    void states_scatter_and_bands_from_six_points_on() {
        PumpCurve curve = PumpCurve.fit(test(noisy(7)));
        assertTrue(curve.headFit().residual().orElseThrow().metres() > 0.02);
        assertTrue(curve.headFit().residual().orElseThrow().metres() < 0.2);
        assertEquals(11 - 3, curve.headFit().degreesOfFreedom());
        Head mean = curve.headFit().meanBandAt(m3ph(50), Ratio.percent(95)).orElseThrow();
        Head single =
                curve.headFit().singleTestBandAt(m3ph(50), Ratio.percent(95)).orElseThrow();
        assertTrue(mean.compareTo(single) < 0);
        assertTrue(mean.compareTo(
                        curve.headFit().meanBandAt(m3ph(50), Ratio.percent(99)).orElseThrow())
                < 0);
        assertEquals(
                Math.pow(curve.headFit().residual().orElseThrow().metres() * 2.306004135, 2),
                Math.pow(single.metres(), 2) - Math.pow(mean.metres(), 2),
                1e-8);
        assertTrue(curve.headFit().toString().startsWith("head of degree 2, residual "));
    }

    /** In 400 seeded tests the 90 % band of the mean holds the true head in about 90 of 100. */
    @Test
    void has_bands_that_hold_the_truth_as_often_as_they_say() {
        int held = 0;
        for (int seed = 0; seed < 400; seed++) {
            Random random = new Random(1000 + seed);
            PumpCurve curve = PumpCurve.fit(
                    test(points(FLOWS, q -> head(q) + 0.1 * random.nextGaussian(), FittedTestTest::watts)));
            double band = curve.headFit()
                    .meanBandAt(m3ph(70), Ratio.percent(90))
                    .orElseThrow()
                    .metres();
            held += Math.abs(curve.headAt(m3ph(70)).metres() - head(70)) <= band ? 1 : 0;
        }
        assertEquals(0.9, held / 400.0, 0.05);
    }

    @Test
    void refuses_a_confidence_that_is_none() {
        FittedCurve<Head> fit = PumpCurve.fit(test(noisy(8))).headFit();
        refusal(IMPOSSIBLE_CONFIDENCE, () -> fit.meanBandAt(m3ph(5), Ratio.of(1)));
        refusal(IMPOSSIBLE_CONFIDENCE, () -> fit.singleTestBandAt(m3ph(5), Ratio.of(0)));
    }

    @Test
    void has_no_residual_and_no_band_with_three_to_five_points() {
        for (int n = 3; n <= 5; n++) {
            PumpCurve curve =
                    PumpCurve.fit(test(points(evenly(n, 0, 100), FittedTestTest::head, FittedTestTest::watts)));
            assertTrue(curve.notes().has(FEW_POINTS));
            assertTrue(curve.notes()
                    .toString()
                    .startsWith(n + " points: the curve of lowest degree through or nearest"
                            + " them, no residual, no band"));
            assertTrue(curve.headFit().residual().isEmpty());
            assertTrue(curve.headFit().meanBandAt(m3ph(10), Ratio.percent(95)).isEmpty());
            assertEquals(head(42), curve.headAt(m3ph(42)).metres(), 1e-9);
            assertEquals(
                    "head of degree 2, no residual, no band", curve.headFit().toString());
        }
        assertFalse(PumpCurve.fit(test(noisy(1))).notes().has(FEW_POINTS));
    }

    @Test
    void keeps_repeated_readings_and_says_so() {
        List<TestPoint> repeated = new ArrayList<>(exact());
        repeated.add(point(50, head(50) + 0.4, watts(50)));
        PumpCurve curve = PumpCurve.fit(test(repeated));
        assertTrue(
                curve.notes().toString().contains("12 points at 11 different flows"),
                curve.notes().toString());
        assertTrue(curve.notes().has(REPEATED_FLOWS));
        assertTrue(curve.headAt(m3ph(50)).metres() > head(50) + 0.05);
        assertFalse(PumpCurve.fit(test(exact())).notes().has(REPEATED_FLOWS));
    }

    @Test
    void names_a_point_far_from_the_others() {
        List<TestPoint> points = new ArrayList<>(noisy(9));
        TestPoint bad = points.get(4);
        points.set(4, new TestPoint(bad.flow(), bad.head().times(1.06), bad.shaftPower(), bad.speed()));
        String notes = PumpCurve.fit(test(points)).notes().toString();
        assertTrue(notes.contains("the head of " + bad.head().times(1.06) + " at 40 m³/h lies "), notes);
        assertFalse(PumpCurve.fit(test(noisy(9))).notes().has(OUTLYING_POINT));
    }

    @Test
    void names_a_power_far_from_the_others() {
        List<TestPoint> points = new ArrayList<>(noisy(9));
        TestPoint bad = points.get(6);
        points.set(6, new TestPoint(bad.flow(), bad.head(), bad.shaftPower().times(1.06), bad.speed()));
        String notes = PumpCurve.fit(test(points)).notes().toString();
        assertTrue(notes.contains("the power of " + bad.shaftPower().times(1.06) + " at 60 m³/h lies "), notes);
    }

    @Test
    void refuses_a_point_with_more_out_than_in() {
        List<TestPoint> points = new ArrayList<>(exact());
        points.set(5, point(50, head(50), 3000));
        String message =
                refusal(EFFICIENCY_ABOVE_ONE, () -> PumpCurve.fit(test(points))).getMessage();
        assertTrue(message.contains("The point at 50 m³/h, 28.5 m and 3 kW of P-A has an efficiency of 129"), message);
    }

    /** Litres per second read as m³/h, feet as metres, horsepower as kilowatts: the efficiency shows some of them. */
    @Test
    void refuses_feet_taken_for_metres() {
        List<TestPoint> points = points(FLOWS, q -> head(q) / 0.3048, FittedTestTest::watts);
        refusal(EFFICIENCY_ABOVE_ONE, () -> PumpCurve.fit(test(points)));
    }

    @Test
    void ends_where_scatter_takes_the_fitted_head_below_nothing() {
        double[] flows = evenly(9, 0, 120);
        List<TestPoint> points = points(flows, q -> 36 - 0.0025 * q * q + (q == 0 ? 0.2 : 0), q -> 4000 + 100 * q);
        points.set(8, point(120, 0, 16_000));
        points.set(7, point(105, 8.1, 14_500));
        PumpCurve curve = PumpCurve.fit(test(points));
        assertTrue(curve.highestFlow().compareTo(m3ph(120)) < 0);
        assertEquals(0, curve.headAt(curve.highestFlow()).metres(), 1e-9);
        assertTrue(
                curve.notes().toString().contains("before the last point at 120 m³/h"),
                curve.notes().toString());
    }

    @Test
    void refuses_heads_that_are_nothing_where_the_curve_begins() {
        List<TestPoint> points = points(FLOWS, q -> q == 0 ? 0 : 0.1 * q * (1 + 0.01 * q), q -> 4000 + 300 * q);
        refusal(HEAD_FALLS_TO_ZERO, () -> PumpCurve.fit(test(points)));
    }

    @Test
    void refuses_a_power_that_falls_to_nothing_between_its_points() {
        List<TestPoint> points =
                List.of(point(0, 1, 3000), point(50, 0.1, 20), point(60, 0.1, 20), point(100, 0.1, 3000));
        refusal(POWER_FALLS_TO_ZERO, () -> PumpCurve.fit(test(points)));
    }

    @Test
    void refuses_points_and_duties_that_no_pump_has() {
        refusal(IMPOSSIBLE_POINT, () -> point(-1, 10, 100));
        refusal(IMPOSSIBLE_POINT, () -> point(1, -10, 100));
        refusal(IMPOSSIBLE_POINT, () -> point(1, 10, 0));
        refusal(IMPOSSIBLE_POINT, () -> new TestPoint(m3ph(1), Head.metres(1), Power.watts(1), Speed.ZERO));
        refusal(IMPOSSIBLE_DUTY, () -> new Duty(m3ph(-1), Head.metres(1)));
        refusal(IMPOSSIBLE_DUTY, () -> new Duty(m3ph(1), Head.ZERO));
        assertEquals("52 m³/h at 16 m", new Duty(m3ph(52), Head.metres(16)).toString());
    }

    @Test
    void refuses_fewer_than_three_flows() {
        refusal(TOO_FEW_POINTS, () -> test(List.of(point(0, 10, 100), point(5, 9, 500))));
        String message = refusal(
                        TOO_FEW_POINTS, () -> test(List.of(point(0, 10, 100), point(0, 10.1, 100), point(5, 9, 500))))
                .getMessage();
        assertTrue(message.contains("3 points at 2 different flows"), message);
    }

    @Test
    void refuses_a_test_of_an_impossible_pump() {
        refusal(IMPOSSIBLE_TEST, () -> PumpTest.of(" ", RATED, WATER, exact()));
        refusal(IMPOSSIBLE_TEST, () -> PumpTest.of("P-A", Speed.ZERO, WATER, exact()));
        refusal(IMPOSSIBLE_TEST, () -> full(Length.millimetres(0), 4));
        refusal(IMPOSSIBLE_TEST, () -> full(Length.millimetres(240), 3));
        refusal(IMPOSSIBLE_TEST, () -> full(Length.millimetres(240), 0));
        assertEquals(4, full(Length.millimetres(240), 4).poles().orElseThrow());
    }

    private static PumpTest full(Length diameter, int poles) {
        return new PumpTest(
                "P-A",
                RATED,
                Optional.of(diameter),
                WATER,
                OptionalInt.of(poles),
                "invented",
                Optional.of(LocalDate.of(2026, 1, 17)),
                exact(),
                Notes.NONE.with(CurveProblem.REPEATED_FLOWS, "a note of the reader"),
                Basis.of(Input.of("p-a.csv", "invented", "text")));
    }

    @Test
    void carries_the_notes_and_the_input_of_its_test() {
        PumpCurve curve = PumpCurve.fit(full(Length.millimetres(240), 4));
        assertEquals("p-a.csv", curve.basis().inputs().get(0).name());
        assertTrue(curve.notes().toString().contains("a note of the reader"));
        assertTrue(
                curve.atSpeed(Ratio.percent(50)).bestEfficiencyPoint().notes().has(REPEATED_FLOWS));
        assertEquals(240, curve.impellerDiameter().orElseThrow().toMillimetres(), 1e-9);
        assertTrue(
                curve.basis().choices().contains("P-A: " + curve.headFit()),
                curve.basis().toString());
        assertEquals(11, curve.points().size());
    }

    /**
     * Çengel and Cimbala, Fluid Mechanics: Fundamentals and Applications, table 14-2 (read in a copy of its companion):
     * pump A of 6 cm diameter at 1725 rpm. Dimensionless values at 500 cm³/s computed by hand with their g of 9.81 m/s²
     * and 180.6 rad/s.
     */
    @Test
    void reduces_a_published_test_and_finds_its_droop() {
        double[] flow = {100, 200, 300, 400, 500, 600, 700};
        double[] head = {180, 185, 175, 170, 150, 95, 54};
        double[] watts = {5.507, 6.708, 7.343, 8.427, 9.065, 8.455, 9.739};
        Speed speed = Speed.revolutionsPerMinute(1725);
        List<TestPoint> points = new ArrayList<>();
        for (int i = 0; i < 7; i++) {
            points.add(new TestPoint(
                    Flow.cubicMetresPerSecond(flow[i] * 1e-6),
                    Head.metres(head[i] / 100),
                    Power.watts(watts[i]),
                    speed));
        }
        TestPoint fifth = points.get(4);
        double n = 180.6;
        double d = 0.06;
        assertEquals(0.012817, fifth.flow().si() / (n * Math.pow(d, 3)), 1e-6);
        assertEquals(0.12532, 9.81 * fifth.head().si() / (n * n * d * d), 2e-5);
        assertEquals(0.0019831, fifth.shaftPower().si() / (998 * Math.pow(n, 3) * Math.pow(d, 5)), 1e-6);
        double[] printed = {0.32, 0.54, 0.70, 0.79, 0.81, 0.66, 0.38};
        for (int i = 0; i < 7; i++) {
            assertEquals(printed[i], points.get(i).efficiencyIn(WATER).value(), 1e-3);
        }
        PumpCurve curve = PumpCurve.fit(PumpTest.of("pump A", speed, WATER, points));
        CurvePoint best = curve.bestEfficiencyPoint();
        assertEquals(0.0112, best.flow().si() / (n * Math.pow(d, 3)), 0.05 * 0.0112);
        assertEquals(0.133, 9.81 * best.head().si() / (n * n * d * d), 0.05 * 0.133);
        assertEquals(0.812, best.efficiency().value(), 0.05 * 0.812);
        assertTrue(curve.droop().isPresent());
        refusal(CurveProblem.FLOW_OUT_OF_RANGE, () -> curve.headAt(Flow.ZERO));
    }

    @Test
    void tells_how_efficient_a_reading_is_in_its_liquid() {
        Liquid warm = Liquid.water(Temperature.celsius(80));
        double expected = warm.density().si() * 9.80665 * 28.5 * (50 / 3600.0) / watts(50);
        assertEquals(expected, exact().get(5).efficiencyIn(warm).value(), 1e-12);
    }

    /**
     * A kink at 60 m³/h that no polynomial of low degree follows: a quartic swings about it in five stretches of 24.
     */
    @Test
    void says_when_it_swings_about_its_points() {
        List<TestPoint> kinked = points(evenly(24, 0, 115), q -> 30 - 0.5 * Math.max(0, q - 60), q -> 4000 + 90 * q);
        PumpCurve curve = PumpCurve.fit(test(kinked));
        assertTrue(
                curve.notes().has(CurveProblem.SYSTEMATIC_RESIDUALS),
                curve.notes().toString());
        assertFalse(PumpCurve.fit(test(exact())).notes().has(CurveProblem.SYSTEMATIC_RESIDUALS));
        int noted = 0;
        for (int seed = 0; seed < 100; seed++) {
            noted += PumpCurve.fit(test(noisy(300 + seed))).notes().has(CurveProblem.SYSTEMATIC_RESIDUALS) ? 1 : 0;
        }
        assertTrue(noted <= 8, noted + " of 100 tests with plain scatter were called systematic");
    }
}
