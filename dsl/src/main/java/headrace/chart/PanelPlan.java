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
    /**
     * A label that looks for its place.
     *
     * @param panel in which it is
     * @param drawn what it names
     * @param track the line or the point of it to stand at, or null if there is none in the frame
     * @param text what it says, in one line
     */
    record Name(PanelPlan panel, Drawn drawn, Track track, String text) {
        /** Returns whether what they name can be told apart by colour only, or not at all. */
        boolean looksLike(Name other) {
            return drawn.look().equals(other.drawn.look());
        }

        /** Returns whether one entry in the legend does for both. */
        boolean isSameAs(Name other) {
            return text.equals(other.text)
                    && looksLike(other)
                    && drawn.mark().ink() == other.drawn.mark().ink();
        }

        /** Returns whether the panel shows another mark that looks the same in every way. */
        boolean hasTwin() {
            return panel.drawn.stream()
                            .filter(other -> other.mark().ink() == drawn.mark().ink())
                            .filter(other -> other.look().equals(drawn.look()))
                            .count()
                    > 1;
        }

        /** Puts a number at the mark; returns whether there was room for it. */
        boolean placeKey(int number) {
            return panel.place(new Name(panel, drawn, track, Integer.toString(number)), Role.KEY, KEY_MOST);
        }
    }

    /** What it may cost to place a label, in pixels of thin line hidden, before the legend is better. */
    private static final double USUAL = 80;

    private static final double AT_ITS_END = 8;
    private static final double KEY_MOST = 400;

    /** Room left and right of a label, as a share of its size. */
    private static final double BESIDE = 0.15;

    private final Style style;
    private final Scale scale;
    private final List<Drawn> drawn;
    private final LabelPlacer placer;
    private final List<Layout.Text> placed = new ArrayList<>();
    private final List<Lettering> letterings = new ArrayList<>();
    private final List<Name> homeless = new ArrayList<>();

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

    List<Name> homeless() {
        return homeless;
    }

    /** Returns the boxes of all labels and keys in this panel. */
    List<Layout.Text> placed() {
        return placed;
    }

    List<Lettering> letterings() {
        return letterings;
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
        Name name = name(line, line.tracks(), line.mark().label());
        return !name.text().isBlank() && place(name, Role.LABEL, AT_ITS_END);
    }

    /** One label for several points stands in the legend beside their shape; at one of them it would name only that. */
    private void placeLabel(Drawn each) {
        Work.poll();
        Name name = name(each, each.tracks(), each.mark().label());
        boolean several = each.mark() instanceof Points points && points.track().size() > 1;
        if (!name.text().isBlank() && (several || !place(name, Role.LABEL, USUAL))) {
            homeless.add(name);
        }
    }

    /** Each value is set into the longest piece of its line; a second line of one value may stay without. */
    private void placeContourLabels(Drawn each, ContourLines contours) {
        Set<String> named = new HashSet<>();
        List<Name> without = new ArrayList<>();
        for (ContourLines.Level level : contours.lines()) {
            Name name = name(each, scale.track(level.track()).within(scale.clip()), level.text());
            if (place(name, Role.CONTOUR_LABEL, USUAL)) {
                named.add(name.text());
            } else {
                without.add(name);
            }
        }
        without.stream().filter(name -> named.add(name.text())).forEach(homeless::add);
        if (!contours.label().isBlank()) {
            homeless.add(name(each, List.of(), contours.label()));
        }
    }

    /** Returns the label on its longest piece. */
    private Name name(Drawn each, List<Track> tracks, String text) {
        Track longest = null;
        for (Track track : tracks) {
            if (longest == null || track.length() > longest.length()) {
                longest = track;
            }
        }
        return new Name(this, each, longest, text.strip().replaceAll("\\s+", " "));
    }

    private boolean place(Name name, Role role, double most) {
        if (name.track() == null) {
            return false;
        }
        Mark mark = name.drawn().mark();
        Typeface face = role == Role.KEY ? Typeface.SEMIBOLD : Typeface.REGULAR;
        double size = role == Role.CONTOUR_LABEL ? 0.9 * style.text() : style.text();
        Lettering lettering = new Lettering(name.text(), face, size, mark.ink().letteringRgb(), 0, 0);
        boolean key = role == Role.KEY && mark instanceof Line;
        boolean setInto = mark instanceof ContourLines || key;
        double aside = BESIDE * size;
        Box own = lettering.box();
        Candidates candidates = new Candidates(own.width() + 2 * aside, own.height(), style.gap());
        List<Candidate> places =
                setInto ? candidates.setInto(name.track()) : candidates(name.drawn(), name.track(), candidates);
        Optional<Box> found = placer.place(new LabelPlacer.Wish(places, name.track(), setInto, most));
        if (found.isEmpty() && key) {
            List<Candidate> beside = candidates.beside(name.track());
            found = placer.place(new LabelPlacer.Wish(beside, name.track(), false, most));
        }
        found.ifPresent(box -> {
            letterings.add(lettering.at(box.x() + aside - own.x(), box.y() - own.y()));
            placed.add(new Layout.Text(role, name.text(), box));
        });
        return found.isPresent();
    }

    private List<Candidate> candidates(Drawn each, Track track, Candidates candidates) {
        if (each.mark() instanceof Points) {
            return candidates.around(track, style.symbolRadius());
        }
        return each.mark() instanceof Area ? candidates.inside(each.outline()) : candidates.beside(track);
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
