package headrace.chart.paint;

import headrace.work.Work;
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
    /** So many gaps from the end of another line a label reads as the name of that line. */
    private static final double AT_AN_END = 3;

    /** The cost of a place that would tell the reader something wrong. */
    private static final double NEVER = 1e9;

    /** A label set into a line hides no more than this share of it. */
    private static final double MOST_OF_OWN = 0.3;

    /**
     * A place that a label would like.
     *
     * @param box where
     * @param cost how little it is liked, 0 for best; comparable to pixels of hidden line
     */
    public record Candidate(Box box, double cost) {}

    private record Avoided(Track track, double weight, boolean rival, Box bounds) {}

    private final Box frame;
    private final double gap;
    private final List<Box> taken = new ArrayList<>();
    private final List<Avoided> avoided = new ArrayList<>();

    /** Creates a placer for a frame that keeps labels at least a gap apart, in pixels. */
    public LabelPlacer(Box frame, double gap) {
        this.frame = frame.grown(-gap / 2);
        this.gap = gap;
    }

    /** Keeps labels off a symbol, and its label nearer to it than to others. */
    public void keepClear(Box symbol) {
        taken.add(symbol);
        Track centre = Track.through(new double[] {symbol.middle()}, new double[] {symbol.centre()});
        avoided.add(new Avoided(centre, 0, true, symbol));
    }

    /**
     * Makes labels avoid a line.
     *
     * @param weight what each hidden pixel of it costs
     * @param rival whether a label that stands nearer to it than to its own line could be taken for its label
     */
    public void avoid(Track line, double weight, boolean rival) {
        avoided.add(new Avoided(line, weight, rival, line.bounds()));
    }

    /**
     * A label that wants a place.
     *
     * @param candidates where it would like to stand
     * @param own the line or the point that it names
     * @param setInto whether it stands on that line and breaks it
     * @param most the cost from which on it is better off in the legend
     */
    public record Wish(List<Candidate> candidates, Track own, boolean setInto, double most) {}

    /** Returns the best place for a label and takes it, or nothing if there is no room. */
    public Optional<Box> place(Wish wish) {
        Box best = null;
        double least = wish.most();
        for (Candidate candidate : wish.candidates().stream()
                .sorted(Comparator.comparingDouble(Candidate::cost))
                .toList()) {
            Work.poll();
            if (candidate.cost() >= least) {
                break;
            }
            if (free(candidate.box())) {
                double cost = candidate.cost() + hidden(candidate.box(), wish);
                if (cost < least && !wish.setInto()) {
                    cost += strange(candidate.box(), wish.own());
                }
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

    private double hidden(Box box, Wish wish) {
        double cost = 0;
        for (Avoided line : avoided) {
            if (line.weight() > 0 && line.bounds().grown(1).crosses(box)) {
                double length = line.track().lengthWithin(box);
                if (line.track() != wish.own() || !wish.setInto()) {
                    cost += line.weight() * length;
                } else if (length > MOST_OF_OWN * line.track().length()) {
                    return wish.most();
                }
            }
        }
        return cost;
    }

    /** How easily the label could be taken for that of another line or another point. */
    private double strange(Box box, Track own) {
        double near = own.distance(box);
        double cost = 1.5 * Math.max(0, near - gap);
        boolean point = own.size() == 1;
        for (Avoided other : avoided) {
            boolean sameKind = other.rival() && other.track().size() == 1 == point;
            if (sameKind && other.track() != own && !other.track().equals(own)) {
                double far = other.track().distance(box);
                if (far < near) {
                    return NEVER;
                }
                boolean atItsEnd = !point && box.distance(other.track().at(1)) < AT_AN_END * gap;
                cost += atItsEnd ? 40 : far < near + gap ? 10 : 0;
            }
        }
        return cost;
    }
}
