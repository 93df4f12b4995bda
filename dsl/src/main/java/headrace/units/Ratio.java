package headrace.units;

import java.util.List;

/** A share of something, such as a speed of its rated speed or an efficiency. */
public final class Ratio extends Amount<Ratio> {
    /** The units of a ratio, the SI unit first. */
    public static final Kind<Ratio> KIND = new Kind<>(
            "ratio",
            Ratio.class,
            Ratio::new,
            List.of(Unit.of("ratio", "", 1, "-"), Unit.of("percent", "%", 1e-2, "per cent", "pct")),
            "percent",
            "percent");

    /** Nothing of it. */
    public static final Ratio ZERO = new Ratio(0);

    private Ratio(double si) {
        super(si);
    }

    /** Returns the ratio of a plain number, 1 for the whole. */
    public static Ratio of(double value) {
        return new Ratio(value);
    }

    /** Returns the ratio of so many %. */
    public static Ratio percent(double value) {
        return KIND.of(value, "percent");
    }

    /** Returns this ratio as a plain number, 1 for the whole. */
    public double value() {
        return si();
    }

    /** Returns this ratio in %. */
    public double toPercent() {
        return in("percent");
    }

    @Override
    public Kind<Ratio> kind() {
        return KIND;
    }
}
