package headrace.chart.paint;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Finds room for labels inside a frame, one after another.
 *
 * <p>A label never crosses the frame, another label or anything {@link #keepClear kept clear}. It may lie across lines
 * at a cost that grows with the length it hides; among its candidates the cheapest wins, and if that is still too dear
 * the label has no room. The same requests in the same order give the same places.
 */
public final class LabelPlacer {
    /** A label may hide about this many pixels of ordinary line before it is better off in the legend. */
    private static final double TOO_DEAR = 100;

    /**
     * A place that a label would like.
     *
     * @param box where
     * @param cost how little it is liked, 0 for best; comparable to pixels of hidden line
     */
    public record Candidate(Box box, double cost) {}

    private record Avoided(Track track, double weight, Box bounds) {}

    private final Box frame;
    private final double gap;
    private final List<Box> taken = new ArrayList<>();
    private final List<Avoided> avoided = new ArrayList<>();

    /** Creates a placer for a frame that keeps labels at least a gap apart, in pixels. */
    public LabelPlacer(Box frame, double gap) {
        this.frame = frame.grown(-gap);
        this.gap = gap;
    }

    /** Keeps labels off a box. */
    public void keepClear(Box box) {
        taken.add(box);
    }

    /** Makes labels avoid a line; each hidden pixel of it costs so much. */
    public void avoid(Track track, double weight) {
        avoided.add(new Avoided(track, weight, track.bounds()));
    }

    /**
     * Returns the best place for a label and takes it, or nothing if there is no room.
     *
     * @param own a line that the label may lie on without cost, since it is set into it; or null
     */
    public Optional<Box> place(List<Candidate> candidates, Track own) {
        Box best = null;
        double least = TOO_DEAR;
        for (Candidate candidate : candidates.stream()
                .sorted(Comparator.comparingDouble(Candidate::cost))
                .toList()) {
            if (candidate.cost() >= least) {
                break;
            }
            if (free(candidate.box())) {
                double cost = candidate.cost() + hidden(candidate.box(), own);
                if (cost < least) {
                    least = cost;
                    best = candidate.box();
                }
            }
        }
        if (best != null) {
            taken.add(best);
        }
        return Optional.ofNullable(best);
    }

    private boolean free(Box box) {
        Box wanted = box.grown(gap);
        return frame.holds(box) && taken.stream().noneMatch(wanted::crosses);
    }

    private double hidden(Box box, Track own) {
        double cost = 0;
        for (Avoided line : avoided) {
            if (line.track() != own && line.bounds().grown(1).crosses(box)) {
                cost += line.weight() * line.track().lengthWithin(box);
            }
        }
        return cost;
    }
}
