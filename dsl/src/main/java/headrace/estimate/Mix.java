package headrace.estimate;

import headrace.estimate.RootSearch.At;
import headrace.estimate.Sensitivity.Answers;
import headrace.problem.Refusal;
import headrace.units.Flow;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** The mix of a flow by power and speed and one by head and speed, with weights that give it the least variance. */
final class Mix {
    /** Flows by two methods belong together if they differ by no more than so many deviations of their difference. */
    private static final double TOGETHER = 3;

    /** A pair whose squared distance is greater by this than that of the best is twenty times less likely. */
    private static final double UNLIKELY = 2 * Math.log(20);

    private static final double ROUNDING = 1e-9;

    private final FlowEstimator estimator;

    Mix(FlowEstimator estimator) {
        this.estimator = estimator;
    }

    /** Returns the answers of a mix. */
    static Answers answers(Answers one, Answers two) {
        double weight = weight(one, two);
        int n = one.flow().length;
        Answers mixed = new Answers(new double[n], new double[n], new double[n]);
        for (int k = 0; k < n; k++) {
            mixed.flow()[k] = weight * one.flow()[k] + (1 - weight) * two.flow()[k];
            mixed.speed()[k] = weight * one.speed()[k] + (1 - weight) * two.speed()[k];
            mixed.head()[k] = weight * one.head()[k] + (1 - weight) * two.head()[k];
        }
        return mixed;
    }

    /** Returns the weight of the first of two flows that gives their mix the least variance, kept from 0 to 1. */
    static double weight(Answers one, Answers two) {
        double first = product(one.flow(), one.flow());
        double second = product(two.flow(), two.flow());
        double both = product(one.flow(), two.flow());
        double difference = first + second - 2 * both;
        return difference > 0 ? Math.max(0, Math.min(1, (second - both) / difference)) : 0.5;
    }

    /** Returns the sum of the products. */
    static double product(double[] one, double[] two) {
        double sum = 0;
        for (int k = 0; k < one.length; k++) {
            sum += one[k] * two[k];
        }
        return sum;
    }

    /**
     * A flow by power and one by head that lie together as their errors allow are one flow. Of several such pairs those
     * are left out that are far less likely than the best, and those that come out where a likelier one does.
     */
    List<FlowRoot> roots(Reading reading) {
        List<FlowRoot> roots = new ArrayList<>();
        List<At> byPower = estimator.found(Method.POWER_AND_SPEED, reading);
        List<At> byHead = estimator.found(Method.HEAD_AND_SPEED, reading);
        List<Pair> pairs = new ArrayList<>();
        for (At power : byPower) {
            for (At head : byHead) {
                Pair pair = pair(power, head);
                if (pair.apart() <= TOGETHER * TOGETHER) {
                    pairs.add(pair);
                }
            }
        }
        pairs.sort(Comparator.comparingDouble(Pair::apart));
        for (Pair pair : pairs) {
            FlowRoot root = pair.root();
            boolean likely = pair.apart() <= pairs.get(0).apart() + UNLIKELY;
            if (likely && roots.stream().noneMatch(other -> isSame(other.flow(), root.flow()))) {
                roots.add(root);
            }
        }
        roots.sort(Comparator.comparing(root -> root.flow().value()));
        if (roots.isEmpty()) {
            throw new Refusal(
                    EstimateProblem.READINGS_DISAGREE,
                    "Asked for the flow of " + estimator.map().name() + " from " + reading,
                    "Power and speed mean " + flows(byPower) + ", head and speed mean " + flows(byHead)
                            + ", further apart than their stated errors allow",
                    "Find out which reading or which map is wrong before mixing them: a worn pump, a gauge height, the"
                            + " scale of a meter");
        }
        return roots;
    }

    private static boolean isSame(Spread<Flow> one, Spread<Flow> other) {
        double apart = Math.abs(one.value().si() - other.value().si());
        return apart <= one.standard().si() + ROUNDING * Math.abs(one.value().si());
    }

    private static String flows(List<At> all) {
        return String.join(
                " or ",
                all.stream()
                        .map(at -> Flow.cubicMetresPerSecond(at.flow()).toString())
                        .toList());
    }

    private Pair pair(At power, At head) {
        return new Pair(
                power,
                head,
                estimator.answers(Method.POWER_AND_SPEED, power),
                estimator.answers(Method.HEAD_AND_SPEED, head));
    }

    /** A flow by power and one by head. */
    private final class Pair {
        private final At power;
        private final At head;
        private final Answers one;
        private final Answers two;

        Pair(At power, At head, Answers one, Answers two) {
            this.power = power;
            this.head = head;
            this.one = one;
            this.two = two;
        }

        /** Returns the square of their distance in deviations of their difference. */
        double apart() {
            double variance = 0;
            for (int k = 0; k < one.flow().length; k++) {
                double by = one.flow()[k] - two.flow()[k];
                variance += by * by;
            }
            double rounding = ROUNDING * estimator.map().highestFlow(power.speed());
            double by = Math.max(0, Math.abs(power.flow() - head.flow()) - rounding);
            return by == 0 ? 0 : by * by / variance;
        }

        /** The head is mixed with the same weight of the map's at the one flow and the one that was read. */
        FlowRoot root() {
            double weight = weight(one, two);
            double flow = weight * power.flow() + (1 - weight) * head.flow();
            double metres = weight * estimator.map().headMetres(power.flow(), power.speed())
                    + (1 - weight) * estimator.map().headMetres(head.flow(), head.speed());
            return new RootBuild(estimator, answers(one, two))
                    .at(new At(flow, power.speed()), metres, estimator.rowAt(power));
        }
    }
}
