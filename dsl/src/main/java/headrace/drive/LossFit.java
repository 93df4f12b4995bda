package headrace.drive;

import headrace.numeric.LinearFit;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.units.Numbers;
import headrace.units.Ratio;
import java.util.List;
import java.util.function.Function;

/** Lays the terms of a loss formula through given losses, and says how well they fit. */
record LossFit(LinearFit fit, Ratio residual, Notes notes) {
    private static final double NOTED = 0.05;
    private static final double REFUSED = 0.25;

    /** What is fitted, as it stands in a sentence, and whether its terms may not fall below 0. */
    record Form(String name, boolean nonNegative, String variety) {}

    static LossFit of(List<LossPoint> points, Form form, Function<LossPoint, double[]> terms) {
        double[][] rows = points.stream().map(terms).toArray(double[][]::new);
        int wanted = points.isEmpty() ? 0 : rows[0].length;
        if (points.isEmpty() || points.size() < wanted) {
            throw new Refusal(
                    DriveProblem.TOO_FEW_LOSS_POINTS,
                    "Asked to fit " + form.name + " to " + points.size() + " points",
                    "Its formula has more terms than that: give " + form.variety,
                    "Add points, or state the efficiency or the loss at one point and use a model with assumed shares");
        }
        if (LinearFit.rank(rows) < wanted) {
            throw new Refusal(
                    DriveProblem.LOSS_POINTS_ALIKE,
                    "Asked to fit " + form.name + " to " + points.size() + " points that do not tell its terms apart",
                    "Each term needs its own trace in the points: give " + form.variety,
                    "Add points at other speeds and torques");
        }
        double[] watts =
                points.stream().mapToDouble(point -> point.loss().watts()).toArray();
        LinearFit fit = form.nonNegative ? LinearFit.nonNegative(rows, watts) : LinearFit.of(rows, watts);
        return judged(fit, points, form, wanted);
    }

    private static LossFit judged(LinearFit fit, List<LossPoint> points, Form form, int terms) {
        double mean = points.stream()
                .mapToDouble(point -> point.loss().watts())
                .average()
                .orElseThrow();
        Ratio residual = Ratio.of(fit.residual() / mean);
        if (residual.value() > REFUSED) {
            throw new Refusal(
                    DriveProblem.LOSS_POINTS_CONTRADICT,
                    "Asked to fit " + form.name + " to points from which the best formula still differs by " + residual
                            + " of their mean",
                    "Points of one machine agree within a few per cent; up to 25 % is fitted",
                    "Look for an exchanged column, a wrong unit or a typing error");
        }
        Notes notes = Notes.NONE;
        if (residual.value() > NOTED) {
            notes = notes.with(
                    DriveProblem.LOSS_POINTS_CONTRADICT,
                    "The points given for " + form.name + " differ from the formula by " + residual
                            + " of their mean, more than 5 %");
        }
        if (points.size() == terms) {
            notes = notes.with(
                    DriveProblem.LOSSES_WITHOUT_RESIDUAL,
                    "There are as many points for " + form.name + " as terms, " + Numbers.print(terms)
                            + ": nothing tells how well they fit");
        }
        return new LossFit(fit, residual, notes);
    }
}
