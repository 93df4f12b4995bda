package headrace.trend;

import java.util.List;

/**
 * What can have happened to a pump, its plant or its meters, and the pattern that it leaves in the residuals.
 *
 * <p>Sizes are shares: of the head, of the power, of a reading. How large each commonly becomes is our own guess and
 * decides little once there are some hundred hours; the patterns are those of the pump map.
 */
public enum Condition {
    /** The impeller or its ring is worn: the head falls short by one factor at all flows. */
    WEAR("worn impeller or ring", "head lost", Pattern.HEAD, 0, 0.08, true),
    /** The pump turns the wrong way: a third of the head is gone from the start, and the power is odd. */
    WRONG_ROTATION("wrong rotation", "head lost", Pattern.HEAD, 0.35, 0.08, true),
    /** Air or gas in the liquid: head and power fall together. */
    AIR("air or gas in the liquid", "head and power lost", Pattern.AIR, 0, 0.1, true),
    /** Bearing, seal or ring drags: more torque at every load. */
    DRAG("bearing, seal or ring drags", "torque added", Pattern.TORQUE, 0, 0.05, true),
    /** A strainer or an exchanger clogs: the plant takes more head at the same flow. */
    CLOGGED("clogged strainer or exchanger", "resistance added", Pattern.PLANT, 0, 0.5, true),
    /** The flow meter is off by a factor. */
    FLOW_METER("flow meter off", "of reading", Pattern.FLOW, 0, 0.1, false),
    /** The head sensor is off by an offset. */
    HEAD_SENSOR("head sensor off", "of shut-off head", Pattern.OFFSET, 0, 0.08, false),
    /** The power meter is off by a factor. */
    POWER_METER("power meter off", "of reading", Pattern.POWER, 0, 0.1, false);

    /** How a residual answers to a size of 1, and the channel without which it cannot be seen. */
    enum Pattern {
        HEAD(Channel.HEAD, 0.004),
        POWER(Channel.POWER, 0.004),
        FLOW(Channel.FLOW, 0.003),
        OFFSET(Channel.HEAD, 0.002),
        TORQUE(Channel.POWER, 0.002),
        PLANT(Channel.PLANT_HEAD, 0.02),
        AIR(Channel.HEAD, 0);

        private final Channel needed;
        private final double usual;

        Pattern(Channel needed, double usual) {
            this.needed = needed;
            this.usual = usual;
        }

        Channel needed() {
            return needed;
        }

        /** Returns how large it is from reference to reference where nothing is wrong: our own guess. */
        double usual() {
            return usual;
        }
    }

    private final String words;
    private final String sizeOf;
    private final Pattern pattern;
    private final double mean;
    private final double spread;
    private final boolean positive;

    Condition(String words, String sizeOf, Pattern pattern, double mean, double spread, boolean positive) {
        this.words = words;
        this.sizeOf = sizeOf;
        this.pattern = pattern;
        this.mean = mean;
        this.spread = spread;
        this.positive = positive;
    }

    /** Returns what has happened, as it stands in a table. */
    public String words() {
        return words;
    }

    /** Returns what its size is a share of. */
    public String sizeOf() {
        return sizeOf;
    }

    Pattern pattern() {
        return pattern;
    }

    double mean() {
        return mean;
    }

    double spread() {
        return spread;
    }

    boolean positive() {
        return positive;
    }

    /** Returns what to look at before anything is taken apart. */
    public List<String> lookAt() {
        return switch (this) {
            case WEAR -> List.of("the head against a closed valve at three speeds", "the clearance of the ring");
            case WRONG_ROTATION -> List.of("the direction of rotation after any wiring");
            case AIR -> List.of("the air vents", "the fill pressure", "whether it began after filling");
            case DRAG -> List.of("the temperature and sound of the bearings", "the seal");
            case CLOGGED -> List.of("the strainer", "whether it falls back after cleaning");
            case FLOW_METER -> List.of("the flow against a portable meter", "the zero of the meter");
            case HEAD_SENSOR -> List.of("the zero of the sensor with the pump at rest");
            case POWER_METER -> List.of("the scale of the meter", "the current transformers");
        };
    }
}
