package headrace.operation;

import headrace.circuit.SystemCurve;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.pump.SeriesPoint;
import headrace.pump.SeriesPumps;
import headrace.record.Basis;
import headrace.record.Traced;

/**
 * Where pumps in series meet a system curve.
 *
 * @param pumps the pumps
 * @param system the system curve
 * @param point where they meet
 */
public record SeriesOperation(SeriesPumps pumps, SystemCurve system, SeriesPoint point) implements Traced {
    /**
     * Returns where pumps in series meet a system curve.
     *
     * @throws Refusal with {@code BEYOND_PUMP_CURVES} or {@code NO_SHARED_POINT}
     */
    public static SeriesOperation of(SeriesPumps pumps, SystemCurve system) {
        return new SeriesOperation(pumps, system, pumps.meeting(system::headMetres, system.toString()));
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
