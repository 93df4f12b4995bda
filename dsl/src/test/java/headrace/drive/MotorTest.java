package headrace.drive;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.problem.Refusal;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Speed;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class MotorTest {
    private static final double[] RATINGS = {
        0.12, 0.18, 0.20, 0.25, 0.37, 0.40, 0.55, 0.75, 1.1, 1.5, 2.2, 3, 4, 5.5, 7.5, 11, 15, 18.5, 22, 30, 37, 45, 55,
        75, 90, 110, 132, 160, 200
    };

    /** EU 2019/1781 Annex I, Tables 1 to 3. */
    @ParameterizedTest(name = "{0} kW IE{1} {2} poles")
    @CsvSource({
        "0.12, 2, 2, 53.6", "0.12, 3, 8, 50.7", "0.12, 4, 4, 69.8", "0.4, 2, 6, 68.8", "0.55, 3, 4, 80.8",
        "0.75, 3, 4, 82.5", "1.1, 4, 8, 80.8", "1.5, 2, 2, 81.3", "5.5, 3, 4, 89.6", "7.5, 4, 6, 91.3",
        "11, 3, 2, 91.2", "22, 2, 8, 89.1", "45, 3, 6, 93.7", "90, 4, 2, 95.8", "160, 3, 4, 95.8",
        "200, 2, 4, 95.1", "630, 3, 8, 94.6", "1000, 3, 2, 95.8", "200, 4, 6, 96.3", "249, 4, 6, 96.3",
        "250, 4, 6, 96.5", "314, 4, 6, 96.5", "315, 4, 6, 96.6", "1000, 4, 4, 96.7"
    })
    void has_the_efficiency_of_the_table_at_its_ratings(double kilowatts, int ieClass, int poles, double percent) {
        assertEquals(percent, percent(kilowatts, ieClass, poles), 1e-12);
    }

    /** EU 2019/1781 Annex I, formula for intermediate powers; worked by hand from its coefficients. */
    @ParameterizedTest(name = "{0} kW IE{1} {2} poles")
    @CsvSource({"10, 3, 4, 91.1831", "50, 3, 4, 94.4091", "10, 2, 2, 89.0939", "10, 4, 6, 92.0494"})
    void follows_the_formula_between_the_ratings(double kilowatts, int ieClass, int poles, double percent) {
        assertEquals(percent, percent(kilowatts, ieClass, poles), 5e-5);
    }

    @Test
    void has_a_table_that_the_formula_of_the_same_regulation_meets_within_a_twentieth_of_a_point() {
        for (int ieClass = 2; ieClass <= 4; ieClass++) {
            for (int poles = 2; poles <= 8; poles += 2) {
                for (double kilowatts : RATINGS) {
                    String which = kilowatts + " kW IE" + ieClass + " " + poles + " poles";
                    double formula = ClassEfficiency.byFormula(kilowatts, ieClass, poles);
                    assertEquals(percent(kilowatts, ieClass, poles), formula, 0.05, which);
                }
            }
        }
    }

    /** The straight line from 80.8 to 82.5 %, half way. */
    @Test
    void goes_straight_from_0_55_to_0_75_kW() {
        assertEquals(81.65, percent(0.65, 3, 4), 1e-12);
    }

    @Test
    void never_gets_worse_from_one_rating_to_the_next_greater() {
        for (int ieClass = 2; ieClass <= 4; ieClass++) {
            for (int poles = 2; poles <= 8; poles += 2) {
                for (int i = 1; i < RATINGS.length; i++) {
                    assertTrue(percent(RATINGS[i], ieClass, poles) >= percent(RATINGS[i - 1], ieClass, poles));
                }
            }
        }
    }

    @ParameterizedTest(name = "{0} kW IE{1} {2} poles")
    @CsvSource({
        "0.119, 3, 4",
        "1001, 3, 4",
        "5.5, 1, 4",
        "5.5, 5, 4",
        "5.5, 3, 10",
        "5.5, 3, 3",
        "5.5, 3, 0",
        "-5.5, 3, 4"
    })
    void is_refused_outside_the_tables(double kilowatts, int ieClass, int poles) {
        assertEquals(
                DriveProblem.RATING_OUTSIDE_TABLE,
                assertThrows(Refusal.class, () -> percent(kilowatts, ieClass, poles))
                        .problem());
    }

    /** 10 CFR 431.25 Table 1; between ratings up from the middle on, down below it. */
    @Test
    void rounds_premium_ratings_up_from_the_middle() {
        assertEquals(85.5, premium(1, 4), 1e-12);
        assertEquals(89.5, premium(6.2, 4), 1e-12);
        assertEquals(91.7, premium(6.25, 4), 1e-12);
        assertEquals(91.7, premium(7.5, 4), 1e-12);
        assertEquals(95.8, premium(200, 6), 1e-12);
        assertEquals(
                91.0,
                Motor.premiumOpen(Power.horsepower(7.5), 4).fullLoadEfficiency().toPercent(),
                1e-12);
        assertEquals(
                77.0,
                Motor.premiumOpen(Power.horsepower(1), 2).fullLoadEfficiency().toPercent(),
                1e-12);
        assertThrows(Refusal.class, () -> premium(0.9, 4));
        assertThrows(Refusal.class, () -> premium(201, 4));
        assertThrows(Refusal.class, () -> premium(10, 8));
    }

    /** 5.5 kW at 89.6 %: 5500·(1/0.896 − 1) W. */
    @Test
    void loses_at_full_load_what_its_efficiency_leaves() {
        assertEquals(
                638.392857,
                Motor.ofClass(Power.kilowatts(5.5), 3, 4).fullLoadLoss().watts(),
                1e-6);
    }

    @Test
    void is_refused_with_a_plate_that_cannot_be() {
        Power rated = Power.kilowatts(5.5);
        assertThrows(Refusal.class, () -> Motor.ofPlate(rated, 4, Ratio.percent(100)));
        assertThrows(Refusal.class, () -> Motor.ofPlate(rated, 4, Ratio.percent(0)));
        assertThrows(Refusal.class, () -> Motor.ofPlate(Power.ZERO, 4, Ratio.percent(90)));
        assertThrows(Refusal.class, () -> Motor.ofPlate(rated, 5, Ratio.percent(90)));
        assertThrows(
                Refusal.class, () -> Motor.ofPlate(rated, 4, Ratio.percent(90)).atRatedSpeed(Speed.ZERO));
    }

    private static double percent(double kilowatts, int ieClass, int poles) {
        return Motor.ofClass(Power.kilowatts(kilowatts), ieClass, poles)
                .fullLoadEfficiency()
                .toPercent();
    }

    private static double premium(double horsepower, int poles) {
        return Motor.premiumEnclosed(Power.horsepower(horsepower), poles)
                .fullLoadEfficiency()
                .toPercent();
    }
}
