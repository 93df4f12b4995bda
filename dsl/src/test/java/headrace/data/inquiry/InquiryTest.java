package headrace.data.inquiry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.liquid.Liquid;
import headrace.problem.Place;
import headrace.problem.Problem;
import headrace.problem.Refusal;
import headrace.units.Ratio;
import headrace.units.Temperature;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class InquiryTest {
    /** 1 gpm is 0.2271247 m³/h, 1 ft is 0.3048 m. */
    @Test
    void reads_flow_head_mixture_and_pumps() {
        Inquiry asked = Inquiry.read("480 gpm @ 62 ft, 30 % PG, 3 duty");
        assertEquals(480 * 0.2271247, asked.flow().orElseThrow().toCubicMetresPerHour(), 1e-4);
        assertEquals(160 * 0.2271247, asked.flowOfOne().orElseThrow().toCubicMetresPerHour(), 1e-4);
        assertEquals(62 * 0.3048, asked.head().orElseThrow().metres(), 1e-12);
        assertEquals(62 * 0.3048, asked.dutyOfOne().orElseThrow().head().metres(), 1e-12);
        assertEquals(Liquid.propyleneGlycol(Ratio.percent(30), Temperature.celsius(20)), asked.liquid());
        assertEquals(new Inquiry.Pumps(3, 0), asked.pumps());
        assertTrue(asked.supply().unknown());
        assertTrue(asked.assumptions().toString().contains("flow of all 3 duty pumps"));
        assertTrue(asked.assumptions().toString().contains("20 °C is assumed"));
        assertTrue(asked.notes().isEmpty());
    }

    /** The same said otherwise. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "3 DUTY; 30% propylene glycol; 62 FT; 480 GPM",
                "flow = 480 gpm\nhead: 62 ft\nPG 30 %\n3 pumps",
                "480 US gpm total at 62 feet with 30 percent mpg and 3 duty pumps.",
                "160 gpm each, 62 ft head, 30 pct PG by mass, 3 running",
                "duty 480 gal/min flow 62 ft of 30%PG,3 duty"
            })
    void reads_the_same_said_otherwise(String text) {
        Inquiry plain = Inquiry.read("480 gpm @ 62 ft, 30 % PG, 3 duty");
        Inquiry asked = Inquiry.read(text);
        assertEquals(plain.flow().orElseThrow().si(), asked.flow().orElseThrow().si(), 1e-15);
        assertEquals(plain.head(), asked.head());
        assertEquals(plain.liquid(), asked.liquid());
        assertEquals(plain.pumps(), asked.pumps());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "20 m3/h, 400 V, 3 phase, 50 Hz | 400 | 3 | 50",
                "20 m³/h, 3 x 400 V | 400 | 3 | 0",
                "20 m3/h 460/3/60 | 460 | 3 | 60",
                "20 m3/h 3~ 50Hz motor supply | 0 | 3 | 50",
                "20 m3/h 230 V/1/50 | 230 | 1 | 50"
            })
    void reads_the_supply_of_the_motor(String text, double volts, int phases, double hertz) {
        Inquiry.Supply supply = Inquiry.read(text).supply();
        assertEquals(volts, supply.volts().orElse(0));
        assertEquals(phases, supply.phases().orElse(0));
        assertEquals(hertz, supply.frequency().map(frequency -> frequency.si()).orElse(0.0), 1e-12);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "duty/standby | 1 | 1",
                "2 duty + 1 standby | 2 | 1",
                "3 pumps with standby | 3 | 1",
                "two duty and one standby pump | 2 | 1",
                "1 duty, 0 standby | 1 | 0",
                "water | 1 | 0"
            })
    void counts_the_pumps(String text, int duty, int standby) {
        assertEquals(
                new Inquiry.Pumps(duty, standby), Inquiry.read(text + ", 10 m").pumps());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "6 K | 6",
                "ΔT 6 K | 6",
                "dT = 9 °F | 5",
                "9 F dT | 5",
                "6 °C ΔT | 6",
                "delta-T: 6 C | 6",
                "7/12 °C | 5",
                "54 to 45 F | 5",
                "18 °F diff | 10"
            })
    void reads_a_temperature_difference(String text, double kelvins) {
        assertEquals(
                kelvins,
                Inquiry.read("100 kW, " + text)
                        .heat()
                        .difference()
                        .orElseThrow()
                        .kelvins(),
                1e-9);
    }

    @Test
    void takes_the_liquid_at_the_middle_of_two_temperatures() {
        assertEquals(9.5, Inquiry.read("7/12 °C").liquid().temperature().toCelsius(), 1e-9);
        assertEquals(-5, Inquiry.read("25 % EG at -5 °C").liquid().temperature().toCelsius(), 1e-9);
    }

    /** Q = P/(ρ·c_p·ΔT) = 500 000/(999.75·4196·5) = 0.023838 m³/s, at 9.5 °C by table 1.3 between 5 and 10 °C. */
    @Test
    void says_when_heat_and_temperature_difference_ask_for_another_flow() {
        assertEquals(
                0.023838, Inquiry.read("500 kW, 7/12 °C").flow().orElseThrow().si(), 2e-6);
        assertTrue(Inquiry.read("500 kW, 7/12 °C").assumptions().toString().contains("moves the heat load"));
        assertTrue(Inquiry.read("500 kW, 7/12 °C, 25.3 L/s").notes().has(InquiryProblem.HEAT_DISAGREES_WITH_FLOW));
        assertTrue(Inquiry.read("500 kW, 7/12 °C, 22.5 L/s").notes().has(InquiryProblem.HEAT_DISAGREES_WITH_FLOW));
        assertTrue(Inquiry.read("500 kW, 7/12 °C, 24.9 L/s").notes().isEmpty());
        assertTrue(Inquiry.read("500 kW, 7/12 °C, 22.8 L/s").notes().isEmpty());
    }

    /** Glycol carries less heat: ρ·c_p is 1023.785·3857.00 at 20 °C by Melinder. */
    @Test
    void counts_the_heat_that_the_liquid_carries() {
        assertEquals(
                500_000 / (1023.785 * 3857.00 * 5),
                Inquiry.read("500 kW, 5 K, 30 % PG").flow().orElseThrow().si(),
                1e-7);
        assertTrue(Inquiry.read("500 kW, 5 K, 30 % PG, 23.9 L/s").notes().has(InquiryProblem.HEAT_DISAGREES_WITH_FLOW));
        assertFalse(Inquiry.read("500 kW, 5 K, water, 23.9 L/s").notes().has(InquiryProblem.HEAT_DISAGREES_WITH_FLOW));
    }

    /** 185 kPa in water of 998.2 kg/m³ are 18.899 m; 10 kg/s are 36.065 m³/h. */
    @Test
    void takes_pressures_and_mass_flows_by_the_density_and_says_so() {
        Inquiry asked = Inquiry.read("10 kg/s, dp 185 kPa, water, 20 °C");
        assertEquals(18.899, asked.head().orElseThrow().metres(), 1e-3);
        assertEquals(36.065, asked.flow().orElseThrow().toCubicMetresPerHour(), 1e-3);
        assertTrue(asked.assumptions().toString().contains("185 kPa is taken as a difference of pressure"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "480 gpm @ 62 ft, 30 % glycol | UNREADABLE_INQUIRY | 18 | Say which",
                "480 gpm @ 62 | UNREADABLE_INQUIRY | 11 | Say the unit",
                "1,200 gpm | UNREADABLE_INQUIRY | 1 | point",
                "12,5 m | UNREADABLE_INQUIRY | 1 | point",
                "480 gpm, 62 ft, propilene glycol 30 % | UNREADABLE_INQUIRY | 17 | nearest known is propylene glycol",
                "480 gpm, wter | UNREADABLE_INQUIRY | 10 | nearest known is water",
                "480 gpm, 500 gpm | SAID_TWICE | 10 | once",
                "duty/standby, 2 duty | SAID_TWICE | 15 | once",
                "0 gpm | INQUIRY_VALUE_NOT_POSSIBLE | 1 | digit",
                "480 gpm, -3 m | INQUIRY_VALUE_NOT_POSSIBLE | 10 | sign",
                "0 duty | INQUIRY_VALUE_NOT_POSSIBLE | 1 | digit",
                "101 duty | INQUIRY_VALUE_NOT_POSSIBLE | 1 | digit",
                "2 phase | INQUIRY_VALUE_NOT_POSSIBLE | 1 | which",
                "99999 V | INQUIRY_VALUE_NOT_POSSIBLE | 1 | digit",
                "head 480 gpm | UNREADABLE_INQUIRY | 1 | exchanged",
                "480 gpm, motor 5.5 kW | UNREADABLE_INQUIRY | 16 | Leave the motor",
                "480 gpm, xyzzyx | UNREADABLE_INQUIRY | 10 | Leave it out",
                "480 gpm, 5.5 kW motor | UNREADABLE_INQUIRY | 17 | Leave the motor",
                "480 gpm, 7.5 hp | UNREADABLE_INQUIRY | 10 | Leave the motor",
                "ΔT 6 m | UNREADABLE_INQUIRY | 4 | K",
                "' ' | UNREADABLE_INQUIRY | 1 | 480 gpm"
            })
    void refuses_what_it_cannot_read_with_its_place(String text, InquiryProblem problem, int column, String next) {
        Refusal refusal = assertThrows(Refusal.class, () -> Inquiry.read(text));
        assertEquals(problem, refusal.problem(), refusal.getMessage());
        assertEquals(new Place("inquiry", 1, column), refusal.place().orElseThrow());
        assertTrue(refusal.getMessage().contains(next), refusal.getMessage());
    }

    @Test
    void takes_a_power_after_the_supply_of_the_motor_as_heat() {
        Inquiry asked = Inquiry.read("480 gpm, motor 400 V 3 phase, 100 kW");
        assertEquals(100_000, asked.heat().load().orElseThrow().watts(), 1e-9);
    }

    @Test
    void counts_lines_and_columns_in_a_text_of_several_lines() {
        Refusal refusal = assertThrows(Refusal.class, () -> Inquiry.read("480 gpm\n62 ft, and so on"));
        assertEquals(new Place("inquiry", 2, 12), refusal.place().orElseThrow());
    }

    @ParameterizedTest
    @ValueSource(strings = {"10 m, water, 160 °C", "10 m, 30 % PG, -30 °C", "10 m, 80 % EG", "10 m, 1e5 °C"})
    void refuses_a_liquid_where_its_temperature_or_share_stands(String text) {
        Refusal refusal = assertThrows(Refusal.class, () -> Inquiry.read(text));
        assertTrue(refusal.place().orElseThrow().column() > 1, refusal.getMessage());
        Problem problem = refusal.problem();
        assertFalse(problem.anchor().isEmpty());
    }
}
