package headrace.report;

import headrace.chart.Chart;
import headrace.chart.mark.Dash;
import headrace.chart.mark.Ink;
import headrace.chart.mark.Line;
import headrace.chart.mark.Mark;
import headrace.chart.mark.Points;
import headrace.chart.mark.Reference;
import headrace.chart.mark.Symbol;
import headrace.curve.NpshCurve;
import headrace.curve.NpshPoint;
import headrace.curve.PumpCurve;
import headrace.operation.limit.ReachableRegion;
import headrace.operation.suction.Filling;
import headrace.operation.suction.NpshCheck;
import headrace.operation.suction.NpshOverReach;
import headrace.operation.suction.SuctionProblem;
import headrace.operation.suction.SuctionSide;
import headrace.operation.suction.WorkingPressure;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Speed;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/** How suction, NPSH and pressures show themselves. */
final class SuctionReports {
    private static final double ROUNDING = 1e-9;

    private SuctionReports() {}

    static Shown suction(SuctionSide suction) {
        return Composed.titled("Suction side").line(suction + ".").shown(suction);
    }

    static Shown npshCurve(NpshCurve curve) {
        Ruler flow = Ruler.of(Flow.KIND);
        Ruler head = Ruler.of(Head.KIND);
        List<Mark> marks = new ArrayList<>(required(curve, curve.testedSpeed(), flow, head));
        marks.add(readings(curve, flow, head));
        return Composed.titled("NPSH required by " + curve.name())
                .line(curve + ".")
                .chart(Chart.titled("NPSH required by " + curve.name() + " at " + curve.testedSpeed())
                        .across(flow.axis("Flow").from(0))
                        .panel(head.axis("NPSH").from(0), marks)
                        .build())
                .shown(curve);
    }

    static Shown check(NpshCheck check) {
        return facts(
                        Composed.titled("NPSH at " + check.point().flow() + " and "
                                + check.point().speed()),
                        check)
                .shown(check, Caution.SUCTION);
    }

    private static Composed facts(Composed composed, NpshCheck check) {
        return composed.fact("NPSH available", check.available())
                .fact("NPSH required", check.required())
                .fact("needed with its margin", check.needed())
                .fact("beyond what is needed", check.margin())
                .fact("pressure at the suction flange", check.suctionPressure());
    }

    static Shown overReach(NpshOverReach over) {
        NpshCheck worst = over.worst();
        String where = worst.point().flow() + " and " + worst.point().speed();
        String last = over.usedUpFrom()
                .map(flow -> "The margin is used up from " + flow + " on at "
                        + over.reach().set().maximumSpeed() + "; ")
                .orElse("");
        return facts(
                        Composed.titled("NPSH of " + over.terms().curve().name() + " over all that it can reach")
                                .line(last + (last.isEmpty() ? "The" : "the") + " least margin is " + worst.margin()
                                        + ", at " + where + "."),
                        worst)
                .chart(chart(over))
                .shown(over, Caution.SUCTION);
    }

    private static Chart chart(NpshOverReach over) {
        Ruler flow = Ruler.of(Flow.KIND);
        Ruler head = Ruler.of(Head.KIND);
        ReachableRegion reach = over.reach();
        Speed speed = reach.set().maximumSpeed();
        NpshCurve required = over.terms().curve();
        PumpCurve curve = reach.curveAt(speed);
        ReachableRegion.Flows flows = reach.flowsAt(speed);
        double low = flows.lowest().si();
        double high = flows.highest().si();
        double s = required.share(speed).value();
        double known = Math.min(high, required.highestFlow(speed).si());
        List<Mark> marks = new ArrayList<>();
        marks.add(line(
                        q -> head.on(over.terms()
                                .suction()
                                .npshMetres(
                                        q, curve.headMetres(q, 1), over.terms().liquid())),
                        flow,
                        low,
                        high)
                .in(Ink.BLUE)
                .labelled("available"));
        marks.addAll(required(required, speed, flow, head));
        DoubleUnaryOperator needed = q -> head.on(over.terms().rule().neededMetres(required.metres(q, s)));
        double read = Math.min(required.lowestFlow(speed).si(), known);
        if (read > low) {
            marks.add(line(needed, flow, low, read).in(Ink.VERMILION).extended(true));
        }
        marks.add(line(needed, flow, Math.max(low, read), known)
                .in(Ink.VERMILION)
                .broken(Dash.DASH_DOT)
                .labelled("needed with margin"));
        if (Math.abs(s - 1) <= ROUNDING) {
            marks.add(readings(required, flow, head));
        }
        over.usedUpFrom()
                .ifPresent(from -> marks.add(Reference.standingAt(flow.on(from.si()), "used up from " + from)
                        .in(Ink.VERMILION)));
        return Chart.titled("NPSH of " + required.name() + " at " + speed + ", "
                        + over.terms().liquid())
                .across(flow.axis("Flow").from(0))
                .panel(head.axis("NPSH").from(0), marks)
                .caption("The margin: " + over.terms().rule() + ".")
                .build();
    }

    /** Returns what is required where it was read, and what stands in below or was extended above, dashed. */
    private static List<Mark> required(NpshCurve curve, Speed speed, Ruler flow, Ruler head) {
        double s = curve.share(speed).value();
        double low = curve.lowestFlow(speed).si();
        double tested = curve.highestTestedFlow(speed).si();
        double high = curve.highestFlow(speed).si();
        DoubleUnaryOperator metres = q -> head.on(curve.metres(q, s));
        List<Mark> lines = new ArrayList<>();
        if (low > 0) {
            lines.add(line(metres, flow, 0, low).in(Ink.VERMILION).extended(true));
        }
        lines.add(line(metres, flow, low, tested).in(Ink.VERMILION).labelled("required"));
        if (high > tested * (1 + ROUNDING)) {
            lines.add(line(metres, flow, tested, high).in(Ink.VERMILION).extended(true));
        }
        return lines;
    }

    private static Line line(DoubleUnaryOperator value, Ruler flow, double from, double to) {
        return Line.of(x -> value.applyAsDouble(x * flow.unit().factor()), flow.on(from), flow.on(to));
    }

    private static Mark readings(NpshCurve curve, Ruler flow, Ruler head) {
        double[] x = new double[curve.points().size()];
        double[] y = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            NpshPoint point = curve.points().get(i);
            double s = curve.testedSpeed().over(point.speed()).value();
            x[i] = flow.on(point.flow().si() * s);
            y[i] = head.on(point.required().si() * s * s);
        }
        return Points.at(x, y).as(Symbol.RING).in(Ink.VERMILION).labelled("readings");
    }

    static Shown filling(Filling filling) {
        return Composed.titled("Filling of a closed loop")
                .fact("filling pressure at the tank, cold", filling.cold())
                .fact("least pressure at the tank, hot", filling.hot())
                .shown(filling, Caution.HOT);
    }

    static Shown workingPressure(WorkingPressure pressure) {
        return Composed.titled("Highest working pressure")
                .line(
                        pressure.notes().has(SuctionProblem.OVER_RATING)
                                ? "More than a part bears."
                                : "Every part that was named bears it.")
                .fact("highest pressure", pressure.highest())
                .fact("weakest part", pressure.weakest().map(part -> part.name() + ", bears " + part.bears()))
                .shown(pressure, Caution.OVERSPEED);
    }
}
