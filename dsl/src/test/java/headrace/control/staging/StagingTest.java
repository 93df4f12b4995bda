package headrace.control.staging;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.control.ControlLaw;
import headrace.curve.CurveFormula;
import headrace.curve.Duty;
import headrace.curve.EfficiencyOverSpeed;
import headrace.curve.PumpCurve;
import headrace.drive.ConstantEfficiency;
import headrace.drive.Drive;
import headrace.drive.DriveTrain;
import headrace.drive.Motor;
import headrace.numeric.Polynomial;
import headrace.problem.Refusal;
import headrace.pump.KnownPump;
import headrace.pump.PumpSet;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Time;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

/**
 * A made-up pump that can be worked by hand: H = 36·s² − 0.004·Q² in m and P = P₀·s³ + 0.05·Q·s² in kW, Q in m³/h up to
 * 80 m³/h; three of them for 150 m³/h at a constant 20 m. Motor and drive keep their efficiency, so that shares of wire
 * power are shares of shaft power.
 */
@DisplayNameGeneration(ReplaceUnderscores.class)
class StagingTest {
    private static final Duty DESIGN = new Duty(Flow.cubicMetresPerHour(150), Head.metres(20));
    private static final PumpPlant PLANT = plant(2);
    private static final Staging STAGING = Staging.of(PLANT);

    /** P_N by hand with s² = (20 + 0.004·(Q/N)²)/36, and the flow at which P_1 = P_2 and P_2 = P_3 by halving. */
    @Test
    void a_pump_more_runs_where_it_takes_no_more_from_the_wire() {
        List<Switch> switches = STAGING.switches();
        assertEquals(2, switches.size(), switches.toString());
        for (int n = 1; n <= 2; n++) {
            Switch found = switches.get(n - 1);
            assertEquals(n, found.below());
            assertEquals(n + 1, found.above());
            assertEquals(crossing(n), found.flow().in("m3ph"), 1e-5);
            assertEquals(crossing(n) / 150, found.share().value(), 1e-7);
            assertEquals(Switch.EQUAL_POWER, found.reason());
        }
    }

    @Test
    void wire_power_of_several_pumps_is_that_of_the_hand_calculation() {
        double efficiency = PLANT.set().wireWatts(0.01, 1) / PLANT.set().curve().shaftWatts(0.01, 1);
        for (int n = 1; n <= 3; n++) {
            double watts = PLANT.wirePower(n, Flow.cubicMetresPerHour(55))
                    .orElseThrow()
                    .watts();
            assertEquals(1000 * kilowatts(n, 55, 2) * efficiency, watts, 1e-8 * watts);
        }
    }

    /**
     * With 20 kW at no flow a second pump does not pay where the first reaches full speed at √((36 − 20)/0.004) =
     * 63.246 m³/h.
     */
    @Test
    void the_greatest_speed_decides_where_power_does_not() {
        List<Switch> switches = Staging.of(plant(20)).switches();
        assertEquals(63.2455532, switches.get(0).flow().in("m3ph"), 1e-5);
        assertTrue(
                switches.get(0).reason().contains("greatest speed"),
                switches.get(0).reason());
    }

    /**
     * Two pumps may not fall below 90 % of their best-efficiency flow at their speed, beyond the flow of equal power.
     */
    @Test
    void a_second_pump_waits_for_its_least_flow() {
        PumpPlant plant = plant(2).withLeastFlow(Ratio.percent(90));
        Switch first = Staging.of(plant).switches().get(0);
        assertTrue(first.flow().in("m3ph") > crossing(1) + 1);
        double best = plant.set().curve().bestEfficiencyPoint().flow().in("m3ph");
        double each = first.flow().in("m3ph") / 2;
        double speed = Math.sqrt((20 + 0.004 * each * each) / 36);
        assertEquals(0.9 * best * speed, each, 1e-4);
        assertEquals("least stable flow of 2 pumps", first.reason());
    }

    /** N/n − 3 %: one pump up to 30.33 %, two up to 63.67 % of 150 m³/h. At 33 % the rule runs 2 and pays P_2 − P_1. */
    @Test
    void the_fixed_rule_takes_what_its_number_of_pumps_takes_more() {
        assertEquals(1, FlowRatioRule.GUIDELINE.running(Ratio.of(0.3033), 3));
        assertEquals(2, FlowRatioRule.GUIDELINE.running(Ratio.of(0.3034), 3));
        assertEquals(3, FlowRatioRule.GUIDELINE.running(Ratio.of(0.6367), 3));
        assertEquals(3, FlowRatioRule.GUIDELINE.running(Ratio.of(2), 3));
        Flow flow = Flow.cubicMetresPerHour(0.305 * 150);
        double wire = PLANT.set().wireWatts(0.01, 1) / PLANT.set().curve().shaftWatts(0.01, 1);
        double one = kilowatts(1, 0.305 * 150, 2);
        double two = kilowatts(2, 0.305 * 150, 2);
        assertEquals(
                wire * Math.max(0, two - one),
                STAGING.penalty(flow).orElseThrow().toKilowatts(),
                1e-8);
        assertTrue(two > one);
    }

    @Test
    void the_rule_gives_way_where_its_number_cannot_serve_the_flow() {
        Flow little = Flow.cubicMetresPerHour(0.31 * 150);
        Staging strict = Staging.of(plant(2).withLeastFlow(Ratio.percent(100)));
        assertEquals(Optional.of(1), strict.byRule(little));
        assertTrue(strict.byRule(Flow.cubicMetresPerHour(400)).isEmpty());
        assertTrue(strict.penalty(Flow.cubicMetresPerHour(400)).isEmpty());
    }

    /** A branch loss of 4 m at 50 m³/h adds 0.0016·Q² m to the head of each pump. */
    @Test
    void the_loss_of_a_branch_is_added_to_the_head_of_its_pump() {
        PumpPlant lossy = PLANT.withBranchLoss(Head.metres(4));
        double speed = lossy.speed(2, Flow.cubicMetresPerHour(100))
                .orElseThrow()
                .over(KnownPump.SPEED)
                .value();
        assertEquals(Math.sqrt((20 + 4 + 0.004 * 2500) / 36), speed, 1e-12);
    }

    /** Half an hour a step up to 60 m³/h and back; limits 2 % of 150 m³/h to either side of the switch near 47 m³/h. */
    @Test
    void a_pump_starts_after_the_hold_and_stops_after_hold_and_least_run() {
        double limit = crossing(1);
        double[] flows = new double[180];
        Arrays.fill(flows, 0, 30, limit - 10);
        Arrays.fill(flows, 30, 60, limit + 2.9);
        Arrays.fill(flows, 60, 80, limit + 3.1);
        Arrays.fill(flows, 80, 100, limit - 2.9);
        Arrays.fill(flows, 100, 180, limit - 3.1);
        StagingTimes times = new StagingTimes(Ratio.percent(4), Time.minutes(10), Time.minutes(60));
        StagedRun run = StagedRun.of(STAGING, times, si(flows), Time.minutes(1));
        assertEquals(1, run.running().get(69));
        assertEquals(2, run.running().get(70));
        assertEquals(2, run.running().get(129));
        assertEquals(1, run.running().get(130));
        assertEquals(1, run.starts());
        assertEquals(60, run.with(2).toMinutes(), 1e-9);
        assertTrue(run.energy().compareTo(run.least()) > 0);
    }

    /** Without hysteresis, hold and least run the best number runs in every step. */
    @Test
    void without_delays_the_energy_is_the_least() {
        double[] flows = {20, 60, 30, 0, 140, 70};
        StagingTimes none = new StagingTimes(Ratio.ZERO, Time.ZERO, Time.ZERO);
        StagedRun run = StagedRun.of(STAGING, none, si(flows), Time.hours(1));
        assertEquals(run.least().joules(), run.energy().joules(), 1e-6);
        assertEquals(List.of(1, 2, 1, 0, 3, 2), run.running());
        double hand = 0;
        for (double flow : new double[] {20, 60, 30, 140, 70}) {
            hand += Math.min(kilowatts(1, flow, 2), Math.min(kilowatts(2, flow, 2), kilowatts(3, flow, 2)));
        }
        double wire = PLANT.set().wireWatts(0.01, 1) / PLANT.set().curve().shaftWatts(0.01, 1);
        assertEquals(hand * wire, run.energy().toKilowattHours(), 1e-7);
    }

    @Test
    void a_plant_that_does_not_reach_its_design_says_so() {
        PumpPlant two = PumpPlant.of(PLANT.set(), 2, ControlLaw.constantHead(DESIGN));
        assertTrue(two.notes().has(StagingProblem.PLANT_SHORT_OF_DESIGN));
        assertTrue(two.wirePower(2, DESIGN.flow()).isEmpty());
        assertTrue(PLANT.notes().has(StagingProblem.STABLE_FLOW_ASSUMED));
    }

    @Test
    void what_cannot_be_staged_is_refused() {
        ControlLaw law = ControlLaw.constantHead(DESIGN);
        assertThrows(Refusal.class, () -> PumpPlant.of(PLANT.set(), 9, law));
        Refusal noHead = assertThrows(Refusal.class, () -> PumpPlant.of(PLANT.set(), 2, ControlLaw.fixedSpeed(DESIGN)));
        assertEquals(StagingProblem.STAGING_WITHOUT_HEAD_LAW, noHead.problem());
        assertThrows(Refusal.class, () -> PumpPlant.of(PLANT.set().onMains(), 2, law));
        assertThrows(Refusal.class, () -> PLANT.withBranchLoss(Head.metres(-1)));
        assertThrows(Refusal.class, () -> PLANT.withLeastFlow(Ratio.percent(101)));
        assertThrows(Refusal.class, () -> new FlowRatioRule(Ratio.percent(-1)));
        assertThrows(
                Refusal.class,
                () -> StagedRun.of(STAGING, StagingTimes.COMMON, new double[] {Double.NaN}, Time.hours(1)));
    }

    private static double crossing(int n) {
        double low = 30 * n;
        double high = 63 * n;
        for (int i = 0; i < 100; i++) {
            double middle = 0.5 * (low + high);
            if (kilowatts(n, middle, 2) < kilowatts(n + 1, middle, 2)) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private static double kilowatts(int n, double flow, double atNoFlow) {
        double s = Math.sqrt((20 + 0.004 * flow * flow / n / n) / 36);
        return s > 1 ? Double.POSITIVE_INFINITY : n * atNoFlow * s * s * s + 0.05 * flow * s * s;
    }

    private static double[] si(double[] cubicMetresPerHour) {
        return Arrays.stream(cubicMetresPerHour).map(flow -> flow / 3600).toArray();
    }

    private static PumpPlant plant(double kilowattsAtNoFlow) {
        Polynomial head = Polynomial.of(36, 0, -0.004).ofScaled(3600);
        Polynomial power = Polynomial.of(1000 * kilowattsAtNoFlow, 50).ofScaled(3600);
        CurveFormula formula = new CurveFormula(head, power, Flow.ZERO, Flow.cubicMetresPerHour(80));
        PumpCurve curve = PumpCurve.of("P-B", KnownPump.SPEED, KnownPump.WATER, formula)
                .withEfficiencyOverSpeed(EfficiencyOverSpeed.affinity());
        Power rated = Power.kilowatts(11);
        DriveTrain train = DriveTrain.of(Motor.ofClass(rated, 3, 4), Drive.reference(rated), new ConstantEfficiency());
        PumpSet set = PumpSet.of(curve, train).withMinimumSpeed(KnownPump.SPEED.times(0.1));
        return PumpPlant.of(set, 3, ControlLaw.constantHead(DESIGN));
    }
}
