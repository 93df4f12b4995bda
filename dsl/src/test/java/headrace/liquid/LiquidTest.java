package headrace.liquid;

import static headrace.liquid.LiquidProblem.GLYCOL_OUTSIDE_RANGE;
import static headrace.liquid.LiquidProblem.IMPOSSIBLE_LIQUID;
import static headrace.liquid.LiquidProblem.NEAR_FREEZING;
import static headrace.liquid.LiquidProblem.TEMPERATURE_OUTSIDE_LIQUID;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.problem.Problem;
import headrace.problem.Refusal;
import headrace.units.AbsolutePressure;
import headrace.units.Density;
import headrace.units.Head;
import headrace.units.HeatCapacity;
import headrace.units.Pressure;
import headrace.units.Ratio;
import headrace.units.Temperature;
import headrace.units.Viscosity;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class LiquidTest {
    /** IAPWS R12-08, table 4, without critical enhancement (the printed values, from memory, computed again). */
    @ParameterizedTest(name = "{0} kg/m³ at {1} K: {2} µPa·s")
    @CsvSource({
        "998, 298.15, 889.735100",
        "1200, 298.15, 1437.649467",
        "1, 433.15, 14.538324",
        "1, 873.15, 32.619287",
        "100, 873.15, 35.802262",
        "1, 1173.15, 44.217245",
        "100, 1173.15, 47.640433"
    })
    void gives_the_published_viscosity_of_water(double density, double kelvins, double micropascalSeconds) {
        assertEquals(micropascalSeconds, 1e6 * WaterViscosity.pascalSeconds(density, kelvins), 1e-6);
    }

    /**
     * IAPWS R7-97(2012), table 5: at 300 K and 3 MPa the volume is 0.100215168e-2 m³/kg and cp 4.17301218 kJ/(kg·K).
     */
    @Test
    void gives_the_published_density_and_heat_capacity_of_water() {
        Liquid water = Liquid.water(Temperature.kelvins(300), AbsolutePressure.pascals(3e6));
        assertEquals(0.100215168e-2, 1 / water.density().si(), 1e-11);
        assertEquals(4173.01218, water.heatCapacity().joulesPerKilogramKelvin(), 1e-5);
        assertEquals(0.353658941e4, water.vapourPressure().pascals(), 1e-5);
    }

    /** Computed with a library of IAPWS formulations (IF97 region 1; R12-08 at that density). */
    @ParameterizedTest(name = "{0} °C, {1} bar")
    @CsvSource({
        "5, 1, 999.9663, 1518.174, 1.51823, 4.20495",
        "5, 3, 1000.0646, 1517.888, 1.51779, 4.20409",
        "5, 10, 1000.4083, 1516.890, 1.51627, 4.20110",
        "10, 1, 999.7009, 1305.903, 1.30629, 4.19545",
        "10, 3, 999.7964, 1305.722, 1.30599, 4.19469",
        "10, 10, 1000.1305, 1305.093, 1.30492, 4.19205",
        "15, 1, 999.1005, 1137.570, 1.13859, 4.18910",
        "15, 3, 999.1938, 1137.460, 1.13838, 4.18842",
        "15, 10, 999.5199, 1137.078, 1.13762, 4.18604",
        "20, 1, 998.2055, 1001.597, 1.00340, 4.18480",
        "20, 3, 998.2970, 1001.536, 1.00324, 4.18418",
        "20, 10, 998.6168, 1001.322, 1.00271, 4.18201",
        "25, 1, 997.0474, 890.023, 0.89266, 4.18190",
        "25, 3, 997.1375, 889.995, 0.89255, 4.18132",
        "25, 10, 997.4523, 889.899, 0.89217, 4.17931",
        "30, 1, 995.6515, 797.222, 0.80070, 4.18002",
        "30, 3, 995.7404, 797.218, 0.80063, 4.17948",
        "30, 10, 996.0513, 797.204, 0.80036, 4.17759",
        "40, 1, 992.2237, 652.731, 0.65785, 4.17856",
        "40, 3, 992.3112, 652.756, 0.65781, 4.17806",
        "40, 10, 992.6171, 652.844, 0.65770, 4.17634",
        "45, 1, 990.2227, 595.773, 0.60166, 4.17877",
        "45, 3, 990.3098, 595.807, 0.60164, 4.17829",
        "45, 10, 990.6145, 595.925, 0.60157, 4.17663",
        "50, 1, 988.0469, 546.522, 0.55313, 4.17956",
        "50, 3, 988.1339, 546.562, 0.55313, 4.17909",
        "50, 10, 988.4380, 546.702, 0.55310, 4.17748",
        "60, 1, 983.2100, 466.043, 0.47400, 4.18277",
        "60, 3, 983.2972, 466.091, 0.47401, 4.18232",
        "60, 10, 983.6020, 466.259, 0.47403, 4.18077",
        "70, 1, 977.7787, 403.556, 0.41273, 4.18810",
        "70, 3, 977.8667, 403.608, 0.41274, 4.18766",
        "70, 10, 978.1744, 403.790, 0.41280, 4.18613",
        "80, 1, 971.8023, 354.058, 0.36433, 4.19552",
        "80, 3, 971.8917, 354.111, 0.36435, 4.19508",
        "80, 10, 972.2043, 354.299, 0.36443, 4.19355",
        "90, 1, 965.3181, 314.180, 0.32547, 4.20502",
        "90, 3, 965.4094, 314.234, 0.32549, 4.20458",
        "90, 10, 965.7286, 314.424, 0.32558, 4.20302",
        "95, 1, 961.8945, 297.089, 0.30886, 4.21057",
        "95, 3, 961.9869, 297.143, 0.30889, 4.21012",
        "95, 10, 962.3101, 297.333, 0.30898, 4.20853"
    })
    void gives_the_properties_of_water(
            double celsius, double bar, double density, double viscosity, double kinematic, double heatCapacity) {
        Liquid water = Liquid.water(Temperature.celsius(celsius), AbsolutePressure.pascals(bar * 1e5));
        assertEquals(density, water.density().si(), 6e-5);
        assertEquals(viscosity, 1e6 * water.viscosity().pascalSeconds(), 6e-4);
        assertEquals(kinematic, water.kinematicViscosity().toSquareMillimetresPerSecond(), 6e-6);
        assertEquals(heatCapacity, water.heatCapacity().toKilojoulesPerKilogramKelvin(), 6e-6);
    }

    /** Computed with a library of IAPWS formulations (IF97 saturation line), in kPa. */
    @ParameterizedTest(name = "{0} °C: {1} kPa")
    @CsvSource({
        "0, 0.6112",
        "5, 0.8726",
        "10, 1.2282",
        "15, 1.7057",
        "20, 2.3392",
        "25, 3.1697",
        "30, 4.2467",
        "40, 7.3844",
        "50, 12.3513",
        "60, 19.9458",
        "70, 31.2006",
        "80, 47.4147",
        "90, 70.1824",
        "100, 101.4180"
    })
    void gives_the_vapour_pressure_of_water(double celsius, double kilopascals) {
        assertEquals(kilopascals, water(celsius).vapourPressure().toKilopascals(), 5.1e-5);
    }

    /** Melinder (IIR 2010), worked out in two ways from the coefficients. */
    @ParameterizedTest(name = "{1} % {0} at {2} °C")
    @CsvSource({
        "ethylene glycol, 20, 10, 1026.942, 3878.30, 2.25040, -7.949",
        "ethylene glycol, 20, 40, 1016.402, 3932.75, 1.01326, -7.949",
        "ethylene glycol, 30, 10, 1041.813, 3688.51, 2.98300, -14.576",
        "ethylene glycol, 30, 20, 1038.046, 3718.25, 2.16645, -14.576",
        "ethylene glycol, 30, 60, 1017.462, 3828.72, 0.86604, -14.576",
        "ethylene glycol, 40, 0, 1060.386, 3434.21, 5.81066, -23.813",
        "ethylene glycol, 40, 20, 1051.861, 3519.02, 2.81913, -23.813",
        "ethylene glycol, 40, 40, 1041.350, 3597.81, 1.63510, -23.813",
        "ethylene glycol, 50, 20, 1064.929, 3312.04, 3.69321, -35.994",
        "ethylene glycol, 50, 60, 1040.490, 3503.15, 1.37492, -35.994",
        "propylene glycol, 20, 10, 1017.863, 3956.08, 2.87472, -7.173",
        "propylene glycol, 20, 40, 1006.369, 4019.03, 1.16930, -7.173",
        "propylene glycol, 30, 10, 1028.035, 3829.91, 4.43842, -12.789",
        "propylene glycol, 30, 20, 1023.785, 3857.00, 2.96497, -12.789",
        "propylene glycol, 30, 60, 1001.153, 3962.34, 0.99458, -12.789",
        "propylene glycol, 40, 0, 1042.350, 3641.56, 11.87944, -20.568",
        "propylene glycol, 40, 20, 1032.273, 3706.72, 4.38378, -20.568",
        "propylene glycol, 40, 40, 1020.060, 3770.83, 2.14078, -20.568",
        "propylene glycol, 50, 20, 1039.061, 3530.19, 6.39361, -32.193",
        "propylene glycol, 50, 60, 1010.457, 3683.48, 1.66113, -32.193"
    })
    void gives_the_properties_of_glycol_mixtures(
            String glycol,
            double percent,
            double celsius,
            double density,
            double heatCapacity,
            double viscosity,
            double freezing) {
        Liquid mixture = mixture(glycol, percent, celsius);
        assertEquals(density, mixture.density().si(), 1e-3);
        assertEquals(heatCapacity, mixture.heatCapacity().joulesPerKilogramKelvin(), 1e-2);
        assertEquals(viscosity, mixture.viscosity().toMillipascalSeconds(), 1e-5);
        assertEquals(freezing, mixture.freezingPoint().orElseThrow().toCelsius(), 1e-3);
    }

    private static Liquid mixture(String glycol, double percent, double celsius) {
        return glycol.startsWith("ethylene")
                ? Liquid.ethyleneGlycol(Ratio.percent(percent), Temperature.celsius(celsius))
                : Liquid.propyleneGlycol(Ratio.percent(percent), Temperature.celsius(celsius));
    }

    private static Liquid water(double celsius) {
        return Liquid.water(Temperature.celsius(celsius));
    }

    @Test
    void keeps_hot_water_liquid_at_its_vapour_pressure() {
        for (double celsius = 100; celsius <= 150; celsius += 5) {
            Liquid hot = water(celsius);
            Liquid pressed = Liquid.water(Temperature.celsius(celsius), hot.vapourPressure());
            assertTrue(hot.density().si() > 900);
            assertEquals(pressed.density().si(), hot.density().si(), 1e-6);
        }
    }

    @Test
    void refuses_water_that_is_no_liquid() {
        refusal(TEMPERATURE_OUTSIDE_LIQUID, () -> water(-0.01));
        String message = refusal(TEMPERATURE_OUTSIDE_LIQUID, () -> water(150.1)).getMessage();
        assertTrue(
                message.startsWith("Asked for water at 150.1 °C. Liquid water is known here from 0 to 150 °C."),
                message);
        assertEquals(0.6112, water(0).vapourPressure().toKilopascals(), 1e-4);
        assertTrue(water(150).density().si() > 916);
    }

    @Test
    void refuses_a_mixture_that_is_frozen_or_too_hot() {
        String message = refusal(TEMPERATURE_OUTSIDE_LIQUID, () -> mixture("ethylene", 30, -15))
                .getMessage();
        assertTrue(message.contains("from its freezing point of -14.58 °C to 100 °C"), message);
        refusal(TEMPERATURE_OUTSIDE_LIQUID, () -> mixture("propylene", 30, 100.1));
        assertEquals(-14.5, mixture("ethylene", 30, -14.5).temperature().toCelsius(), 1e-9);
        assertEquals(100, mixture("propylene", 30, 100).temperature().toCelsius(), 1e-9);
    }

    @Test
    void refuses_a_share_of_glycol_that_is_not_known() {
        refusal(GLYCOL_OUTSIDE_RANGE, () -> mixture("ethylene", 60.5, 20));
        refusal(GLYCOL_OUTSIDE_RANGE, () -> mixture("propylene", 0, 20));
        refusal(GLYCOL_OUTSIDE_RANGE, () -> mixture("propylene", -3, 20));
        assertEquals("60 % propylene glycol", mixture("propylene", 60, 20).name());
    }

    @Test
    void notes_a_mixture_close_to_freezing() {
        assertTrue(mixture("ethylene", 30, -12).notes().has(NEAR_FREEZING));
        assertFalse(mixture("ethylene", 30, -11).notes().has(NEAR_FREEZING));
        assertTrue(water(1).notes().isEmpty());
    }

    /** Raoult: 30 % by mass of molar mass 76.09 leaves 0.70/18.015 of water in 0.70/18.015 + 0.30/76.09, 0.907884. */
    @Test
    void has_the_vapour_pressure_of_its_water() {
        assertEquals(
                0.907884 * 19.9458,
                mixture("propylene", 30, 60).vapourPressure().toKilopascals(),
                1e-3);
    }

    @Test
    void has_a_vapour_pressure_without_a_jump_at_the_freezing_point_of_water() {
        double below = WaterVapour.pascals(Temperature.celsius(-1e-6));
        assertEquals(below, WaterVapour.pascals(Temperature.celsius(0)), 0.001 * below);
    }

    @Test
    void is_asked_at_another_temperature() {
        assertEquals(water(60), water(12).at(Temperature.celsius(60)));
        assertEquals(
                mixture("ethylene", 30, 60).density(),
                mixture("ethylene", 30, 5).at(Temperature.celsius(60)).density());
        Liquid pressed = Liquid.water(Temperature.celsius(12), AbsolutePressure.bars(10));
        assertNotEquals(pressed, water(12));
        assertNotEquals(water(12), water(13));
        assertEquals(water(12).hashCode(), water(12).hashCode());
        assertNotEquals(water(12), null);
    }

    /** Δp = ρ·g·H: 10 m of water at 20 °C are 998.206·9.80665·10 = 97 890.6 Pa. */
    @Test
    void turns_heads_into_pressures_and_back() {
        Pressure pressure = water(20).pressureOf(Head.metres(10));
        assertEquals(97_890.6, pressure.pascals(), 0.05);
        assertEquals(10, water(20).headOf(pressure).metres(), 1e-12);
    }

    @Test
    void takes_a_liquid_of_ones_own_at_its_temperature_only() {
        Liquid brine = brine(1180, 2.3);
        assertEquals(1180, brine.density().si());
        assertEquals(2.3, brine.viscosity().toMillipascalSeconds(), 1e-12);
        assertTrue(brine.freezingPoint().isEmpty());
        assertTrue(brine.notes().isEmpty());
        assertEquals("brine at 5 °C", brine.toString());
        assertEquals(brine, brine.at(Temperature.celsius(5)));
        refusal(TEMPERATURE_OUTSIDE_LIQUID, () -> brine.at(Temperature.celsius(6)));
    }

    @Test
    void refuses_a_liquid_that_none_is() {
        refusal(IMPOSSIBLE_LIQUID, () -> brine(0, 2.3));
        refusal(IMPOSSIBLE_LIQUID, () -> brine(1180, 0));
        refusal(IMPOSSIBLE_LIQUID, () -> given("brine", -1, 3));
        refusal(IMPOSSIBLE_LIQUID, () -> given("brine", 1, 0));
        refusal(IMPOSSIBLE_LIQUID, () -> given(" ", 1, 3));
    }

    private static Liquid brine(double density, double viscosity) {
        return Liquid.of(
                "brine",
                Temperature.celsius(5),
                new LiquidProperties(
                        Density.kilogramsPerCubicMetre(density),
                        Viscosity.millipascalSeconds(viscosity),
                        AbsolutePressure.kilopascals(0.7),
                        HeatCapacity.kilojoulesPerKilogramKelvin(3.1)));
    }

    private static Liquid given(String name, double vapour, double heatCapacity) {
        return Liquid.of(
                name,
                Temperature.celsius(5),
                new LiquidProperties(
                        Density.kilogramsPerCubicMetre(1000),
                        Viscosity.millipascalSeconds(1),
                        AbsolutePressure.kilopascals(vapour),
                        HeatCapacity.kilojoulesPerKilogramKelvin(heatCapacity)));
    }

    @Test
    void names_its_sources() {
        assertTrue(water(12).basis().choices().get(0).contains("IAPWS R12-08"));
        assertTrue(mixture("ethylene", 30, 5).basis().choices().get(0).contains("Melinder (IIR 2010)"));
        assertTrue(brine(1180, 2.3).basis().choices().get(0).contains("as given"));
        assertEquals("water at 12 °C", water(12).toString());
    }

    private static Refusal refusal(Problem problem, Executable asking) {
        Refusal refusal = assertThrows(Refusal.class, asking);
        assertEquals(problem, refusal.problem(), refusal.getMessage());
        return refusal;
    }
}
