package headrace.curve;

import headrace.problem.Problem;

/** What can be wrong with a pump test or a pump curve, and what a curve can have to say about itself. */
public enum CurveProblem implements Problem {
    /** Fewer points than a curve can be drawn through. */
    TOO_FEW_POINTS,
    /** A test point that no pump can have: a negative flow or head, no power, no speed. */
    IMPOSSIBLE_POINT,
    /** A pump test that says something impossible about the pump, such as no speed. */
    IMPOSSIBLE_TEST,
    /** A duty without flow or head. */
    IMPOSSIBLE_DUTY,
    /** A flow outside the tested range. */
    FLOW_OUT_OF_RANGE,
    /** A head that the curve does not reach. */
    HEAD_OUT_OF_RANGE,
    /** A duty that no speed brings onto the tested curve. */
    DUTY_OUT_OF_RANGE,
    /** A speed at which the curve means nothing. */
    SPEED_OUT_OF_RANGE,
    /** More hydraulic power than shaft power: most often a wrong unit. */
    EFFICIENCY_ABOVE_ONE,
    /** A fitted head that falls to nothing. */
    HEAD_FALLS_TO_ZERO,
    /** A fitted shaft power that falls to nothing. */
    POWER_FALLS_TO_ZERO,
    /** A power loss that is more than the pump takes. */
    IMPOSSIBLE_LOSS,
    /** Measured efficiencies over speed that are too few, not above 0, or not the whole at the tested speed. */
    IMPOSSIBLE_EFFICIENCIES,
    /** A liquid too viscous for the correction, or a test that was in a viscous liquid itself. */
    VISCOSITY_OUT_OF_RANGE,
    /** A trim of an impeller whose diameter is not known. */
    DIAMETER_UNKNOWN,
    /** A diameter above the tested one, below the least, or at which no impeller does what is asked. */
    TRIM_OUT_OF_RANGE,
    /** A trim by a rule or between curves that mean nothing. */
    IMPOSSIBLE_TRIM,
    /** A confidence that is no share between 0 and 1. */
    IMPOSSIBLE_CONFIDENCE,
    /** A point computed beyond the tested range because the caller chose so. */
    EXTENDED_BEYOND_TEST,
    /** A curve that the caller has continued beyond its test. */
    CURVE_EXTENDED,
    /** Too few points to state a scatter or a band. */
    FEW_POINTS,
    /** A head that rises with flow somewhere. */
    HEAD_DROOP,
    /** A shaft power that does not rise with flow everywhere. */
    POWER_NOT_RISING,
    /** Best efficiency at the end of the tested range, where it may lie beyond. */
    BEST_EFFICIENCY_AT_END,
    /** A test point far from the curve through the others. */
    OUTLYING_POINT,
    /** A fitted curve that swings about its points instead of scattering about them. */
    SYSTEMATIC_RESIDUALS,
    /** More than one test point at a flow. */
    REPEATED_FLOWS,
    /** A head that a condition on its shape holds away from the curve nearest the points. */
    SHAPE_HELD,
    /** Readings at several speeds that the affinity laws do not bring onto one curve. */
    SIMILARITY_SCATTER,
    /** A curve corrected for the viscosity of its liquid. */
    VISCOSITY_CORRECTED,
    /** A curve of a trimmed impeller by a rule instead of a test. */
    TRIMMED_BY_RULE,
    /** A trim beyond what its rule, or the efficiency, is held to be valid for. */
    TRIM_BEYOND_VALIDITY,
    /** A speed far from the one at which the pump was tested. */
    SPEED_FAR_FROM_TEST,
    /** Too few readings of the NPSH required. */
    NPSH_UNKNOWN,
    /** Readings of the NPSH required from which none follows that is above 0 and rises with flow. */
    IMPOSSIBLE_NPSH,
    /** A flow above those with readings of the NPSH required. */
    NPSH_OUT_OF_RANGE,
    /** An NPSH required outside the flows with readings. */
    NPSH_BEYOND_TEST,
    /** An NPSH required at another speed than that of its readings. */
    NPSH_SPEED_ASSUMED,
    /** An NPSH required with another impeller than that of its readings. */
    NPSH_IMPELLER_ASSUMED,
    /** An NPSH required in a viscous liquid. */
    NPSH_VISCOSITY_CORRECTED
}
