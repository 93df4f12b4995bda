package headrace.operation.suction;

import headrace.problem.Refusal;
import headrace.units.AbsolutePressure;
import headrace.units.Length;

/**
 * The pressure of the air over altitude: {@code 101.325 kPa·(1 − 2.25577e−5·z)^5.2559}, z in m.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Altitude above sea level.
 *   <dt>Limits
 *   <dd>−500 to 11 000 m. A mean: weather moves it by some 3 %.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code ALTITUDE_OUT_OF_RANGE}.
 *   <dt>Source
 *   <dd>ISO 2533:1975, standard atmosphere, constants from memory, unconfirmed.
 * </dl>
 */
public final class Atmosphere {
    /** At sea level. */
    public static final AbsolutePressure SEA_LEVEL = AbsolutePressure.kilopascals(101.325);

    private static final double LOWEST = -500;
    private static final double HIGHEST = 11_000;

    private Atmosphere() {}

    /** Returns the pressure of the air at an altitude. */
    public static AbsolutePressure at(Length altitude) {
        double z = altitude.metres();
        if (z < LOWEST || z > HIGHEST) {
            throw new Refusal(
                    SuctionProblem.ALTITUDE_OUT_OF_RANGE,
                    "Asked for the pressure of the air at " + altitude,
                    "It is known from " + Length.metres(LOWEST) + " to " + Length.metres(HIGHEST),
                    "Check the unit, or give the pressure of the air itself");
        }
        return SEA_LEVEL.times(Math.pow(1 - 2.25577e-5 * z, 5.2559));
    }
}
