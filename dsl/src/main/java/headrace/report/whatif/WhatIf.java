package headrace.report.whatif;

import headrace.problem.Refusal;
import headrace.report.Reports;
import headrace.report.Shown;
import headrace.work.Steps;
import headrace.work.Work;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.IntStream;

/**
 * A calculation that is moved by controls.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Those of the controls' positions.
 *   <dt>Limits
 *   <dd>One to four controls. What is computed ahead, for a page without a session, is at most {@value #MOST_FRAMES}
 *       frames; sliders are then thinned, with both ends and the start kept.
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

    private final List<Control> controls;
    private final Function<List<Object>, Object> calculation;

    private WhatIf(List<Control> controls, Function<List<Object>, Object> calculation) {
        this.controls = controls;
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
        return new WhatIf(List.copyOf(controls), calculation);
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
        return new Frame(positions, shown(values));
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
            fewer = controls.stream().map(control -> control.thinned(limit)).toList();
        }
        if (count(fewer) > mostFrames) {
            throw new Refusal(
                    WhatIfProblem.IMPOSSIBLE_CONTROL,
                    "Asked for " + count(fewer) + " frames of a what-if ahead",
                    "At most " + mostFrames + " are computed ahead",
                    "Give the choices fewer values, or vary fewer things at once");
        }
        return new WhatIf(fewer, calculation);
    }

    /** Returns the frames of all positions, the last control moving fastest. */
    public List<Frame> frames() {
        int all = count(controls);
        List<Frame> frames = new ArrayList<>();
        try (Steps steps = Work.steps("frames of the what-if", all)) {
            for (int number = 0; number < all; number++) {
                steps.next();
                frames.add(at(positions(number)));
            }
        }
        return frames;
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

    private Shown shown(List<Object> values) {
        try {
            Object value = calculation.apply(values);
            return Reports.of(value).orElseGet(() -> Shown.line(String.valueOf(value)));
        } catch (Refusal refusal) {
            return Shown.line(refusal.getMessage());
        }
    }

    private static int count(List<Control> controls) {
        return controls.stream().mapToInt(control -> control.positions().size()).reduce(1, Math::multiplyExact);
    }
}
