package headrace.chart;

import headrace.chart.paint.ChartProblem;
import headrace.chart.paint.Track;
import headrace.problem.Refusal;
import java.util.OptionalDouble;

/**
 * What is read off along one side of a chart.
 *
 * @param name the quantity in words
 * @param unit its unit as printed, blank for a plain number
 * @param from where the axis begins; found from what is drawn if absent
 * @param to where the axis ends; found from what is drawn if absent
 * @param counts whether it counts things, of which there is no half
 */
public record Axis(String name, String unit, OptionalDouble from, OptionalDouble to, boolean counts) {
    /** Refuses ends that are not finite or stand in the wrong order. */
    public Axis {
        double begins = from.orElse(0);
        double ends = to.orElse(begins + 1);
        if (!(Math.abs(begins) <= Track.LARGEST
                && Math.abs(ends) <= Track.LARGEST
                && (from.isEmpty() || begins < ends))) {
            throw new Refusal(
                    ChartProblem.UNDRAWABLE_VALUE,
                    "Asked for an axis \"" + name + "\" from " + begins + " to " + ends,
                    "An axis goes from a finite value to a greater one",
                    "Give its ends in that order, or leave one out to have it found");
        }
    }

    /** Returns an axis whose range is found from what is drawn. */
    public static Axis of(String name, String unit) {
        return new Axis(name, unit, OptionalDouble.empty(), OptionalDouble.empty(), false);
    }

    /** Returns an axis that counts things, such as pumps: its steps are whole. */
    public static Axis counting(String name) {
        return new Axis(name, "", OptionalDouble.empty(), OptionalDouble.empty(), true);
    }

    /** Returns this axis beginning at a value. */
    public Axis from(double value) {
        return new Axis(name, unit, OptionalDouble.of(value), to, counts);
    }

    /** Returns this axis ending at a value. */
    public Axis to(double value) {
        return new Axis(name, unit, from, OptionalDouble.of(value), counts);
    }

    /** Returns the name and the unit, such as {@code Flow in m³/h}. */
    public String title() {
        return unit.isBlank() ? name : name + " in " + unit;
    }
}
