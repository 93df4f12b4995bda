package headrace.rule.index;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.problem.Refusal;
import headrace.rule.index.CirculatorEnergyIndex.Reading;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Power;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class CirculatorEnergyIndexTest {
    /** EC 641/2009 Annex II, point 2; recomputed independently. */
    @ParameterizedTest
    @CsvSource({"1, 6.106090", "5, 21.706787", "20, 50.957861", "100, 187.000000", "2500, 4267.0"})
    void has_the_reference_power_of_the_regulation(double hydraulic, double reference) {
        assertEquals(
                reference,
                CirculatorEnergyIndex.referencePower(Power.watts(hydraulic)).watts(),
                5e-7);
    }

    @Test
    void averages_over_the_profile_of_the_regulation() {
        Power average = CirculatorEnergyIndex.average(
                List.of(Power.watts(30), Power.watts(19), Power.watts(11), Power.watts(6.5)));
        assertEquals(11.36, average.watts(), 1e-12);
        assertEquals(0.109235, CirculatorEnergyIndex.indexOf(average, Power.watts(20)), 5e-7);
    }

    /** 20 W of water at 20 °C at 2 m: Q = 20/(998.2·9.80665·2) m³/s. On the reference line no power is raised. */
    @Test
    void counts_readings_on_the_reference_line_as_they_are() {
        CirculatorEnergyIndex index = CirculatorEnergyIndex.of(readings(1));
        assertEquals(20, index.hydraulicPower().watts(), 1e-9);
        assertEquals(0.109235, index.index(), 5e-7);
    }

    /** 0.8 of the head of the line at 50 % flow: 11 W count as 11/0.8 = 13.75 W, so 0.35·2.75 W more on average. */
    @Test
    void raises_the_power_of_a_reading_below_the_reference_line() {
        CirculatorEnergyIndex index = CirculatorEnergyIndex.of(readings(0.8));
        assertEquals(13.75, index.counted().get(2).watts(), 1e-9);
        assertEquals(11.36 + 0.35 * 2.75, index.average().watts(), 1e-9);
        assertEquals(11.36, CirculatorEnergyIndex.of(readings(1.2)).average().watts(), 1e-9);
        assertTrue(index.toString().contains("not a certified rating"));
    }

    @Test
    void refuses_what_does_not_fit() {
        List<Reading> four = readings(1);
        refused(IndexProblem.INDEX_READINGS_DO_NOT_FIT, four.subList(0, 3));
        refused(IndexProblem.INDEX_READINGS_DO_NOT_FIT, List.of());
        refused(IndexProblem.INDEX_READINGS_DO_NOT_FIT, List.of(four.get(3), four.get(2), four.get(1), four.get(0)));
        Reading still = new Reading(four.get(3).flow(), Head.metres(0), Power.watts(5));
        refused(IndexProblem.INDEX_READINGS_DO_NOT_FIT, List.of(four.get(0), four.get(1), four.get(2), still));
        List<Reading> large = four.stream()
                .map(each -> new Reading(each.flow().times(126), each.head(), each.electricalPower()))
                .toList();
        refused(IndexProblem.OUTSIDE_INDEX_SCOPE, large);
    }

    private static List<Reading> readings(double shareOfLineAtHalfFlow) {
        double full = 20 / (998.2 * 9.80665 * 2);
        return List.of(
                reading(full, 2, 30),
                reading(0.75 * full, 1.75, 19),
                reading(0.5 * full, 1.5 * shareOfLineAtHalfFlow, 11),
                reading(0.25 * full, 1.25, 6.5));
    }

    private static Reading reading(double cubicMetresPerSecond, double metres, double watts) {
        return new Reading(Flow.cubicMetresPerSecond(cubicMetresPerSecond), Head.metres(metres), Power.watts(watts));
    }

    private static void refused(IndexProblem problem, List<Reading> readings) {
        Refusal refusal = assertThrows(Refusal.class, () -> CirculatorEnergyIndex.of(readings));
        assertEquals(problem, refusal.problem(), refusal.getMessage());
    }
}
