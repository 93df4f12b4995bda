package headrace.trend;

/** Which power of the pump map a logged power is held against. */
public enum MapPower {
    /** The wire power, with the losses of motor and drive by the model of the pump set. */
    WIRE("wire power of the map"),
    /** The shaft power; the line between the two takes up the losses. */
    SHAFT("shaft power of the map");

    private final String words;

    MapPower(String words) {
        this.words = words;
    }

    /** Returns it as it stands in a sentence. */
    public String words() {
        return words;
    }
}
