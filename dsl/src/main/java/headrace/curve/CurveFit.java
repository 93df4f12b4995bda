package headrace.curve;

import headrace.curve.PumpMap.Range;
import headrace.numeric.DegreeChoice;
import headrace.numeric.MonotoneCubic;
import headrace.numeric.PolynomialFit;
import headrace.numeric.Runs;
import headrace.numeric.ShapedFit;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Kind;
import headrace.units.Numbers;
import headrace.units.Power;
import headrace.units.Quantity;
import headrace.units.Ratio;
import java.util.List;

/** Makes curves of test points: fitted where they scatter, drawn through them where they do not. */
final class CurveFit {
    /** A residual beyond so many standard deviations of the fit without it is called an outlier. */
    private static final double OUTLIER = 3.5;

    /** Residuals in runs as few as chance makes them less often than this are called systematic. */
    private static final double UNLIKELY = 0.02;

    private final ReducedTest reduced;
    private Notes notes = Notes.NONE;

    private CurveFit(PumpTest test) {
        this.reduced = new ReducedTest(test);
    }

    static PumpCurve fitted(PumpTest test, HeadShape shape) {
        CurveFit made = new CurveFit(test);
        return made.curve(made.head(shape), made.power());
    }

    static PumpCurve through(PumpTest test) {
        CurveFit made = new CurveFit(test);
        return made.curve(
                made.through(Head.KIND, made.reduced.heads()), made.through(Power.KIND, made.reduced.powers()));
    }

    private PumpCurve curve(FittedCurve<Head> head, FittedCurve<Power> power) {
        PumpTest test = reduced.test();
        List<TestPoint> points = reduced.points();
        Tested tested = new Tested(
                test.name(), test.speed(), test.impellerDiameter(), test.liquid(), test.liquid(), points, head, power);
        Range range = reduced.range(head.curve());
        Basis basis =
                reduced.basis().with(tested.name() + ": " + tested.head()).with(tested.name() + ": " + tested.power());
        PumpCurve curve = CurveChecks.checked(
                tested, head.curve(), power.curve(), range, reduced.notes(range).and(notes), basis);
        return curve.with(SpeedCollapse.notes(curve, test));
    }

    private FittedCurve<Head> head(HeadShape shape) {
        PolynomialFit free = DegreeChoice.fit(reduced.flows(), reduced.heads(), reduced.headWeights());
        if (shape == HeadShape.FREE) {
            return fitted(Head.KIND, free, reduced.heads());
        }
        ShapedFit.Points points = new ShapedFit.Points(reduced.flows(), reduced.heads(), reduced.headWeights());
        ShapedFit shaped = ShapedFit.of(points, free.polynomial().degree(), shape.neverRising(), shape.concave());
        if (!shaped.held()) {
            return fitted(Head.KIND, free, reduced.heads());
        }
        FittedCurve<Head> held = FittedCurve.held(
                Head.KIND, shaped, hasScatter() ? reduced.points().size() - shaped.free() : 0);
        notes = notes.with(
                CurveProblem.SHAPE_HELD,
                "the head was held to be " + shape + ", which moved it from the curve nearest the points: "
                        + Numbers.print(Math.sqrt(shaped.sumOfSquares() / free.sumOfSquares()))
                        + " times as much scatter as without");
        return held;
    }

    private FittedCurve<Power> power() {
        PolynomialFit free = DegreeChoice.fit(reduced.flows(), reduced.powers(), reduced.powerWeights());
        return fitted(Power.KIND, free, reduced.powers());
    }

    private boolean hasScatter() {
        return reduced.points().size() >= DegreeChoice.FEWEST_POINTS;
    }

    private <Q extends Quantity<Q>> FittedCurve<Q> fitted(Kind<Q> kind, PolynomialFit fit, double[] values) {
        if (hasScatter()) {
            noteOutliers(kind, fit, values);
            noteRuns(kind, fit, values);
        } else {
            notes = notes.with(
                    CurveProblem.FEW_POINTS,
                    values.length
                            + " points: the curve of lowest degree through or nearest them, no residual, no band");
        }
        return FittedCurve.of(kind, fit, hasScatter());
    }

    private <Q extends Quantity<Q>> void noteOutliers(Kind<Q> kind, PolynomialFit fit, double[] values) {
        for (int i = 0; i < values.length; i++) {
            double deviation = Math.abs(fit.studentisedDeletedResidual(i));
            if (deviation > OUTLIER) {
                double flow = reduced.flows()[i];
                notes = notes.with(
                        CurveProblem.OUTLYING_POINT,
                        "the " + kind.name() + " of " + kind.make().apply(values[i]) + " at "
                                + Flow.cubicMetresPerSecond(flow) + " lies " + Numbers.print(deviation)
                                + " standard deviations from the curve through the others, limit "
                                + Numbers.print(OUTLIER) + "; the curve gives "
                                + kind.make().apply(fit.polynomial().valueAt(flow)));
            }
        }
    }

    private void noteRuns(Kind<?> kind, PolynomialFit fit, double[] values) {
        double[] residuals = new double[values.length];
        int negatives = 0;
        double largest = 0;
        for (int i = 0; i < values.length; i++) {
            residuals[i] = fit.residual(i);
            negatives += residuals[i] < 0 ? 1 : 0;
            largest = Math.max(largest, Math.abs(values[i]));
        }
        int runs = Runs.count(residuals);
        double chance = Runs.probabilityOfAtMost(runs, values.length - negatives, negatives);
        if (chance < UNLIKELY && fit.standardDeviation() > PumpMap.ROUNDING * largest) {
            notes = notes.with(
                    CurveProblem.SYSTEMATIC_RESIDUALS,
                    "the " + kind.name() + " lies above and below its points in only " + runs
                            + " stretches, which chance does in " + Ratio.of(chance) + " of cases, limit "
                            + Ratio.of(UNLIKELY));
        }
    }

    private <Q extends Quantity<Q>> FittedCurve<Q> through(Kind<Q> kind, double[] values) {
        if (reduced.differentFlows() < values.length) {
            throw new Refusal(
                    CurveProblem.REPEATED_FLOWS,
                    "Asked to draw the curve of " + reduced.test().name()
                            + " through points of which two or more are at" + " the same flow",
                    "A curve passes through one point at each flow",
                    "Fit repeated readings, or leave all but one out of a table");
        }
        return FittedCurve.known(kind, MonotoneCubic.through(reduced.flows(), values));
    }
}
