package headrace.operation;

import headrace.circuit.SystemCurve;
import headrace.problem.Refusal;
import headrace.pump.ParallelPoint;
import headrace.pump.ParallelPumps;
import headrace.pump.SeriesPoint;
import headrace.pump.SeriesPumps;

/** Where several pumps together meet a system curve. */
public final class Meeting {
    private Meeting() {}

    /**
     * Returns where pumps in parallel meet a system curve.
     *
     * @throws Refusal with {@code BEYOND_PUMP_CURVES} or {@code NO_SHARED_POINT}
     */
    public static ParallelPoint of(ParallelPumps pumps, SystemCurve system) {
        return pumps.meeting(system::headMetres, system.toString());
    }

    /**
     * Returns where pumps in series meet a system curve.
     *
     * @throws Refusal with {@code BEYOND_PUMP_CURVES} or {@code NO_SHARED_POINT}
     */
    public static SeriesPoint of(SeriesPumps pumps, SystemCurve system) {
        return pumps.meeting(system::headMetres, system.toString());
    }
}
