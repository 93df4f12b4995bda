package headrace.trend;

/**
 * How a saving is measured, by the names of the protocol.
 *
 * <p>Source: International Performance Measurement and Verification Protocol, options A to D, titles from memory.
 */
public enum SavingOption {
    /** The key parameter of the plant that was changed is measured, the others are estimated. */
    A("the plant that was changed alone, its key parameter measured and the others estimated"),
    /** All parameters of the plant that was changed are measured. */
    B("the plant that was changed alone, all its parameters measured"),
    /** The energy of the whole building is measured. */
    C("the whole building, by its meter"),
    /** A calibrated model stands in for readings that are not there. */
    D("a calibrated model stands in for readings that are not there");

    private final String words;

    SavingOption(String words) {
        this.words = words;
    }

    /** Returns the option with what it says, such as {@code option B (…)}. */
    @Override
    public String toString() {
        return "option " + name() + " (" + words + ")";
    }
}
