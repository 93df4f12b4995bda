package headrace.circuit.part.pipe;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.circuit.part.LinkLaw;
import headrace.circuit.part.PartProblem;
import headrace.circuit.part.fitting.Fitting;
import headrace.circuit.part.fitting.FittingLoss;
import headrace.circuit.part.fitting.StandardFitting;
import headrace.liquid.Liquid;
import headrace.liquid.LiquidProperties;
import headrace.problem.Refusal;
import headrace.units.AbsolutePressure;
import headrace.units.Density;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.HeatCapacity;
import headrace.units.Length;
import headrace.units.Temperature;
import headrace.units.Viscosity;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class PipeTest {
    private static final Liquid WATER = liquid(998.20549, 1.0015973);
    private static final Length STEEL = Length.millimetres(0.045);

    static Liquid liquid(double density, double milliPascalSeconds) {
        return Liquid.of(
                "given",
                Temperature.celsius(20),
                new LiquidProperties(
                        Density.kilogramsPerCubicMetre(density),
                        Viscosity.pascalSeconds(milliPascalSeconds / 1000),
                        AbsolutePressure.pascals(2339),
                        HeatCapacity.joulesPerKilogramKelvin(4184)));
    }

    /** Friction factor of Colebrook to 10 digits, then Δp = f·(L/D)·ρ·v²/2 by hand calculation. */
    @ParameterizedTest
    @CsvSource({
        "998.20549, 1.0015973, 0.0525, 6, 50, 40283.42, 0.0244090057, 6877.511",
        "983.21003, 0.4660429, 0.1023, 30, 100, 218813.26, 0.0183478739, 9063.201",
        "1028.0353, 4.438421, 0.0525, 6, 50, 9362.226, 0.0326808555, 9483.370"
    })
    void a_straight_pipe_takes_the_pressure_of_the_hand_calculation(
            double density,
            double viscosity,
            double inside,
            double flow,
            double length,
            double reynolds,
            double factor,
            double pascals) {
        Liquid liquid = liquid(density, viscosity);
        Pipe pipe = Pipe.of("run", Length.metres(inside), STEEL, Length.metres(length));
        Flow q = Flow.cubicMetresPerHour(flow);
        assertEquals(reynolds, pipe.reynoldsAt(q, liquid), reynolds * 1e-6);
        assertEquals(factor, pipe.frictionFactorAt(q, liquid), 1e-9);
        assertEquals(pascals, pipe.headAt(q, liquid).pressureOf(liquid).pascals(), pascals * 1e-6);
    }

    /**
     * Example 7.15 of the Technical Paper 410, 2009 edition, recomputed: 500 ft of 3.068 in, gate valve, four elbows,
     * lift check valve and exit as constant K; 20.328 ft at 100 US gpm.
     */
    @Test
    void the_published_example_of_a_pipe_with_fittings_comes_out() {
        Liquid liquid =
                liquid(Density.kilogramsPerCubicMetre(62.298 * 16.01846337396).si(), 0.95);
        Pipe pipe = Pipe.of("line", Length.inches(3.068), Length.inches(0.0022), Length.feet(500))
                .with(
                        Fitting.of("gate valve", FittingLoss.constant(0.1377)),
                        Fitting.of("elbow", FittingLoss.constant(0.5164)).times(4),
                        Fitting.of("lift check valve", FittingLoss.constant(25.1998)),
                        Fitting.of("exit", FittingLoss.constant(1)));
        Head head = pipe.headAt(Flow.usGallonsPerMinute(100), liquid);
        assertEquals(20.328, head.toFeet(), 20.328 * 1e-4);
    }

    /**
     * Example 7.17 there, recomputed: 1900 oil barrels (of 42 US gal) an hour through 50 miles of 12.09 in; Re 24,360,
     * f 0.025111, 3412.7 ft with a lift of 2000 ft and 1499.5 hp at 67 %. Printed 3406.5 ft and 1496 hp by a shortcut.
     */
    @Test
    void the_published_example_of_an_oil_line_comes_out() {
        Liquid oil =
                liquid(Density.kilogramsPerCubicMetre(54.64 * 16.01846337396).si(), 12.5);
        Pipe line = Pipe.of("line", Length.inches(12.09), Length.inches(0.0022), Length.feet(50 * 5280));
        Flow flow = Flow.usGallonsPerMinute(1900 * 42 / 60.0);
        assertEquals(24_360, line.reynoldsAt(flow, oil), 24_360 * 2e-4);
        assertEquals(0.025111, line.frictionFactorAt(flow, oil), 0.025111 * 1e-4);
        double feet = line.headAt(flow, oil).toFeet() + 2000;
        assertEquals(3412.7, feet, 3412.7 * 1e-4);
        assertEquals(3406.5, feet, 3406.5 * 3e-3);
        double watts = Head.feet(feet).pressureOf(oil).pascals() * flow.si() / 0.67;
        assertEquals(1499.5, watts / 745.69987, 1499.5 * 3e-4);
    }

    /** Example 7.1 there: printed 0.0179 at a Reynolds number of 100,600; recomputed 0.01795. */
    @Test
    void the_published_example_of_a_smooth_pipe_comes_out() {
        Pipe pipe = Pipe.of("smooth", Length.millimetres(52.48), Length.ZERO, Length.metres(20));
        Liquid warm = Liquid.water(Temperature.celsius(30));
        Flow flow = Flow.litresPerMinute(200);
        assertEquals(101_002, pipe.reynoldsAt(flow, warm), 101_002 * 5e-3);
        assertEquals(0.01795, pipe.frictionFactorAt(flow, warm), 0.01795 * 5e-3);
    }

    @Test
    void its_law_goes_both_ways_and_its_slope_is_the_derivative_of_its_head() {
        LinkLaw law = Pipe.of("pipe", PipeSeries.STEEL.size(50), Length.metres(12))
                .with(StandardFitting.WELDED_ELBOW.byTwoK().times(6))
                .in(WATER);
        double[] both = new double[LinkLaw.NUMBERS];
        for (double q : new double[] {1e-6, 5e-5, 1.2e-4, 1.6e-4, 2e-4, 2e-3}) {
            assertEquals(-law.headMetres(q), law.headMetres(-q), 0);
            assertEquals(law.slope(q), law.slope(-q), 0);
            double step = q * 1e-5;
            double difference = (law.headMetres(q + step) - law.headMetres(q - step)) / (2 * step);
            assertEquals(difference, law.slope(q), Math.abs(difference) * 1e-6);
            law.evaluate(q, both, 0);
            assertEquals(law.headMetres(q), both[0], Math.abs(both[0]) * 1e-14);
            assertEquals(law.slope(q), both[1], Math.abs(both[1]) * 1e-14);
        }
        assertEquals(0, law.headMetres(0), 0);
        assertTrue(law.slope(0) > 0, "laminar flow has a slope at no flow");
    }

    /** Hagen and Poiseuille: Δp = 128·μ·L·Q/(π·D⁴). */
    @Test
    void at_little_flow_a_pipe_takes_what_laminar_flow_takes() {
        Pipe pipe = Pipe.of("thin", Length.millimetres(10), STEEL, Length.metres(3));
        double q = 5e-6;
        double pascals = 128 * 1.0015973e-3 * 3 * q / (Math.PI * Math.pow(0.01, 4));
        assertEquals(
                pascals,
                pipe.headAt(Flow.cubicMetresPerSecond(q), WATER)
                        .pressureOf(WATER)
                        .pascals(),
                pascals * 1e-12);
    }

    @Test
    void splitting_a_pipe_in_two_leaves_the_head() {
        Pipe whole = Pipe.of("whole", PipeSeries.COPPER.size(28), Length.metres(10));
        Flow q = Flow.cubicMetresPerHour(1.2);
        double parts = whole.withLength(Length.metres(3.5)).headAt(q, WATER).si()
                + whole.withLength(Length.metres(6.5)).headAt(q, WATER).si();
        assertEquals(whole.headAt(q, WATER).si(), parts, parts * 1e-12);
    }

    @Test
    void an_equivalent_length_is_so_many_diameters_more_of_the_pipe() {
        Pipe bare = Pipe.of("pipe", Length.millimetres(40), STEEL, Length.metres(10));
        Pipe fitted =
                bare.with(Fitting.of("elbow", FittingLoss.equivalentLength(30)).times(5));
        Flow q = Flow.cubicMetresPerHour(3);
        double longer = bare.withLength(Length.metres(10 + 5 * 30 * 0.040))
                .headAt(q, WATER)
                .si();
        assertEquals(longer, fitted.headAt(q, WATER).si(), 1e-12);
    }

    @Test
    void fittings_by_two_methods_are_refused_with_the_name_of_the_pipe() {
        Pipe pipe = Pipe.of("north riser", PipeSeries.STEEL.size(50), Length.metres(12))
                .with(Fitting.of("elbow", FittingLoss.constant(0.5)));
        Refusal refusal =
                assertThrows(Refusal.class, () -> pipe.with(Fitting.of("strainer", FittingLoss.equivalentLength(60))));
        assertEquals(PartProblem.MIXED_FITTING_METHODS, refusal.problem());
        assertTrue(refusal.getMessage().contains("north riser"), refusal.getMessage());
        assertTrue(refusal.getMessage().contains("equivalent length"), refusal.getMessage());
    }

    @Test
    void negative_lengths_and_no_width_are_refused_with_the_name_of_the_pipe() {
        for (Runnable asked : List.<Runnable>of(
                () -> Pipe.of("north riser", PipeSeries.STEEL.size(50), Length.metres(-3)),
                () -> Pipe.of("north riser", Length.ZERO, STEEL, Length.metres(3)),
                () -> Pipe.of("north riser", Length.millimetres(20), Length.millimetres(-1), Length.metres(3)),
                () -> Pipe.of("north riser", Length.millimetres(20), Length.millimetres(2), Length.metres(3)))) {
            Refusal refusal = assertThrows(Refusal.class, asked::run);
            assertEquals(PartProblem.IMPOSSIBLE_PART, refusal.problem());
            assertTrue(refusal.getMessage().contains("north riser"), refusal.getMessage());
        }
    }

    @Test
    void a_flow_between_laminar_and_turbulent_is_noted() {
        Pipe pipe = Pipe.of("riser", Length.millimetres(20), STEEL, Length.metres(3));
        // Re = 4·Q/(π·D·ν): 3000 in 20 mm at 1.0034e-6 m²/s is 0.0473 L/s.
        Flow q = Flow.litresPerSecond(0.0473);
        assertTrue(pipe.notesAt(q, WATER).has(PartProblem.FLOW_IN_TRANSITION));
        assertTrue(pipe.notesAt(q, WATER).toString().contains("riser"));
        assertFalse(pipe.notesAt(q.times(0.5), WATER).has(PartProblem.FLOW_IN_TRANSITION));
        assertFalse(pipe.notesAt(q.times(2), WATER).has(PartProblem.FLOW_IN_TRANSITION));
    }

    /** 2 m/s in 150 mm lies on the line from 1.2 at 50 mm to 3 at 250 mm: 2.1 m/s. */
    @Test
    void velocities_beyond_the_usual_are_noted_by_size() {
        assertEquals(1.2, PipeVelocity.most(0.02), 0);
        assertEquals(2.1, PipeVelocity.most(0.15), 1e-12);
        assertEquals(3, PipeVelocity.most(0.4), 0);
        Pipe pipe = Pipe.of("main", Length.millimetres(150), STEEL, Length.metres(3));
        double area = Math.PI / 4 * 0.15 * 0.15;
        assertTrue(pipe.notesAt(Flow.cubicMetresPerSecond(2.0 * area), WATER).isEmpty());
        assertTrue(pipe.notesAt(Flow.cubicMetresPerSecond(2.2 * area), WATER).has(PartProblem.HIGH_VELOCITY));
        assertTrue(pipe.notesAt(Flow.cubicMetresPerSecond(0.5 * area), WATER).has(PartProblem.LOW_VELOCITY));
        assertTrue(pipe.notesAt(Flow.ZERO, WATER).isEmpty());
    }

    /** EN 10255 medium: 60.3 mm less two walls of 3.6 mm; EN 1057: 28 mm less two of 1 mm. */
    @Test
    void sizes_are_by_the_inside_diameter() {
        assertEquals(53.1, PipeSeries.STEEL.size(50).inside().toMillimetres(), 1e-9);
        assertEquals(26, PipeSeries.COPPER.size(28).inside().toMillimetres(), 1e-9);
        assertEquals("DN 50", PipeSeries.STEEL.size(50).toString());
        assertEquals("35 x 1.2", PipeSeries.COPPER.size(35).toString());
        Refusal refusal = assertThrows(Refusal.class, () -> PipeSeries.STEEL.size(55));
        assertEquals(PartProblem.UNKNOWN_PIPE_SIZE, refusal.problem());
        assertTrue(refusal.getMessage().contains("50, 65"), refusal.getMessage());
    }

    @Test
    void each_series_widens_from_size_to_size() {
        for (PipeSeries series : PipeSeries.values()) {
            for (int i = 1; i < series.sizes().size(); i++) {
                PipeSize size = series.sizes().get(i);
                PipeSize before = series.sizes().get(i - 1);
                assertTrue(size.inside().compareTo(before.inside()) > 0, size.toString());
                assertTrue(size.nominal() > before.nominal(), size.toString());
            }
        }
    }

    /**
     * Three measured points of 3 m of 25 mm pipe, water with ν = 1.0033e-6 m²/s: 0.052, 0.073 and 0.110 m at 0.20, 0.24
     * and 0.30 L/s. Public vignette of an open hydraulics package; the roughness of each solves Colebrook's equation.
     */
    @ParameterizedTest
    @CsvSource({"0.20, 0.4696, 0.052", "0.24, 0.4494, 0.073", "0.30, 0.4171, 0.110"})
    void the_roughness_behind_measured_points_gives_their_head(double flow, double roughness, double head) {
        Liquid water = liquid(1000, 1.0033);
        Pipe pipe = Pipe.of("measured", Length.millimetres(25), Length.millimetres(roughness), Length.metres(3));
        assertEquals(head, pipe.headAt(Flow.litresPerSecond(flow), water).si(), head * 2e-4);
    }
}
