package headrace.curve;

import static headrace.curve.Pumps.RATED;
import static headrace.curve.Pumps.m3ph;
import static headrace.curve.Pumps.refusal;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.units.Head;
import headrace.units.Length;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class NpshCurveTest {
    private static PumpTest test(List<NpshPoint> npsh) {
        return Pumps.test(Pumps.points(Pumps.evenly(6, 0, 100), q -> 30 - 0.001 * q * q, q -> 4000 + 60 * q))
                .withNpsh(npsh);
    }

    /** Readings of 2 m + 3 m·(Q/100 m³/h)² from 40 to 100 m³/h. */
    private static NpshCurve curve() {
        List<NpshPoint> readings = new ArrayList<>();
        for (int q = 40; q <= 100; q += 20) {
            readings.add(new NpshPoint(m3ph(q), Head.metres(2 + 3e-4 * q * q), RATED));
        }
        return NpshCurve.of(test(readings));
    }

    @Test
    void exact_readings_give_the_formula_back() {
        NpshCurve.Required required = curve().at(m3ph(70), RATED);
        assertEquals(2 + 3e-4 * 4900, required.npsh().metres(), 1e-12);
        assertTrue(required.notes().isEmpty());
    }

    /** Least squares by hand: y = 3, 5 and 7 at Q² = 1, 2, 4 (in 1000 (m³/h)²): slope 9/7, mean 5 at 7/3. */
    @Test
    void readings_with_scatter_are_met_by_least_squares() {
        NpshCurve fit = NpshCurve.of(test(List.of(
                new NpshPoint(m3ph(Math.sqrt(1000)), Head.metres(3), RATED),
                new NpshPoint(m3ph(Math.sqrt(2000)), Head.metres(5), RATED),
                new NpshPoint(m3ph(Math.sqrt(4000)), Head.metres(7), RATED))));
        assertEquals(
                5 + 9.0 / 7 * (3 - 7.0 / 3),
                fit.at(m3ph(Math.sqrt(3000)), RATED).npsh().metres(),
                1e-12);
    }

    @Test
    void the_careful_exponent_of_speed_is_taken_both_ways_and_said() {
        NpshCurve.Required fast = curve().at(m3ph(77), RATED.times(1.1));
        assertEquals((2 + 3e-4 * 4900) * 1.21, fast.npsh().metres(), 1e-12);
        NpshCurve.Required slow = curve().at(m3ph(35), RATED.times(0.5));
        assertEquals((2 + 3e-4 * 4900) * Math.pow(0.5, 1.3), slow.npsh().metres(), 1e-12);
        assertTrue(fast.notes().has(CurveProblem.NPSH_SPEED_ASSUMED));
        assertTrue(slow.notes().has(CurveProblem.NPSH_SPEED_ASSUMED));
    }

    @Test
    void readings_at_other_speeds_are_brought_to_the_speed_of_the_test() {
        List<NpshPoint> readings = new ArrayList<>();
        for (int q = 40; q <= 100; q += 20) {
            readings.add(new NpshPoint(m3ph(0.9 * q), Head.metres(0.81 * (2 + 3e-4 * q * q)), RATED.times(0.9)));
        }
        assertEquals(
                2 + 3e-4 * 4900,
                NpshCurve.of(test(readings)).at(m3ph(70), RATED).npsh().metres(),
                1e-12);
    }

    @Test
    void below_its_readings_the_least_one_stands_in_and_beyond_them_only_by_choice() {
        NpshCurve.Required low = curve().at(m3ph(10), RATED);
        assertEquals(2 + 3e-4 * 1600, low.npsh().metres(), 1e-12);
        assertTrue(low.notes().has(CurveProblem.NPSH_BEYOND_TEST));
        refusal(CurveProblem.NPSH_OUT_OF_RANGE, () -> curve().at(m3ph(101), RATED));
        refusal(CurveProblem.NPSH_OUT_OF_RANGE, () -> curve().at(m3ph(60), RATED.times(0.5)));
        NpshCurve.Required high = curve().extendedTo(m3ph(110)).at(m3ph(105), RATED);
        assertEquals(2 + 3e-4 * 105 * 105, high.npsh().metres(), 1e-12);
        assertTrue(high.notes().has(CurveProblem.NPSH_BEYOND_TEST));
        assertFalse(curve().at(m3ph(100), RATED).notes().has(CurveProblem.NPSH_BEYOND_TEST));
    }

    @Test
    void a_trim_leaves_it_at_the_same_flow_and_says_by_how_much_the_impeller_differs() {
        PumpTest full = withDiameter(test(curve().points()), 250);
        PumpCurve pump = PumpCurve.fit(full);
        NpshCurve read = NpshCurve.of(full);
        NpshCurve.Required slight = read.movedAs(pump.trimmed(Trim.to(Length.millimetres(240), TrimRule.radial())))
                .at(m3ph(70), RATED);
        assertEquals(2 + 3e-4 * 4900, slight.npsh().metres(), 1e-12);
        assertTrue(slight.notes().has(CurveProblem.NPSH_IMPELLER_ASSUMED));
        assertTrue(
                slight.notes().toString().contains("as the inlet is the same"),
                slight.notes().toString());
        NpshCurve.Required far = read.movedAs(pump.trimmed(Trim.to(Length.millimetres(225), TrimRule.radial())))
                .at(m3ph(70), RATED);
        assertEquals(2 + 3e-4 * 4900, far.npsh().metres(), 1e-12);
        assertTrue(
                far.notes().toString().contains("10 % of difference is too much"),
                far.notes().toString());
        assertTrue(read.movedAs(pump).at(m3ph(70), RATED).notes().isEmpty());
        assertTrue(curve().movedAs(pump).at(m3ph(70), RATED).notes().isEmpty());
    }

    private static PumpTest withDiameter(PumpTest test, double millimetres) {
        return new PumpTest(
                test.name(),
                test.speed(),
                Optional.of(Length.millimetres(millimetres)),
                test.liquid(),
                test.poles(),
                test.source(),
                test.date(),
                test.points(),
                test.npsh(),
                test.notes(),
                test.basis());
    }

    @Test
    void readings_too_few_or_falling_are_refused() {
        refusal(CurveProblem.NPSH_UNKNOWN, () -> NpshCurve.of(test(List.of())));
        NpshPoint one = new NpshPoint(m3ph(40), Head.metres(3), RATED);
        NpshPoint two = new NpshPoint(m3ph(60), Head.metres(2), RATED);
        refusal(CurveProblem.NPSH_UNKNOWN, () -> NpshCurve.of(test(List.of(one, two, two))));
        NpshPoint three = new NpshPoint(m3ph(80), Head.metres(1), RATED);
        refusal(CurveProblem.IMPOSSIBLE_NPSH, () -> NpshCurve.of(test(List.of(one, two, three))));
        refusal(CurveProblem.IMPOSSIBLE_POINT, () -> new NpshPoint(m3ph(40), Head.ZERO, RATED));
    }
}
