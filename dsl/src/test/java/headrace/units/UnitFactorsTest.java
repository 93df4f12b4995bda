package headrace.units;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Holds every unit against its published size.
 *
 * <p>Sources: "SI", the SI Brochure, 9th edition (prefixes and units accepted beside the SI); "SP811", NIST Special
 * Publication 811 (2008), appendix B.8, to the seven digits printed there; "hand", worked by hand from an exact
 * definition of the same publication; "IEC", IEC 60534-1, the definition of Kv and Cv, worked to ten digits.
 */
@DisplayNameGeneration(ReplaceUnderscores.class)
class UnitFactorsTest {
    /** The word, how many of the SI unit it is, the factory that makes it, and where the size is published. */
    private static final String TABLE = """
            m3ps    1               cubicMetresPerSecond          SI
            m3ph    2.777777778e-4  cubicMetresPerHour            SI
            lps     1e-3            litresPerSecond               SI
            lpm     1.666666667e-5  litresPerMinute               SI
            lph     2.777777778e-7  litresPerHour                 SI
            gpm     6.309020e-5     usGallonsPerMinute            SP811
            impGpm  7.576816667e-5  imperialGallonsPerMinute      hand:4.54609e-3/60
            kgps    1               kilogramsPerSecond            SI
            kgph    2.777777778e-4  kilogramsPerHour              SI
            tph     2.777777778e-1  tonnesPerHour                 SI
            lbph    1.259979e-4     poundsPerHour                 SP811
            m       1               metres                        SI
            mm      1e-3            millimetres                   SI
            cm      1e-2            centimetres                   SI
            km      1e3             kilometres                    SI
            inch    2.54e-2         inches                        SP811
            ft      3.048e-1        feet                          SP811
            mHead   1               metres                        SI
            ftHead  3.048e-1        feet                          SP811
            m2      1               squareMetres                  SI
            mm2     1e-6            squareMillimetres             SI
            cm2     1e-4            squareCentimetres             SI
            ft2     9.290304e-2     squareFeet                    SP811
            inch2   6.4516e-4       squareInches                  SP811
            m3      1               cubicMetres                   SI
            litre   1e-3            litres                        SI
            gal     3.785412e-3     usGallons                     SP811
            impGal  4.54609e-3      imperialGallons               SP811
            ft3     2.831685e-2     cubicFeet                     SP811
            mps     1               metresPerSecond               SI
            ftps    3.048e-1        feetPerSecond                 SP811
            Pa      1               pascals                       SI
            kPa     1e3             kilopascals                   SI
            mbar    1e2             millibars                     SP811
            bar     1e5             bars                          SP811
            MPa     1e6             megapascals                   SI
            psi     6.894757e3      poundsPerSquareInch           SP811
            mH2O    9.80665e3       metresOfWater                 SP811
            ftH2O   2.989067e3      feetOfWater                   SP811
            inH2O   2.490889e2      inchesOfWater                 SP811
            PaGauge 1               pascals                       SI
            kPaGauge 1e3            kilopascals                   SI
            barGauge 1e5            bars                          SP811
            psig    6.894757e3      poundsPerSquareInch           SP811
            PaAbs   1               pascals                       SI
            kPaAbs  1e3             kilopascals                   SI
            barAbs  1e5             bars                          SP811
            psia    6.894757e3      poundsPerSquareInch           SP811
            W       1               watts                         SI
            kW      1e3             kilowatts                     SI
            MW      1e6             megawatts                     SI
            hp      7.456999e2      horsepower                    SP811
            metricHp 7.354988e2     metricHorsepower              SP811
            btuph   2.930711e-1     btuPerHour                    SP811
            kbtuph  2.930711e2      thousandBtuPerHour            SP811
            tonR    3.516853e3      tonsOfRefrigeration           SP811
            J       1               joules                        SI
            kJ      1e3             kilojoules                    SI
            MJ      1e6             megajoules                    SI
            GJ      1e9             gigajoules                    SI
            Wh      3.6e3           wattHours                     SP811
            kWh     3.6e6           kilowattHours                 SP811
            MWh     3.6e9           megawattHours                 SP811
            btu     1.055056e3      btu                           SP811
            Nm      1               newtonMetres                  SI
            lbfft   1.355818        poundForceFeet                SP811
            lbfin   1.129848e-1     poundForceInches              SP811
            radps   1               radiansPerSecond              SI
            rpm     1.047198e-1     revolutionsPerMinute          SP811
            rps     6.283185307     revolutionsPerSecond          hand:2*pi
            Hz      1               hertz                         SI
            kHz     1e3             kilohertz                     SI
            ratio   1               of                            SI
            percent 1e-2            percent                       SI
            kelvin  1               kelvins                       SI
            degC    1               celsius                       SI
            degF    5.555555556e-1  fahrenheit                    SP811
            K       1               kelvins                       SI
            dF      5.555555556e-1  fahrenheitDegrees             SP811
            kgpm3   1               kilogramsPerCubicMetre        SI
            kgpl    1e3             kilogramsPerLitre             SI
            lbpft3  1.601846e1      poundsPerCubicFoot            SP811
            jpkgK   1               joulesPerKilogramKelvin       SI
            kjpkgK  1e3             kilojoulesPerKilogramKelvin   SI
            btuplbF 4.1868e3        btuPerPoundFahrenheit         SP811
            Pas     1               pascalSeconds                 SI
            mPas    1e-3            millipascalSeconds            SI
            cP      1e-3            centipoises                   SP811
            m2ps    1               squareMetresPerSecond         SI
            mm2ps   1e-6            squareMillimetresPerSecond    SI
            cSt     1e-6            centistokes                   SP811
            ft2ps   9.290304e-2     squareFeetPerSecond           SP811
            kg      1               kilograms                     SI
            gram    1e-3            grams                         SI
            tonne   1e3             tonnes                        SI
            lb      4.535924e-1     pounds                        SP811
            s       1               seconds                       SI
            minute  60              minutes                       SI
            h       3600            hours                         SI
            day     86400           days                          SI
            year    3.1536e7        years                         SP811
            kv      1               kv                            IEC
            cv      0.8649776554    cv                            IEC
            """;

    /** The last digit printed in the table may be off by half, in the worst case of seven digits beginning with 1. */
    private static final double PRINTED = 5e-7;

    static Stream<Row> rows() {
        return TABLE.lines().map(line -> line.split("\\s+")).map(cell -> new Row(cell[0], cell[1], cell[2]));
    }

    @Test
    void each_unit_of_each_kind_is_in_the_table() {
        List<String> words = new ArrayList<>();
        Quantities.KINDS.forEach(kind -> kind.units().forEach(unit -> words.add(unit.word())));
        assertEquals(
                words.stream().sorted().toList(), rows().map(Row::word).sorted().toList());
    }

    @ParameterizedTest
    @MethodSource("rows")
    void is_as_large_as_published(Row row) {
        double size =
                row.kind().of(1, row.word()).si() - row.kind().of(0, row.word()).si();
        double published = Double.parseDouble(row.factor());
        assertEquals(published, size, PRINTED * published);
    }

    @ParameterizedTest
    @MethodSource("rows")
    void is_made_by_the_factory_of_its_name_and_told_by_the_accessor(Row row) throws ReflectiveOperationException {
        Class<?> type = row.kind().type();
        Object made = type.getMethod(row.factory(), double.class).invoke(null, 7.25);
        assertEquals(row.kind().of(7.25, row.word()), made);
        assertEquals(7.25, (double) type.getMethod(row.accessor()).invoke(made), 1e-12 * 300);
    }

    @ParameterizedTest(name = "{0} {1} is {2} K")
    @CsvSource({
        "0, degC, 273.15",
        "32, degF, 273.15",
        "-40, degC, 233.15",
        "-40, degF, 233.15",
        "212, degF, 373.15",
        "-459.67, degF, 0",
        "300, kelvin, 300"
    })
    void has_the_zero_of_its_temperature_scale(double value, String unit, double kelvins) {
        Temperature temperature = Temperature.KIND.of(value, unit);
        assertEquals(kelvins, temperature.kelvins(), 1e-12 * 300);
        assertEquals(value, temperature.in(unit), 1e-12 * 500);
    }

    @Test
    void a_kv_of_1_is_the_published_cv() {
        assertEquals(1.1560992284, FlowCoefficient.kv(1).toCv(), 1e-10);
        assertEquals(0.8649776554, FlowCoefficient.cv(1).kv(), 1e-10);
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "the US gallon is 231 cubic inches, gal, 3.785411784e-3",
        "the pound of force a square inch, psi, 6894.757293168361",
        "the mechanical horsepower, hp, 745.6998715822702",
        "the pound, lb, 0.45359237",
        "the US gallon a minute in m³/h, gpm, 6.30901964e-5"
    })
    void keeps_all_digits_of_an_exact_definition(String what, String word, double exact) {
        Quantity<?> one = Quantities.of(1, word).orElseThrow();
        assertEquals(exact, one.si(), 1e-15 * exact);
    }

    @Test
    void the_US_gallon_a_minute_is_227_1247_litres_an_hour() {
        assertEquals(0.2271247, Flow.usGallonsPerMinute(1).toCubicMetresPerHour(), 5e-8);
    }

    /** One row of the table. */
    record Row(String word, String factor, String factory) {
        Kind<?> kind() {
            return Quantities.of(1, word).orElseThrow().kind();
        }

        String accessor() {
            if (factory.equals("of")) {
                return "value";
            }
            boolean si = kind().units().get(0).word().equals(word);
            return si ? factory : "to" + Character.toUpperCase(factory.charAt(0)) + factory.substring(1);
        }
    }
}
