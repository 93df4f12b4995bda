package headrace.chart.mark;

import headrace.chart.paint.Track;
import java.util.ArrayList;
import java.util.List;

/**
 * Bars that compare named things, lying, so that long names stay readable.
 *
 * @param names what is compared, from the top down
 * @param series the values, a list of bars for each name
 * @param stacked whether the bars of one name are put end to end instead of beneath one another
 */
public record Bars(List<String> names, List<Series> series, boolean stacked) {
    /**
     * One value for each name.
     *
     * @param label what the values are
     * @param ink the colour
     * @param values in the unit of the axis across
     */
    public record Series(String label, Ink ink, List<Double> values) {
        /** Keeps the values as they are now. */
        public Series {
            values = List.copyOf(values);
        }
    }

    /** Keeps the lists as they are now; refuses values that are not one for each name, or have no place on an axis. */
    public Bars {
        names = List.copyOf(names);
        series = List.copyOf(series);
        double[] order = new double[names.size()];
        for (Series each : series) {
            Track.through(
                    order,
                    each.values().stream().mapToDouble(Double::doubleValue).toArray());
        }
    }

    /** Returns bars for these names, without values yet. */
    public static Bars of(List<String> names) {
        return new Bars(names, List.of(), false);
    }

    /** Returns these bars with one more value for each name. */
    public Bars with(String label, Ink ink, List<Double> values) {
        List<Series> more = new ArrayList<>(series);
        more.add(new Series(label, ink, values));
        return new Bars(names, more, stacked);
    }

    /** Returns these bars put end to end. */
    public Bars asStacked() {
        return new Bars(names, series, true);
    }
}
