package headrace.chart;

import headrace.chart.Layout.Role;
import headrace.chart.mark.Area;
import headrace.chart.mark.ContourLines;
import headrace.chart.mark.Line;
import headrace.chart.mark.Mark;
import headrace.chart.mark.Points;
import headrace.chart.mark.Reference;
import headrace.chart.paint.Box;
import headrace.chart.paint.LabelPlacer;
import headrace.chart.paint.LabelPlacer.Candidate;
import headrace.chart.paint.Lettering;
import headrace.chart.paint.Track;
import headrace.chart.paint.Typeface;
import headrace.work.Work;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** One panel: its marks in pixels, and where their labels found room. */
final class PanelPlan {
    /** A label without room. */
    record Homeless(PanelPlan panel, Drawn drawn, Track track, String text) {
        /** Returns whether the two could be told apart by colour only, or not at all. */
        boolean looksLike(Homeless other) {
            return drawn.look().equals(other.drawn.look());
        }

        /** Returns whether the panel shows another mark that looks the same in every way. */
        boolean hasTwin() {
            return panel.drawn.stream()
                            .filter(other -> other.mark().ink() == drawn.mark().ink())
                            .filter(other -> other.look().equals(drawn.look()))
                            .count()
                    > 1;
        }
    }

    /** What it may cost to place a label, in pixels of thin line hidden, before the legend is better. */
    private static final double USUAL = 80;

    private static final double AT_ITS_END = 8;
    private static final double KEY_MOST = 400;

    private final Style style;
    private final Scale scale;
    private final List<Drawn> drawn;
    private final LabelPlacer placer;
    private final List<Layout.Text> placed = new ArrayList<>();
    private final List<Lettering> letterings = new ArrayList<>();
    private final List<Homeless> homeless = new ArrayList<>();

    PanelPlan(Style style, Scale scale, List<Mark> marks) {
        this.style = style;
        this.scale = scale;
        this.drawn = marks.stream().map(mark -> Drawn.of(mark, scale)).toList();
        this.placer = new LabelPlacer(scale.frame(), style.gap());
        avoidEverything();
        placeLabels();
    }

    Scale scale() {
        return scale;
    }

    List<Drawn> drawn() {
        return drawn;
    }

    List<Homeless> homeless() {
        return homeless;
    }

    /** Returns the boxes of all labels and keys in this panel. */
    List<Layout.Text> placed() {
        return placed;
    }

    List<Lettering> letterings() {
        return letterings;
    }

    /** Puts a number at a mark whose label stands in the legend; returns whether there was room for it. */
    boolean placeKey(Homeless label, String key) {
        return place(label.drawn(), label.track(), key, Role.KEY, KEY_MOST);
    }

    private void avoidEverything() {
        for (Drawn each : drawn) {
            for (Track track : each.tracks()) {
                if (each.mark() instanceof Points) {
                    double r = style.symbolRadius() + 1;
                    placer.keepClear(new Box(track.x(0) - r, track.y(0) - r, 2 * r, 2 * r));
                } else {
                    placer.avoid(
                            track,
                            weight(each.mark()),
                            each.mark() instanceof Line || each.mark() instanceof Reference);
                }
            }
        }
    }

    /** How much it hurts to hide a pixel of the mark. */
    private static double weight(Mark mark) {
        if (mark instanceof Line line) {
            return line.extended() ? 3 : 6;
        }
        return mark instanceof ContourLines ? 0.7 : 1;
    }

    /** The hardest to move come first, and lines that can be named at their ends before those that cannot. */
    private void placeLabels() {
        Set<Drawn> done = new HashSet<>();
        each(Points.class).forEach(this::placeLabel);
        each(Line.class).filter(this::placeAtEnd).forEach(done::add);
        each(Line.class).filter(line -> !done.contains(line)).forEach(this::placeLabel);
        each(ContourLines.class).forEach(line -> placeContourLabels(line, (ContourLines) line.mark()));
        each(Reference.class).forEach(this::placeLabel);
        each(Area.class).forEach(this::placeLabel);
    }

    private Stream<Drawn> each(Class<?> kind) {
        return drawn.stream().filter(one -> kind.isInstance(one.mark()));
    }

    private boolean placeAtEnd(Drawn line) {
        Track longest = longest(line.tracks());
        String text = oneLine(line.mark().label());
        return longest != null && !text.isBlank() && place(line, longest, text, Role.LABEL, AT_ITS_END);
    }

    /**
     * One label for several points stands in the legend, beside their shape: at one of them it would name only that.
     */
    private void placeLabel(Drawn each) {
        Work.poll();
        String text = oneLine(each.mark().label());
        if (!text.isBlank()) {
            Track longest = longest(each.tracks());
            boolean several =
                    each.mark() instanceof Points points && points.track().size() > 1;
            if (several || !place(each, longest, text, Role.LABEL, USUAL)) {
                homeless.add(new Homeless(this, each, longest, text));
            }
        }
    }

    /** Each value is set into the longest of its pieces, and into the others where there is room. */
    private void placeContourLabels(Drawn each, ContourLines contours) {
        Set<String> named = new HashSet<>();
        List<Homeless> without = new ArrayList<>();
        for (ContourLines.Level level : contours.lines()) {
            List<Track> pieces = scale.track(level.track()).within(scale.frame());
            Track longest = longest(pieces);
            if (longest != null && place(each, longest, oneLine(level.text()), Role.CONTOUR_LABEL, USUAL)) {
                named.add(level.text());
            } else {
                without.add(new Homeless(this, each, longest, level.text()));
            }
        }
        for (Homeless label : without) {
            if (named.add(label.text())) {
                homeless.add(label);
            }
        }
        if (!contours.label().isBlank()) {
            homeless.add(new Homeless(this, each, null, contours.label()));
        }
    }

    private boolean place(Drawn each, Track track, String text, Role role, double most) {
        if (track == null) {
            return false;
        }
        Typeface face = role == Role.KEY ? Typeface.SEMIBOLD : Typeface.REGULAR;
        double size = role == Role.CONTOUR_LABEL ? 0.9 * style.text() : style.text();
        Lettering lettering = new Lettering(text, face, size, each.mark().ink().letteringRgb(), 0, 0);
        Box own = lettering.box();
        Candidates candidates = new Candidates(own.width() + 0.3 * size, own.height(), style.gap());
        boolean set = each.mark() instanceof ContourLines || role == Role.KEY && each.mark() instanceof Line;
        Optional<Box> box =
                placer.place(new LabelPlacer.Wish(candidates(each, track, candidates, set), track, set, most));
        box.ifPresent(where -> {
            Lettering there = new Lettering(
                    text, face, size, lettering.rgb(), where.x() + 0.15 * size - own.x(), where.y() - own.y());
            letterings.add(there);
            placed.add(new Layout.Text(role, text, where));
        });
        return box.isPresent();
    }

    private List<Candidate> candidates(Drawn each, Track track, Candidates candidates, boolean set) {
        if (set) {
            return candidates.setInto(track);
        }
        if (each.mark() instanceof Points) {
            return candidates.around(track, style.symbolRadius());
        }
        return each.mark() instanceof Area ? candidates.inside(each.outline()) : candidates.beside(track);
    }

    private static String oneLine(String label) {
        return label.strip().replaceAll("\\s+", " ");
    }

    private static Track longest(List<Track> tracks) {
        Track longest = null;
        for (Track track : tracks) {
            if (longest == null || track.length() > longest.length()) {
                longest = track;
            }
        }
        return longest;
    }

    /** Returns the pieces of a line that no label covers. */
    List<Track> uncovered(Track track) {
        List<Track> pieces = List.of(track);
        for (Layout.Text label : placed) {
            List<Track> left = new ArrayList<>();
            for (Track piece : pieces) {
                left.addAll(piece.size() == 1 ? List.of(piece) : piece.without(label.box()));
            }
            pieces = left;
        }
        return pieces;
    }
}
