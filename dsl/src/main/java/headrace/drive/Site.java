package headrace.drive;

import headrace.problem.Refusal;
import headrace.units.Length;
import headrace.units.Numbers;
import headrace.units.Ratio;
import headrace.units.Temperature;

/**
 * Where a motor stands: thin or hot air cools it less, so that it gives less than its rated power.
 *
 * <dl>
 *   <dt>Units
 *   <dd>The usable share of rated power: 1 % less for each 100 m above 1000 m, and 1 % less for each K above 40 °C.
 *   <dt>Limits
 *   <dd>Up to 4000 m and 60 °C.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code SITE_OUTSIDE_DERATING}.
 *   <dt>Source
 *   <dd>Common practice, from memory; makers give 0.5 to 1 % for each K, of which the careful end is taken.
 * </dl>
 *
 * @param altitude the height above the sea
 * @param ambient the temperature of the air
 */
public record Site(Length altitude, Temperature ambient) {
    /** At most 1000 m and 40 °C, for which motors are rated. */
    public static final Site ORDINARY = new Site(Length.metres(0), Temperature.celsius(40));

    private static final double MOST_METRES = 4000;
    private static final double MOST_CELSIUS = 60;
    private static final double ROUNDING = 1e-9;

    /** Refuses a place for which common practice has no figure. */
    public Site {
        if (altitude.metres() > MOST_METRES * (1 + ROUNDING) || ambient.toCelsius() > MOST_CELSIUS * (1 + ROUNDING)) {
            throw new Refusal(
                    DriveProblem.SITE_OUTSIDE_DERATING,
                    "Asked for a motor at " + altitude + " in air of " + ambient,
                    "Common practice derates up to 4000 m and 60 °C",
                    "Ask the maker for the rated power at this place");
        }
    }

    /** Returns the usable share of rated power. */
    public Ratio usable() {
        double high = Math.max(0, altitude.metres() - 1000) / 100;
        double hot = Math.max(0, ambient.toCelsius() - 40);
        return Ratio.percent((100 - high) * (100 - hot) / 100);
    }

    @Override
    public String toString() {
        return Numbers.print(altitude.metres()) + " m, " + Numbers.print(ambient.toCelsius()) + " °C";
    }
}
