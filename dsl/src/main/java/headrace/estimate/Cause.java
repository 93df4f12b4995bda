package headrace.estimate;

/** Where an error of an estimate comes from. */
public enum Cause {
    /** The noise of the power reading. */
    POWER_READING("power reading", false, false),
    /** The noise of the torque reading. */
    TORQUE_READING("torque reading", false, false),
    /** The noise of the head reading. */
    HEAD_READING("head reading", false, false),
    /** The noise of the speed reading. */
    SPEED_READING("speed reading", false, false),
    /** A power meter that reads the same share too much or too little at all times. */
    METER_SCALE("scale of the power meter", true, true),
    /** A pump that takes the same share more or less power than its map. */
    POWER_MAP("power of the map", true, true),
    /** A pump that gives the same share more or less head than its map. */
    HEAD_MAP("head of the map", true, true),
    /** A motor and a drive that lose the same share more or less than their model. */
    LOSSES("losses of motor and drive", true, true),
    /** A liquid that is heavier or lighter than was said. */
    DENSITY("density", true, true);

    private final String words;
    private final boolean systematic;
    private final boolean rectangular;

    Cause(String words, boolean systematic, boolean rectangular) {
        this.words = words;
        this.systematic = systematic;
        this.rectangular = rectangular;
    }

    /** Returns whether it is the same in every reading, so that averaging does not help. */
    public boolean systematic() {
        return systematic;
    }

    /** Returns whether it lies anywhere inside its limits with equal likelihood; else it is normally distributed. */
    public boolean rectangular() {
        return rectangular;
    }

    /** Returns it in words. */
    @Override
    public String toString() {
        return words;
    }
}
