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
            roots.addAll(new Mix(this).roots(reading));
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

    Answers answers(Method method, At at) {
        return answers(method, rowAt(at), 0, at.speed());
    }

    Answers answers(Method method, MapRow row, int i, double s) {
        return switch (method) {
            case POWER_AND_SPEED -> sensitivity.of(Equation.POWER, Equation.SPEED, row, i, s);
            case TORQUE_AND_SPEED -> sensitivity.of(Equation.TORQUE, Equation.SPEED, row, i, s);
            case HEAD_AND_SPEED -> sensitivity.of(Equation.HEAD, Equation.SPEED, row, i, s);
            case POWER_AND_HEAD -> sensitivity.of(Equation.POWER, Equation.HEAD, row, i, s);
            case MIX ->
                Mix.answers(answers(Method.POWER_AND_SPEED, row, i, s), answers(Method.HEAD_AND_SPEED, row, i, s));
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
        return Math.sqrt(Mix.product(flow, flow));
    }

    MapRow rowAt(At at) {
        MapRow row = new MapRow(1);
        row.flow[0] = at.flow();
        map.fill(at.speed(), row, 1);
        return row;
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
                    "The reading can mean " + roots.size() + " flows; a further reading, the flow a moment ago or the"
                            + " state of a valve tells them apart");
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
