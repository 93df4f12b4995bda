package headrace.estimate;

import headrace.estimate.RootSearch.At;
import headrace.estimate.Sensitivity.Answers;
import headrace.estimate.Sensitivity.Equation;
import headrace.liquid.Liquid;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Flow;
import headrace.units.Numbers;
import headrace.units.Ratio;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Flow and head of a pump set without a flow meter: its map read backwards, with what may be wrong with readings and
 * map.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Quantities at the doors.
 *   <dt>Limits
 *   <dd>Steady running, one liquid without air, the range and the speeds of the map. Every flow that fits is given;
 *       none is chosen for the user.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code READING_MISSING}, {@code SPEED_OUTSIDE_ESTIMATE}, {@code READING_ABOVE_MAP},
 *       {@code READING_BELOW_MAP} or {@code READINGS_DISAGREE}.
 *   <dt>Source
 *   <dd>Law of propagation of uncertainty, JCGM 100:2008, 5.1 and 5.2; the mix by weights of least variance is textbook
 *       knowledge. Of two flows of a mix within a standard uncertainty of each other the likelier one stands for both;
 *       that, and that a standard uncertainty beyond 5 % of best-efficiency flow is called blind, is our own choice.
 * </dl>
 */
public final class FlowEstimator implements Traced {
    /** From here on a flow is called blind, as a share of best-efficiency flow. */
    public static final double BLIND = 0.05;

    /** Flows by two methods belong together if they differ by no more than so many deviations of their difference. */
    private static final double TOGETHER = 3;

    /** A pair whose squared distance is greater by this than that of the best is twenty times less likely. */
    private static final double UNLIKELY = 2 * Math.log(20);

    private static final double ROUNDING = 1e-9;

    private final PowerMap map;
    private final ErrorBudget budget;
    private final Flow design;
    private final Notes own;
    private final RootSearch search;
    private final Sensitivity sensitivity;

    private FlowEstimator(PowerMap map, ErrorBudget budget, Flow design, Notes own) {
        this.map = map;
        this.budget = budget;
        this.design = design;
        this.own = own;
        this.search = new RootSearch(map);
        this.sensitivity = new Sensitivity(budget, map.speed().si());
    }

    /** Returns the estimator of a map; shares of design are of its best-efficiency flow until one is stated. */
    public static FlowEstimator of(PowerMap map, ErrorBudget budget) {
        return new FlowEstimator(map, budget, map.bestFlow(), Notes.NONE);
    }

    /** Returns this estimator with a design flow, of which shares are printed. */
    public FlowEstimator withDesign(Flow flow) {
        return new FlowEstimator(map, budget, flow, own);
    }

    /** Returns this estimator with other errors. */
    public FlowEstimator with(ErrorBudget errors) {
        return new FlowEstimator(map, errors, design, own);
    }

    /** Returns this estimator with another map, such as a calibrated one. */
    public FlowEstimator with(PowerMap other) {
        return new FlowEstimator(other, budget, design, own);
    }

    /** Returns this estimator for another liquid. */
    public FlowEstimator in(Liquid liquid) {
        return with(map.in(liquid));
    }

    /**
     * Returns this estimator for means of several readings. Noise shrinks with the root of how many independent
     * readings they are worth; what is systematic does not.
     *
     * @param readings how many readings, 1 or more
     * @param correlation of one reading's noise with that of the next, 0 if independent, below 1
     */
    public FlowEstimator averagedOver(int readings, double correlation) {
        if (readings < 1 || !(correlation >= 0 && correlation < 1)) {
            throw new Refusal(
                    EstimateProblem.IMPOSSIBLE_ERROR,
                    "Asked for a mean of " + readings + " readings with a correlation of " + correlation,
                    "There must be 1 or more, and the correlation lie from 0 to below 1",
                    "Use 0 where the noise of a reading has nothing to do with that of the next");
        }
        double worth = Math.max(1, readings * (1 - correlation) / (1 + correlation));
        Notes averaged = own.with(
                EstimateProblem.AVERAGED_READINGS,
                "A mean of " + readings + " readings, worth " + Numbers.print(worth)
                        + " independent ones: only noise shrinks by it, and only if the flow stood still meanwhile");
        return new FlowEstimator(map, budget.averagedOver(worth), design, averaged);
    }

    /** Returns the map. */
    public PowerMap map() {
        return map;
    }

    /** Returns the errors of readings and map. */
    public ErrorBudget budget() {
        return budget;
    }

    /** Returns the flow of which shares are printed. */
    public Flow design() {
        return design;
    }

    /** Returns what a reading says of flow and head, by the method that uses most of it. */
    public FlowEstimate estimate(Reading reading) {
        return estimate(Method.of(reading), reading);
    }

    /** Returns what a reading says of flow and head, by a method. */
    public FlowEstimate estimate(Method method, Reading reading) {
        method.requireIn(reading);
        List<FlowRoot> roots = new ArrayList<>();
        if (method == Method.MIX) {
            mixed(reading, roots);
        } else {
            for (At at : found(method, reading)) {
                roots.add(root(method, at, answers(method, at)));
            }
        }
        return new FlowEstimate(this, reading, method, roots, notes().and(ownOf(roots)), basis());
    }

    /** Returns the flows of a method other than the mix. */
    List<At> found(Method method, Reading reading) {
        return switch (method) {
            case POWER_AND_SPEED -> search.byPower(reading);
            case TORQUE_AND_SPEED -> search.byTorque(reading);
            case HEAD_AND_SPEED -> search.byHead(reading);
            case POWER_AND_HEAD -> search.byPowerAndHead(reading);
            case MIX -> throw new IllegalArgumentException("a mix has no flows of its own");
        };
    }

    private Answers answers(Method method, At at) {
        return answers(method, rowAt(at), 0, at.speed());
    }

    Answers answers(Method method, MapRow row, int i, double s) {
        return switch (method) {
            case POWER_AND_SPEED -> sensitivity.of(Equation.POWER, Equation.SPEED, row, i, s);
            case TORQUE_AND_SPEED -> sensitivity.of(Equation.TORQUE, Equation.SPEED, row, i, s);
            case HEAD_AND_SPEED -> sensitivity.of(Equation.HEAD, Equation.SPEED, row, i, s);
            case POWER_AND_HEAD -> sensitivity.of(Equation.POWER, Equation.HEAD, row, i, s);
            case MIX -> mix(answers(Method.POWER_AND_SPEED, row, i, s), answers(Method.HEAD_AND_SPEED, row, i, s));
        };
    }

    /**
     * Returns the standard uncertainty in m³/s of a flow that would be estimated, huge where nothing bounds it.
     *
     * @param q the flow in m³/s
     * @param s the speed as a share of that of the map
     */
    public double flowUncertainty(Method method, double q, double s) {
        double[] flow = answers(method, new At(q, s)).flow();
        return Math.sqrt(product(flow, flow));
    }

    private MapRow rowAt(At at) {
        MapRow row = new MapRow(1);
        row.flow[0] = at.flow();
        map.fill(at.speed(), row, 1);
        return row;
    }

    private Answers mix(Answers one, Answers two) {
        double weight = weight(one, two);
        int n = one.flow().length;
        Answers mixed = new Answers(new double[n], new double[n], new double[n]);
        for (int k = 0; k < n; k++) {
            mixed.flow()[k] = weight * one.flow()[k] + (1 - weight) * two.flow()[k];
            mixed.speed()[k] = weight * one.speed()[k] + (1 - weight) * two.speed()[k];
            mixed.head()[k] = weight * one.head()[k] + (1 - weight) * two.head()[k];
        }
        return mixed;
    }

    /** Returns the weight of the first of two flows that gives their mix the least variance, kept from 0 to 1. */
    static double weight(Answers one, Answers two) {
        double first = product(one.flow(), one.flow());
        double second = product(two.flow(), two.flow());
        double both = product(one.flow(), two.flow());
        double difference = first + second - 2 * both;
        return difference > 0 ? Math.max(0, Math.min(1, (second - both) / difference)) : 0.5;
    }

    private static double product(double[] one, double[] two) {
        double sum = 0;
        for (int k = 0; k < one.length; k++) {
            sum += one[k] * two[k];
        }
        return sum;
    }

    /**
     * A flow by power and one by head that lie together as their errors allow are one flow. Of several such pairs those
     * are left out that are far less likely than the best, and those that come out where a likelier one does.
     */
    private void mixed(Reading reading, List<FlowRoot> roots) {
        List<At> byPower = found(Method.POWER_AND_SPEED, reading);
        List<At> byHead = found(Method.HEAD_AND_SPEED, reading);
        List<Pair> pairs = new ArrayList<>();
        for (At power : byPower) {
            for (At head : byHead) {
                Pair pair = pair(power, head);
                if (pair.apart() <= TOGETHER * TOGETHER) {
                    pairs.add(pair);
                }
            }
        }
        pairs.sort(Comparator.comparingDouble(Pair::apart));
        for (Pair pair : pairs) {
            FlowRoot root = pair.root();
            boolean likely = pair.apart() <= pairs.get(0).apart() + UNLIKELY;
            if (likely && roots.stream().noneMatch(other -> isSame(other.flow(), root.flow()))) {
                roots.add(root);
            }
        }
        roots.sort(Comparator.comparing(root -> root.flow().value()));
        if (roots.isEmpty()) {
            throw new Refusal(
                    EstimateProblem.READINGS_DISAGREE,
                    "Asked for the flow of " + map.name() + " from " + reading,
                    "Power and speed mean " + flows(byPower) + ", head and speed mean " + flows(byHead)
                            + ", further apart than their stated errors allow",
                    "Find out which reading or which map is wrong before mixing them: a worn pump, a gauge height, the"
                            + " scale of a meter");
        }
    }

    private static boolean isSame(Spread<Flow> one, Spread<Flow> other) {
        double apart = Math.abs(one.value().si() - other.value().si());
        return apart <= one.standard().si() + ROUNDING * Math.abs(one.value().si());
    }

    private static String flows(List<At> all) {
        return String.join(
                " or ",
                all.stream()
                        .map(at -> Flow.cubicMetresPerSecond(at.flow()).toString())
                        .toList());
    }

    private Pair pair(At power, At head) {
        return new Pair(power, head, answers(Method.POWER_AND_SPEED, power), answers(Method.HEAD_AND_SPEED, head));
    }

    /** A flow by power and one by head. */
    private final class Pair {
        private final At power;
        private final At head;
        private final Answers one;
        private final Answers two;

        Pair(At power, At head, Answers one, Answers two) {
            this.power = power;
            this.head = head;
            this.one = one;
            this.two = two;
        }

        /** Returns the square of their distance in deviations of their difference. */
        double apart() {
            double variance = 0;
            for (int k = 0; k < one.flow().length; k++) {
                double by = one.flow()[k] - two.flow()[k];
                variance += by * by;
            }
            double rounding = ROUNDING * map.highestFlow(power.speed());
            double by = Math.max(0, Math.abs(power.flow() - head.flow()) - rounding);
            return by == 0 ? 0 : by * by / variance;
        }

        /** The head is mixed with the same weight of the map's at the one flow and the one that was read. */
        FlowRoot root() {
            double weight = weight(one, two);
            double flow = weight * power.flow() + (1 - weight) * head.flow();
            double metres = weight * map.headMetres(power.flow(), power.speed())
                    + (1 - weight) * map.headMetres(head.flow(), head.speed());
            return new RootBuild(FlowEstimator.this, mix(one, two))
                    .at(new At(flow, power.speed()), metres, rowAt(power));
        }
    }

    private FlowRoot root(Method method, At at, Answers answers) {
        MapRow row = rowAt(at);
        if (method == Method.HEAD_AND_SPEED) {
            return new RootBuild(this, answers).byHead(at, row);
        }
        return new RootBuild(this, answers).at(at, row.head[0], row);
    }

    private Notes ownOf(List<FlowRoot> roots) {
        Notes notes = Notes.NONE;
        if (roots.size() > 1) {
            notes = notes.with(
                    EstimateProblem.TWO_FLOWS,
                    "The reading can mean " + roots.size() + " flows; the head, the flow a moment ago or the state of a"
                            + " valve tells them apart");
        }
        for (FlowRoot root : roots) {
            if (root.blind()) {
                notes = notes.with(
                        EstimateProblem.BLIND_ZONE,
                        "Blind at " + root.flow().value() + ": a standard uncertainty of "
                                + root.flow().standard() + " is more than " + Ratio.of(BLIND)
                                + " of best-efficiency flow, " + map.bestFlow());
            }
        }
        return notes;
    }

    @Override
    public Notes notes() {
        Notes notes = map.notes().and(own);
        if (budget.assumed()) {
            notes = notes.with(
                    EstimateProblem.ERRORS_ASSUMED,
                    "Errors of readings and map were not stated; assumed are " + budget);
        }
        return map.isCalibrated()
                ? notes
                : notes.with(
                        EstimateProblem.NOT_CALIBRATED,
                        "The map of " + map.name() + " was not held against readings on site");
    }

    @Override
    public Basis basis() {
        return map.basis().with("errors of readings and map: " + budget);
    }

    @Override
    public String toString() {
        return "flow of " + map + ", errors: " + budget;
    }
}
