package headrace.curve;

import headrace.numeric.Polynomial;
import headrace.problem.Notes;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Power;
import java.util.Optional;

/** What stands out in the shape of a curve: droop, power that falls, best efficiency at an end. */
final class CurveShape {
    private CurveShape() {}

    /** The stretch over which a polynomial rises most. */
    private record Rise(double from, double to, double by) {}

    private static Rise greatestRise(Polynomial curve, double low, double high) {
        double[] stationary = curve.derivative().rootsIn(low, high);
        double foot = low;
        Rise greatest = new Rise(low, low, 0);
        for (int i = 0; i <= stationary.length; i++) {
            double q = i < stationary.length ? stationary[i] : high;
            double by = curve.valueAt(q) - curve.valueAt(foot);
            if (by > greatest.by) {
                greatest = new Rise(foot, q, by);
            }
            foot = by < 0 ? q : foot;
        }
        double nothing = CurveMap.ROUNDING * Math.abs(curve.valueAt(greatest.to));
        return greatest.by > nothing ? greatest : new Rise(low, low, 0);
    }

    /** Returns the droop, with heads and flows at a speed ratio. */
    static Optional<Droop> droop(Polynomial head, double low, double high, double s) {
        Rise rise = greatestRise(head, low, high);
        return rise.by == 0
                ? Optional.empty()
                : Optional.of(new Droop(
                        Head.metres(rise.by * s * s),
                        Flow.cubicMetresPerSecond(rise.from * s),
                        Flow.cubicMetresPerSecond(rise.to * s),
                        Head.metres(head.valueAt(rise.to) * s * s)));
    }

    static Notes notes(CurveMap map) {
        Notes notes = Notes.NONE;
        Optional<Droop> droop = droop(map.head(), map.low(), map.high(), 1);
        if (droop.isPresent()) {
            notes = notes.with(
                    CurveProblem.HEAD_DROOP,
                    "the head rises by " + droop.get().rise() + " from "
                            + droop.get().foot() + " to "
                            + droop.get().flowOfMaximum() + ", so that a head near its maximum of "
                            + droop.get().maximum() + " is met at more than one flow");
        }
        Rise fall = greatestRise(map.power().times(-1), map.low(), map.high());
        if (fall.by > 0) {
            notes = notes.with(
                    CurveProblem.POWER_NOT_RISING,
                    "the shaft power falls by " + Power.watts(fall.by) + " from "
                            + Flow.cubicMetresPerSecond(fall.from) + " to " + Flow.cubicMetresPerSecond(fall.to)
                            + ", so that it is greatest inside the range and does not tell the flow there");
        }
        double best = map.best().flow();
        if (best <= map.low() || best >= map.high()) {
            notes = notes.with(
                    CurveProblem.BEST_EFFICIENCY_AT_END,
                    "the best efficiency stands at " + Flow.cubicMetresPerSecond(best)
                            + ", an end of the tested range, and may lie beyond it");
        }
        return notes;
    }
}
