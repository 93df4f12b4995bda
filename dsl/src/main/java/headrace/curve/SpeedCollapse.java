package headrace.curve;

import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.units.Ratio;
import headrace.units.Speed;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;

/**
 * What readings at several speeds say about the affinity laws: brought to one speed, do they fall on one curve?
 *
 * <dl>
 *   <dt>Units
 *   <dd>Scatter as a share of the greatest head, or power, that the curve has at those flows; the same shares hold for
 *       the head and power coefficients, since all readings are of one impeller.
 *   <dt>Limits
 *   <dd>A speed that differs from the next by less than 5 % counts as the same: slip under load. Similarity is called
 *       good enough up to 2 % of head and 4 % of power, common practice.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code TOO_FEW_POINTS} without three flows near the tested speed, or with
 *       {@code FLOW_OUT_OF_RANGE} if no reading at a speed lies inside the range tested near the tested speed.
 *   <dt>Source
 *   <dd>Similarity as in ISO 9906:2012; the limits and the grouping are common practice, no source.
 * </dl>
 *
 * @param curve the curve fitted to the readings near the tested speed alone
 * @param groups the speeds, in increasing order
 */
public record SpeedCollapse(PumpCurve curve, List<Group> groups) {
    private static final double SAME_SPEED = 0.05;
    private static final double HEAD_LIMIT = 0.02;
    private static final double POWER_LIMIT = 0.04;

    /**
     * The readings at one speed, against the curve at the tested speed moved by the affinity laws.
     *
     * @param speed their mean speed
     * @param points how many they are
     * @param headScatter root mean square of the differences in head
     * @param powerScatter root mean square of the differences in shaft power
     * @param efficiencyShare the efficiency as a share of the one that the affinity laws alone would leave
     */
    public record Group(Speed speed, int points, Ratio headScatter, Ratio powerScatter, Ratio efficiencyShare) {
        /** Returns whether the affinity laws bring these readings onto the curve well enough. */
        public boolean similar() {
            return headScatter.value() <= HEAD_LIMIT && powerScatter.value() <= POWER_LIMIT;
        }
    }

    /** Compares the readings at every speed with the curve through those near the tested speed. */
    public static SpeedCollapse of(PumpTest test) {
        List<List<TestPoint>> bySpeed = grouped(test.points());
        List<TestPoint> near = bySpeed.stream()
                .min(Comparator.comparingDouble(
                        group -> Math.abs(mean(group).si() - test.speed().si())))
                .orElseThrow();
        PumpCurve curve = PumpCurve.fit(test.with(near));
        return new SpeedCollapse(
                curve, bySpeed.stream().map(group -> compared(curve, group)).toList());
    }

    private static List<List<TestPoint>> grouped(List<TestPoint> points) {
        List<TestPoint> ordered =
                points.stream().sorted(Comparator.comparing(TestPoint::speed)).toList();
        List<List<TestPoint>> groups = new ArrayList<>();
        Speed last = Speed.ZERO;
        for (TestPoint point : ordered) {
            if (groups.isEmpty() || point.speed().over(last).value() > 1 + SAME_SPEED) {
                groups.add(new ArrayList<>());
            }
            groups.get(groups.size() - 1).add(point);
            last = point.speed();
        }
        return groups;
    }

    private static Speed mean(List<TestPoint> group) {
        double sum = group.stream().mapToDouble(point -> point.speed().si()).sum();
        return Speed.radiansPerSecond(sum / group.size());
    }

    private static Group compared(PumpCurve curve, List<TestPoint> group) {
        List<TestPoint> inside = inside(curve, group);
        if (inside.isEmpty()) {
            throw new Refusal(
                    CurveProblem.FLOW_OUT_OF_RANGE,
                    "Asked to compare the readings of " + curve.name() + " near " + mean(group) + " with those near "
                            + curve.testedSpeed(),
                    "None of them lies in the range tested there, " + curve.lowestFlow() + " to " + curve.highestFlow()
                            + ", once brought to that speed",
                    "Add readings inside that range, or leave these out");
        }
        double taken = sum(inside, point -> point.shaftPower().watts());
        double expected = sum(inside, point -> curve.shaftWatts(point.flow().si(), 1));
        return new Group(
                mean(group),
                inside.size(),
                scatter(
                        inside,
                        point -> point.head().metres(),
                        point -> curve.headMetres(point.flow().si(), 1)),
                scatter(
                        inside,
                        point -> point.shaftPower().watts(),
                        point -> curve.shaftWatts(point.flow().si(), 1)),
                Ratio.of(expected / taken));
    }

    private static List<TestPoint> inside(PumpCurve curve, List<TestPoint> group) {
        return group.stream()
                .map(point -> point.atSpeed(curve.testedSpeed()))
                .filter(point -> curve.covers(point.flow().si(), 1))
                .toList();
    }

    private static double sum(List<TestPoint> points, ToDoubleFunction<TestPoint> what) {
        return points.stream().mapToDouble(what).sum();
    }

    private static Ratio scatter(
            List<TestPoint> points, ToDoubleFunction<TestPoint> read, ToDoubleFunction<TestPoint> expected) {
        double greatest = points.stream().mapToDouble(expected).max().orElseThrow();
        double squares = sum(points, point -> Math.pow(read.applyAsDouble(point) - expected.applyAsDouble(point), 2));
        return Ratio.of(Math.sqrt(squares / points.size()) / greatest);
    }

    /**
     * Returns the efficiency over speed that the readings show.
     *
     * @throws Refusal with {@code IMPOSSIBLE_EFFICIENCIES} if all readings are near one speed
     */
    public EfficiencyOverSpeed measured() {
        Group near = groups.stream()
                .min(Comparator.comparingDouble(group ->
                        Math.abs(group.speed().si() - curve.testedSpeed().si())))
                .orElseThrow();
        SortedMap<Ratio, Ratio> shares = new TreeMap<>();
        for (Group group : groups) {
            Ratio speed = group.speed().over(curve.testedSpeed());
            shares.put(
                    group == near ? Ratio.of(1) : speed, group.efficiencyShare().over(near.efficiencyShare()));
        }
        return EfficiencyOverSpeed.measured(shares);
    }

    /** Returns the curve near the tested speed, with the efficiency over speed that the readings show. */
    public PumpCurve measuredCurve() {
        return curve.withEfficiencyOverSpeed(measured());
    }

    /** Returns a note for each speed whose readings the affinity laws do not bring onto the common curve. */
    static Notes notes(PumpCurve pooled, PumpTest test) {
        List<List<TestPoint>> bySpeed = grouped(test.points());
        Notes notes = Notes.NONE;
        for (List<TestPoint> group : bySpeed) {
            if (bySpeed.size() == 1 || inside(pooled, group).isEmpty()) {
                continue;
            }
            Group compared = compared(pooled, group);
            if (!compared.similar()) {
                notes = notes.with(
                        CurveProblem.SIMILARITY_SCATTER,
                        "the readings near " + compared.speed() + " lie " + compared.headScatter()
                                + " of the greatest head and " + compared.powerScatter()
                                + " of the greatest power from the curve through all speeds, limits "
                                + Ratio.of(HEAD_LIMIT) + " and " + Ratio.of(POWER_LIMIT));
            }
        }
        return notes;
    }
}
