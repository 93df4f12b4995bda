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

/** One panel: its marks in pixels, and where their labels found room. */
final class PanelPlan {
    /** A label without room. */
    record Homeless(PanelPlan panel, Drawn drawn, Track track, String text) {
        String look() {
            return drawn.look();
        }
    }

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
        this.placer = new LabelPlacer(scale.frame(), 0.22 * style.text());
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
        return place(label.drawn(), label.track(), key, Role.KEY);
    }

    private void avoidEverything() {
        for (Drawn each : drawn) {
            for (Track track : each.tracks()) {
                if (each.mark() instanceof Points) {
                    double r = style.symbolRadius() + 1;
                    placer.keepClear(new Box(track.x(0) - r, track.y(0) - r, 2 * r, 2 * r));
                } else {
                    placer.avoid(track, weight(each.mark()));
                }
            }
        }
    }

    /** How much it hurts to hide a pixel of the mark. */
    private static double weight(Mark mark) {
        return mark instanceof Line ? 4 : mark instanceof Area ? 2 : 1.5;
    }

    /** The hardest to move come first. */
    private void placeLabels() {
        for (Class<?> kind : List.of(Points.class, Line.class, ContourLines.class, Reference.class, Area.class)) {
            drawn.stream().filter(each -> kind.isInstance(each.mark())).forEach(this::placeLabel);
        }
    }

    private void placeLabel(Drawn each) {
        Work.poll();
        if (each.mark() instanceof ContourLines contours) {
            placeContourLabels(each, contours);
        } else if (!each.mark().label().isBlank()) {
            String text = each.mark().label();
            Track longest = longest(each.tracks());
            if (longest == null || !place(each, longest, text, Role.LABEL)) {
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
            if (longest != null && place(each, longest, level.text(), Role.CONTOUR_LABEL)) {
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

    private boolean place(Drawn each, Track track, String text, Role role) {
        if (track == null) {
            return false;
        }
        Typeface face = role == Role.KEY ? Typeface.SEMIBOLD : Typeface.REGULAR;
        double size = role == Role.CONTOUR_LABEL ? 0.9 * style.text() : style.text();
        Lettering lettering = new Lettering(text, face, size, each.mark().ink().letteringRgb(), 0, 0);
        Box own = lettering.box();
        Candidates candidates = new Candidates(own.width() + 0.3 * size, own.height(), style.gap());
        boolean set = each.mark() instanceof ContourLines || role == Role.KEY && each.mark() instanceof Line;
        Optional<Box> box = placer.place(candidates(each, track, candidates, set), set ? track : null);
        box.ifPresent(where -> {
            Lettering there = new Lettering(
                    text, face, size, lettering.rgb(), where.x() + 0.15 * size, where.y() + Typeface.ASCENT * size);
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
            List<Candidate> all = new ArrayList<>();
            for (int i = 0; i < Math.min(12, each.tracks().size()); i++) {
                all.addAll(candidates.around(each.tracks().get(i), style.symbolRadius()));
            }
            return all;
        }
        return each.mark() instanceof Area ? candidates.inside(each.outline()) : candidates.beside(track);
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
