package headrace.control;

import headrace.circuit.Closing;
import headrace.circuit.solve.ClosingLaw;
import headrace.circuit.solve.HeadSource;
import headrace.curve.PumpCurve;
import headrace.numeric.Roots;
import headrace.pump.PumpSet;

/**
 * What a pump set can make of a head that is asked of it: no less than at its least speed, no more than at its
 * greatest, and no more than its greatest wire power gives.
 */
final class WithinPump {
    private static final int HALVINGS = 60;

    private final PumpSet set;
    private final PumpCurve curve;
    private final double least;
    private final double greatest;
    private final double mostWatts;

    /**
     * Prepares the limits.
     *
     * @param set the pump set with the range of speed that the law leaves it
     * @param limits the limits of the law
     */
    WithinPump(PumpSet set, LawLimits limits) {
        this.set = set;
        curve = set.curve();
        least = set.minimumSpeed().over(curve.speed()).value();
        greatest = set.maximumSpeed().over(curve.speed()).value();
        mostWatts = limits.greatestPower().map(power -> power.watts()).orElse(Double.POSITIVE_INFINITY);
    }

    /** Returns a closing kept within the limits. */
    Closing keep(Closing closing) {
        return place -> held(closing.on(place));
    }

    private ClosingLaw held(ClosingLaw law) {
        if (law instanceof HeadSource source) {
            return (HeadSource) q -> kept(source.metresAt(q), q);
        }
        return loop -> kept(law.headMetres(loop), loop.flow());
    }

    /** Returns the head in m that the pump set gives at a flow in m³/s where this much is asked of it. */
    double kept(double asked, double flow) {
        double q = Math.max(0, flow);
        double low = curve.headMetres(q, least);
        double high = curve.headMetres(q, greatest);
        double head = Math.min(Math.max(asked, low), Math.max(low, high));
        if (mostWatts == Double.POSITIVE_INFINITY) {
            return head;
        }
        double speed = speedFor(q, head);
        if (set.wireWatts(q, speed) <= mostWatts) {
            return head;
        }
        // Where the least speed moves a flow only against a head below 0, its power means nothing.
        double from = low < 0 ? speedFor(q, 0) : least;
        return set.wireWatts(q, from) >= mostWatts
                ? curve.headMetres(q, from)
                : curve.headMetres(q, Roots.between(s -> set.wireWatts(q, s) - mostWatts, from, speed));
    }

    /** Head rises with speed, so that the speed is found between the limits even where the curve was not tested. */
    private double speedFor(double q, double head) {
        double low = least;
        double high = greatest;
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (low + high) / 2;
            if (curve.headMetres(q, middle) < head) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return high;
    }
}
