package headrace.rule.index;

import headrace.curve.EfficiencyOverSpeed;
import headrace.curve.PumpCurve;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.units.Speed;

/** Moves a curve to the nominal speed at which a regulation judges it, by the affinity laws. */
record NominalSpeed(PumpCurve curve, Speed speed, Notes notes) {
    private static final double ROUNDING = 1e-9;

    /** A pump is of a nominal speed if its own is at most this share away; the choice is ours. */
    private static final double NEAR = 0.10;

    /** The most that clean cold water has, in m²/s. */
    private static final double MOST_VISCOSITY = 1.5e-6;

    static NominalSpeed of(PumpCurve curve, String index, int... revolutionsPerMinute) {
        requireWater(curve, index);
        for (int each : revolutionsPerMinute) {
            Speed nominal = Speed.revolutionsPerMinute(each);
            double share = curve.speed().over(nominal).value();
            if (Math.abs(share - 1) <= ROUNDING) {
                return new NominalSpeed(curve, nominal, Notes.NONE);
            }
            if (Math.abs(share - 1) <= NEAR + ROUNDING) {
                Notes moved = Notes.NONE.with(
                        IndexProblem.MOVED_TO_NOMINAL_SPEED,
                        "The curve of " + curve.name() + " at " + curve.speed() + " was moved by the affinity laws to "
                                + nominal + ", the nominal speed of the " + index);
                PumpCurve at = curve.withEfficiencyOverSpeed(EfficiencyOverSpeed.affinity())
                        .atSpeed(nominal);
                return new NominalSpeed(at, nominal, moved);
            }
        }
        throw new Refusal(
                IndexProblem.OUTSIDE_INDEX_SCOPE,
                "Asked for the " + index + " of " + curve.name() + " at " + curve.speed(),
                "The index is defined at " + revolutionsPerMinute[0] + " rpm and " + revolutionsPerMinute[1]
                        + " rpm; a curve within 10 % of one of them is moved to it",
                "Take the curve at one of these speeds");
    }

    /** Refuses a number of stages that no pump has. */
    static void requireStages(int stages, String index) {
        if (stages < 1) {
            throw new Refusal(
                    IndexProblem.OUTSIDE_INDEX_SCOPE,
                    "Asked for the " + index + " of a pump of " + stages + " stages",
                    "A pump has one stage or more",
                    "Say how many it has");
        }
    }

    private static void requireWater(PumpCurve curve, String index) {
        if (curve.liquid().kinematicViscosity().si() > MOST_VISCOSITY) {
            throw new Refusal(
                    IndexProblem.OUTSIDE_INDEX_SCOPE,
                    "Asked for the " + index + " of " + curve.name() + " in "
                            + curve.liquid().name() + " of "
                            + curve.liquid().kinematicViscosity(),
                    "The index is one of pumps in clean cold water, 1.5 mm²/s at most",
                    "Take the curve in water");
        }
    }
}
