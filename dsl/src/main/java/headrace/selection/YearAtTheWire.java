package headrace.selection;

import headrace.control.ControlLaw;
import headrace.curve.PumpCurve;
import headrace.energy.LoadBin;
import headrace.operation.limit.OperatingRegion;
import headrace.problem.Refusal;
import headrace.pump.PumpSet;
import headrace.units.Energy;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Ratio;

/**
 * The year of one candidate in bare numbers: what the wire gives, and how many of its hours lie in the preferred
 * region.
 *
 * @param energy the energy from the wire
 * @param preferred the share of the running hours in the preferred region
 * @param shortHours the hours at greatest speed in which it falls short of the law
 */
record YearAtTheWire(Energy energy, Ratio preferred, double shortHours) {
    private static final double ROUNDING = 1e-9;

    static YearAtTheWire of(PumpSet set, Wish wish) {
        PumpCurve curve = set.curve();
        ControlLaw law = wish.law();
        double design = wish.duty().flow().si();
        double least = set.minimumSpeed().over(curve.speed()).value();
        double most = set.maximumSpeed().over(curve.speed()).value();
        double best = curve.bestEfficiencyPoint().flow().si();
        double standby = set.driveTrain().standby().watts();
        double joules = 0;
        double preferred = 0;
        double running = 0;
        double tooLittle = 0;
        for (LoadBin bin : wish.year().bins()) {
            double seconds = bin.hours().seconds();
            double q = design * bin.flowFraction().value();
            if (q == 0) {
                joules += standby * seconds;
                continue;
            }
            double asked =
                    law.requiredHead(Flow.cubicMetresPerSecond(q)).orElseThrow().metres();
            double s = speed(curve, q, asked, new double[] {least, most});
            requireTested(curve, q, s, bin);
            tooLittle += curve.headMetres(q, s) < asked * (1 - ROUNDING) ? seconds : 0;
            joules += set.wireWatts(q, s) * seconds;
            running += seconds;
            OperatingRegion.Zone zone = wish.conditions().region().zoneOf(Ratio.of(q / (s * best)));
            preferred += zone == OperatingRegion.Zone.PREFERRED ? seconds : 0;
        }
        return new YearAtTheWire(Energy.joules(joules), Ratio.of(preferred / running), tooLittle / 3600);
    }

    /** Returns the speed that the law asks for, or the limit that holds where no speed of the curve gives it. */
    private static double speed(PumpCurve curve, double q, double asked, double[] limits) {
        double s = curve.speedRatioFor(q, asked);
        if (s == Double.POSITIVE_INFINITY
                && q >= curve.lowestFlowAt(limits[0]) * (1 - ROUNDING)
                && q <= curve.highestFlowAt(limits[0])
                && curve.headMetres(q, limits[0]) >= asked) {
            return limits[0];
        }
        return Math.max(limits[0], Math.min(limits[1], s));
    }

    private static void requireTested(PumpCurve curve, double q, double s, LoadBin bin) {
        double low = curve.lowestFlowAt(s);
        double high = curve.highestFlowAt(s);
        if (q < low * (1 - ROUNDING) || q > high * (1 + ROUNDING)) {
            throw new Refusal(
                    SelectionProblem.LOAD_BEYOND_TEST,
                    "The year asks for " + Flow.cubicMetresPerSecond(q) + ", " + bin.flowFraction() + " of design flow",
                    "At " + curve.speed().times(s) + " the test reaches from " + Flow.cubicMetresPerSecond(low) + " to "
                            + Flow.cubicMetresPerSecond(high) + ", with " + Head.metres(curve.headMetres(high, s))
                            + " there",
                    "Take a larger or smaller pump, or extend the curve by choice");
        }
    }
}
