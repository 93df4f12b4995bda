package headrace.commission;

import headrace.commission.Evidence.Item;
import java.util.List;
import java.util.stream.DoubleStream;

/**
 * What each cause makes of readings: the expected logarithms of their ratios for each size that the cause can have.
 *
 * <p>The sizes are assumptions of our own within what is common practice; a half to two thirds of the head for a pump
 * that turns backwards is common practice, no source.
 */
record Pattern(Cause cause, double[] sizes, double loosePower) {
    private static final int STEPS = 60;

    static List<Pattern> all() {
        return List.of(
                new Pattern(Cause.AS_EXPECTED, new double[] {1}, 0),
                new Pattern(Cause.TURNS_BACKWARDS, between(0.48, 0.72), 0.25),
                new Pattern(Cause.VALVE_CLOSED, new double[] {1}, 0),
                new Pattern(
                        Cause.OTHER_IMPELLER,
                        DoubleStream.concat(DoubleStream.of(between(0.75, 0.97)), DoubleStream.of(between(1.03, 1.2)))
                                .toArray(),
                        0.01),
                new Pattern(
                        Cause.METER_SCALE,
                        DoubleStream.concat(DoubleStream.of(between(0.3, 0.92)), DoubleStream.of(between(1.08, 3)))
                                .toArray(),
                        0),
                new Pattern(
                        Cause.GAUGE_OFFSET,
                        DoubleStream.concat(DoubleStream.of(between(-5, -0.3)), DoubleStream.of(between(0.3, 5)))
                                .toArray(),
                        0),
                new Pattern(Cause.WORN_RING, between(0.75, 0.96), 0.02));
    }

    /** Returns whether readings can tell this cause at all: a scale of powers shows in powers only, and so on. */
    boolean showsIn(List<Item> items) {
        return switch (cause) {
            case AS_EXPECTED, OTHER_IMPELLER -> true;
            case VALVE_CLOSED -> items.stream().anyMatch(item -> !item.where().closed);
            case METER_SCALE -> items.stream().anyMatch(item -> !item.where().head);
            case TURNS_BACKWARDS, GAUGE_OFFSET, WORN_RING -> items.stream().anyMatch(item -> item.where().head);
        };
    }

    private static double[] between(double low, double high) {
        double[] sizes = new double[STEPS + 1];
        for (int i = 0; i <= STEPS; i++) {
            sizes[i] = low + (high - low) * i / STEPS;
        }
        return sizes;
    }

    double mean(Item item, double size) {
        return switch (cause) {
            case AS_EXPECTED -> 0;
            case TURNS_BACKWARDS, WORN_RING -> item.where().head ? Math.log(size) : 0;
            case VALVE_CLOSED -> Math.log(item.ifClosed() / item.expected());
            case OTHER_IMPELLER -> (item.where().head ? 2 : 3) * Math.log(size);
            case METER_SCALE -> item.where().head ? 0 : Math.log(size);
            case GAUGE_OFFSET -> item.where().head ? Math.log(Math.max(0.05, 1 + size / item.expected())) : 0;
        };
    }
}
