package headrace.report;

import headrace.chart.mark.Ink;
import headrace.chart.mark.Line;
import headrace.chart.mark.Mark;
import headrace.curve.PumpCurve;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/** A curve over the range that its test covers, and dashed what was added to it by choice. */
final class CurveLines {
    private static final double ROUNDING = 1e-9;

    private CurveLines() {}

    /**
     * The flows of a curve in the unit of an axis.
     *
     * @param least the least, extended or not
     * @param low the least that is tested
     * @param high the greatest that is tested
     * @param most the greatest, extended or not
     */
    record Span(double least, double low, double high, double most) {
        static Span of(PumpCurve curve, Ruler flow) {
            return new Span(
                    flow.on(curve.extendedLowestFlow().si()),
                    flow.on(curve.lowestFlow().si()),
                    flow.on(curve.highestFlow().si()),
                    flow.on(curve.extendedHighestFlow().si()));
        }

        /** Returns the flows that both have. */
        Span with(Span other) {
            return new Span(
                    Math.max(least, other.least),
                    Math.max(low, other.low),
                    Math.min(high, other.high),
                    Math.min(most, other.most));
        }
    }

    static List<Mark> of(DoubleUnaryOperator value, Span span, Ink ink, String label) {
        List<Mark> lines = new ArrayList<>();
        lines.add(Line.of(value, span.low, span.high).in(ink).labelled(label));
        if (span.most > span.high * (1 + ROUNDING)) {
            lines.add(Line.of(value, span.high, span.most).in(ink).extended(true));
        }
        if (span.least < span.low - ROUNDING * span.high) {
            lines.add(Line.of(value, span.least, span.low).in(ink).extended(true));
        }
        return lines;
    }
}
