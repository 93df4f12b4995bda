package headrace.report;

import headrace.circuit.SystemCurve;
import headrace.control.ControlLaw;
import headrace.control.SteadyState;
import headrace.curve.Duty;
import headrace.curve.PumpCurve;
import headrace.curve.PumpTest;
import headrace.curve.TestPoint;
import headrace.drive.Drive;
import headrace.drive.DriveTrain;
import headrace.drive.LossModel;
import headrace.drive.Motor;
import headrace.energy.LoadBin;
import headrace.energy.LoadProfile;
import headrace.energy.StrategyComparison;
import headrace.liquid.Liquid;
import headrace.pump.PumpSet;
import headrace.record.Basis;
import headrace.units.EnergyPrice;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Money;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Speed;
import headrace.units.Temperature;
import headrace.units.Time;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** A pump, its motor and drive, a duty and control laws, made up from a seed. */
final class SeededSet {
    private static final double WEIGHT = 998.2 * 9.80665;

    final PumpTest test;
    final PumpCurve curve;
    final PumpSet set;
    final Duty design;
    final List<ControlLaw> laws;
    private final Random random;

    SeededSet(int seed) {
        random = new Random(seed);
        int poles = 2 + 2 * random.nextInt(3);
        double rpm = 6000.0 / poles * between(0.94, 0.99);
        double flow = Math.exp(between(Math.log(5), Math.log(400))) / 3600;
        double head = between(6, 45);
        double efficiency = between(0.45, 0.85);
        test = test("Seed " + seed, rpm, flow, head, WEIGHT * flow * head / efficiency);
        curve = PumpCurve.fit(test);
        Power most = Power.watts(1.15 * curve.shaftWatts(curve.highestFlow().si(), 1));
        Power rated = Power.kilowatts(Math.max(0.75, most.toKilowatts()));
        set = PumpSet.of(
                        curve,
                        DriveTrain.of(
                                Motor.ofClass(rated, 3, poles),
                                Drive.reference(rated),
                                LossModel.all().get(random.nextInt(2))))
                .withMinimumSpeed(curve.speed().times(between(0.25, 0.5)));
        double share = between(0.7, 1.1);
        Flow designFlow = Flow.cubicMetresPerSecond(share * flow);
        design = new Duty(designFlow, curve.headAt(designFlow).times(between(0.75, 0.97)));
        laws = List.of(
                ControlLaw.constantSpeed(),
                ControlLaw.fixedSpeed(design),
                ControlLaw.constantHead(design),
                ControlLaw.linear(design, Ratio.of(between(0.4, 0.6))),
                ControlLaw.quadratic(design, Ratio.of(between(0.2, 0.5))));
    }

    private PumpTest test(String name, double rpm, double flow, double head, double watts) {
        int points = 9 + random.nextInt(4);
        double droop = random.nextInt(4) == 0 ? between(0.05, 0.2) : -between(0.02, 0.1);
        double atRest = between(1.1, 1.3);
        double powerAtRest = between(0.35, 0.5);
        List<TestPoint> all = new ArrayList<>();
        for (int i = 0; i < points; i++) {
            double x = 1.35 * i / (points - 1);
            double h = atRest + droop * x + (1 - atRest - droop) * x * x;
            double p = powerAtRest + (1 - powerAtRest) * x;
            all.add(new TestPoint(
                    Flow.cubicMetresPerSecond(x * flow),
                    Head.metres(h * head * (1 + 0.002 * random.nextGaussian())),
                    Power.watts(p * watts * (1 + 0.002 * random.nextGaussian())),
                    Speed.revolutionsPerMinute(rpm)));
        }
        return PumpTest.of(name, Speed.revolutionsPerMinute(rpm), Liquid.water(Temperature.celsius(20)), all);
    }

    SpeedMap map() {
        SpeedMap map = SpeedMap.of(set).with(SystemCurve.through(design));
        for (ControlLaw law : laws) {
            map = map.with(law);
        }
        for (double share : new double[] {0.25, 0.5, 0.75, 1}) {
            map = map.with(
                    SteadyState.of(laws.get(4), set, design.flow().times(share)).point());
        }
        return map;
    }

    StrategyComparison comparison() {
        List<LoadBin> bins = new ArrayList<>();
        for (int percent = 10; percent <= 100; percent += 10) {
            bins.add(new LoadBin(Ratio.percent(percent), Time.hours(random.nextInt(800))));
        }
        return StrategyComparison.of(
                set, LoadProfile.of("a made-up year", bins, Basis.NONE), new EnergyPrice(new Money(0.18, "EUR")), laws);
    }

    private double between(double least, double most) {
        return least + (most - least) * random.nextDouble();
    }
}
