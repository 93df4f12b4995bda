package headrace.estimate;

import headrace.estimate.RootSearch.At;
import headrace.numeric.Quantiles;
import headrace.numeric.RandomStreams;
import headrace.problem.Notes;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Ratio;
import java.util.Arrays;

/**
 * What errors drawn at random make of an estimate: the reading and the map are drawn as their errors say, and the map
 * is read backwards each time.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Quantities; the band holds 95 % of the draws, 2.5 % on either side.
 *   <dt>Limits
 *   <dd>A flow is followed on its own stretch of the map. Draws that fall off the map are counted and left out, so that
 *       a band beside an end of the map is cut off there.
 *   <dt>Errors
 *   <dd>None of its own.
 *   <dt>Source
 *   <dd>Propagation of distributions, JCGM 101:2008.
 * </dl>
 */
public final class FlowDraws implements Traced {
    /** Where an end of the drawn band and of the linear one differ by more than this share of half the width. */
    private static final double DOUBTFUL = 0.10;

    private static final double LOW = 0.025;
    private static final double NORMAL = 1.959963984540054;

    private final FlowEstimate estimate;
    private final FlowRoot root;
    private final Counts counts;
    private final double[] flows;
    private final double[] heads;
    private final long seed;
    private final Moments moments;
    private final Quantiles ofFlow;
    private final Quantiles ofHead;

    /**
     * What became of the draws.
     *
     * @param kept how many have a flow
     * @param below how many fell below the map
     * @param above how many lay above it
     * @param twoFlows how many can mean another flow too
     */
    public record Counts(int kept, int below, int above, int twoFlows) {
        Counts plus(Counts other) {
            return new Counts(kept + other.kept, below + other.below, above + other.above, twoFlows + other.twoFlows);
        }
    }

    private record Moments(double flow, double head, double ofFlow, double ofHead, double correlation) {}

    private FlowDraws(FlowEstimate estimate, FlowRoot root, Drawn drawn, long seed) {
        this.estimate = estimate;
        this.root = root;
        this.counts = drawn.counts();
        this.flows = drawn.flows();
        this.heads = drawn.heads();
        this.seed = seed;
        this.moments = moments(flows, heads, counts.kept);
        this.ofFlow = Quantiles.of(flows, counts.kept);
        this.ofHead = Quantiles.of(heads, counts.kept);
    }

    /** Flows and heads of the draws, as many as were kept. */
    record Drawn(double[] flows, double[] heads, Counts counts) {}

    /**
     * Returns what draws make of the only flow of an estimate.
     *
     * @param draws how many, from 100
     * @param seed the seed: the same one gives the same draws
     */
    public static FlowDraws of(FlowEstimate estimate, int draws, long seed) {
        return of(estimate, estimate.only(), draws, seed);
    }

    /** Returns what draws make of one flow of an estimate. */
    public static FlowDraws of(FlowEstimate estimate, FlowRoot root, int draws, long seed) {
        return of(estimate, root, new Seeded(draws, seed, RandomStreams.of(seed)));
    }

    /**
     * How many draws from which streams.
     *
     * @param draws how many
     * @param seed by which they are named
     * @param streams where they come from: pairs of normal numbers for the random causes first, then uniform ones
     */
    public record Seeded(int draws, long seed, RandomStreams streams) {}

    /** Returns what draws from given streams make of one flow of an estimate. */
    public static FlowDraws of(FlowEstimate estimate, FlowRoot root, Seeded seeded) {
        if (seeded.draws < 100) {
            throw new IllegalArgumentException("fewer than 100 draws say nothing");
        }
        At at = new At(
                root.flow().value().si(),
                root.speed().over(estimate.estimator().map().speed()).value());
        Drawn drawn = DrawnInputs.of(estimate, seeded.streams).drawn(at, seeded.draws);
        return new FlowDraws(estimate, root, drawn, seeded.seed);
    }

    private static Moments moments(double[] q, double[] h, int n) {
        double flow = 0;
        double head = 0;
        for (int i = 0; i < n; i++) {
            flow += q[i];
            head += h[i];
        }
        flow /= n;
        head /= n;
        double qq = 0;
        double hh = 0;
        double qh = 0;
        for (int i = 0; i < n; i++) {
            double a = q[i] - flow;
            double b = h[i] - head;
            qq += a * a;
            hh += b * b;
            qh += a * b;
        }
        double size = Math.sqrt(qq) * Math.sqrt(hh);
        double correlation = size > 0 ? qh / size : 0;
        return new Moments(flow, head, Math.sqrt(qq / (n - 1)), Math.sqrt(hh / (n - 1)), correlation);
    }

    /** Returns the estimate that was drawn about. */
    public FlowEstimate estimate() {
        return estimate;
    }

    /** Returns the flow that was followed. */
    public FlowRoot root() {
        return root;
    }

    /** Returns what became of the draws. */
    public Counts counts() {
        return counts;
    }

    /** Returns the mean flow. */
    public Flow meanFlow() {
        return Flow.cubicMetresPerSecond(moments.flow);
    }

    /** Returns the standard deviation of the flow. */
    public Flow deviationOfFlow() {
        return Flow.cubicMetresPerSecond(moments.ofFlow);
    }

    /** Returns the flow below which a share of the draws lies. */
    public Flow flowAt(Ratio share) {
        return Flow.cubicMetresPerSecond(ofFlow.at(share.value()));
    }

    /** Returns the lower end of the 95 % band of the flow. */
    public Flow lowFlow() {
        return flowAt(Ratio.of(LOW));
    }

    /** Returns the upper end of the 95 % band of the flow. */
    public Flow highFlow() {
        return flowAt(Ratio.of(1 - LOW));
    }

    /** Returns the mean head. */
    public Head meanHead() {
        return Head.metres(moments.head);
    }

    /** Returns the standard deviation of the head. */
    public Head deviationOfHead() {
        return Head.metres(moments.ofHead);
    }

    /** Returns the head below which a share of the draws lies. */
    public Head headAt(Ratio share) {
        return Head.metres(ofHead.at(share.value()));
    }

    /** Returns the lower end of the 95 % band of the head. */
    public Head lowHead() {
        return headAt(Ratio.of(LOW));
    }

    /** Returns the upper end of the 95 % band of the head. */
    public Head highHead() {
        return headAt(Ratio.of(1 - LOW));
    }

    /** Returns how flow and head go together over the draws. */
    public double correlation() {
        return moments.correlation;
    }

    /** Returns the flows of the draws that were kept, in the order in which they were drawn, in m³/s. */
    public double[] flows() {
        return Arrays.copyOf(flows, counts.kept);
    }

    /** Returns whether both ends of the linear 95 % band lie within 10 % of its half width of the drawn ones. */
    public boolean linearHolds() {
        double value = root.flow().value().si();
        double half = NORMAL * root.flow().standard().si();
        double low = Math.abs(value - half - lowFlow().si());
        double high = Math.abs(value + half - highFlow().si());
        return Math.max(low, high) <= DOUBTFUL * half;
    }

    @Override
    public Notes notes() {
        Notes notes = estimate.notes();
        int left = counts.below + counts.above;
        if (left > 0) {
            notes = notes.with(
                    EstimateProblem.DRAWS_OFF_MAP,
                    counts.below + " draws fell below the map and " + counts.above
                            + " above it; they are left out, and the band is cut off there");
        }
        return linearHolds()
                ? notes
                : notes.with(
                        EstimateProblem.LINEAR_BAND_DOUBTFUL,
                        "The linear band of 95 % ends elsewhere than the drawn one by more than 10 % of its half width:"
                                + " go by the drawn one");
    }

    @Override
    public Basis basis() {
        return estimate.basis()
                .with((counts.kept + counts.below + counts.above) + " draws with seed " + seed
                        + " (SplitMix64, normal by Box and Muller), JCGM 101:2008");
    }

    @Override
    public String toString() {
        return lowFlow() + " to " + highFlow() + " and " + lowHead() + " to " + highHead() + " (95 % of " + counts.kept
                + " draws)";
    }
}
