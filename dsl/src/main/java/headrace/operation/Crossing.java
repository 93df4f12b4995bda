package headrace.operation;

import headrace.circuit.SystemCurve;
import headrace.curve.PumpCurve;
import headrace.numeric.RootScan;
import headrace.problem.Refusal;
import headrace.pump.PumpSet;
import headrace.units.Flow;
import headrace.units.Speed;
import java.util.Arrays;
import java.util.List;

/**
 * Where the head of a pump at one speed meets a system curve.
 *
 * <p>A drooping pump can meet a flat system curve twice, and then it may run at either; so all points are given.
 */
public final class Crossing {
    private Crossing() {}

    /**
     * Returns every operating point over the tested range, the least flow first.
     *
     * @throws Refusal with {@code NO_OPERATING_POINT} if there is none
     */
    public static List<OperatingPoint> of(PumpSet set, Speed speed, SystemCurve system) {
        PumpCurve curve = set.curve().atSpeed(speed);
        double low = curve.lowestFlow().si();
        double high = curve.highestFlow().si();
        double[] flows = RootScan.between(q -> curve.headMetres(q, 1) - system.headMetres(q), low, high);
        if (flows.length == 0) {
            throw new Refusal(
                    OperationProblem.NO_OPERATING_POINT,
                    "Asked where " + curve.name() + " at " + speed + " meets the " + system,
                    "At " + curve.lowestFlow() + " the pump gives " + curve.headAt(curve.lowestFlow())
                            + " and the circuit takes " + system.headAt(curve.lowestFlow()) + "; at "
                            + curve.highestFlow() + " it is " + curve.headAt(curve.highestFlow()) + " against "
                            + system.headAt(curve.highestFlow()),
                    "Change the speed, or choose a pump whose tested range holds the point");
        }
        return Arrays.stream(flows)
                .mapToObj(q -> OperatingPoint.atSpeed(set, Flow.cubicMetresPerSecond(q), speed))
                .toList();
    }
}
