package headrace.energy.load;

import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.units.Ratio;
import headrace.units.Temperature;
import java.util.Arrays;

/**
 * A load that goes with the outdoor temperature on one side of a change point: {@code L = b + (1 − b)·max(0, (T −
 * T_c)/(T_d − T_c))}.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Shares of design load.
 *   <dt>Limits
 *   <dd>A base of 0 or more and below 100 %. With the design temperature below the change point it is a heating load,
 *       above it a cooling load. Beyond the design temperature the load goes on rising, up to 120 %.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_CHANGE_POINT}, and {@code LOAD_OUT_OF_RANGE} as {@link HourlyLoad} has
 *       it.
 *   <dt>Source
 *   <dd>The form of the change-point models of ASHRAE Guideline 14; the numbers are the user's.
 * </dl>
 *
 * @param changePoint the temperature from which on there is a load: T_c
 * @param design the temperature at design load: T_d
 * @param base the load on the other side of the change point: b
 */
public record ChangePoint(Temperature changePoint, Temperature design, Ratio base) {
    private static final double LEAST_KELVINS = 1;

    /** Refuses what makes no load. */
    public ChangePoint {
        double between = Math.abs(design.kelvins() - changePoint.kelvins());
        if (!(between >= LEAST_KELVINS) || !(base.value() >= 0 && base.value() < 1)) {
            throw new Refusal(
                    LoadProblem.IMPOSSIBLE_CHANGE_POINT,
                    "Asked for a load from " + changePoint + " on, at design at " + design + ", with a base of " + base,
                    "The two temperatures are a kelvin apart at least, and the base is 0 or more and below 100 %",
                    "For heating the design temperature is the lower one, for cooling the higher");
        }
    }

    /** Returns the share of design load at an outdoor temperature in °C. */
    double shareAt(double celsius) {
        double from = changePoint.toCelsius();
        double beyond = (celsius - from) / (design.toCelsius() - from);
        return base.value() + (1 - base.value()) * Math.max(0, beyond);
    }

    /** Returns the load of a year of weather. */
    public HourlyLoad over(HourlyWeather weather, String name) {
        double[] shares = shares(weather);
        return HourlyLoad.of(name, weather.start(), shares, weather.basis().with(this.toString()))
                .with(weather.notes());
    }

    /**
     * Returns the load of a year of weather, no more than a share of design in any hour; where the weather asks for
     * more, a note says so.
     */
    public HourlyLoad over(HourlyWeather weather, String name, Ratio most) {
        double[] shares = shares(weather);
        double asked = Arrays.stream(shares).max().orElseThrow();
        long cut = Arrays.stream(shares).filter(share -> share > most.value()).count();
        double[] kept = Arrays.stream(shares)
                .map(share -> Math.min(share, most.value()))
                .toArray();
        HourlyLoad load = HourlyLoad.of(
                        name,
                        weather.start(),
                        kept,
                        weather.basis().with(this.toString()).with("load: no more than " + most + " of design"))
                .with(weather.notes());
        return cut == 0
                ? load
                : load.with(Notes.NONE.with(
                        LoadProblem.LOAD_CAPPED,
                        "In " + cut + " hours the weather asks for up to " + Ratio.of(asked) + " of design; " + most
                                + " was taken"));
    }

    private double[] shares(HourlyWeather weather) {
        double[] shares = new double[weather.hours()];
        for (int i = 0; i < shares.length; i++) {
            shares[i] = shareAt(weather.celsiusAt(i));
        }
        return shares;
    }

    @Override
    public String toString() {
        boolean heating = design.compareTo(changePoint) < 0;
        return (heating ? "heating" : "cooling") + " load: " + base + " of design "
                + (heating ? "from " : "up to ") + changePoint + (heating ? " up" : "") + ", in proportion to 100 % at "
                + design;
    }
}
