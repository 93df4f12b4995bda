package headrace.estimate;

import headrace.units.Amount;
import headrace.units.Numbers;
import headrace.units.Ratio;

/**
 * How far an estimated value may be off: standard uncertainties, what is random apart from what is systematic.
 *
 * <p>Source: JCGM 100:2008, 5.1 for their combination and 6.3 for the coverage factor 2.
 *
 * @param value the estimated value
 * @param random the standard uncertainty from noise, which averaging makes less
 * @param systematic the standard uncertainty from what is the same in every reading
 * @param <Q> what it is a value of
 */
public record Spread<Q extends Amount<Q>>(Q value, Q random, Q systematic) {
    /** The coverage factor of {@link #expanded()}. */
    public static final double COVERAGE = 2;

    /** Returns the standard uncertainty of both together. */
    public Q standard() {
        return made(Math.hypot(random.si(), systematic.si()));
    }

    /** Returns the expanded uncertainty with the coverage factor k = 2, about 95 %. */
    public Q expanded() {
        return made(COVERAGE * Math.hypot(random.si(), systematic.si()));
    }

    /** Returns the lower end of the band of k = 2. */
    public Q low() {
        return value.minus(expanded());
    }

    /** Returns the upper end of the band of k = 2. */
    public Q high() {
        return value.plus(expanded());
    }

    /** Returns the expanded uncertainty as a share of another value, such as the design flow. */
    public Ratio of(Q whole) {
        return Ratio.of(expanded().si() / whole.si());
    }

    /** Returns the expanded uncertainty as a share of the reading itself, in words; there is none of a reading of 0. */
    public String ofReading() {
        return value.si() == 0
                ? "no share of a reading of 0"
                : Numbers.print(100 * expanded().si() / Math.abs(value.si())) + " % of reading";
    }

    private Q made(double si) {
        return value.kind().make().apply(si);
    }

    /** Returns the value with its expanded uncertainty, such as {@code 45 m³/h ± 6.4 m³/h (k = 2)}. */
    @Override
    public String toString() {
        return value + " ± " + expanded() + " (k = 2)";
    }
}
