package headrace.circuit.part.pipe;

import headrace.circuit.part.PartProblem;
import headrace.problem.Notes;
import headrace.units.Flow;
import headrace.units.Velocity;

/**
 * The velocities between which pipes of a size are usually kept: common practice, no source. The line between its two
 * upper ends is an assumption of our own.
 */
final class PipeVelocity {
    private static final double LEAST = 0.6;
    private static final double SMALL_METRES = 0.05;
    private static final double SMALL_MOST = 1.2;
    private static final double LARGE_METRES = 0.25;
    private static final double LARGE_MOST = 3;

    private PipeVelocity() {}

    static double most(double insideMetres) {
        double share = (insideMetres - SMALL_METRES) / (LARGE_METRES - SMALL_METRES);
        return SMALL_MOST + Math.min(1, Math.max(0, share)) * (LARGE_MOST - SMALL_MOST);
    }

    static Notes notes(Pipe pipe, Flow flow) {
        Velocity velocity = pipe.velocityAt(flow);
        double size = Math.abs(velocity.si());
        double most = most(pipe.bore().inside().metres());
        if (size > most) {
            return Notes.NONE.with(
                    PartProblem.HIGH_VELOCITY,
                    said(pipe, flow) + ", above the usual " + Velocity.metresPerSecond(most) + " of its size");
        }
        if (size > 0 && size < LEAST) {
            return Notes.NONE.with(
                    PartProblem.LOW_VELOCITY,
                    said(pipe, flow) + ", below the " + Velocity.metresPerSecond(LEAST) + " that carry air along");
        }
        return Notes.NONE;
    }

    private static String said(Pipe pipe, Flow flow) {
        return "In " + pipe.part() + " the velocity is " + pipe.velocityAt(flow) + " at " + flow;
    }
}
