package headrace.operation.suction;

import static headrace.pump.KnownPump.SPEED;
import static headrace.pump.KnownPump.WATER;
import static headrace.pump.KnownPump.m3ph;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.curve.CurvePoint;
import headrace.curve.CurveProblem;
import headrace.curve.Duty;
import headrace.curve.NpshCurve;
import headrace.curve.NpshPoint;
import headrace.curve.PumpCurve;
import headrace.curve.PumpTest;
import headrace.curve.TestPoint;
import headrace.liquid.Liquid;
import headrace.liquid.LiquidProperties;
import headrace.operation.limit.BestAtSixty;
import headrace.operation.limit.LimitProblem;
import headrace.operation.limit.ReachableRegion;
import headrace.operation.suction.NpshCheck.Terms;
import headrace.operation.suction.WorkingPressure.Part;
import headrace.problem.Problem;
import headrace.problem.Refusal;
import headrace.units.AbsolutePressure;
import headrace.units.Density;
import headrace.units.Flow;
import headrace.units.GaugePressure;
import headrace.units.Head;
import headrace.units.Length;
import headrace.units.Power;
import headrace.units.Pressure;
import headrace.units.Temperature;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

@DisplayNameGeneration(ReplaceUnderscores.class)
class SuctionTest {
    private static final AbsolutePressure AIR = Atmosphere.SEA_LEVEL;
    private static final PumpCurve CURVE = BestAtSixty.curve(0, 120);

    private static void refused(Problem problem, Executable asking) {
        assertEquals(problem, assertThrows(Refusal.class, asking).problem());
    }

    /** NPSH required 2 m + 3 m·(Q/100 m³/h)², read from 30 m³/h to a greatest flow. */
    private static NpshCurve npsh(int to) {
        List<TestPoint> points = new ArrayList<>();
        List<NpshPoint> readings = new ArrayList<>();
        for (int q = 0; q <= to; q += 10) {
            points.add(new TestPoint(m3ph(q), Head.metres(40 - 0.0025 * q * q), Power.kilowatts(12), SPEED));
            if (q >= 30) {
                readings.add(new NpshPoint(m3ph(q), Head.metres(2 + 3e-4 * q * q), SPEED));
            }
        }
        return NpshCurve.of(PumpTest.of("P-B", SPEED, WATER, points).withNpsh(readings));
    }

    private static Liquid warm(double celsius) {
        return Liquid.water(Temperature.celsius(celsius));
    }

    private static Terms terms(SuctionSide suction, Liquid liquid) {
        return new Terms(suction, npsh(120), NpshRule.USUAL, liquid);
    }

    /** ISO 2533:1975 gives 84.556 kPa at 1500 m, from memory, unconfirmed. */
    @Test
    void the_air_grows_thinner_with_altitude() {
        assertEquals(101.325, Atmosphere.at(Length.ZERO).toKilopascals(), 1e-12);
        assertEquals(84.556, Atmosphere.at(Length.metres(1500)).toKilopascals(), 1e-3);
        assertTrue(Atmosphere.at(Length.metres(-400)).compareTo(Atmosphere.SEA_LEVEL) > 0);
        refused(SuctionProblem.ALTITUDE_OUT_OF_RANGE, () -> Atmosphere.at(Length.metres(11_001)));
        refused(SuctionProblem.ALTITUDE_OUT_OF_RANGE, () -> Atmosphere.at(Length.metres(-501)));
    }

    /** By hand: (101 325 − 19 945.8)/(983.21·9.80665) − 1.5 − 0.8 = 6.1401 m. */
    @Test
    void a_pump_above_an_open_surface_has_what_the_air_leaves_it() {
        SuctionSide suction = SuctionSide.open(AbsolutePressure.pascals(101_325), Length.metres(-1.5))
                .withLoss(new Duty(m3ph(50), Head.metres(0.8)));
        Head available = suction.npshAvailable(new Duty(m3ph(50), Head.metres(20)), warm(60));
        assertEquals(6.1401, available.metres(), 5e-5);
    }

    /**
     * Fluid Mechanics: Fundamentals and Applications, example 14-3, inputs read in a companion, value computed by hand:
     * 29.25 ft at 300 gpm, with 2.3245 m of loss and 0.05·v²/2g for the kinetic factor of 1.05.
     */
    @Test
    void the_textbook_pump_below_its_surface_has_29_feet() {
        Liquid liquid = Liquid.of(
                "textbook water",
                Temperature.celsius(25),
                new LiquidProperties(
                        Density.kilogramsPerCubicMetre(997),
                        WATER.viscosity(),
                        AbsolutePressure.pascals(3169),
                        WATER.heatCapacity()));
        double kinetic = 0.05 * 2.3346 * 2.3346 / (2 * 9.81);
        Duty loss = new Duty(Flow.usGallonsPerMinute(300), Head.metres(2.3245 + kinetic));
        SuctionSide suction = SuctionSide.open(AbsolutePressure.pascals(101_325), Length.feet(4))
                .withLoss(loss);
        assertEquals(29.25, suction.npshAvailable(loss, liquid).toFeet(), 0.02);
    }

    @Test
    void a_tank_on_the_discharge_side_takes_the_head_of_the_pump_off_and_says_so() {
        SuctionSide near = SuctionSide.closed(AIR, GaugePressure.kilopascals(150), Length.metres(2))
                .withLoss(new Duty(m3ph(50), Head.metres(0.5)));
        SuctionSide far = near.onDischargeSide();
        Duty point = new Duty(m3ph(50), Head.metres(33.75));
        assertEquals(
                33.75 - 2 * 0.5,
                near.npshAvailable(point, WATER)
                        .minus(far.npshAvailable(point, WATER))
                        .metres(),
                1e-9);
        assertTrue(far.notes().has(SuctionProblem.TANK_ON_DISCHARGE_SIDE));
        assertTrue(near.notes().isEmpty());
        refused(
                SuctionProblem.IMPOSSIBLE_SUCTION,
                () -> SuctionSide.open(AIR, Length.ZERO).onDischargeSide());
    }

    /** At rest, 2 m below the tank: 150 kPa and 998.2 kg/m³·g·2 m. */
    @Test
    void the_suction_pressure_of_a_closed_loop_is_that_of_the_tank_and_the_height() {
        SuctionSide suction = SuctionSide.closed(AIR, GaugePressure.kilopascals(150), Length.metres(2));
        double expected = 150 + WATER.density().kilogramsPerCubicMetre() * 9.80665 * 2 / 1000;
        assertEquals(
                expected,
                suction.suctionPressure(new Duty(m3ph(50), Head.metres(30)), WATER)
                        .toKilopascals(),
                1e-9);
    }

    @Test
    void what_a_gauge_at_the_flange_shows_gives_the_same_npsh_back() {
        SuctionSide suction = SuctionSide.closed(AIR, GaugePressure.kilopascals(80), Length.metres(3))
                .withLoss(new Duty(m3ph(50), Head.metres(0.4)))
                .withFlange(Length.millimetres(80));
        Duty point = new Duty(m3ph(60), Head.metres(31));
        SuctionSide.Gauge gauge =
                new SuctionSide.Gauge(suction.suctionPressure(point, WATER), Length.ZERO, Length.millimetres(80));
        assertEquals(
                suction.npshAvailable(point, WATER).metres(),
                gauge.npshAvailable(point.flow(), WATER, AIR).metres(),
                1e-12);
        refused(SuctionProblem.IMPOSSIBLE_SUCTION, () -> suction.withFlange(Length.ZERO));
        refused(SuctionProblem.IMPOSSIBLE_SUCTION, () -> SuctionSide.open(AbsolutePressure.ZERO, Length.ZERO));
    }

    /** Required 2 + 3·0.36 = 3.08 m at 60 m³/h; 1.2 times is 3.696 m, 1 m more is 4.08 m. */
    @Test
    void the_margin_is_the_greater_of_a_multiple_and_a_head() {
        CurvePoint point = CURVE.at(m3ph(60));
        SuctionSide suction = SuctionSide.open(AIR, Length.metres(1));
        NpshCheck usual = NpshCheck.of(point, terms(suction, WATER));
        assertEquals(3.08, usual.required().metres(), 1e-9);
        assertEquals(4.08, usual.needed().metres(), 1e-9);
        assertTrue(usual.notes().has(SuctionProblem.NPSH_MARGIN_ASSUMED));
        assertFalse(usual.notes().has(SuctionProblem.NPSH_MARGIN));
        NpshRule high = NpshRule.of(1.5, Head.metres(0.5));
        NpshCheck stated = NpshCheck.of(point, new Terms(suction, npsh(120), high, WATER));
        assertEquals(4.62, stated.needed().metres(), 1e-9);
        assertFalse(stated.notes().has(SuctionProblem.NPSH_MARGIN_ASSUMED));
        refused(SuctionProblem.IMPOSSIBLE_MARGIN, () -> NpshRule.of(0.99, Head.ZERO));
        refused(SuctionProblem.IMPOSSIBLE_MARGIN, () -> NpshRule.of(1.2, Head.metres(-1)));
    }

    @Test
    void a_lack_of_npsh_is_named_with_what_is_short_and_boiling_is_named_apart() {
        CurvePoint point = CURVE.at(m3ph(60));
        NpshCheck lacks = NpshCheck.of(point, terms(SuctionSide.open(AIR, Length.metres(-7)), WATER));
        assertTrue(lacks.margin().metres() < 0);
        assertTrue(lacks.notes().has(SuctionProblem.NPSH_MARGIN));
        assertFalse(lacks.notes().has(SuctionProblem.BELOW_VAPOUR_PRESSURE));
        NpshCheck boils = NpshCheck.of(point, terms(SuctionSide.open(AIR, Length.metres(-10.5)), WATER));
        assertTrue(boils.available().metres() < 0);
        assertTrue(boils.notes().has(SuctionProblem.BELOW_VAPOUR_PRESSURE));
    }

    @Test
    void the_sign_of_the_margin_to_boiling_is_that_of_the_npsh_available() {
        for (double celsius = 5; celsius <= 145; celsius += 5) {
            for (double height = -30; height <= 30; height += 3.7) {
                Liquid liquid = warm(celsius);
                SuctionSide suction = SuctionSide.open(AIR, Length.metres(height));
                NpshCheck check = NpshCheck.of(CURVE.at(m3ph(60)), terms(suction, liquid));
                assertEquals(check.available().metres() < 0, check.notes().has(SuctionProblem.BELOW_VAPOUR_PRESSURE));
            }
        }
    }

    /** Available without losses is the same at every flow; it is used up where 1 + 2 + 3e-4·Q² reaches it. */
    @Test
    void over_all_that_can_be_reached_the_margin_is_least_at_the_greatest_flow_and_used_up_where_the_hand_finds_it() {
        Length height = Length.metres(-5);
        Terms terms = terms(SuctionSide.open(AIR, height), WATER);
        double available = terms.suction().npshMetres(0, 0, WATER);
        ReachableRegion reach = ReachableRegion.of(BestAtSixty.set(CURVE));
        NpshOverReach over = NpshOverReach.of(reach, terms);
        assertEquals(120, over.worst().point().flow().toCubicMetresPerHour(), 1e-6);
        assertEquals(
                available - 1.2 * (2 + 3e-4 * 14_400), over.worst().margin().metres(), 1e-9);
        double flow = Math.sqrt((available - 1 - 2) / 3e-4);
        assertEquals(flow, over.usedUpFrom().orElseThrow().toCubicMetresPerHour(), 1e-7);
        assertTrue(over.notes().has(SuctionProblem.NPSH_MARGIN));
        Terms plenty = terms(SuctionSide.open(AIR, Length.metres(5)), WATER);
        assertTrue(NpshOverReach.of(reach, plenty).usedUpFrom().isEmpty());
    }

    @Test
    void where_the_npsh_required_is_not_known_the_margin_over_reach_says_so() {
        Terms terms = new Terms(SuctionSide.open(AIR, Length.metres(2)), npsh(80), NpshRule.USUAL, WATER);
        ReachableRegion reach = ReachableRegion.of(BestAtSixty.set(CURVE));
        assertTrue(NpshOverReach.of(reach, terms).notes().has(CurveProblem.NPSH_BEYOND_TEST));
        assertTrue(NpshOverReach.of(reach, terms).notes().has(LimitProblem.REACH_ENDS_WITH_TEST));
        refused(CurveProblem.NPSH_OUT_OF_RANGE, () -> NpshOverReach.of(reach.between(m3ph(90), m3ph(110)), terms));
    }

    /** 150 kPa + 998.2·9.80665·40 m + 50 kPa = 591.6 kPa: inside 600 kPa, above 90 % of 600 kPa. */
    @Test
    void the_highest_pressure_is_held_against_the_weakest_part() {
        WorkingPressure.Terms terms = new WorkingPressure.Terms(
                GaugePressure.kilopascals(150), Head.metres(40), WATER, Pressure.kilopascals(50));
        Part casing = new Part("casing", GaugePressure.bars(10));
        Part seal = new Part("seal", GaugePressure.kilopascals(600));
        WorkingPressure holds = WorkingPressure.of(terms, List.of(casing, seal));
        double highest = 200 + WATER.density().kilogramsPerCubicMetre() * 9.80665 * 40 / 1000;
        assertEquals(highest, holds.highest().toKilopascals(), 1e-9);
        assertEquals(seal, holds.weakest().orElseThrow());
        assertTrue(holds.notes().isEmpty());
        WorkingPressure opens = WorkingPressure.of(terms, List.of(casing, Part.relief(GaugePressure.kilopascals(600))));
        assertTrue(opens.notes().has(SuctionProblem.OVER_RATING));
        assertEquals(1, opens.notes().list().size());
        assertTrue(WorkingPressure.of(terms, List.of()).weakest().isEmpty());
        refused(
                SuctionProblem.IMPOSSIBLE_PRESSURE,
                () -> new WorkingPressure.Terms(GaugePressure.ZERO, Head.metres(-1), WATER, Pressure.ZERO));
    }

    /** 30 kPa and ten metres of water; hot, vapour pressure at 110 °C and 30 kPa less that of the air. */
    @Test
    void a_loop_is_filled_for_its_top_and_kept_above_boiling() {
        Liquid cold = warm(10);
        Liquid hot = warm(110);
        Filling filling = Filling.of(new Filling.Loop(cold, hot, Length.metres(10), AIR));
        double weight = 9.80665 * 10 / 1000;
        assertEquals(
                30 + cold.density().kilogramsPerCubicMetre() * weight,
                filling.cold().toKilopascals(),
                1e-9);
        assertEquals(
                hot.vapourPressure().toKilopascals()
                        + 30
                        - 101.325
                        + hot.density().kilogramsPerCubicMetre() * weight,
                filling.hot().toKilopascals(),
                1e-9);
        assertTrue(filling.notes().has(SuctionProblem.FILLING_MARGIN_ASSUMED));
        Filling mild = Filling.of(
                new Filling.Loop(cold, warm(60), Length.ZERO, AIR),
                Optional.of(Pressure.kilopascals(40)),
                Optional.of(Pressure.kilopascals(20)));
        assertEquals(40, mild.cold().toKilopascals(), 1e-9);
        assertEquals(40, mild.hot().toKilopascals(), 1e-9);
        assertTrue(mild.notes().isEmpty());
    }

    @Test
    void a_filling_that_cannot_be_is_refused() {
        refused(SuctionProblem.IMPOSSIBLE_FILLING, () -> new Filling.Loop(warm(60), warm(10), Length.ZERO, AIR));
        refused(SuctionProblem.IMPOSSIBLE_FILLING, () -> new Filling.Loop(warm(10), warm(60), Length.metres(-1), AIR));
        Filling.Loop loop = new Filling.Loop(warm(10), warm(60), Length.ZERO, AIR);
        refused(
                SuctionProblem.IMPOSSIBLE_FILLING,
                () -> Filling.of(loop, Optional.of(Pressure.ZERO), Optional.empty()));
    }
}
