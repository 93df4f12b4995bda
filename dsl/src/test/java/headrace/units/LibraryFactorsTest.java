package headrace.units;

import static javax.measure.MetricPrefix.GIGA;
import static javax.measure.MetricPrefix.KILO;
import static javax.measure.MetricPrefix.MEGA;
import static javax.measure.MetricPrefix.MILLI;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static systems.uom.common.Imperial.GALLON_UK;
import static systems.uom.common.Imperial.POUND_FORCE;
import static systems.uom.common.USCustomary.CUBIC_FOOT;
import static systems.uom.common.USCustomary.FAHRENHEIT;
import static systems.uom.common.USCustomary.FOOT;
import static systems.uom.common.USCustomary.GALLON_LIQUID;
import static systems.uom.common.USCustomary.INCH;
import static systems.uom.common.USCustomary.POUND;
import static systems.uom.common.USCustomary.REVOLUTION;
import static tech.units.indriya.unit.Units.CELSIUS;
import static tech.units.indriya.unit.Units.CUBIC_METRE;
import static tech.units.indriya.unit.Units.DAY;
import static tech.units.indriya.unit.Units.GRAM;
import static tech.units.indriya.unit.Units.HERTZ;
import static tech.units.indriya.unit.Units.HOUR;
import static tech.units.indriya.unit.Units.JOULE;
import static tech.units.indriya.unit.Units.KELVIN;
import static tech.units.indriya.unit.Units.KILOGRAM;
import static tech.units.indriya.unit.Units.LITRE;
import static tech.units.indriya.unit.Units.METRE;
import static tech.units.indriya.unit.Units.MINUTE;
import static tech.units.indriya.unit.Units.NEWTON;
import static tech.units.indriya.unit.Units.PASCAL;
import static tech.units.indriya.unit.Units.PERCENT;
import static tech.units.indriya.unit.Units.RADIAN;
import static tech.units.indriya.unit.Units.SECOND;
import static tech.units.indriya.unit.Units.SQUARE_METRE;
import static tech.units.indriya.unit.Units.WATT;

import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import javax.measure.UnitConverter;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Holds our units against a general-purpose unit library of other hands (indriya 2.2 with systems-common 2.1). */
@DisplayNameGeneration(ReplaceUnderscores.class)
class LibraryFactorsTest {
    private static final Map<String, javax.measure.Unit<?>> LIBRARY = new TreeMap<>();

    static {
        LIBRARY.put("m3ph", CUBIC_METRE.divide(HOUR));
        LIBRARY.put("lps", LITRE.divide(SECOND));
        LIBRARY.put("lpm", LITRE.divide(MINUTE));
        LIBRARY.put("lph", LITRE.divide(HOUR));
        LIBRARY.put("gpm", GALLON_LIQUID.divide(MINUTE));
        LIBRARY.put("impGpm", GALLON_UK.divide(MINUTE));
        LIBRARY.put("kgph", KILOGRAM.divide(HOUR));
        LIBRARY.put("lbph", POUND.divide(HOUR));
        LIBRARY.put("mm", MILLI(METRE));
        LIBRARY.put("inch", INCH);
        LIBRARY.put("ft", FOOT);
        LIBRARY.put("ftHead", FOOT);
        LIBRARY.put("mm2", MILLI(METRE).pow(2));
        LIBRARY.put("ft2", FOOT.pow(2));
        LIBRARY.put("inch2", INCH.pow(2));
        LIBRARY.put("litre", LITRE);
        LIBRARY.put("gal", GALLON_LIQUID);
        LIBRARY.put("impGal", GALLON_UK);
        LIBRARY.put("ft3", CUBIC_FOOT);
        LIBRARY.put("ftps", FOOT.divide(SECOND));
        LIBRARY.put("kPa", KILO(PASCAL));
        LIBRARY.put("MPa", MEGA(PASCAL));
        LIBRARY.put("psi", POUND_FORCE.divide(INCH.pow(2)));
        LIBRARY.put("psig", POUND_FORCE.divide(INCH.pow(2)));
        LIBRARY.put("psia", POUND_FORCE.divide(INCH.pow(2)));
        LIBRARY.put("kW", KILO(WATT));
        LIBRARY.put("MW", MEGA(WATT));
        LIBRARY.put("kJ", KILO(JOULE));
        LIBRARY.put("MJ", MEGA(JOULE));
        LIBRARY.put("GJ", GIGA(JOULE));
        LIBRARY.put("Wh", WATT.multiply(HOUR));
        LIBRARY.put("kWh", KILO(WATT).multiply(HOUR));
        LIBRARY.put("MWh", MEGA(WATT).multiply(HOUR));
        LIBRARY.put("Nm", NEWTON.multiply(METRE));
        LIBRARY.put("lbfft", POUND_FORCE.multiply(FOOT));
        LIBRARY.put("lbfin", POUND_FORCE.multiply(INCH));
        LIBRARY.put("rpm", REVOLUTION.divide(MINUTE));
        LIBRARY.put("rps", REVOLUTION.divide(SECOND));
        LIBRARY.put("radps", RADIAN.divide(SECOND));
        LIBRARY.put("kHz", KILO(HERTZ));
        LIBRARY.put("percent", PERCENT);
        LIBRARY.put("kelvin", KELVIN);
        LIBRARY.put("degC", CELSIUS);
        LIBRARY.put("degF", FAHRENHEIT);
        LIBRARY.put("lbpft3", POUND.divide(CUBIC_FOOT));
        LIBRARY.put("kgpl", KILOGRAM.divide(LITRE));
        LIBRARY.put("mPas", MILLI(PASCAL).multiply(SECOND));
        LIBRARY.put("mm2ps", MILLI(METRE).pow(2).divide(SECOND));
        LIBRARY.put("ft2ps", FOOT.pow(2).divide(SECOND));
        LIBRARY.put("m2ps", SQUARE_METRE.divide(SECOND));
        LIBRARY.put("gram", GRAM);
        LIBRARY.put("lb", POUND);
        LIBRARY.put("minute", MINUTE);
        LIBRARY.put("h", HOUR);
        LIBRARY.put("day", DAY);
    }

    static Stream<String> words() {
        return LIBRARY.keySet().stream();
    }

    @ParameterizedTest
    @MethodSource("words")
    void is_as_large_as_the_library_says(String word) {
        UnitConverter library = toSi(LIBRARY.get(word));
        for (double value : new double[] {-12, 0, 1, 37.5, 1e6}) {
            double expected = library.convert(value);
            double ours = Quantities.of(value, word).orElseThrow().si();
            assertEquals(expected, ours, 1e-12 * Math.max(1e-9, Math.abs(expected)), value + " " + word);
        }
    }

    /** The library's system unit of a mass is the kilogram, of an angle the radian, so that it agrees with ours. */
    @SuppressWarnings({"rawtypes", "unchecked"})
    private static UnitConverter toSi(javax.measure.Unit<?> unit) {
        return ((javax.measure.Unit) unit).getConverterTo(unit.getSystemUnit());
    }
}
