package headrace.report.whatif;

import headrace.problem.Refusal;
import headrace.units.Numbers;
import headrace.units.Quantity;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * One thing that is varied: a name and the positions that it can take.
 *
 * @param name what it is called
 * @param form how it is moved
 * @param positions its values, in order
 * @param start the index of the position that it begins at
 */
public record Control(String name, Form form, List<Object> positions, int start) {
    /** The most positions of one control. */
    static final int MOST_POSITIONS = 401;

    /** What counts as an end of a slider, as a share of its length. */
    private static final double ROUNDING = 1e-9;

    /** How a control is moved. */
    public enum Form {
        /** A slider over positions in order. */
        SLIDER,
        /** A choice of one from a list. */
        CHOICE,
        /** Off or on. */
        SWITCH
    }

    /** Refuses what cannot be moved. */
    public Control {
        positions = Collections.unmodifiableList(new ArrayList<>(positions));
        if (positions.size() < 2 || positions.size() > MOST_POSITIONS || start < 0 || start >= positions.size()) {
            throw new Refusal(
                    WhatIfProblem.IMPOSSIBLE_CONTROL,
                    "Asked for the control '" + name + "' with " + positions.size() + " positions",
                    "A control has 2 to " + MOST_POSITIONS + " positions and begins at one of them",
                    "Give it two ends that differ, or a list of values");
        }
    }

    /**
     * Returns a slider over equal steps from one quantity to another of its kind.
     *
     * @param positions how many positions, both ends counted
     * @param start where it begins, at the nearest position; between the ends
     */
    public static <Q extends Quantity<Q>> Control slider(String name, Q from, Q to, int positions, Q start) {
        double step = (to.si() - from.si()) / Math.max(1, positions - 1);
        refuseNoLength(name, step, from, to);
        List<Object> values = IntStream.range(0, positions)
                .mapToObj(i -> (Object) from.kind().make().apply(i == positions - 1 ? to.si() : from.si() + i * step))
                .toList();
        return new Control(name, Form.SLIDER, values, 0).beginningAt(start);
    }

    /** Returns a slider over equal steps from one number to another. */
    public static Control slider(String name, double from, double to, int positions, double start) {
        double step = (to - from) / Math.max(1, positions - 1);
        refuseNoLength(name, step, from, to);
        List<Object> values = IntStream.range(0, positions)
                .mapToObj(i -> (Object) (i == positions - 1 ? to : from + i * step))
                .toList();
        return new Control(name, Form.SLIDER, values, 0).beginningAt(start);
    }

    private static void refuseNoLength(String name, double step, Object from, Object to) {
        if (step == 0 || !Double.isFinite(step)) {
            throw new Refusal(
                    WhatIfProblem.IMPOSSIBLE_CONTROL,
                    "Asked for the control '" + name + "' from " + from + " to " + to,
                    "A slider goes from one value to another",
                    "Give it two ends that differ");
        }
    }

    private Control beginningAt(Object value) {
        return new Control(name, form, positions, indexOf(value));
    }

    /** Returns a choice of one from a list, beginning at the first. */
    public static Control choice(String name, List<?> values) {
        return new Control(name, Form.CHOICE, new ArrayList<>(values), 0);
    }

    /** Returns a switch. */
    public static Control onOff(String name, boolean start) {
        return new Control(name, Form.SWITCH, List.of(false, true), start ? 1 : 0);
    }

    /** Returns how each position is printed. */
    public List<String> labels() {
        return positions.stream().map(Control::label).toList();
    }

    /**
     * Returns the index of the position that a value names: the nearest of a slider's, the same of any other's.
     *
     * @throws Refusal with {@code IMPOSSIBLE_CONTROL} if it has no such position
     */
    public int indexOf(Object value) {
        OptionalInt index = form == Form.SLIDER ? nearest(value) : same(value);
        return index.orElseThrow(() -> new Refusal(
                WhatIfProblem.IMPOSSIBLE_CONTROL,
                "Asked to put the control '" + name + "' to " + label(value),
                form == Form.SLIDER
                        ? "It goes from " + labels().get(0) + " to " + labels().get(positions.size() - 1)
                        : "It is one of " + String.join(", ", labels()),
                "Name a position that it has"));
    }

    /**
     * Returns this control with no more positions than this, both ends and, as far as there is room, these among them.
     */
    Control thinned(int most, Set<Integer> wanted) {
        if (form != Form.SLIDER || positions.size() <= most) {
            return this;
        }
        int last = positions.size() - 1;
        List<Integer> kept = new ArrayList<>(IntStream.range(0, most)
                .map(i -> (int) Math.round((double) i * last / (most - 1)))
                .boxed()
                .toList());
        for (int each : wanted) {
            if (!kept.contains(each)) {
                IntStream.range(1, most - 1)
                        .boxed()
                        .filter(i -> !wanted.contains(kept.get(i)))
                        .min(Comparator.comparingInt(i -> Math.abs(kept.get(i) - each)))
                        .ifPresent(near -> kept.set(near, each));
            }
        }
        Collections.sort(kept);
        Control fewer =
                new Control(name, form, kept.stream().map(positions::get).toList(), 0);
        return new Control(name, form, fewer.positions, indexIn(fewer, start));
    }

    /** Returns where one of this control's positions is found, or the nearest to it, in a thinned one. */
    int indexIn(Control thinned, int index) {
        return IntStream.range(0, thinned.positions.size())
                .boxed()
                .min(Comparator.comparingInt(i -> Math.abs(positions.indexOf(thinned.positions.get(i)) - index)))
                .orElse(0);
    }

    private OptionalInt nearest(Object value) {
        double low = number(positions.get(0));
        double high = number(positions.get(positions.size() - 1));
        boolean alike = value instanceof Quantity<?> quantity && positions.get(0) instanceof Quantity<?> first
                ? quantity.kind().equals(first.kind())
                : value instanceof Number && positions.get(0) instanceof Number;
        double share = alike ? (number(value) - low) / (high - low) : Double.NaN;
        return share >= -ROUNDING && share <= 1 + ROUNDING
                ? OptionalInt.of(nearest(share * (positions.size() - 1), positions.size()))
                : OptionalInt.empty();
    }

    private OptionalInt same(Object value) {
        int index = positions.indexOf(value);
        return index < 0 ? OptionalInt.empty() : OptionalInt.of(index);
    }

    private static double number(Object value) {
        return value instanceof Quantity<?> quantity ? quantity.si() : ((Number) value).doubleValue();
    }

    private static int nearest(double position, int positions) {
        return (int) Math.max(0, Math.min(positions - 1, Math.round(position)));
    }

    private static String label(Object value) {
        if (value instanceof Boolean on) {
            return on ? "on" : "off";
        }
        return value instanceof Double number ? Numbers.print(number) : String.valueOf(value);
    }
}
