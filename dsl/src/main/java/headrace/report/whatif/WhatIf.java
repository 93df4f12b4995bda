package headrace.report.whatif;

import headrace.problem.Refusal;
import headrace.work.Steps;
import headrace.work.Work;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.IntStream;

/**
 * A calculation that is moved by controls.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Those of the controls' positions.
 *   <dt>Limits
 *   <dd>One to four controls, up to eight presets. What is computed ahead, for a page without a session, is at most
 *       {@value #MOST_FRAMES} frames; sliders are then thinned, with both ends, the start and what presets name kept.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_CONTROL}. A refusal at a position is what is shown there.
 *   <dt>Source
 *   <dd>The calculation's own.
 * </dl>
 */
public final class WhatIf {
    /** The most frames that are computed ahead. */
    public static final int MOST_FRAMES = 125;

    private static final int MOST_CONTROLS = 4;
    private static final int MOST_PRESETS = 8;

    private final List<Control> controls;
    private final List<Preset> presets;
    private final Function<List<Object>, Object> calculation;

    private WhatIf(List<Control> controls, List<Preset> presets, Function<List<Object>, Object> calculation) {
        this.controls = controls;
        this.presets = presets;
        this.calculation = calculation;
    }

    /**
     * Returns a calculation moved by controls.
     *
     * @param controls what is varied
     * @param calculation from the value of each control, in order, to what is shown
     */
    public static WhatIf of(List<Control> controls, Function<List<Object>, Object> calculation) {
        if (controls.isEmpty() || controls.size() > MOST_CONTROLS) {
            throw new Refusal(
                    WhatIfProblem.IMPOSSIBLE_CONTROL,
                    "Asked for a what-if with " + controls.size() + " controls",
                    "It takes 1 to " + MOST_CONTROLS,
                    "Name what is varied, such as minimumHead: 20.percent..60.percent");
        }
        return new WhatIf(List.copyOf(controls), List.of(), calculation);
    }

    /** Returns this what-if with positions that can be taken at once by their names. */
    public WhatIf withPresets(List<Preset> named) {
        if (named.size() > MOST_PRESETS) {
            throw new Refusal(
                    WhatIfProblem.IMPOSSIBLE_CONTROL,
                    "Asked for a what-if with " + named.size() + " presets",
                    "It takes up to " + MOST_PRESETS,
                    "Leave out those that a slider reaches as well");
        }
        return new WhatIf(controls, List.copyOf(named), calculation);
    }

    /** Returns the positions that can be taken at once, besides those at which it begins. */
    public List<Preset> presets() {
        return presets;
    }

    /** Returns what is varied. */
    public List<Control> controls() {
        return controls;
    }

    /** Returns where it begins. */
    public List<Integer> start() {
        return controls.stream().map(Control::start).toList();
    }

    /** Returns what is drawn at a position of each control, by its index. */
    public Frame at(List<Integer> positions) {
        List<Object> values = IntStream.range(0, controls.size())
                .mapToObj(i -> controls.get(i).positions().get(positions.get(i)))
                .toList();
        try {
            return Frame.of(positions, calculation.apply(values));
        } catch (Refusal refusal) {
            return Frame.refused(positions, refusal);
        }
    }

    /**
     * Returns this what-if with so few positions that all of them can be computed ahead.
     *
     * @param mostFrames how many positions of all controls together there may be
     */
    public WhatIf thinned(int mostFrames) {
        List<Control> fewer = controls;
        for (int most = Control.MOST_POSITIONS; count(fewer) > mostFrames && most > 2; most--) {
            int limit = most - 1;
            fewer = IntStream.range(0, controls.size())
                    .mapToObj(i -> controls.get(i).thinned(limit, named(i)))
                    .toList();
        }
        if (count(fewer) > mostFrames) {
            throw new Refusal(
                    WhatIfProblem.IMPOSSIBLE_CONTROL,
                    "Asked for " + count(fewer) + " frames of a what-if ahead",
                    "At most " + mostFrames + " are computed ahead",
                    "Give the choices fewer values, or vary fewer things at once");
        }
        return new WhatIf(fewer, moved(fewer), calculation);
    }

    /** Returns the positions of a control that have a name, in order of what they are worth keeping. */
    private Set<Integer> named(int control) {
        Set<Integer> named = new LinkedHashSet<>();
        named.add(controls.get(control).start());
        presets.stream()
                .map(preset -> preset.at().get(control))
                .filter(at -> at != Preset.STAYS)
                .forEach(named::add);
        return named;
    }

    /** Returns the presets for controls of which positions are gone. */
    private List<Preset> moved(List<Control> fewer) {
        List<Preset> moved = new ArrayList<>();
        for (Preset preset : presets) {
            List<Integer> at = new ArrayList<>();
            for (int i = 0; i < fewer.size(); i++) {
                int before = preset.at().get(i);
                at.add(before == Preset.STAYS ? before : controls.get(i).indexIn(fewer.get(i), before));
            }
            moved.add(new Preset(preset.name(), at));
        }
        return moved;
    }

    /** Returns the frames of all positions, the last control moving fastest; an error at one is what is shown there. */
    public List<Frame> frames() {
        int all = count(controls);
        List<Frame> frames = new ArrayList<>();
        try (Steps steps = Work.steps("frames of the what-if", all)) {
            for (int number = 0; number < all; number++) {
                steps.next();
                frames.add(ahead(positions(number)));
            }
        }
        return frames;
    }

    private Frame ahead(List<Integer> positions) {
        try {
            return at(positions);
        } catch (Exception | AssertionError failure) {
            return Frame.failed(positions, failure);
        }
    }

    @Override
    public String toString() {
        return "What if: "
                + String.join(
                        ", ",
                        controls.stream()
                                .map(control -> control.name() + " "
                                        + control.labels().get(0) + " to "
                                        + control.labels().get(control.labels().size() - 1))
                                .toList());
    }

    private List<Integer> positions(int number) {
        Integer[] positions = new Integer[controls.size()];
        int rest = number;
        for (int i = controls.size() - 1; i >= 0; i--) {
            int size = controls.get(i).positions().size();
            positions[i] = rest % size;
            rest /= size;
        }
        return List.of(positions);
    }

    private static int count(List<Control> controls) {
        return controls.stream().mapToInt(control -> control.positions().size()).reduce(1, Math::multiplyExact);
    }
}
