package headrace.report;

import headrace.curve.CurveBands;
import headrace.curve.CurvePoint;
import headrace.curve.CurveProblem;
import headrace.curve.Droop;
import headrace.curve.FittedCurve;
import headrace.curve.PumpCurve;
import headrace.units.Flow;
import headrace.units.Quantity;
import headrace.units.Ratio;
import java.util.Optional;
import java.util.function.BiFunction;

/** How a pump curve shows itself: what may be believed of it, and how far it reaches. */
final class PumpCurveReport {
    static final Ratio CONFIDENCE = Ratio.percent(95);

    private PumpCurveReport() {}

    static Shown of(PumpCurve curve) {
        CurvePoint best = curve.bestEfficiencyPoint();
        return Composed.titled("Pump curve of " + curve.name() + " at " + curve.speed())
                .line("Best efficiency " + best.efficiency() + " at " + best.flow() + " and " + best.head()
                        + "; covers " + curve.lowestFlow() + " to " + curve.highestFlow() + beyond(curve))
                .line(droop(curve))
                .fact("head fit", curve.headFit())
                .fact("shaft power fit", curve.powerFit())
                .fact(
                        "flow of best efficiency",
                        curve.bands()
                                .flatMap(bands -> bands.bestEfficiencyFlow(CONFIDENCE))
                                .map(half -> best.flow() + " ±" + half + " (" + CONFIDENCE + ")"))
                .fact(
                        "head band there",
                        band(curve, (bands, at) -> bands.singleHeadAt(at, CONFIDENCE), curve.headFit()))
                .fact(
                        "power band there",
                        band(curve, (bands, at) -> bands.singleShaftPowerAt(at, CONFIDENCE), curve.powerFit()))
                .fact("head at " + curve.lowestFlow(), ends(curve, best))
                .fact("power at best efficiency", best.shaftPower())
                .fact("pumped", curve.liquid())
                .fact("efficiency over speed", curve.efficiencyOverSpeed().name())
                .chart(PumpCurveChart.of(curve))
                .shown(curve, cautions(curve));
    }

    private static String beyond(PumpCurve curve) {
        return curve.notes().has(CurveProblem.CURVE_EXTENDED)
                ? " as tested, and was continued by choice to " + curve.extendedLowestFlow() + " to "
                        + curve.extendedHighestFlow() + "."
                : ", and nothing beyond.";
    }

    private static String droop(PumpCurve curve) {
        Optional<Droop> droop = curve.droop();
        return droop.map(found -> "The head droops: it rises by " + found.rise() + " from " + found.foot() + " to "
                        + found.maximum() + " at " + found.flowOfMaximum()
                        + ", so heads in between are met at two flows.")
                .orElse("The head falls all the way, so each head belongs to one flow.");
    }

    private static String ends(PumpCurve curve, CurvePoint best) {
        return curve.headAt(curve.lowestFlow()) + ", "
                + curve.headAt(curve.lowestFlow()).over(best.head()) + " of the head at best efficiency";
    }

    private static Optional<String> band(
            PumpCurve curve, BiFunction<CurveBands, Flow, ? extends Quantity<?>> halfWidth, FittedCurve<?> fit) {
        Flow best = curve.bestEfficiencyPoint().flow();
        return curve.bands()
                .map(bands -> "±" + halfWidth.apply(bands, best) + " for one more reading (" + CONFIDENCE + ", "
                        + fit.degreesOfFreedom() + " degrees of freedom)");
    }

    private static String[] cautions(PumpCurve curve) {
        return curve.speed().compareTo(curve.testedSpeed()) > 0
                ? new String[] {Caution.OVERSPEED, Caution.ESTIMATE}
                : new String[] {Caution.ESTIMATE};
    }
}
