package headrace.curve;

import static headrace.curve.CurveProblem.DUTY_OUT_OF_RANGE;
import static headrace.curve.CurveProblem.IMPOSSIBLE_LOSS;
import static headrace.curve.Pumps.RATED;
import static headrace.curve.Pumps.WATER;
import static headrace.curve.Pumps.cubic;
import static headrace.curve.Pumps.curve;
import static headrace.curve.Pumps.drooping;
import static headrace.curve.Pumps.m3ph;
import static headrace.curve.Pumps.parabola;
import static headrace.curve.Pumps.refusal;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.liquid.Liquid;
import headrace.numeric.Roots;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Speed;
import headrace.units.Temperature;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class SpeedOfACurveTest {
    static List<PumpCurve> curves() {
        return List.of(parabola(), drooping(), cubic());
    }

    @ParameterizedTest
    @MethodSource("curves")
    void obeys_the_affinity_laws_along_the_whole_curve(PumpCurve tested) {
        PumpCurve curve = tested.withEfficiencyOverSpeed(EfficiencyOverSpeed.affinity());
        for (double s : new double[] {0.35, 0.8, 1, 1.15}) {
            PumpCurve moved = curve.atSpeed(Ratio.of(s));
            for (int i = 0; i <= 100; i++) {
                Flow flow = curve.highestFlow().times(i / 100.0);
                Flow there = flow.times(s);
                double head = curve.headAt(flow).metres() * s * s;
                double power = curve.shaftPowerAt(flow).watts() * s * s * s;
                assertEquals(head, moved.headAt(there).metres(), 1e-11);
                assertEquals(power, moved.shaftPowerAt(there).watts(), 1e-8);
                assertEquals(head, curve.headMetres(there.si(), s), 1e-11);
                assertEquals(power, curve.shaftWatts(there.si(), s), 1e-8);
                double efficiency = curve.efficiencyAt(flow).value();
                assertEquals(efficiency, moved.efficiencyAt(there).value(), 1e-12);
                assertEquals(efficiency, curve.efficiency(there.si(), s), 1e-12);
            }
        }
    }

    /**
     * DOE-HDBK-1012/3-92, HT-03: 1800 rpm, 400 gpm, 48 ft, 45 kW become 800 gpm, 192 ft, 360 kW at 3600 rpm; Flow of
     * Fluids (Technical Paper 410) example 7.33: 3500 to 1700 rpm turn 400 gpm, 126 ft, 17.5 hp into 194.286 gpm,
     * 29.726 ft, 2.0053 hp.
     */
    @Test
    void moves_the_published_points_as_published() {
        TestPoint doe = new TestPoint(
                        Flow.usGallonsPerMinute(400),
                        Head.feet(48),
                        Power.kilowatts(45),
                        Speed.revolutionsPerMinute(1800))
                .atSpeed(Speed.revolutionsPerMinute(3600));
        assertEquals(800, doe.flow().toUsGallonsPerMinute(), 1e-9);
        assertEquals(192, doe.head().toFeet(), 1e-9);
        assertEquals(360, doe.shaftPower().toKilowatts(), 1e-9);
        TestPoint paper = new TestPoint(
                        Flow.usGallonsPerMinute(400),
                        Head.feet(126),
                        Power.horsepower(17.5),
                        Speed.revolutionsPerMinute(3500))
                .atSpeed(Speed.revolutionsPerMinute(1700));
        assertEquals(194.286, paper.flow().toUsGallonsPerMinute(), 5e-4);
        assertEquals(29.726, paper.head().toFeet(), 5e-4);
        assertEquals(2.0053, paper.shaftPower().toHorsepower(), 5e-5);
        assertEquals(1700, paper.speed().toRevolutionsPerMinute(), 1e-9);
    }

    /**
     * By hand: at 60 m³/h the head 15.4 m needs 40·s² = 15.4 + 9, so s = 0.781025, with 76.82213 m³/h at full speed.
     */
    @Test
    void finds_the_speed_for_a_duty_in_closed_form() {
        PumpCurve curve = parabola();
        Speed speed = curve.speedFor(new Duty(m3ph(60), Head.metres(15.4)));
        double s = speed.over(curve.speed()).value();
        assertEquals(0.781025, s, 5e-7);
        assertEquals(76.82213, 60 / s, 5e-6);
        assertEquals(25.2459, curve.headAt(m3ph(60 / s)).metres(), 5e-5);
        assertEquals(15.4, curve.atSpeed(speed).headAt(m3ph(60)).metres(), 1e-12);
        assertEquals(s, curve.speedRatioFor(60 / 3600.0, 15.4), 1e-15);
    }

    /** Closed form, Newton in a bracket, and Brent on the head itself are three ways to one speed. */
    @ParameterizedTest
    @MethodSource("curves")
    void finds_the_same_speed_as_a_bracketed_root(PumpCurve curve) {
        Random random = new Random(3);
        for (int i = 0; i < 300; i++) {
            double s = 0.3 + random.nextDouble();
            double q = curve.highestFlow().si() * s * random.nextDouble();
            double metres = curve.headMetres(q, s);
            double root = Roots.between(r -> curve.headMetres(q, r) - metres, 0.9 * s, 1.1 * s);
            assertEquals(root, curve.speedRatioFor(q, metres), 1e-10 * root);
            assertEquals(s, curve.speedRatioFor(q, metres), 1e-10 * s);
        }
        assertEquals(0.5, curve.speedRatioFor(0, curve.headMetres(0, 0.5)), 1e-15);
    }

    @Test
    void delivers_the_duty_at_the_speed_that_it_names() {
        for (PumpCurve curve : curves()) {
            Duty duty = new Duty(m3ph(45), Head.metres(11));
            CurvePoint point = curve.atSpeed(Ratio.of(0.5)).pointFor(duty);
            assertEquals(11, point.head().metres(), 1e-10);
            assertEquals(duty.flow(), point.flow());
            assertEquals(curve.speedFor(duty), point.speed());
            assertEquals(point.head(), curve.atSpeed(point.speed()).headAt(duty.flow()));
            assertEquals(duty, new Duty(point.flow(), Head.metres(11)));
            assertEquals(point.head(), point.duty().head());
        }
    }

    /** At 100 m³/h the tested range ends at 100/120 of the speed, where the head is (40 − 36)·(100/120)² = 2.778 m. */
    @Test
    void refuses_a_duty_beyond_the_last_tested_point_with_the_range_at_that_speed() {
        String message = refusal(DUTY_OUT_OF_RANGE, () -> parabola().speedFor(new Duty(m3ph(100), Head.metres(2))))
                .getMessage();
        assertTrue(
                message.contains("begins with a head of 2.778 m at 1208 rpm, where it covers 0 m³/h to 100 m³/h"),
                message);
        refusal(DUTY_OUT_OF_RANGE, () -> cubic().speedFor(new Duty(m3ph(100), Head.metres(2))));
        assertEquals(Double.POSITIVE_INFINITY, parabola().speedRatioFor(100 / 3600.0, 2));
        assertEquals(Double.POSITIVE_INFINITY, cubic().speedRatioFor(100 / 3600.0, 2));
        assertEquals(Double.POSITIVE_INFINITY, parabola().speedRatioFor(100 / 3600.0, -30));
    }

    @Test
    void refuses_a_duty_before_the_first_tested_point() {
        PumpCurve fromTen = curve(new double[] {40, 0, -0.0025}, new double[] {4000, 100}, 10, 120);
        for (double q : new double[] {0, 5}) {
            String message = refusal(DUTY_OUT_OF_RANGE, () -> fromTen.speedFor(new Duty(m3ph(q), Head.metres(40))))
                    .getMessage();
            assertTrue(message.contains("The curve begins at 10 m³/h to 120 m³/h"), message);
        }
        assertEquals(
                40,
                fromTen.extendedTo(Flow.ZERO)
                        .pointFor(new Duty(Flow.ZERO, Head.metres(40)))
                        .head()
                        .metres(),
                1e-12);
    }

    @Test
    void returns_to_the_test_at_its_own_speed() {
        for (PumpCurve curve : curves()) {
            PumpCurve back = curve.atSpeed(Ratio.of(0.6)).atSpeed(RATED);
            for (int i = 0; i <= 20; i++) {
                Flow flow = curve.highestFlow().times(i / 20.0);
                assertEquals(curve.at(flow).head(), back.at(flow).head());
                assertEquals(curve.at(flow).shaftPower(), back.at(flow).shaftPower());
            }
        }
    }

    @Test
    void moves_in_two_steps_as_in_one() {
        for (EfficiencyOverSpeed model : models()) {
            PumpCurve curve = parabola().withEfficiencyOverSpeed(model);
            PumpCurve twice = curve.atSpeed(Ratio.of(0.8)).atSpeed(Ratio.of(0.75));
            PumpCurve once = curve.atSpeed(Ratio.of(0.6));
            assertEquals(
                    once.shaftPowerAt(m3ph(40)).watts(),
                    twice.shaftPowerAt(m3ph(40)).watts(),
                    1e-9);
            assertEquals(once.speed().si(), twice.speed().si(), 1e-12);
            assertEquals(curve.shaftWatts(0.01, 0.6), twice.shaftWatts(0.01, 1), 1e-9);
            assertEquals(curve.speedRatioFor(0.01, 12), twice.speedRatioFor(0.01, 12) * 0.6, 1e-12);
        }
    }

    static List<EfficiencyOverSpeed> models() {
        return List.of(
                EfficiencyOverSpeed.affinity(),
                EfficiencyOverSpeed.correlation(),
                EfficiencyOverSpeed.mechanicalLoss(Power.watts(200), 1),
                EfficiencyOverSpeed.mechanicalLoss(Power.watts(200), 2));
    }

    /** With a best efficiency of 75 %: 0.25·0.9^−0.1 = 0.25265 and 0.25·0.5^−0.1 = 0.26794 are lost. */
    @Test
    void loses_efficiency_by_the_correlation_worked_by_hand() {
        EfficiencyOverSpeed model = EfficiencyOverSpeed.correlation();
        assertEquals(1000 * 0.75 / 0.747352, model.shaftWatts(1000, 0.9, 0.75), 1e-3);
        assertEquals(1000 * 0.75 / 0.732057, model.shaftWatts(1000, 0.5, 0.75), 1e-3);
        assertEquals(1000, model.shaftWatts(1000, 1, 0.75), 1e-12);
    }

    @Test
    void takes_the_correlation_at_best_efficiency_and_scales_the_whole_curve_by_it() {
        PumpCurve curve = parabola();
        double best = curve.bestEfficiencyPoint().efficiency().value();
        for (double s : new double[] {0.4, 0.5, 0.9, 1.1}) {
            PumpCurve moved = curve.atSpeed(Ratio.of(s));
            double expected = 1 - (1 - best) * Math.pow(s, -0.1);
            assertEquals(expected, moved.bestEfficiencyPoint().efficiency().value(), 1e-12);
            for (double q : new double[] {5, 60, 120}) {
                double share = moved.efficiencyAt(m3ph(q * s)).value()
                        / curve.efficiencyAt(m3ph(q)).value();
                assertEquals(expected / best, share, 1e-12);
            }
        }
    }

    /** At shut-off by hand, with 200 W of 4000 W going with the first power: 3800·0.125 + 200·0.5 = 575 W. */
    @Test
    void splits_a_mechanical_loss_off() {
        PumpCurve split = parabola().withEfficiencyOverSpeed(EfficiencyOverSpeed.mechanicalLoss(Power.watts(200), 1));
        PumpCurve half = split.atSpeed(Ratio.of(0.5));
        assertEquals(575, half.shaftPowerAt(Flow.ZERO).watts(), 1e-9);
        assertEquals(4000, split.shaftPowerAt(Flow.ZERO).watts(), 1e-9);
        double best = half.bestEfficiencyPoint().flow().si();
        double efficiency = half.bestEfficiencyPoint().efficiency().value();
        assertTrue(half.efficiency(best * 0.999, 1) < efficiency && half.efficiency(best * 1.001, 1) < efficiency);
        assertTrue(half.basis().choices().toString().contains("mechanical loss of 0.2 kW"));
    }

    @Test
    void refuses_a_mechanical_loss_that_the_pump_does_not_have() {
        refusal(IMPOSSIBLE_LOSS, () -> EfficiencyOverSpeed.mechanicalLoss(Power.watts(-1), 1));
        refusal(IMPOSSIBLE_LOSS, () -> EfficiencyOverSpeed.mechanicalLoss(Power.watts(100), 0.9));
        refusal(IMPOSSIBLE_LOSS, () -> EfficiencyOverSpeed.mechanicalLoss(Power.watts(100), 3.1));
        refusal(IMPOSSIBLE_LOSS, () -> EfficiencyOverSpeed.mechanicalLoss(Power.watts(100), Double.NaN));
        refusal(
                IMPOSSIBLE_LOSS,
                () -> parabola().withEfficiencyOverSpeed(EfficiencyOverSpeed.mechanicalLoss(Power.watts(4000), 1)));
        PumpCurve fewLosses = curve(new double[] {40, 0, -0.0025}, new double[] {5000, 50}, 0, 110);
        CurvePoint best = fewLosses.bestEfficiencyPoint();
        double lost = best.shaftPower().watts() * (1 - best.efficiency().value());
        assertTrue(lost < 5000);
        refusal(
                IMPOSSIBLE_LOSS,
                () -> fewLosses.withEfficiencyOverSpeed(EfficiencyOverSpeed.mechanicalLoss(Power.watts(lost + 1), 1)));
    }

    @Test
    void has_no_efficiency_below_nothing_or_above_the_whole_anywhere() {
        for (PumpCurve tested : curves()) {
            for (EfficiencyOverSpeed model : models()) {
                PumpCurve curve = tested.withEfficiencyOverSpeed(model);
                for (int i = 1; i <= 120; i++) {
                    double s = i / 100.0;
                    for (int j = 0; j <= 200; j++) {
                        double efficiency = curve.efficiency(curve.highestFlow().si() * s * j / 200, s);
                        assertTrue(efficiency >= 0 && efficiency < 1, model.name() + " at " + s);
                    }
                }
            }
        }
    }

    @Test
    void stays_finite_however_slow() {
        double watts = EfficiencyOverSpeed.correlation().shaftWatts(1, 1e-9, 0.5);
        assertTrue(watts > 0 && watts < Double.POSITIVE_INFINITY);
        assertTrue(parabola().headMetres(0, 1e-12) >= 0);
    }

    @Test
    void moves_the_bands_of_the_range_with_the_speed_and_the_liquid_not_at_all() {
        PumpCurve half = parabola().atSpeed(Ratio.of(0.5));
        assertEquals(WATER, half.liquid());
        assertEquals(60, half.highestFlow().toCubicMetresPerHour(), 1e-12);
        assertTrue(half.covers(m3ph(60).si(), 1) && !half.covers(m3ph(61).si(), 1));
        assertTrue(half.covers(m3ph(120).si(), 2));
    }

    @Test
    void leaves_a_thousandth_of_the_efficiency_at_the_least_speed_of_the_correlation() {
        EfficiencyOverSpeed model = EfficiencyOverSpeed.correlation();
        double slowest = model.slowest(0.6);
        assertEquals(1000, model.shaftWatts(1, slowest, 0.6), 1e-3);
        assertEquals(1000, model.shaftWatts(1, slowest / 2, 0.6), 1e-9);
        assertTrue(model.shaftWatts(1, slowest * 1.1, 0.6) < 999);
        assertEquals(0, EfficiencyOverSpeed.affinity().slowest(0.6));
        assertEquals(Double.POSITIVE_INFINITY, model.fastest());
    }

    @Test
    void names_every_model() {
        assertTrue(EfficiencyOverSpeed.affinity().name().contains("affinity laws alone"));
        for (EfficiencyOverSpeed model : models()) {
            assertTrue(parabola()
                    .withEfficiencyOverSpeed(model)
                    .basis()
                    .choices()
                    .toString()
                    .contains(model.name()));
        }
        assertEquals(
                EfficiencyOverSpeed.mechanicalLoss(Power.ZERO, 1), EfficiencyOverSpeed.mechanicalLoss(Power.ZERO, 1));
        assertEquals(
                3, ((EfficiencyOverSpeed.MechanicalLoss) EfficiencyOverSpeed.mechanicalLoss(Power.ZERO, 3)).exponent());
    }

    /** At half speed a quarter of 4 m and of 40 m, and the affinity power at run-out 16 kW/8. */
    @Test
    void has_the_extremes_of_its_speed() {
        PumpCurve half = parabola()
                .withEfficiencyOverSpeed(EfficiencyOverSpeed.affinity())
                .atSpeed(Ratio.percent(50));
        String message = refusal(CurveProblem.HEAD_OUT_OF_RANGE, () -> half.flowsAt(Head.metres(11)))
                .getMessage();
        assertTrue(message.contains("heads from 1 m to 10 m"), message);
        assertEquals(2000, half.greatestPower().watts(), 1e-9);
        assertEquals(16_000, parabola().greatestPower().watts(), 1e-9);
    }

    @Test
    void holds_every_sign_of_the_linear_term() {
        PumpCurve rising = curve(new double[] {30, 0.2, -0.004}, new double[] {4000, 100}, 0, 100);
        PumpCurve falling = curve(new double[] {30, -0.1, -0.0015}, new double[] {4000, 100}, 0, 100);
        PumpCurve line = curve(new double[] {30, -0.25}, new double[] {4000, 100}, 0, 100);
        for (PumpCurve each : List.of(rising, falling, line)) {
            for (double q = 1; q <= 100; q += 9) {
                double metres = each.headMetres(m3ph(q).si(), 0.8);
                if (each.covers(m3ph(q).si(), 0.8)) {
                    assertEquals(0.8, each.speedRatioFor(m3ph(q).si(), metres), 1e-13);
                }
            }
        }
    }

    /** A cubic tested from 20 to 100 m³/h: duties just inside both ends are met, and just outside refused. */
    @Test
    void meets_duties_up_to_both_ends_of_a_cubic() {
        PumpCurve middle = curve(new double[] {40, -0.05, 0.001, -0.00002}, new double[] {4000, 110, 0.2}, 20, 100);
        for (double s : new double[] {0.5, 1}) {
            for (double q : new double[] {20, 20.001, 60, 99.999, 100}) {
                double metres = middle.headMetres(m3ph(q * s).si(), s);
                assertEquals(s, middle.speedRatioFor(m3ph(q * s).si(), metres), 1e-12);
            }
            for (double q : new double[] {19.99, 100.01}) {
                double metres = middle.headMetres(m3ph(q * s).si(), s);
                assertEquals(
                        Double.POSITIVE_INFINITY,
                        middle.speedRatioFor(m3ph(q * s).si(), metres));
            }
        }
    }

    static List<PumpCurve> everyKind() {
        Liquid thick = Liquid.propyleneGlycol(Ratio.percent(55), Temperature.celsius(-5));
        return List.of(
                parabola(),
                parabola().atSpeed(Ratio.of(0.8)),
                drooping(),
                cubic(),
                cubic().extendedTo(m3ph(115)),
                parabola().inLiquid(thick),
                parabola().withEfficiencyOverSpeed(EfficiencyOverSpeed.mechanicalLoss(Power.watts(200), 1)));
    }

    @ParameterizedTest
    @MethodSource("everyKind")
    void fills_many_points_with_the_values_of_each(PumpCurve curve) {
        Random random = new Random(4);
        double[] flows = new double[1000];
        double[] speeds = new double[1000];
        for (int i = 0; i < 1000; i++) {
            speeds[i] = 0.4 + random.nextDouble();
            flows[i] = curve.atSpeed(Ratio.of(speeds[i])).highestFlow().si() * random.nextDouble();
        }
        CurveArrays arrays = CurveArrays.of(flows, speeds);
        curve.fill(arrays);
        double[] shares = new double[1000];
        curve.fillSpeedRatios(flows, arrays.heads(), shares);
        assertEquals(1000, arrays.count());
        for (int i = 0; i < 1000; i++) {
            assertEquals(curve.headMetres(flows[i], speeds[i]), arrays.heads()[i], 1e-12);
            assertEquals(curve.shaftWatts(flows[i], speeds[i]), arrays.powers()[i], 1e-8);
            assertEquals(curve.efficiency(flows[i], speeds[i]), arrays.efficiencies()[i], 1e-13);
            assertEquals(curve.speedRatioFor(flows[i], arrays.heads()[i]), shares[i], 1e-13);
            assertEquals(speeds[i], shares[i], 1e-10);
        }
    }

    /** Speeds from far below to far above those that the fast power is made for. */
    @ParameterizedTest
    @MethodSource("everyKind")
    void fills_one_speed_and_any_speed_as_it_gives_each(PumpCurve curve) {
        for (double s : new double[] {0.05, 0.19, 0.2, 0.9, 1, 1.5, 1.51}) {
            if (curve.liquid().equals(curve.testedLiquid()) || s > 0.3) {
                double[] flows = {
                    0,
                    0.2 * s * curve.highestFlow().si(),
                    s * curve.highestFlow().si(),
                    1
                };
                CurveArrays each = CurveArrays.of(flows, new double[] {s, s, s, s});
                CurveArrays row = CurveArrays.of(flows, new double[4]);
                curve.fill(each);
                curve.fillAt(s, row, 3);
                for (int i = 0; i < 3; i++) {
                    double watts = curve.shaftWatts(flows[i], s);
                    assertEquals(watts, each.powers()[i], 1e-12 * watts);
                    assertEquals(watts, row.powers()[i], 1e-11 * watts);
                    assertEquals(curve.headMetres(flows[i], s), row.heads()[i], 1e-12);
                    assertEquals(curve.efficiency(flows[i], s), row.efficiencies()[i], 1e-12);
                }
                assertEquals(0, row.powers()[3]);
            }
        }
    }

    @Test
    void fills_infinity_where_no_speed_delivers_the_duty() {
        double[] shares = new double[3];
        double[] flows = {m3ph(100).si(), m3ph(50).si(), 0};
        parabola().fillSpeedRatios(flows, new double[] {2, 12, 10}, shares);
        assertEquals(Double.POSITIVE_INFINITY, shares[0]);
        assertEquals(parabola().speedRatioFor(flows[1], 12), shares[1], 1e-15);
        assertEquals(0.5, shares[2], 1e-15);
    }

    @Test
    void fills_no_arrays_of_different_lengths() {
        double[] two = new double[2];
        double[] three = new double[3];
        assertThrows(IllegalArgumentException.class, () -> new CurveArrays(two, three, two, two, two));
        assertThrows(IllegalArgumentException.class, () -> new CurveArrays(two, two, three, two, two));
        assertThrows(IllegalArgumentException.class, () -> new CurveArrays(two, two, two, three, two));
        assertThrows(IllegalArgumentException.class, () -> new CurveArrays(two, two, two, two, three));
    }
}
