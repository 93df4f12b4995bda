package headrace.control;

import headrace.circuit.Closing;
import headrace.circuit.solve.HeadSource;
import headrace.curve.Duty;
import headrace.problem.Refusal;
import headrace.pump.PumpSet;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Numbers;
import java.util.Optional;
import java.util.Set;

/**
 * A head that follows flow: {@code H = Hₘ + (H_d − Hₘ)·(Q/Q_d)^m}. Beyond design flow it goes on rising.
 *
 * @param shape the law's kind in a word
 * @param forDuty the design point
 * @param minimumHead the head at no flow, {@code Hₘ}
 * @param exponent {@code m}
 */
record HeadLaw(String shape, Duty forDuty, Head minimumHead, double exponent) implements ControlLaw {
    private static final double ROUNDING = 1e-12;

    HeadLaw {
        double share = minimumHead.over(forDuty.head()).value();
        if (forDuty.flow().si() <= 0 || share < 0 || share > 1 + ROUNDING) {
            throw new Refusal(
                    ControlProblem.IMPOSSIBLE_LAW,
                    "Asked for a " + shape + " law for " + forDuty + " with a minimum head of " + minimumHead,
                    "The design flow must be above 0 and the minimum head from 0 to the design head",
                    "State the minimum head as 0 to 100 % of " + forDuty.head());
        }
    }

    static HeadLaw constant(Duty design) {
        return new HeadLaw("constant head", design, design.head(), 1);
    }

    @Override
    public String name() {
        return isConstant() ? shape : shape + ", " + minimumHead.over(forDuty.head()) + " minimum head";
    }

    @Override
    public String statement() {
        if (isConstant()) {
            return "the pump head is kept at " + forDuty.head();
        }
        return "the pump head rises from " + minimumHead + " at no flow to " + forDuty.head() + " at " + forDuty.flow()
                + ", with flow to the power of " + Numbers.print(exponent);
    }

    @Override
    public Set<Observed> observes() {
        return isConstant() ? Set.of(Observed.PUMP_HEAD) : Set.of(Observed.PUMP_HEAD, Observed.FLOW);
    }

    @Override
    public Optional<Duty> design() {
        return Optional.of(forDuty);
    }

    @Override
    public Demand demand(LoopState state, PumpSet set) {
        return new Demand.OfHead(curveAt(state.flow()));
    }

    @Override
    public Optional<Head> requiredHead(Flow flow) {
        return Optional.of(curveAt(new LoopState(flow).flow()));
    }

    @Override
    public Closing closing(PumpSet set) {
        double low = minimumHead.metres();
        double rise = forDuty.head().metres() - low;
        double designFlow = forDuty.flow().si();
        return Closing.ofFlow(new HeadSource() {
            @Override
            public double metresAt(double q) {
                return low + rise * Math.pow(Math.max(0, q) / designFlow, exponent);
            }

            @Override
            public double slopeAt(double q) {
                double fraction = Math.max(0, q) / designFlow;
                return rise * exponent * Math.pow(fraction, exponent - 1) / designFlow;
            }
        });
    }

    private Head curveAt(Flow flow) {
        double fraction = flow.over(forDuty.flow()).value();
        return minimumHead.plus(forDuty.head().minus(minimumHead).times(Math.pow(fraction, exponent)));
    }

    private boolean isConstant() {
        return minimumHead.equals(forDuty.head());
    }

    @Override
    public String toString() {
        return name();
    }
}
