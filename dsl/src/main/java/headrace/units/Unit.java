package headrace.units;

import java.util.List;

/**
 * A unit of one kind of quantity.
 *
 * @param word the word after a number in a script, as in {@code 52.m3ph}
 * @param symbol how it is printed, as in {@code 52 m³/h}
 * @param factor how many of the SI unit it is
 * @param offset what is added after multiplying, in the SI unit; 0 for all but temperatures
 * @param spellings how else it may be written in text and files
 */
public record Unit(String word, String symbol, double factor, double offset, List<String> spellings) {
    /** A value this close to zero, as a share of the offset, is what subtracting the offset leaves of zero. */
    private static final double ROUNDING = 1e-12;

    /** Keeps the spellings from changing. */
    public Unit {
        spellings = List.copyOf(spellings);
    }

    static Unit of(String word, String symbol, double factor, String... spellings) {
        return new Unit(word, symbol, factor, 0, List.of(spellings));
    }

    static Unit shifted(String word, String symbol, double factor, double offset, String... spellings) {
        return new Unit(word, symbol, factor, offset, List.of(spellings));
    }

    double toSi(double value) {
        return value * factor + offset;
    }

    /** Returns an SI value as a number of this unit. */
    public double fromSi(double si) {
        return (si - offset) / factor;
    }

    /** Prints an SI value in this unit. */
    String print(double si) {
        double value = fromSi(si);
        boolean nothing = Math.abs(value * factor) < ROUNDING * Math.abs(offset);
        return (Numbers.print(nothing ? 0 : value) + " " + symbol).strip();
    }
}
