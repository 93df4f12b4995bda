package headrace.circuit.part.valve;

import headrace.circuit.part.PartProblem;
import headrace.numeric.MonotoneCubic;
import headrace.numeric.Roots;
import headrace.problem.Refusal;
import java.util.List;

/** A smooth rising curve through the points of a table. */
final class TabulatedShare implements Characteristic {
    private final List<Point> points;
    private final MonotoneCubic shares;

    private TabulatedShare(List<Point> points) {
        this.points = List.copyOf(points);
        shares = MonotoneCubic.through(
                points.stream().mapToDouble(point -> point.opening().si()).toArray(),
                points.stream().mapToDouble(point -> point.share().si()).toArray());
    }

    static TabulatedShare through(List<Point> points) {
        boolean ends = points.size() >= 2 && at(points.get(0), 0) && at(points.get(points.size() - 1), 1);
        boolean rising = ends;
        for (int i = 1; rising && i < points.size(); i++) {
            Point before = points.get(i - 1);
            rising = points.get(i).opening().compareTo(before.opening()) > 0
                    && points.get(i).share().compareTo(before.share()) > 0;
        }
        if (!rising) {
            throw new Refusal(
                    PartProblem.IMPOSSIBLE_PART,
                    "Asked for a characteristic through " + points.size() + " points"
                            + (ends ? " that do not rise one from the other" : " that do not go from 0 to 100 %"),
                    "Openings and shares of Kvs both rise from 0 % at shut to 100 % at open",
                    "Put the rows in order, and add the two ends");
        }
        return new TabulatedShare(points);
    }

    private static boolean at(Point point, double both) {
        return point.opening().si() == both && point.share().si() == both;
    }

    @Override
    public double shareAt(double opening) {
        double x = Math.min(1, Math.max(0, opening));
        return Math.min(1, Math.max(0, shares.valueAt(x)));
    }

    @Override
    public double openingAt(double share) {
        double kappa = Math.min(1, Math.max(0, share));
        if (kappa == 0 || kappa == 1) {
            return kappa;
        }
        return Roots.between(opening -> shareAt(opening) - kappa, 0, 1);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof TabulatedShare table && table.points.equals(points);
    }

    @Override
    public int hashCode() {
        return points.hashCode();
    }

    @Override
    public String toString() {
        return "through " + points.size() + " points";
    }
}
