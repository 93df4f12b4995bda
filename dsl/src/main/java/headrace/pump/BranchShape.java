package headrace.pump;

import headrace.numeric.Roots;
import headrace.problem.Refusal;
import java.util.ArrayList;
import java.util.List;

/** The stretches over which the head of a running branch only falls or only rises with flow, and its closed valve. */
final class BranchShape {
    private static final double ROUNDING = 1e-9;

    private BranchShape() {}

    /**
     * One way in which a branch can run, over the heads at which it can.
     *
     * @param branch the branch
     * @param from the flow at which the stretch begins, in m³/s
     * @param to the flow at which it ends; not above {@code from} if the valve is closed throughout
     * @param lowest the least head, in m
     * @param highest the greatest head
     * @param closedAbove the head from which on its check valve is closed; infinite if it never is
     */
    record Stretch(PumpBranch branch, double from, double to, double lowest, double highest, double closedAbove) {
        boolean rises() {
            return to > from && branch.headerMetres(to) > branch.headerMetres(from);
        }

        /** Returns whether its valve is closed throughout. */
        boolean shut() {
            return to <= from;
        }

        double top() {
            return Math.max(branch.headerMetres(from), branch.headerMetres(to));
        }

        double flowAt(double metres) {
            if (metres >= closedAbove) {
                return 0;
            }
            double atFrom = branch.headerMetres(from) - metres;
            double atTo = branch.headerMetres(to) - metres;
            if (atFrom * atTo >= 0) {
                return Math.abs(atFrom) < Math.abs(atTo) ? from : to;
            }
            return Roots.between(q -> branch.headerMetres(q) - metres, from, to);
        }
    }

    static void requireShutOff(PumpBranch branch) {
        if (!branch.knowsShutOff()) {
            throw new Refusal(
                    PumpProblem.SHUT_OFF_UNKNOWN,
                    "Asked when the check valve of " + branch + " closes",
                    "Its curve begins at " + branch.curve().extendedLowestFlow()
                            + ", and the valve goes by the head at no flow",
                    "Extend the curve to a flow of 0 by choice, or test the pump against a closed valve");
        }
    }

    static List<Stretch> of(PumpBranch branch) {
        requireShutOff(branch);
        double end = branch.curve().extendedHighestFlow().si();
        double shutOff = branch.headerMetres(0);
        double nothing = ROUNDING * Math.abs(shutOff);
        List<Double> turns = turns(branch, end, nothing);
        List<Stretch> stretches = new ArrayList<>();
        for (int i = 1; i < turns.size(); i++) {
            double from = turns.get(i - 1);
            double to = turns.get(i);
            double a = branch.headerMetres(from);
            double b = branch.headerMetres(to);
            boolean first = i == 1 && b <= a;
            double highest = first ? Double.POSITIVE_INFINITY : Math.max(a, b);
            stretches.add(
                    new Stretch(branch, from, to, Math.min(a, b), highest, first ? shutOff : Double.POSITIVE_INFINITY));
        }
        if (stretches.get(0).rises()) {
            stretches.add(new Stretch(branch, 0, 0, shutOff, Double.POSITIVE_INFINITY, shutOff));
        }
        return stretches;
    }

    /** Returns the ends of the curve and where its head turns between, leaving out turns within rounding. */
    private static List<Double> turns(PumpBranch branch, double end, double nothing) {
        double[] stops = Roots.stopsIn(branch::headerMetres, 0, end);
        List<Double> turns = new ArrayList<>(List.of(0.0));
        double extreme = 0;
        int direction = 0;
        for (int i = 1; i < stops.length; i++) {
            double change = branch.headerMetres(stops[i]) - branch.headerMetres(extreme);
            if (direction == 0 || change * direction >= 0) {
                direction = Math.abs(change) > nothing ? (int) Math.signum(change) : direction;
                extreme = stops[i];
            } else if (Math.abs(change) > nothing) {
                turns.add(extreme);
                direction = -direction;
                extreme = stops[i];
            }
        }
        turns.add(end);
        return turns;
    }
}
