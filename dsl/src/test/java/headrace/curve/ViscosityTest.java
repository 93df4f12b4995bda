package headrace.curve;

import static headrace.curve.CurveProblem.DUTY_OUT_OF_RANGE;
import static headrace.curve.CurveProblem.HEAD_OUT_OF_RANGE;
import static headrace.curve.CurveProblem.SPEED_OUT_OF_RANGE;
import static headrace.curve.CurveProblem.VISCOSITY_CORRECTED;
import static headrace.curve.CurveProblem.VISCOSITY_OUT_OF_RANGE;
import static headrace.curve.Pumps.PER_HOUR;
import static headrace.curve.Pumps.WATER;
import static headrace.curve.Pumps.drooping;
import static headrace.curve.Pumps.m3ph;
import static headrace.curve.Pumps.parabola;
import static headrace.curve.Pumps.refusal;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.liquid.Liquid;
import headrace.liquid.LiquidProperties;
import headrace.numeric.Polynomial;
import headrace.units.AbsolutePressure;
import headrace.units.Density;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.HeatCapacity;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Speed;
import headrace.units.Temperature;
import headrace.units.Viscosity;
import java.util.List;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class ViscosityTest {
    /** A liquid of a density in kg/m³ and a kinematic viscosity in mm²/s. */
    private static Liquid oil(double density, double kinematic) {
        return Liquid.of(
                "oil",
                Temperature.celsius(20),
                new LiquidProperties(
                        Density.kilogramsPerCubicMetre(density),
                        Viscosity.pascalSeconds(density * kinematic * 1e-6),
                        AbsolutePressure.kilopascals(0.1),
                        HeatCapacity.kilojoulesPerKilogramKelvin(2)));
    }

    /**
     * A pump with its best point at 110 m³/h, 77 m and 68 % at 2950 rpm: with x = Q/110 the head 100 − 23·x² makes Q·H
     * stationary in P's own measure, (Q·H)'/(Q·H) = 31/77, which the power P₀·(46 + 31·x)/77 has too.
     */
    private static PumpCurve example() {
        double q = 110 / PER_HOUR;
        double power = WATER.density().si() * 9.80665 * q * 77 / 0.68;
        return PumpCurve.of(
                "P-B",
                Speed.revolutionsPerMinute(2950),
                WATER,
                new CurveFormula(
                        Polynomial.of(100, 0, -23 / (q * q)),
                        Polynomial.of(power * 46 / 77, power * 31 / (77 * q)),
                        Flow.ZERO,
                        m3ph(150)));
    }

    /**
     * The example of ANSI/HI 9.6.7 (from memory): 110 m³/h, 77 m, 2950 rpm, 68 %, 120 mm²/s and a relative density of
     * 0.90 give B 5.5208, 103.15 m³/h, 72.208 m, 50.18 % and 36.40 kW.
     */
    @Test
    void is_corrected_as_in_the_published_example() {
        assertEquals(5.5208, ViscousMap.parameter(120, 77, 110, 2950), 5e-5);
        assertEquals(0.93776, ViscousMap.flowShare(5.5208), 5e-6);
        assertEquals(0.73801, ViscousMap.efficiencyShare(5.5208), 5e-6);
        assertEquals(110, example().bestEfficiencyPoint().flow().toCubicMetresPerHour(), 1e-6);
        assertEquals(0.68, example().bestEfficiencyPoint().efficiency().value(), 1e-12);
        CurvePoint best = example().inLiquid(oil(900, 120)).bestEfficiencyPoint();
        assertEquals(103.15, best.flow().toCubicMetresPerHour(), 5e-3);
        assertEquals(72.208, best.head().metres(), 5e-4);
        assertEquals(0.5018, best.efficiency().value(), 5e-5);
        assertEquals(36.40, best.shaftPower().toKilowatts(), 0.02);
        assertTrue(best.notes().has(VISCOSITY_CORRECTED));
        assertTrue(best.notes().toString().contains("B = 5.521 at this speed: flow times 0.9378"));
    }

    /**
     * By hand for the same pump with readings of 4 m at 110 m³/h: 0.5·(1/0.93776 − 1) = 0.033186, times
     * 274000·4/(110^0.667·2950^1.33 = 22.994·41198) = 1.15697, is 3.84 % more, at 0.93776 times the flow.
     */
    @Test
    void asks_for_more_npsh_by_the_formula_of_the_standard() {
        NpshCurve read = NpshCurve.of(npshTest(110));
        NpshCurve viscous = read.movedAs(example().inLiquid(oil(900, 120)));
        Speed speed = Speed.revolutionsPerMinute(2950);
        NpshCurve.Required required = viscous.at(m3ph(0.93776 * 110), speed);
        assertEquals(4 * 1.03840, required.npsh().metres(), 4e-5);
        assertTrue(required.notes().has(CurveProblem.NPSH_VISCOSITY_CORRECTED));
        assertTrue(required.notes().toString().contains("1.038 times as much, at 0.9378 times the flow"));
        assertEquals(0.93776 * 110, viscous.highestFlow(speed).toCubicMetresPerHour(), 1e-3);
        NpshCurve thin = viscous.movedAs(example().inLiquid(oil(900, 1)));
        assertEquals(4, thin.at(m3ph(110), speed).npsh().metres(), 1e-9);
        assertTrue(thin.at(m3ph(110), speed).notes().isEmpty());
    }

    /** B goes with 1/√s: at half speed it is 7.8076, so that the share of flow is less than at full speed. */
    @Test
    void asks_for_more_npsh_by_another_correction_at_every_speed() {
        NpshCurve viscous = NpshCurve.of(npshTest(111)).movedAs(example().inLiquid(oil(900, 120)));
        Speed half = Speed.revolutionsPerMinute(1475);
        double left = ViscousMap.flowShare(5.52076 * Math.sqrt(2));
        double inWater = 4 * Math.pow(0.5, 1.3);
        double more = 0.5 * (1 / left - 1) * 274_000 * inWater / (Math.pow(55, 0.667) * Math.pow(1475, 1.33));
        assertEquals(
                inWater * (1 + more), viscous.at(m3ph(55 * left), half).npsh().metres(), 1e-4);
    }

    @Test
    void refuses_the_npsh_where_its_readings_end_before_best_efficiency() {
        NpshCurve read = NpshCurve.of(npshTest(90));
        refusal(CurveProblem.NPSH_OUT_OF_RANGE, () -> read.movedAs(example().inLiquid(oil(900, 120))));
        NpshCurve extended = read.extendedTo(m3ph(110)).movedAs(example().inLiquid(oil(900, 120)));
        assertTrue(
                extended.at(m3ph(100), Speed.revolutionsPerMinute(2950)).notes().has(CurveProblem.NPSH_BEYOND_TEST));
    }

    /** Readings of 1 m + 3 m·(Q/110 m³/h)² from 50 m³/h on. */
    private static PumpTest npshTest(double to) {
        Speed speed = Speed.revolutionsPerMinute(2950);
        List<NpshPoint> readings = DoubleStream.of(50, 70, to)
                .mapToObj(q -> new NpshPoint(m3ph(q), Head.metres(1 + 3 * q * q / 12_100), speed))
                .toList();
        return PumpTest.of("P-B", speed, WATER, points()).withNpsh(readings);
    }

    private static List<TestPoint> points() {
        Speed speed = Speed.revolutionsPerMinute(2950);
        return List.of(
                new TestPoint(m3ph(0), Head.metres(100), Power.kilowatts(20), speed),
                new TestPoint(m3ph(50), Head.metres(95), Power.kilowatts(25), speed),
                new TestPoint(m3ph(110), Head.metres(77), Power.kilowatts(34), speed));
    }

    @Test
    void doubles_power_and_leaves_head_in_a_liquid_twice_as_dense() {
        Liquid heavy = oil(2 * WATER.density().si(), 1);
        PumpCurve curve = parabola().inLiquid(heavy);
        for (double q = 0; q <= 120; q += 10) {
            assertEquals(
                    parabola().headAt(m3ph(q)).metres(), curve.headAt(m3ph(q)).metres(), 1e-12);
            assertEquals(
                    2 * parabola().shaftPowerAt(m3ph(q)).watts(),
                    curve.shaftPowerAt(m3ph(q)).watts(),
                    1e-8);
            assertEquals(
                    parabola().efficiencyAt(m3ph(q)).value(),
                    curve.efficiencyAt(m3ph(q)).value(),
                    1e-12);
        }
        assertTrue(curve.notes().isEmpty());
        assertEquals(heavy, curve.liquid());
        PumpCurve back = curve.inLiquid(WATER);
        assertEquals(
                parabola().shaftPowerAt(m3ph(60)).watts(),
                back.shaftPowerAt(m3ph(60)).watts(),
                1e-9);
    }

    @Test
    void is_not_corrected_up_to_a_parameter_of_one_and_without_a_jump_there() {
        assertEquals(1, ViscousMap.flowShare(0.2));
        assertEquals(1, ViscousMap.efficiencyShare(0.2));
        assertEquals(1, ViscousMap.flowShare(1 + 1e-9), 1e-12);
        assertEquals(1, ViscousMap.efficiencyShare(1 + 1e-9), 1e-9);
    }

    /** B goes with the speed to the power of −½: a liquid with B = 0.9 at full speed is corrected below 0.81 of it. */
    @Test
    void is_corrected_anew_at_every_speed() {
        double viscosity = Math.pow(0.9 / ViscousMap.parameter(1, 77, 110, 2950), 2);
        PumpCurve curve = example().inLiquid(oil(1000, viscosity));
        assertFalse(curve.notes().has(VISCOSITY_CORRECTED));
        assertFalse(curve.atSpeed(Ratio.of(0.82)).notes().has(VISCOSITY_CORRECTED));
        PumpCurve slow = curve.atSpeed(Ratio.of(0.36));
        assertTrue(
                slow.notes().toString().contains("B = 1.5 at this speed"),
                slow.notes().toString());
        double flowShare = Math.pow(2.71, -0.165 * Math.pow(Math.log10(1.5), 3.15));
        double efficiencyShare = Math.pow(1.5, -0.0547 * Math.pow(1.5, 0.69));
        CurvePoint best = slow.bestEfficiencyPoint();
        CurvePoint plain = example().atSpeed(Ratio.of(0.36)).bestEfficiencyPoint();
        assertEquals(flowShare * plain.flow().si(), best.flow().si(), 1e-9);
        assertEquals(flowShare * plain.head().metres(), best.head().metres(), 1e-9);
        assertEquals(
                efficiencyShare * plain.efficiency().value(), best.efficiency().value(), 1e-12);
    }

    @Test
    void keeps_head_power_and_efficiency_in_agreement() {
        PumpCurve curve = example().inLiquid(oil(900, 120));
        for (double s : new double[] {0.5, 1, 1.1}) {
            PumpCurve moved = curve.atSpeed(Ratio.of(s));
            for (int i = 0; i <= 50; i++) {
                CurvePoint point = moved.at(moved.highestFlow().times(i / 50.0));
                double hydraulic =
                        900 * 9.80665 * point.flow().si() * point.head().metres();
                assertEquals(
                        hydraulic,
                        point.efficiency().value() * point.shaftPower().watts(),
                        1e-9);
                assertTrue(
                        point.efficiency().value() < 0.68 && point.shaftPower().watts() > 0);
            }
        }
        assertEquals(
                example().headAt(Flow.ZERO).metres(), curve.headAt(Flow.ZERO).metres(), 1e-12);
        assertEquals(150 * 0.93776, curve.highestFlow().toCubicMetresPerHour(), 1e-3);
    }

    @Test
    void finds_flows_speeds_and_droop_all_the_same() {
        PumpCurve curve = example().inLiquid(oil(900, 120));
        for (double q : new double[] {0, 12, 70, 140}) {
            Head head = curve.headAt(m3ph(q));
            List<Flow> flows = curve.flowsAt(head);
            assertEquals(1, flows.size());
            assertEquals(q, flows.get(0).toCubicMetresPerHour(), 1e-7);
            Duty duty = new Duty(m3ph(q), head);
            assertEquals(1, curve.speedFor(duty).over(curve.speed()).value(), 1e-10);
            Duty slower = new Duty(m3ph(q / 2), curve.atSpeed(Ratio.of(0.6)).headAt(m3ph(q / 2)));
            assertEquals(0.6, curve.speedFor(slower).over(curve.speed()).value(), 1e-10);
            assertEquals(
                    0.6, curve.speedRatioFor(m3ph(q / 2).si(), slower.head().metres()), 1e-10);
        }
        refusal(HEAD_OUT_OF_RANGE, () -> curve.flowsAt(Head.metres(101)));
        refusal(DUTY_OUT_OF_RANGE, () -> curve.speedFor(new Duty(m3ph(130), Head.metres(1))));
        assertTrue(curve.droop().isEmpty());
        PumpCurve drooping = drooping().inLiquid(oil(900, 40));
        Droop droop = drooping.droop().orElseThrow();
        assertTrue(droop.rise().metres() > 0.5 && droop.rise().metres() < 1.25);
        List<Flow> two = drooping.flowsAt(Head.metres(20.2));
        assertEquals(2, two.size());
        assertEquals(20.2, drooping.headAt(two.get(1)).metres(), 1e-9);
    }

    @Test
    void finds_a_speed_where_the_test_does_not_begin_at_shut_off() {
        PumpCurve fromTwenty = Pumps.curve(new double[] {40, 0, -0.0025}, new double[] {4000, 100}, 20, 120);
        PumpCurve curve = fromTwenty.inLiquid(oil(900, 60));
        Duty duty = new Duty(m3ph(30), curve.atSpeed(Ratio.of(0.7)).headAt(m3ph(30)));
        assertEquals(0.7, curve.speedFor(duty).over(curve.speed()).value(), 1e-10);
        refusal(DUTY_OUT_OF_RANGE, () -> curve.speedFor(new Duty(m3ph(5), Head.metres(40))));
        refusal(DUTY_OUT_OF_RANGE, () -> curve.speedFor(new Duty(Flow.ZERO, Head.metres(40))));
    }

    @Test
    void gives_the_same_speed_as_in_water_where_the_liquid_is_not_viscous() {
        PumpCurve curve = parabola().inLiquid(Liquid.water(Temperature.celsius(60)));
        Duty duty = new Duty(m3ph(60), Head.metres(15.4));
        assertEquals(parabola().speedFor(duty), curve.speedFor(duty));
    }

    @Test
    void is_refused_beyond_what_the_method_knows() {
        refusal(VISCOSITY_OUT_OF_RANGE, () -> example().inLiquid(oil(900, 4001)));
        String message = refusal(VISCOSITY_OUT_OF_RANGE, () -> small().inLiquid(oil(900, 800)))
                .getMessage();
        assertTrue(message.contains("where B is "), message);
        PumpCurve curve = example().inLiquid(oil(900, 3900));
        double parameter = ViscousMap.parameter(3900, 77, 110, 2950);
        double slowest = Math.pow(parameter / 40, 2);
        assertTrue(curve.atSpeed(Ratio.of(slowest * 1.001)).headAt(Flow.ZERO).metres() > 0);
        refusal(SPEED_OUT_OF_RANGE, () -> curve.atSpeed(Ratio.of(slowest * 0.999)));
    }

    /** Best at some 2 m³/h and 3 m: B in water of 20 °C is 16.5·1.07/(2^0.375·1450^0.25) = 2.2, above 1. */
    private static PumpCurve small() {
        return Pumps.curve(new double[] {4, 0, -0.25}, new double[] {80, 10}, 0, 3.5);
    }

    @Test
    void changes_nothing_in_the_liquid_of_the_test_or_a_thinner_one_at_any_speed() {
        for (Liquid thin : List.of(WATER, Liquid.water(Temperature.celsius(60)))) {
            for (PumpCurve pump : List.of(small(), parabola())) {
                PumpCurve slow = pump.inLiquid(thin).atSpeed(Ratio.percent(30));
                PumpCurve water = pump.atSpeed(Ratio.percent(30));
                double q = 0.2 * pump.highestFlow().si();
                assertEquals(water.headMetres(q, 1), slow.headMetres(q, 1), 1e-12);
                assertEquals(water.efficiency(q, 1), slow.efficiency(q, 1), 1e-12);
                assertFalse(slow.notes().has(VISCOSITY_CORRECTED));
            }
        }
    }

    /** What water did is in its test: flow, head and efficiency are left as C(B)/C(B of the test). */
    @Test
    void is_taken_relative_to_a_test_in_water_of_a_small_pump() {
        CurvePoint best = small().bestEfficiencyPoint();
        Liquid thick = oil(950, 8);
        double hourly = best.flow().toCubicMetresPerHour();
        double water = ViscousMap.parameter(
                WATER.kinematicViscosity().toSquareMillimetresPerSecond(),
                best.head().metres(),
                hourly,
                1450);
        double b = ViscousMap.parameter(8, best.head().metres(), hourly, 1450);
        assertTrue(water > 2 && b > 5);
        CurvePoint viscous = small().inLiquid(thick).bestEfficiencyPoint();
        double flow = ViscousMap.flowShare(b) / ViscousMap.flowShare(water);
        assertEquals(hourly * flow, viscous.flow().toCubicMetresPerHour(), 1e-9);
        assertEquals(best.head().metres() * flow, viscous.head().metres(), 1e-9);
        assertEquals(
                best.efficiency().value() * ViscousMap.efficiencyShare(b) / ViscousMap.efficiencyShare(water),
                viscous.efficiency().value(),
                1e-9);
        assertTrue(
                viscous.notes().toString().contains("relative to the test, where B is 2."),
                viscous.notes().toString());
    }

    @Test
    void is_not_corrected_from_a_test_that_was_in_a_viscous_liquid_itself() {
        PumpCurve inOil = PumpCurve.of(
                "P-C",
                Pumps.RATED,
                oil(900, 60),
                new CurveFormula(
                        Polynomial.of(40, 0, -0.0025 * PER_HOUR * PER_HOUR),
                        Polynomial.of(4000, 100 * PER_HOUR),
                        Flow.ZERO,
                        m3ph(120)));
        String message =
                refusal(VISCOSITY_OUT_OF_RANGE, () -> inOil.inLiquid(WATER)).getMessage();
        assertTrue(message.contains("it was tested in oil at 20 °C, where B is "), message);
    }

    @Test
    void keeps_the_efficiency_model_and_the_bands() {
        PumpCurve curve = example()
                .withEfficiencyOverSpeed(EfficiencyOverSpeed.mechanicalLoss(Power.watts(500), 1))
                .inLiquid(oil(900, 120));
        assertTrue(curve.efficiencyOverSpeed() instanceof EfficiencyOverSpeed.MechanicalLoss);
        PumpCurve affinity = curve.withEfficiencyOverSpeed(EfficiencyOverSpeed.affinity());
        assertTrue(affinity.notes().has(VISCOSITY_CORRECTED));
        assertTrue(affinity.basis().choices().toString().contains("ANSI/HI 9.6.7"));
        double greatest = affinity.greatestPower().watts();
        assertEquals(affinity.shaftPowerAt(affinity.highestFlow()).watts(), greatest, 1e-9);
    }

    @Test
    void has_bands_that_shrink_with_its_head_and_grow_with_its_power() {
        PumpCurve fitted = PumpCurve.fit(Pumps.test(Pumps.points(
                Pumps.evenly(11, 0, 100),
                q -> 32 - 0.0016 * q * q + 0.05 * Math.sin(q),
                q -> 3000 + 70 * q + 10 * Math.cos(q))));
        bandsOf(fitted, fitted.inLiquid(oil(WATER.density().si(), 100)), m3ph(50));
        PumpCurve slow = fitted.atSpeed(Ratio.of(0.7));
        bandsOf(slow, slow.inLiquid(oil(WATER.density().si(), 100)), m3ph(35));
    }

    private static void bandsOf(PumpCurve fitted, PumpCurve viscous, Flow flow) {
        Flow moved = Flow.cubicMetresPerSecond(
                flow.si() * viscous.highestFlow().si() / fitted.highestFlow().si());
        double heads = viscous.headAt(moved).metres() / fitted.headAt(flow).metres();
        double powers =
                viscous.shaftPowerAt(moved).watts() / fitted.shaftPowerAt(flow).watts();
        Ratio sure = Ratio.percent(95);
        assertEquals(
                heads * fitted.bands().orElseThrow().meanHeadAt(flow, sure).metres(),
                viscous.bands().orElseThrow().meanHeadAt(moved, sure).metres(),
                1e-10);
        assertEquals(
                powers
                        * fitted.bands()
                                .orElseThrow()
                                .meanShaftPowerAt(flow, sure)
                                .watts(),
                viscous.bands().orElseThrow().meanShaftPowerAt(moved, sure).watts(),
                1e-7);
    }

    /** The greatest power and the extreme heads of a corrected curve, against a fine grid. */
    @Test
    void has_the_extremes_that_a_fine_grid_finds() {
        PumpCurve humped = Pumps.curve(new double[] {20, 0.1, -0.002}, new double[] {2000, 120, -0.9}, 0, 80);
        PumpCurve curve = humped.inLiquid(oil(950, 30)).atSpeed(Ratio.of(0.8));
        double power = 0;
        double most = 0;
        double least = 1e9;
        for (int i = 0; i <= 20_000; i++) {
            double q = curve.highestFlow().si() * i / 20_000;
            power = Math.max(power, curve.shaftWatts(q, 1));
            most = Math.max(most, curve.headMetres(q, 1));
            least = Math.min(least, curve.headMetres(q, 1));
        }
        assertEquals(power, curve.greatestPower().watts(), 1e-4);
        assertEquals(most, curve.droop().orElseThrow().maximum().metres(), 1e-6);
        double tooMuch = most * 1.001;
        String message = refusal(HEAD_OUT_OF_RANGE, () -> curve.flowsAt(Head.metres(tooMuch)))
                .getMessage();
        assertTrue(message.contains(Head.metres(least) + " to " + Head.metres(most)), message);
    }

    @Test
    void checks_a_mechanical_loss_all_the_same() {
        PumpCurve curve = example().inLiquid(oil(900, 120));
        refusal(
                CurveProblem.IMPOSSIBLE_LOSS,
                () -> curve.withEfficiencyOverSpeed(EfficiencyOverSpeed.mechanicalLoss(Power.kilowatts(50), 1)));
        refusal(SPEED_OUT_OF_RANGE, () -> curve.atSpeed(Ratio.of(1e-9)));
    }
}
