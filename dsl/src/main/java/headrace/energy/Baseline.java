package headrace.energy;

/** What a saving is counted against. */
public enum Baseline {
    /** Throttling at constant speed on the mains, at the same flow. */
    CONSTANT_SPEED("throttling at constant speed, same flow"),
    /** The speed at which the pump meets the design point, kept and throttled, at the same flow. */
    FIXED_DESIGN_SPEED("fixed design speed, same flow"),
    /** The power at the design point itself. */
    DESIGN_POWER("power at the design point");

    private final String words;

    Baseline(String words) {
        this.words = words;
    }

    /** Returns the baseline in words. */
    public String words() {
        return words;
    }
}
