package headrace.estimate;

import headrace.estimate.RootSearch.At;
import headrace.estimate.Sensitivity.Answers;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Ratio;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Puts a flow together with what its answers to the causes of error make of it. */
final class RootBuild {
    private final FlowEstimator estimator;
    private final Answers answers;
    private final List<ErrorBudget.Part> parts;

    RootBuild(FlowEstimator estimator, Answers answers) {
        this.estimator = estimator;
        this.answers = answers;
        this.parts = estimator.budget().parts();
    }

    FlowRoot at(At at, double metres, MapRow row) {
        return root(at, metres, at.flow() * row.wireOverFlow[0] / row.wire[0]);
    }

    FlowRoot byHead(At at, MapRow row) {
        return root(at, row.head[0], row.head[0] == 0 ? 0 : at.flow() * row.headOverFlow[0] / row.head[0]);
    }

    private FlowRoot root(At at, double metres, double steepness) {
        double random = answers.variance(parts, answers.flow(), false);
        double systematic = answers.variance(parts, answers.flow(), true);
        PowerMap map = estimator.map();
        double reach = map.highestFlow(at.speed()) - map.lowestFlow(at.speed());
        double cut = cut(random + systematic, reach);
        Spread<Flow> flow =
                new Spread<>(flow(at.flow()), flow(cut * Math.sqrt(random)), flow(cut * Math.sqrt(systematic)));
        double ofHead = answers.variance(parts, answers.head(), false);
        double systematicOfHead = answers.variance(parts, answers.head(), true);
        double most = map.headMetres(map.lowestFlow(at.speed()), at.speed());
        double cutOfHead = cut(ofHead + systematicOfHead, most);
        Spread<Head> head = new Spread<>(
                Head.metres(Math.max(0, metres)),
                Head.metres(cutOfHead * Math.sqrt(ofHead)),
                Head.metres(cutOfHead * Math.sqrt(systematicOfHead)));
        double best = estimator.map().bestFlow().si();
        double variance = random + systematic;
        return new FlowRoot(
                flow,
                head,
                estimator.map().speed().times(at.speed()),
                correlation(variance, ofHead + systematicOfHead),
                shares(variance, cut),
                steepness,
                Math.sqrt(variance) > FlowEstimator.BLIND * best);
    }

    /** Where nothing bounds an error to first order, the range of the map does. */
    private static double cut(double variance, double most) {
        double standard = Math.sqrt(variance);
        return standard > most ? most / standard : 1;
    }

    private static Flow flow(double si) {
        return Flow.cubicMetresPerSecond(si);
    }

    private double correlation(double ofFlow, double ofHead) {
        double together = 0;
        for (int k = 0; k < parts.size(); k++) {
            together += answers.flow()[k] * answers.head()[k];
        }
        double size = Math.sqrt(ofFlow) * Math.sqrt(ofHead);
        return size > 0 ? Math.max(-1, Math.min(1, together / size)) : 0;
    }

    private List<FlowRoot.Share> shares(double variance, double cut) {
        List<FlowRoot.Share> shares = new ArrayList<>();
        for (int k = 0; k < parts.size(); k++) {
            double size = Math.abs(answers.flow()[k]);
            if (size > 0) {
                shares.add(new FlowRoot.Share(parts.get(k).cause(), flow(size), Ratio.of(size * size / variance)));
            }
        }
        shares.sort(Comparator.comparing(FlowRoot.Share::share).reversed());
        return shares;
    }
}
