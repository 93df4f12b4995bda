package headrace.commission;

/** What readings can say of a pump set. */
public enum Cause {
    /** Nothing is wrong within the tolerances. */
    AS_EXPECTED("as expected", "the readings lie where the map has them, within its tolerance", "Nothing to do."),
    /** Two phases are exchanged. */
    TURNS_BACKWARDS(
            "turns backwards",
            "the shut-off head is a half to two thirds of the expected one at every speed",
            "Stop, lock out, wait until the DC bus has discharged, exchange two motor phases, and check the rotation again."),
    /** A valve is closed that should be open. */
    VALVE_CLOSED(
            "a valve is closed",
            "with the circuit said to be open, power and head are those against a closed valve",
            "If the power does not change when a valve is opened, the flow did not change: look for a closed valve, a"
                    + " blinded flange or a check valve the wrong way round."),
    /** The impeller has another diameter than the map. */
    OTHER_IMPELLER(
            "another impeller",
            "head goes with the square and power with the cube of one factor",
            "Read the diameter off the plate or ask the maker, and make the map for that diameter."),
    /** The power meter reads a wrong scale. */
    METER_SCALE(
            "the scale of the power meter",
            "heads are right and all powers are off by one factor",
            "Check what the meter shows: shaft or wire power, the ratio of its current transformers, one phase for three."),
    /** A gauge hangs at another height, or is not zeroed. */
    GAUGE_OFFSET(
            "a gauge height",
            "all heads are off by the same number of metres, whatever the speed",
            "Measure the height between the gauges, bleed them, and read both with the pump stopped."),
    /** Liquid leaks back through worn rings. */
    WORN_RING(
            "worn rings",
            "heads are low by one factor while the power is nearly right",
            "Compare with the first test of this pump; measure the clearance of the wear rings at the next opening.");

    private final String words;
    private final String sign;
    private final String next;

    Cause(String words, String sign, String next) {
        this.words = words;
        this.sign = sign;
        this.next = next;
    }

    /** Returns by what it is told. */
    public String sign() {
        return sign;
    }

    /** Returns what to do next. */
    public String next() {
        return next;
    }

    /** Returns it in words. */
    @Override
    public String toString() {
        return words;
    }
}
