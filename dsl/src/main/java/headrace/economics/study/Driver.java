package headrace.economics.study;

/** What a payback depends on, each with the unit in which its spread is held. */
public enum Driver {
    /** The price of energy in year 1, in money for 1 kWh. */
    PRICE("price of energy", "/kWh"),
    /** By how much the price of energy rises each year after, as a ratio. */
    ESCALATION("rise of the price a year", ""),
    /** The pumping hours of a year, in h. */
    HOURS("pumping hours a year", "h"),
    /** The mean wire power of throttling at constant speed, in kW. */
    POWER("mean power at constant speed", "kW"),
    /** The share of it that the control law saves, as a ratio. */
    SAVED("share saved against constant speed", ""),
    /** The mean wire power of fixed design speed as a share of that of constant speed, as a ratio. */
    FIXED_SPEED("power of fixed design speed over that of constant speed", ""),
    /** The share of the calculated saving that comes, as a ratio. */
    REALISATION("share of the saving that comes", ""),
    /** The extra first cost, in money. */
    FIRST_COST("extra first cost", ""),
    /** The upkeep of year 1, in money. */
    UPKEEP("upkeep of year 1", ""),
    /** The discount rate, as a ratio. */
    DISCOUNT("discount rate", "");

    private final String words;
    private final String unit;

    Driver(String words, String unit) {
        this.words = words;
        this.unit = unit;
    }

    /** Returns the driver in words. */
    public String words() {
        return words;
    }

    /** Returns the unit in which its spread is held, blank for a ratio or money. */
    public String unit() {
        return unit;
    }
}
