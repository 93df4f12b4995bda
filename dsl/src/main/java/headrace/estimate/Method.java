package headrace.estimate;

import headrace.problem.Refusal;

/** From what a flow is estimated. */
public enum Method {
    /** Wire power and speed. */
    POWER_AND_SPEED("power and speed"),
    /** Torque and speed. */
    TORQUE_AND_SPEED("torque and speed"),
    /** Wire power and head; the speed is found too. */
    POWER_AND_HEAD("power and head"),
    /** Head and speed. */
    HEAD_AND_SPEED("head and speed"),
    /** Power and speed, and head and speed, mixed with weights by their predicted variance. */
    MIX("power, head and speed, mixed by predicted variance");

    private final String words;

    Method(String words) {
        this.words = words;
    }

    /**
     * Returns the method that uses most of a reading.
     *
     * @throws Refusal with {@code READING_MISSING} if no flow follows from it
     */
    public static Method of(Reading reading) {
        boolean speed = reading.speed().isPresent();
        boolean power = reading.power().isPresent();
        boolean head = reading.head().isPresent();
        if (speed && power) {
            return head ? MIX : POWER_AND_SPEED;
        }
        if (speed && reading.torque().isPresent() && !head) {
            return TORQUE_AND_SPEED;
        }
        if (power && head) {
            return POWER_AND_HEAD;
        }
        if (speed && head && reading.torque().isEmpty()) {
            return HEAD_AND_SPEED;
        }
        throw new Refusal(
                EstimateProblem.READING_MISSING,
                "Asked for a flow from " + reading,
                "A flow follows from power and speed, torque and speed, power and head, head and speed, or from power,"
                        + " head and speed together",
                "Read one of the missing ones, or leave out the torque where head and speed are read");
    }

    /** Returns it in words. */
    @Override
    public String toString() {
        return words;
    }
}
