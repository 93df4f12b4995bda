package headrace.operation.limit;

import static headrace.pump.KnownPump.SPEED;
import static headrace.pump.KnownPump.WATER;
import static headrace.pump.KnownPump.m3ph;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.curve.CurveProblem;
import headrace.curve.NpshCurve;
import headrace.curve.NpshPoint;
import headrace.curve.PumpCurve;
import headrace.curve.PumpTest;
import headrace.curve.TestPoint;
import headrace.operation.suction.Atmosphere;
import headrace.operation.suction.NpshCheck;
import headrace.operation.suction.NpshOverReach;
import headrace.operation.suction.NpshRule;
import headrace.operation.suction.SuctionSide;
import headrace.operation.suction.WorkingPressure;
import headrace.problem.Notes;
import headrace.problem.Problem;
import headrace.problem.Refusal;
import headrace.pump.ParallelPoint;
import headrace.pump.ParallelPumps;
import headrace.pump.PumpBranch;
import headrace.pump.PumpSet;
import headrace.pump.SeriesPoint;
import headrace.pump.SeriesPumps;
import headrace.units.Flow;
import headrace.units.GaugePressure;
import headrace.units.Head;
import headrace.units.Length;
import headrace.units.Mass;
import headrace.units.Power;
import headrace.units.Pressure;
import headrace.units.Ratio;
import headrace.units.Speed;
import headrace.units.Temperature;
import headrace.units.TemperatureDifference;
import headrace.units.Volume;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.Supplier;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

/**
 * Asks every result of limits, suction and several pumps for what lies far outside the test: it is refused, or marked.
 */
@DisplayNameGeneration(ReplaceUnderscores.class)
class ExtrapolationIsMarkedTest {
    private static final int ROUNDS = 3000;
    private static final double FROM = 20;
    private static final double TO = 100;

    /** Problems that say that a value rests on more than the test. */
    private static final List<Problem> MARKS = List.of(
            CurveProblem.EXTENDED_BEYOND_TEST,
            CurveProblem.CURVE_EXTENDED,
            CurveProblem.NPSH_BEYOND_TEST,
            LimitProblem.MINIMUM_FLOW_BELOW_TEST,
            LimitProblem.REACH_ENDS_WITH_TEST);

    private final Random random = new Random(20260118);
    private int refused;
    private int marked;
    private int inside;

    /** What was answered: its notes, and the flows at their speeds, in m³/s and shares of the tested speed. */
    private record Answer(Notes notes, List<double[]> flows) {
        static Answer of(Notes notes, Flow flow, Speed speed) {
            return new Answer(
                    notes,
                    List.<double[]>of(new double[] {flow.si(), speed.over(SPEED).value()}));
        }
    }

    private double between(double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    private PumpCurve curve() {
        PumpCurve curve = BestAtSixty.curve(FROM, TO);
        if (random.nextInt(3) == 0) {
            curve = curve.extendedTo(m3ph(between(TO, 120)));
        }
        return random.nextInt(3) == 0 ? curve.extendedTo(Flow.ZERO) : curve;
    }

    private static NpshCurve npsh() {
        List<TestPoint> points = new ArrayList<>();
        List<NpshPoint> readings = new ArrayList<>();
        for (int q = 20; q <= 100; q += 10) {
            points.add(new TestPoint(m3ph(q), Head.metres(40 - 0.0025 * q * q), Power.kilowatts(12), SPEED));
            readings.add(new NpshPoint(m3ph(q), Head.metres(2 + 3e-4 * q * q), SPEED));
        }
        return NpshCurve.of(PumpTest.of("P-B", SPEED, WATER, points).withNpsh(readings));
    }

    private ReachableRegion reach() {
        PumpSet set = BestAtSixty.set(curve());
        ReachableRegion reach = ReachableRegion.of(set.withMaximumSpeed(SPEED.times(between(0.5, 1.3))));
        return random.nextBoolean() ? reach : reach.between(m3ph(between(0, 60)), m3ph(between(60, 200)));
    }

    private List<Supplier<Answer>> questions() {
        return List.of(
                this::region,
                this::minimumFlow,
                this::deadHead,
                this::overload,
                this::heat,
                this::npshAtAPoint,
                this::npshOverReach,
                this::parallel,
                this::series,
                this::pressure);
    }

    private Answer region() {
        PumpCurve curve = curve().atSpeed(Ratio.of(between(0.3, 1.4)));
        RegionPoint at = OperatingRegion.USUAL.at(curve, m3ph(between(0, 200)));
        return Answer.of(at.notes(), at.best(), curve.speed());
    }

    private Answer minimumFlow() {
        PumpCurve curve = curve().atSpeed(Ratio.of(between(0.3, 1.4)));
        MinimumFlow least = MinimumFlow.of(
                curve,
                Optional.of(Ratio.of(between(0.05, 1))),
                Optional.of(TemperatureDifference.kelvins(between(0.02, 8))));
        return new Answer(
                least.notes(),
                List.of(
                        new double[] {
                            least.thermal().si(), curve.speed().over(SPEED).value()
                        },
                        new double[] {
                            least.stable().si(), curve.speed().over(SPEED).value()
                        }));
    }

    private Answer deadHead() {
        PumpCurve curve = curve().atSpeed(Ratio.of(between(0.3, 1.4)));
        DeadHead time = DeadHead.of(
                curve,
                Volume.litres(between(-1, 20)),
                Mass.kilograms(between(0, 80)),
                Temperature.celsius(between(0, 140)));
        return Answer.of(time.notes(), Flow.ZERO, time.speed());
    }

    private Answer overload() {
        ReachableRegion reach = reach();
        Overload overload = Overload.of(reach);
        assertTrue(Double.isFinite(overload.greatest().si()));
        return Answer.of(overload.notes(), overload.at(), reach.set().maximumSpeed());
    }

    private Answer heat() {
        PumpCurve curve = curve();
        Flow flow = m3ph(between(-10, 200));
        double kelvins = HeatRise.at(curve.at(flow), WATER).kelvins();
        assertTrue(Double.isFinite(kelvins));
        return Answer.of(curve.at(flow).notes(), flow, curve.speed());
    }

    private NpshCheck.Terms terms() {
        SuctionSide suction = SuctionSide.closed(
                Atmosphere.SEA_LEVEL, GaugePressure.kilopascals(between(-90, 300)), Length.metres(2));
        NpshCurve npsh = random.nextBoolean() ? npsh() : npsh().extendedTo(m3ph(between(100, 130)));
        return new NpshCheck.Terms(suction, npsh, NpshRule.USUAL, WATER);
    }

    private Answer npshAtAPoint() {
        PumpCurve curve = curve().atSpeed(Ratio.of(between(0.5, 1.2)));
        NpshCheck check = NpshCheck.of(curve.at(m3ph(between(0, 140))), terms());
        return Answer.of(check.notes(), check.point().flow(), check.point().speed());
    }

    private Answer npshOverReach() {
        NpshOverReach over = NpshOverReach.of(reach(), terms());
        return Answer.of(
                over.notes(), over.worst().point().flow(), over.worst().point().speed());
    }

    private Answer parallel() {
        List<PumpBranch> branches = new ArrayList<>();
        for (int i = 0; i < 1 + random.nextInt(3); i++) {
            branches.add(PumpBranch.of(curve().atSpeed(Ratio.of(between(0.6, 1.1)))));
        }
        double lift = between(0, 60);
        double k = Math.pow(10, between(3, 6));
        ParallelPoint point = ParallelPumps.of(branches).meeting(q -> lift + k * q * q, "system");
        List<double[]> flows = new ArrayList<>();
        point.branches()
                .forEach(branch -> flows.add(new double[] {
                    branch.flow().si(),
                    branch.branch().curve().speed().over(SPEED).value()
                }));
        return new Answer(point.notes(), flows);
    }

    private Answer series() {
        List<PumpCurve> curves = List.of(curve().atSpeed(Ratio.of(between(0.6, 1.1))), curve());
        double lift = between(0, 100);
        double k = Math.pow(10, between(3, 6));
        SeriesPoint point = SeriesPumps.of(curves).meeting(q -> lift + k * q * q, "system");
        List<double[]> flows = new ArrayList<>();
        point.points()
                .forEach(at -> flows.add(
                        new double[] {at.flow().si(), at.speed().over(SPEED).value()}));
        return new Answer(point.notes(), flows);
    }

    private Answer pressure() {
        ReachableRegion reach = reach();
        WorkingPressure pressure = WorkingPressure.of(
                reach, GaugePressure.kilopascals(between(-50, 400)), Pressure.kilopascals(between(0, 80)), List.of());
        return Answer.of(pressure.notes(), Flow.ZERO, reach.set().maximumSpeed());
    }

    private static boolean tested(double[] flow) {
        double homologous = flow[0] * 3600 / flow[1];
        return homologous >= FROM * (1 - 1e-9) && homologous <= TO * (1 + 1e-9);
    }

    @Test
    void nothing_beyond_the_test_is_answered_without_a_mark() {
        List<Supplier<Answer>> questions = questions();
        for (int round = 0; round < ROUNDS; round++) {
            int which = round % questions.size();
            try {
                judge(which, questions.get(which).get());
            } catch (Refusal refusal) {
                refused++;
            }
        }
        assertEquals(ROUNDS, refused + marked + inside);
        assertTrue(
                refused > ROUNDS / 10 && marked > ROUNDS / 10 && inside > ROUNDS / 20,
                refused + " refused, " + marked + " marked, " + inside + " inside");
    }

    private void judge(int question, Answer answer) {
        boolean all = answer.flows().stream().allMatch(ExtrapolationIsMarkedTest::tested);
        boolean noted = MARKS.stream().anyMatch(answer.notes()::has);
        assertTrue(all || noted, "question " + question + ": " + answer.notes());
        if (all) {
            inside++;
        } else {
            marked++;
        }
    }
}
