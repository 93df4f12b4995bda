package headrace.operation;

import static headrace.pump.KnownPump.m3ph;
import static org.junit.jupiter.api.Assertions.assertEquals;

import headrace.curve.CurveFormula;
import headrace.curve.Duty;
import headrace.curve.PumpCurve;
import headrace.curve.Trim;
import headrace.liquid.Liquid;
import headrace.liquid.LiquidProperties;
import headrace.numeric.Polynomial;
import headrace.operation.suction.SuctionSide;
import headrace.pump.Parabolas;
import headrace.pump.ParallelPumps;
import headrace.pump.PumpBranch;
import headrace.units.AbsolutePressure;
import headrace.units.Density;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.HeatCapacity;
import headrace.units.Length;
import headrace.units.Power;
import headrace.units.Pressure;
import headrace.units.Speed;
import headrace.units.Temperature;
import headrace.units.Viscosity;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Published pump arithmetic that goes through several parts at once. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class PublishedPumpBasicsTest {
    private static Liquid of(Density density, double vapourPascals) {
        return Liquid.of(
                "liquid",
                Temperature.celsius(20),
                new LiquidProperties(
                        density,
                        Viscosity.pascalSeconds(0.001),
                        AbsolutePressure.pascals(vapourPascals),
                        HeatCapacity.kilojoulesPerKilogramKelvin(4.18)));
    }

    private static Power hydraulic(Flow flow, Head head, Density density) {
        return flow.times(of(density, 2000).pressureOf(head));
    }

    /**
     * Water horsepower is gpm·ft/K. K by hand for 1000 kg/m³ and for 62.4 and 62.364 lb/ft³, the second the 3956 of the
     * US pump test rules (10 CFR 431 Subpart Y Appendix A).
     */
    @Test
    void water_horsepower_has_its_known_constants() {
        Flow flow = Flow.usGallonsPerMinute(1000);
        Head head = Head.feet(100);
        assertEquals(
                1e5 / 3954.27,
                hydraulic(flow, head, Density.kilogramsPerCubicMetre(1000)).toHorsepower(),
                1e-4);
        assertEquals(
                1e5 / 3956.04,
                hydraulic(flow, head, Density.poundsPerCubicFoot(62.4)).toHorsepower(),
                1e-4);
        assertEquals(
                1e5 / 3958.3,
                hydraulic(flow, head, Density.poundsPerCubicFoot(62.364)).toHorsepower(),
                1e-3);
    }

    /** By hand: 3600/9.80665 = 367.098; 998.2·9.80665·50/3600·32 = 4350.67 W, at 72 % 6042.59 W. */
    @Test
    void hydraulic_power_is_density_gravity_flow_and_head() {
        assertEquals(
                1e4 / 367.098,
                hydraulic(m3ph(100), Head.metres(100), Density.kilogramsPerCubicMetre(1000))
                        .toKilowatts(),
                1e-4);
        double watts = hydraulic(m3ph(50), Head.metres(32), Density.kilogramsPerCubicMetre(998.2))
                .watts();
        assertEquals(4350.67, watts, 5e-3);
        assertEquals(6042.59, watts / 0.72, 5e-3);
    }

    /** 1 psi is 2.3077 ft at 62.4 lb/ft³ and 2.3090 ft at 62.364, by hand. */
    @Test
    void a_pressure_is_a_head_in_a_liquid() {
        assertEquals(
                2.3077,
                of(Density.poundsPerCubicFoot(62.4), 2000)
                        .headOf(Pressure.poundsPerSquareInch(1))
                        .toFeet(),
                5e-5);
        assertEquals(
                2.3090,
                of(Density.poundsPerCubicFoot(62.364), 2000)
                        .headOf(Pressure.poundsPerSquareInch(1))
                        .toFeet(),
                5e-5);
    }

    /**
     * 3550 rpm, 0.0402 m³/s and 100 m make a specific speed of 22.508 in rpm, m³/s and m (HI 1.3, read in a copy), and
     * 52.919 times the type number. With x = Q/0.0402 the head 140 − 40·x² and the power P·(0.8 + 0.2·x) make Q·H/P
     * stationary at x = 1: 1 − 80/100 = 0.2.
     */
    @Test
    void the_type_number_is_the_specific_speed_over_52_919() {
        double q = 0.0402;
        double power = 998.2 * 9.80665 * q * 100 / 0.75;
        PumpCurve curve = PumpCurve.of(
                "P-A",
                Speed.revolutionsPerMinute(3550),
                Liquid.water(Temperature.celsius(20)),
                new CurveFormula(
                        Polynomial.of(140, 0, -40 / (q * q)),
                        Polynomial.of(0.8 * power, 0.2 * power / q),
                        Flow.ZERO,
                        Flow.cubicMetresPerSecond(1.3 * q)));
        assertEquals(q, curve.bestEfficiencyPoint().flow().si(), 1e-8);
        assertEquals(22.508 / 52.919, Trim.typeNumber(curve), 1e-5);
    }

    /**
     * Fluid Mechanics: Fundamentals and Applications, example 14-3, inputs read in a companion. By hand: the loss of
     * pipe, entrance, bends and valve goes from 2.3245 m at 300 gpm nearly with the square of the flow, and the
     * friction factor's change is in the loss given here for each flow.
     */
    @ParameterizedTest
    @CsvSource({
        "300, 2.3346, 2.3245, 29.25",
        "400, 3.1128, 4.1311, 23.29",
        "500, 3.8909, 6.4535, 15.63",
        "600, 4.6691, 9.2918, 6.26"
    })
    void the_textbook_pump_loses_its_npsh_with_the_square_of_the_flow(
            double gpm, double speed, double loss, double feet) {
        Duty at = new Duty(Flow.usGallonsPerMinute(gpm), Head.metres(loss + 0.05 * speed * speed / (2 * 9.81)));
        SuctionSide suction = SuctionSide.open(AbsolutePressure.pascals(101_325), Length.feet(4))
                .withLoss(at);
        Liquid water = of(Density.kilogramsPerCubicMetre(997), 3169);
        assertEquals(feet, suction.npshAvailable(at, water).toFeet(), 0.02);
    }

    /** 40 − 0.0025·Q² and 10 + 0.0015·Q²: two in parallel give 1.371989 times one; on 0.004·Q² 1.185498 times. */
    @Test
    void a_second_pump_adds_less_the_steeper_the_system() {
        assertEquals(1.371989, ratio(q -> 10 + 0.0015 * q * q * 3600 * 3600), 5e-7);
        assertEquals(1.185498, ratio(q -> 0.004 * q * q * 3600 * 3600), 5e-7);
    }

    private static double ratio(DoubleUnaryOperator system) {
        PumpBranch one = PumpBranch.of(Parabolas.steep());
        double both = ParallelPumps.of(List.of(one, one))
                .meeting(system, "system")
                .flow()
                .si();
        return both
                / ParallelPumps.of(List.of(one))
                        .meeting(system, "system")
                        .flow()
                        .si();
    }
}
