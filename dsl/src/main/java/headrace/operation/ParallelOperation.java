package headrace.operation;

import headrace.circuit.SystemCurve;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.pump.ParallelPoint;
import headrace.pump.ParallelPumps;
import headrace.record.Basis;
import headrace.record.Traced;

/**
 * Where pumps in parallel meet a system curve.
 *
 * @param pumps the pumps on their branches
 * @param system the system curve
 * @param point where they meet
 */
public record ParallelOperation(ParallelPumps pumps, SystemCurve system, ParallelPoint point) implements Traced {
    /**
     * Returns where pumps in parallel meet a system curve.
     *
     * @throws Refusal with {@code BEYOND_PUMP_CURVES} or {@code NO_SHARED_POINT}
     */
    public static ParallelOperation of(ParallelPumps pumps, SystemCurve system) {
        return new ParallelOperation(pumps, system, pumps.meeting(system::headMetres, system.toString()));
    }

    @Override
    public Notes notes() {
        return point.notes().and(system.notes());
    }

    @Override
    public Basis basis() {
        return point.basis().and(system.basis());
    }

    @Override
    public String toString() {
        return point.toString();
    }
}
