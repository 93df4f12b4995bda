package headrace.estimate;

import headrace.problem.Problem;

/** What can be wrong with an estimate, and what an estimate can have to say. */
public enum EstimateProblem implements Problem {
    /** One flow was asked for where the readings can mean several. */
    TWO_FLOWS,
    /** A reading above everything that the map has at that speed. */
    READING_ABOVE_MAP,
    /** A reading below everything that the map has at that speed. */
    READING_BELOW_MAP,
    /** A speed outside the range of the pump set. */
    SPEED_OUTSIDE_ESTIMATE,
    /** Readings from which no flow follows. */
    READING_MISSING,
    /** A reading that no running pump can give. */
    IMPOSSIBLE_READING,
    /** Power and head that mean flows further apart than their errors allow. */
    READINGS_DISAGREE,
    /** A flow of which so little is known that it should not be used. */
    BLIND_ZONE,
    /** A map that no reading on site has been held against. */
    NOT_CALIBRATED,
    /** Errors of readings and map that nobody stated. */
    ERRORS_ASSUMED,
    /** Errors that are no errors. */
    IMPOSSIBLE_ERROR,
    /** The linear band and the drawn one differ. */
    LINEAR_BAND_DOUBTFUL,
    /** Draws that fell off the map. */
    DRAWS_OFF_MAP,
    /** A torque where only wire power is known. */
    NO_SHAFT_POWER,
    /** Readings from which no measured map can be made. */
    IMPOSSIBLE_POWER_MAP,
    /** A wire-power map brought to another density as a whole. */
    DENSITY_ON_WIRE,
    /** Readings from which no calibration follows. */
    IMPOSSIBLE_CALIBRATION,
    /** Averaging of readings that are not independent. */
    AVERAGED_READINGS
}
