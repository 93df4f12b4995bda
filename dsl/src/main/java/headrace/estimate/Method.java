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
        throw missing("a flow from " + reading);
    }

    /**
     * Passes if a reading holds what this method needs.
     *
     * @throws Refusal with {@code READING_MISSING} if it does not
     */
    void requireIn(Reading reading) {
        boolean speed = this == POWER_AND_HEAD || reading.speed().isPresent();
        boolean power = this == TORQUE_AND_SPEED
                || this == HEAD_AND_SPEED
                || reading.power().isPresent();
        boolean torque = this != TORQUE_AND_SPEED || reading.torque().isPresent();
        boolean head = this == POWER_AND_SPEED
                || this == TORQUE_AND_SPEED
                || reading.head().isPresent();
        if (!speed || !power || !torque || !head) {
            throw missing("a flow from " + this + " where " + reading + " was read");
        }
    }

    private static Refusal missing(String asked) {
        return new Refusal(
                EstimateProblem.READING_MISSING,
                "Asked for " + asked,
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
