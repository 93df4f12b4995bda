package headrace.control;

import headrace.curve.Duty;
import headrace.estimate.BelievedFlow;
import headrace.estimate.FlowEstimator;
import headrace.numeric.Roots;
import headrace.problem.Notes;
import headrace.pump.PumpSet;
import headrace.units.Flow;
import headrace.units.Speed;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;

/**
 * A law without sensors: it looks at a flow and a head that are estimated from power and speed, and moves the speed
 * until these meet the law. What the pump then really gives is as far off as the estimate is.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Quantities.
 *   <dt>Limits
 *   <dd>Steady state, without noise. The estimator's map is what the controller believes; the pump set it is used with
 *       is the real one. Off its map the controller takes the end of it, and of several flows the least.
 *   <dt>Errors
 *   <dd>{@link headrace.problem.Refusal} with {@code NO_HEAD_OF_FLOW} for a law that does not make a head of flow.
 *   <dt>Source
 *   <dd>The law's own, and that of {@link FlowEstimator}.
 * </dl>
 */
public final class EstimatedLaw implements ControlLaw {
    private final ControlLaw law;
    private final FlowEstimator estimator;
    private final BelievedFlow believed;

    private EstimatedLaw(ControlLaw law, FlowEstimator estimator) {
        this.law = law;
        this.estimator = estimator;
        this.believed = BelievedFlow.of(estimator);
    }

    /** Returns a law that is run on estimates. */
    public static EstimatedLaw of(ControlLaw law, FlowEstimator estimator) {
        law.headAt(Flow.ZERO);
        return new EstimatedLaw(law, estimator);
    }

    /** Returns the law that it would be with sensors. */
    public ControlLaw measured() {
        return law;
    }

    /** Returns what it estimates with. */
    public FlowEstimator estimator() {
        return estimator;
    }

    @Override
    public String name() {
        return law.name() + ", on estimates";
    }

    @Override
    public String statement() {
        return law.statement() + "; flow and head estimated from power and speed with the map of " + estimator.map();
    }

    /** Power and speed are the drive's own: nothing out in the loop has to be observed. */
    @Override
    public Set<Observed> observes() {
        return EnumSet.noneOf(Observed.class);
    }

    @Override
    public Optional<Duty> design() {
        return law.design();
    }

    @Override
    public Demand demand(LoopState state, PumpSet set) {
        double q = state.flow().si();
        Speed own = set.curve().speed();
        double least = set.minimumSpeed().over(own).value();
        double most = set.maximumSpeed().over(own).value();
        double s = speedShare(share -> set.wireWatts(q, share), own, least, most);
        return new Demand.OfSpeed(own.times(s));
    }

    /**
     * Returns the share of a speed at which what is believed meets the law; an end of the range where it does so
     * nowhere.
     *
     * @param wire the wire power that the controller reads at a share of that speed
     * @param of the speed
     * @param least the least share
     * @param most the greatest share
     */
    public double speedShare(DoubleUnaryOperator wire, Speed of, double least, double most) {
        double toMap = of.over(estimator.map().speed()).value();
        DoubleUnaryOperator excess = share -> {
            double s = share * toMap;
            double flow = believed.flowAt(wire.applyAsDouble(share), s);
            double wanted =
                    law.headAt(Flow.cubicMetresPerSecond(Math.max(0, flow))).metres();
            return believed.headAt(flow, s) - wanted;
        };
        if (excess.applyAsDouble(least) >= 0) {
            return least;
        }
        return excess.applyAsDouble(most) <= 0 ? most : Roots.between(excess, least, most);
    }

    @Override
    public LawLimits limits() {
        return law.limits();
    }

    @Override
    public Notes notes() {
        return law.notes().and(estimator.notes());
    }

    @Override
    public String toString() {
        return name();
    }
}
