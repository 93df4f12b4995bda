package headrace.operation.limit;

import static headrace.pump.KnownPump.SPEED;
import static headrace.pump.KnownPump.WATER;
import static headrace.pump.KnownPump.m3ph;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.curve.CurveFormula;
import headrace.curve.CurvePoint;
import headrace.curve.CurveProblem;
import headrace.curve.PumpCurve;
import headrace.drive.Drive;
import headrace.drive.DriveTrain;
import headrace.drive.Motor;
import headrace.drive.SeparateLosses;
import headrace.drive.Site;
import headrace.liquid.Liquid;
import headrace.liquid.LiquidProperties;
import headrace.numeric.Polynomial;
import headrace.operation.limit.OperatingRegion.Zone;
import headrace.problem.Notes;
import headrace.problem.Problem;
import headrace.problem.Refusal;
import headrace.pump.PumpProblem;
import headrace.pump.PumpSet;
import headrace.units.Density;
import headrace.units.Flow;
import headrace.units.HeatCapacity;
import headrace.units.Length;
import headrace.units.Mass;
import headrace.units.Power;
import headrace.units.Pressure;
import headrace.units.Ratio;
import headrace.units.Temperature;
import headrace.units.TemperatureDifference;
import headrace.units.Volume;
import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

@DisplayNameGeneration(ReplaceUnderscores.class)
class LimitsTest {
    private static final PumpCurve CURVE = BestAtSixty.curve(0, 120);
    private static final PumpSet SET = BestAtSixty.set(CURVE);

    private static void refused(Problem problem, Executable asking) {
        assertEquals(problem, assertThrows(Refusal.class, asking).problem());
    }

    private static Zone zone(PumpCurve curve, double flow) {
        return OperatingRegion.USUAL.at(curve, m3ph(flow)).zone();
    }

    @Test
    void the_operating_region_goes_by_the_share_of_best_efficiency_flow_and_its_limits_belong_to_it() {
        assertEquals(Zone.PREFERRED, zone(CURVE, 60));
        assertEquals(Zone.PREFERRED, zone(CURVE, 42));
        assertEquals(Zone.ALLOWABLE, zone(CURVE, 41.9));
        assertEquals(Zone.PREFERRED, zone(CURVE, 72));
        assertEquals(Zone.ALLOWABLE, zone(CURVE, 75));
        assertEquals(Zone.OUTSIDE, zone(CURVE, 75.1));
        assertEquals(Zone.ALLOWABLE, zone(CURVE, 30));
        assertEquals(Zone.OUTSIDE, zone(CURVE, 29.9));
    }

    @Test
    void best_efficiency_flow_goes_with_the_speed() {
        PumpCurve half = CURVE.atSpeed(Ratio.of(0.5));
        RegionPoint point = OperatingRegion.USUAL.at(half, m3ph(21));
        assertEquals(0.7, point.share().value(), 1e-9);
        assertEquals(Zone.PREFERRED, point.zone());
        assertEquals(Zone.OUTSIDE, zone(half, 60));
        CurvePoint there = half.at(m3ph(21));
        assertEquals(point, OperatingRegion.USUAL.at(CURVE, there));
    }

    @Test
    void leaving_a_region_and_assuming_one_is_noted() {
        Notes outside = OperatingRegion.USUAL.at(CURVE, m3ph(20)).notes();
        assertTrue(outside.has(LimitProblem.OUTSIDE_PREFERRED_REGION));
        assertTrue(outside.has(LimitProblem.OUTSIDE_ALLOWABLE_REGION));
        assertTrue(outside.has(LimitProblem.REGION_ASSUMED));
        OperatingRegion stated = OperatingRegion.of(Ratio.of(0.8), Ratio.of(1.15), Ratio.of(0.3), Ratio.of(1.3));
        Notes allowable = stated.at(CURVE, m3ph(20)).notes();
        assertTrue(allowable.has(LimitProblem.OUTSIDE_PREFERRED_REGION));
        assertFalse(allowable.has(LimitProblem.OUTSIDE_ALLOWABLE_REGION));
        assertFalse(allowable.has(LimitProblem.REGION_ASSUMED));
        assertFalse(stated.at(CURVE, m3ph(60)).notes().has(LimitProblem.OUTSIDE_PREFERRED_REGION));
    }

    @Test
    void a_region_that_crosses_itself_is_refused() {
        Ratio half = Ratio.of(0.5);
        Ratio whole = Ratio.of(1);
        refused(LimitProblem.IMPOSSIBLE_REGION, () -> OperatingRegion.of(whole, half, half, whole));
        refused(LimitProblem.IMPOSSIBLE_REGION, () -> OperatingRegion.of(half, whole, Ratio.of(0.6), whole));
        refused(LimitProblem.IMPOSSIBLE_REGION, () -> OperatingRegion.of(half, whole, half, Ratio.of(0.9)));
        refused(LimitProblem.IMPOSSIBLE_REGION, () -> OperatingRegion.of(half, whole, Ratio.of(-0.1), whole));
    }

    /** Fluid Mechanics: Fundamentals and Applications, example 5-12: 3.5 kW in 50 L/s, computed by hand. */
    @Test
    void the_heat_rise_of_a_textbook_pump_is_found_again() {
        Liquid liquid = Liquid.of(
                "textbook water",
                Temperature.celsius(20),
                new LiquidProperties(
                        Density.kilogramsPerCubicMetre(1000),
                        WATER.viscosity(),
                        WATER.vapourPressure(),
                        HeatCapacity.joulesPerKilogramKelvin(4180)));
        CurvePoint point = new CurvePoint(
                Flow.litresPerSecond(50),
                liquid.headOf(Pressure.kilopascals(200)),
                Power.kilowatts(13.5),
                Ratio.of(10 / 13.5),
                SPEED,
                Notes.NONE);
        assertEquals(0.01675, HeatRise.at(point, liquid).kelvins(), 5e-6);
    }

    @Test
    void the_heat_rise_agrees_with_the_form_that_takes_the_efficiency() {
        CurvePoint point = CURVE.at(m3ph(60));
        double other = 9.80665
                * point.head().metres()
                / WATER.heatCapacity().joulesPerKilogramKelvin()
                * (1 / point.efficiency().value() - 1);
        assertEquals(other, HeatRise.at(point, WATER).kelvins(), 1e-12 * other);
        refused(LimitProblem.NO_HEAT_RISE, () -> HeatRise.at(CURVE.at(Flow.ZERO), WATER));
    }

    @Test
    void at_the_thermal_flow_the_heat_balance_closes() {
        for (double kelvins : new double[] {0.2, 1, 2, 3, 8}) {
            MinimumFlow least = MinimumFlow.of(
                    CURVE, Optional.of(Ratio.of(0.35)), Optional.of(TemperatureDifference.kelvins(kelvins)));
            double rise = HeatRise.at(CURVE.at(least.thermal()), WATER).kelvins();
            assertEquals(kelvins, rise, 1e-10 * kelvins);
            assertEquals(21, least.stable().toCubicMetresPerHour(), 1e-6);
            assertFalse(least.notes().has(LimitProblem.MINIMUM_FLOW_ASSUMED));
        }
    }

    @Test
    void least_flows_are_assumed_with_a_note_and_go_with_the_speed_and_its_square() {
        MinimumFlow full = MinimumFlow.of(CURVE);
        assertTrue(full.notes().has(LimitProblem.MINIMUM_FLOW_ASSUMED));
        assertEquals(18, full.stable().toCubicMetresPerHour(), 1e-6);
        assertEquals(full.stable(), full.flow());
        MinimumFlow half = MinimumFlow.of(CURVE.atSpeed(Ratio.of(0.5)));
        assertEquals(9, half.stable().toCubicMetresPerHour(), 1e-6);
        assertTrue(half.thermal().si() < 0.2 * full.thermal().si(), "the heat goes with the cube, the flow with it");
    }

    @Test
    void a_least_flow_below_the_test_is_not_guessed_at() {
        MinimumFlow least = MinimumFlow.of(BestAtSixty.curve(25, 120));
        assertTrue(least.notes().has(LimitProblem.MINIMUM_FLOW_BELOW_TEST));
        assertEquals(25, least.thermal().toCubicMetresPerHour(), 1e-9);
    }

    @Test
    void impossible_least_flows_are_refused() {
        refused(
                LimitProblem.IMPOSSIBLE_MINIMUM_FLOW,
                () -> MinimumFlow.of(CURVE, Optional.of(Ratio.of(1.1)), Optional.empty()));
        refused(
                LimitProblem.IMPOSSIBLE_MINIMUM_FLOW,
                () -> MinimumFlow.of(CURVE, Optional.empty(), Optional.of(TemperatureDifference.kelvins(8.1))));
        refused(
                LimitProblem.IMPOSSIBLE_MINIMUM_FLOW,
                () -> MinimumFlow.of(CURVE, Optional.empty(), Optional.of(TemperatureDifference.ZERO)));
        refused(
                LimitProblem.NO_THERMAL_FLOW,
                () -> MinimumFlow.of(CURVE, Optional.empty(), Optional.of(TemperatureDifference.kelvins(0.001))));
    }

    /** By hand: (998.2 kg/m³·5 L·4185 J/(kg·K) + 30 kg·460 J/(kg·K))·60 K over 4154 W is 501 s. */
    @Test
    void the_time_against_a_closed_valve_is_the_heat_over_the_power_and_no_permission() {
        DeadHead time = DeadHead.of(CURVE, Volume.litres(5), Mass.kilograms(30), Temperature.celsius(80));
        assertEquals(501, time.time().seconds(), 0.5);
        assertTrue(time.notes().toString().contains("never use this time as permission"));
        DeadHead half = DeadHead.of(
                CURVE.atSpeed(Ratio.of(0.5)), Volume.litres(5), Mass.kilograms(30), Temperature.celsius(80));
        assertEquals(8, half.time().over(time.time()).value(), 1e-9);
    }

    @Test
    void a_time_against_a_closed_valve_needs_the_power_there_and_a_way_to_go() {
        refused(
                CurveProblem.FLOW_OUT_OF_RANGE,
                () -> DeadHead.of(BestAtSixty.curve(5, 120), Volume.litres(5), Mass.ZERO, Temperature.celsius(80)));
        DeadHead extended = DeadHead.of(
                BestAtSixty.curve(5, 120).extendedTo(Flow.ZERO), Volume.litres(5), Mass.ZERO, Temperature.celsius(80));
        assertTrue(extended.notes().has(CurveProblem.EXTENDED_BEYOND_TEST));
        refused(
                LimitProblem.IMPOSSIBLE_DEAD_HEAD,
                () -> DeadHead.of(CURVE, Volume.litres(5), Mass.ZERO, Temperature.celsius(20)));
        refused(
                LimitProblem.IMPOSSIBLE_DEAD_HEAD,
                () -> DeadHead.of(CURVE, Volume.ZERO, Mass.ZERO, Temperature.celsius(80)));
    }

    /** 54 000/13 W + 50 W·Q is 7500 W at 66.923 m³/h and 10 154 W at 120 m³/h. */
    @Test
    void an_overload_is_found_with_the_flow_at_which_it_begins() {
        Overload overload = Overload.of(ReachableRegion.of(SET));
        assertFalse(overload.nonOverloading());
        assertEquals((7500 - 54_000 / 13.0) / 50, overload.from().orElseThrow().toCubicMetresPerHour(), 1e-9);
        assertEquals(54_000 / 13.0 + 6000, overload.greatest().watts(), 1e-6);
        assertEquals(120, overload.at().toCubicMetresPerHour(), 1e-9);
        assertTrue(overload.notes().has(LimitProblem.OVERLOAD_WITHIN_REACH));
        assertTrue(overload.notes().has(LimitProblem.REACH_ENDS_WITH_TEST));
    }

    @Test
    void what_the_branch_keeps_out_of_reach_does_not_overload() {
        Overload overload = Overload.of(ReachableRegion.of(SET).between(Flow.ZERO, m3ph(66)));
        assertTrue(overload.nonOverloading());
        assertEquals(54_000 / 13.0 + 3300, overload.greatest().watts(), 1e-6);
        assertFalse(overload.notes().has(LimitProblem.REACH_ENDS_WITH_TEST));
        Overload slower = Overload.of(ReachableRegion.of(SET.withMaximumSpeed(SPEED.times(0.8))));
        assertTrue(slower.nonOverloading(), "6 kW at 80 % speed, and 0.512 of 10.2 kW");
        assertEquals(6000, slower.available().watts(), 1e-9);
    }

    /** At 2000 m a motor gives 10 % less: 6.75 kW, which the pump takes at (6750 − 54 000/13)/50 m³/h. */
    @Test
    void a_motor_derated_for_its_site_is_overloaded_sooner() {
        Power rated = Power.kilowatts(7.5);
        DriveTrain train = DriveTrain.of(
                Motor.ofClass(rated, 3, 4).at(new Site(Length.metres(2000), Temperature.celsius(40))),
                Drive.reference(rated),
                SeparateLosses.ASSUMED);
        Overload overload = Overload.of(ReachableRegion.of(PumpSet.of(CURVE, train)));
        assertEquals(6750, overload.available().watts(), 1e-9);
        assertEquals((6750 - 54_000 / 13.0) / 50, overload.from().orElseThrow().toCubicMetresPerHour(), 1e-9);
    }

    @Test
    void a_denser_liquid_can_overload_where_water_does_not() {
        Liquid brine = Liquid.ethyleneGlycol(Ratio.of(0.4), Temperature.celsius(20));
        ReachableRegion reach = ReachableRegion.of(SET).between(Flow.ZERO, m3ph(66));
        assertFalse(Overload.of(reach.in(brine)).nonOverloading());
    }

    /** 3000 W + 100 W·Q − 0.5 W·Q² is greatest at 100 m³/h, with 8000 W. */
    @Test
    void a_greatest_power_between_the_ends_is_found_to_a_millionth() {
        PumpCurve humped = PumpCurve.of(
                "P-H",
                SPEED,
                WATER,
                new CurveFormula(
                        Polynomial.of(40, 0, -0.0025).ofScaled(3600),
                        Polynomial.of(3000, 100, -0.5).ofScaled(3600),
                        Flow.ZERO,
                        m3ph(120)));
        Overload overload = Overload.of(ReachableRegion.of(BestAtSixty.set(humped)));
        assertEquals(8000, overload.greatest().watts(), 8000 * 1e-9);
        assertEquals(100, overload.at().toCubicMetresPerHour(), 1e-3);
        assertEquals(100 - Math.sqrt(1000), overload.from().orElseThrow().toCubicMetresPerHour(), 1e-8);
    }

    @Test
    void above_rated_speed_the_motor_keeps_its_power_and_loses_torque() {
        PumpSet fast = SET.withMaximumSpeed(SPEED.times(1.1));
        Overload overload = Overload.of(ReachableRegion.of(fast));
        assertEquals(7500, overload.available().watts(), 1e-9);
        TorqueOverSpeed torque = TorqueOverSpeed.of(ReachableRegion.of(fast));
        double rated = 7500 / SPEED.radiansPerSecond();
        TorqueOverSpeed.Row last = torque.rows().get(torque.rows().size() - 1);
        assertEquals(rated / 1.1, last.motor().newtonMetres(), 1e-9);
        assertEquals(rated, torque.rows().get(0).motor().newtonMetres(), 1e-9);
        assertEquals(
                overload.greatest().watts() / last.speed().radiansPerSecond(),
                last.pump().newtonMetres(),
                1e-9);
    }

    @Test
    void torque_goes_with_the_square_of_speed() {
        TorqueOverSpeed torque = TorqueOverSpeed.of(ReachableRegion.of(SET));
        TorqueOverSpeed.Row last = torque.rows().get(torque.rows().size() - 1);
        for (TorqueOverSpeed.Row row : torque.rows()) {
            double s = row.speed().over(last.speed()).value();
            assertEquals(s * s * last.pump().newtonMetres(), row.pump().newtonMetres(), 1e-9);
        }
        assertEquals(SPEED.si() * 0.4, torque.rows().get(0).speed().si(), 1e-9);
    }

    @Test
    void the_greatest_head_is_that_at_the_greatest_speed_near_no_flow() {
        assertEquals(40, ReachableRegion.of(SET).greatestHead().metres(), 1e-12);
        ReachableRegion fast = ReachableRegion.of(SET.withMaximumSpeed(SPEED.times(1.1)));
        assertEquals(48.4, fast.greatestHead().metres(), 1e-9);
        refused(
                PumpProblem.SHUT_OFF_UNKNOWN,
                () -> ReachableRegion.of(BestAtSixty.set(BestAtSixty.curve(5, 120)))
                        .greatestHead());
    }

    /**
     * On the mains of 1500 rpm with a slip of 50 rpm at 7.5 kW: 1450·s = 1500·(1 − s²·4154 W/7500 W/30), a quadratic in
     * the share s of 1450 rpm; the head goes with its square.
     */
    @Test
    void on_the_mains_the_greatest_head_is_that_at_the_little_slip_of_no_flow() {
        ReachableRegion mains = ReachableRegion.of(SET.onMains());
        double a = 50 * 54_000 / 13.0 / 7500;
        double s = (Math.sqrt(1450 * 1450 + 4 * a * 1500) - 1450) / (2 * a);
        assertEquals(40 * s * s, mains.greatestHead().metres(), 1e-9);
        assertTrue(mains.greatestHead().metres() > 41);
    }

    @Test
    void limits_of_a_branch_that_leave_nothing_are_refused() {
        ReachableRegion reach = ReachableRegion.of(SET);
        refused(LimitProblem.IMPOSSIBLE_REACH, () -> reach.between(m3ph(50), m3ph(50)));
        refused(LimitProblem.IMPOSSIBLE_REACH, () -> reach.between(m3ph(-1), m3ph(50)));
        refused(LimitProblem.IMPOSSIBLE_REACH, () -> reach.between(m3ph(130), m3ph(150)));
        assertFalse(reach.between(m3ph(60), m3ph(100)).reaches(SPEED.times(0.4)));
        assertEquals(
                6, TorqueOverSpeed.of(reach.between(m3ph(80), m3ph(100))).rows().size());
    }

    @Test
    void the_limits_of_a_set_carry_the_notes_of_all_parts() {
        PumpLimits limits = PumpLimits.of(ReachableRegion.of(SET));
        assertTrue(limits.notes().has(LimitProblem.REGION_ASSUMED));
        assertTrue(limits.notes().has(LimitProblem.MINIMUM_FLOW_ASSUMED));
        assertTrue(limits.notes().has(LimitProblem.OVERLOAD_WITHIN_REACH));
        assertTrue(limits.basis().choices().toString().contains("(assumed)"));
    }
}
