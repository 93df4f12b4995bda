package headrace.circuit.part;

import headrace.liquid.Liquid;
import headrace.numeric.Slope;
import headrace.problem.Notes;
import headrace.pump.PumpBranch;
import headrace.units.Flow;

/**
 * A pump in a branch, beside the one that closes the loop: the branch loses a negative head in it, and nothing flows
 * back through its check valve.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Heads of the liquid for which its curve was made.
 *   <dt>Limits
 *   <dd>It turns at the speed of its curve. Where the curve droops, a circuit may have several solutions; the one that
 *       is reached from the demands is returned. Beyond its curve, or driven to no flow, it is noted.
 *   <dt>Errors
 *   <dd>As {@link PumpBranch}.
 *   <dt>Source
 *   <dd>Textbook knowledge.
 * </dl>
 *
 * @param pump the pump with its check valve and the loss of its own connections
 */
public record BoosterPump(PumpBranch pump) implements NamedPart {
    @Override
    public String name() {
        return pump.name();
    }

    @Override
    public BoosterPump named(String other) {
        return new BoosterPump(pump.named(other));
    }

    @Override
    public Passage passage() {
        return Passage.FORWARD;
    }

    /** A pump that stands still is a check valve. */
    @Override
    public LinkLaw in(Liquid liquid) {
        return new Law(pump);
    }

    @Override
    public Notes notesAt(Flow flow, Liquid liquid) {
        Flow most = pump.curve().extendedHighestFlow();
        return flow.compareTo(most) > 0
                ? Notes.NONE.with(
                        PartProblem.BOOSTER_BEYOND_CURVE,
                        "'" + name() + "' moves " + flow + ", and its curve ends at " + most)
                : Notes.NONE;
    }

    /** The head that it loses: what it adds, with the other sign. */
    private record Law(PumpBranch pump) implements LinkLaw {
        @Override
        public double headMetres(double q) {
            double given = pump.running() ? pump.curve().headMetres(q, 1) : 0;
            return pump.crackingHead().metres() + pump.lossMetresPerSquaredFlow() * q * Math.abs(q) - given;
        }

        @Override
        public double slope(double q) {
            return Slope.at(this::headMetres, q);
        }
    }
}
