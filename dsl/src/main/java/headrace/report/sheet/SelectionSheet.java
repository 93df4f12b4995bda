package headrace.report.sheet;

import headrace.chart.Chart;
import headrace.chart.mark.Area;
import headrace.chart.mark.Ink;
import headrace.chart.mark.Line;
import headrace.chart.mark.Mark;
import headrace.chart.mark.Points;
import headrace.chart.mark.Symbol;
import headrace.curve.CurveBands;
import headrace.curve.CurvePoint;
import headrace.curve.Duty;
import headrace.curve.PumpCurve;
import headrace.drive.DriveTrain;
import headrace.liquid.Liquid;
import headrace.operation.OperatingPoint;
import headrace.operation.limit.PumpLimits;
import headrace.operation.suction.NpshCheck;
import headrace.pump.PumpSet;
import headrace.report.Block.TableBlock;
import headrace.report.Composed;
import headrace.report.Reports;
import headrace.report.Ruler;
import headrace.report.Shown;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Ratio;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The sheet for a chosen pump: duty and liquid, the curve with its band, motor and drive, limits and region, NPSH. */
public final class SelectionSheet {
    private static final Ratio CONFIDENCE = Ratio.percent(95);
    private static final int STEPS = 100;

    private SelectionSheet() {}

    /** Returns the sheet as a draft, to which more can be added. */
    public static Sheet.Draft of(SheetHead head, PumpSet set, Duty duty, PumpLimits limits, Optional<NpshCheck> npsh) {
        OperatingPoint point = OperatingPoint.at(set, duty);
        Sheet.Draft draft = Sheet.titled(head)
                .part("Duty and liquid", duty(set.curve(), point))
                .part("Pump curve", curve(set.curve(), point))
                .part("Duty point", point)
                .part("Motor and drive", motor(set))
                .part(
                        "Limits and operating region",
                        withoutTables(Reports.of(limits).orElseThrow()))
                .rest(limits);
        npsh.ifPresentOrElse(
                check -> draft.part("NPSH", check),
                () -> draft.note(
                        SheetProblem.NOT_STATED, "The suction side was not stated, so that NPSH is not judged"));
        return draft;
    }

    private static Shown duty(PumpCurve curve, OperatingPoint point) {
        Liquid liquid = curve.liquid();
        return Composed.titled(curve.name() + " for " + point.flow() + " at " + point.head())
                .fact("pump", curve.name())
                .fact("flow", point.flow())
                .fact("head", point.head())
                .fact("liquid", liquid)
                .fact("density", liquid.density())
                .fact("viscosity", liquid.viscosity())
                .fact("vapour pressure", liquid.vapourPressure())
                .fact("impeller diameter", curve.impellerDiameter())
                .fact("speed of the test", curve.testedSpeed())
                .shown();
    }

    private static Shown motor(PumpSet set) {
        DriveTrain train = set.driveTrain();
        return Composed.titled(train.toString())
                .fact("rated power", train.motor().rated())
                .fact("full-load efficiency", train.motor().fullLoadEfficiency())
                .fact("poles", train.motor().poles())
                .fact("rated speed", set.ratedSpeed())
                .fact("speeds", set.minimumSpeed() + " to " + set.maximumSpeed())
                .fact("greatest shaft power of the curve", set.curve().greatestPower())
                .fact("loss model", train.model().name() + ": " + train.model().statement())
                .shown();
    }

    private static Shown curve(PumpCurve curve, OperatingPoint point) {
        PumpCurve atDuty = curve.atSpeed(point.speed());
        String band = curve.bands().isPresent()
                ? "The band holds one more reading at " + curve.speed() + " with 95 %."
                : "The test has too few points for a band.";
        return Composed.titled(curve.toString())
                .line(band)
                .fact("best efficiency at the speed of the duty", best(atDuty.bestEfficiencyPoint()))
                .chart(chart(curve, atDuty, point))
                .shown();
    }

    private static String best(CurvePoint point) {
        return point.efficiency() + " at " + point.flow() + " and " + point.head();
    }

    /** Facts and chart; the torque at every speed is for the maker of the drive and not for this sheet. */
    private static Shown withoutTables(Shown shown) {
        return new Shown(
                shown.title(),
                shown.lines(),
                shown.blocks().stream()
                        .filter(block -> !(block instanceof TableBlock))
                        .toList());
    }

    private static Chart chart(PumpCurve curve, PumpCurve atDuty, OperatingPoint point) {
        Ruler flow = Ruler.of(Flow.KIND);
        Ruler head = Ruler.of(Head.KIND);
        List<Mark> marks = new ArrayList<>();
        curve.bands().ifPresent(bands -> marks.add(band(curve, bands)));
        marks.add(line(curve).in(Ink.GREY).labelled(curve.speed().toString()));
        marks.add(line(atDuty).labelled(atDuty.speed() + ", the speed of the duty"));
        marks.add(Points.at(flow.on(point.flow().si()), head.on(point.head().si()))
                .as(Symbol.DIAMOND)
                .labelled("duty " + point.flow() + " at " + point.head()));
        return Chart.titled("Head over flow")
                .across(flow.axis("Flow").from(0))
                .panel(head.axis("Head").from(0), marks)
                .caption("Efficiency over speed: " + curve.efficiencyOverSpeed().name() + ".")
                .build();
    }

    private static Line line(PumpCurve curve) {
        double[] q = flows(curve);
        double[] h = new double[q.length];
        for (int i = 0; i < q.length; i++) {
            h[i] = curve.headMetres(q[i], 1);
        }
        return Line.through(Ruler.of(Flow.KIND).on(q), Ruler.of(Head.KIND).on(h));
    }

    private static Area band(PumpCurve curve, CurveBands bands) {
        double[] q = flows(curve);
        double[] low = new double[q.length];
        double[] high = new double[q.length];
        for (int i = 0; i < q.length; i++) {
            double half = bands.singleHeadAt(Flow.cubicMetresPerSecond(q[i]), CONFIDENCE)
                    .metres();
            low[i] = curve.headMetres(q[i], 1) - half;
            high[i] = curve.headMetres(q[i], 1) + half;
        }
        Ruler head = Ruler.of(Head.KIND);
        return Area.between(Ruler.of(Flow.KIND).on(q), head.on(low), head.on(high))
                .labelled("95 % band of one more reading");
    }

    private static double[] flows(PumpCurve curve) {
        double low = curve.lowestFlow().si();
        double high = curve.highestFlow().si();
        double[] q = new double[STEPS + 1];
        for (int i = 0; i <= STEPS; i++) {
            q[i] = i == STEPS ? high : low + (high - low) * i / STEPS;
        }
        return q;
    }
}
