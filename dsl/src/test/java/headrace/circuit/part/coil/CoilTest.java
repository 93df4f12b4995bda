package headrace.circuit.part.coil;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.circuit.part.Drop;
import headrace.circuit.part.PartProblem;
import headrace.liquid.Liquid;
import headrace.problem.Refusal;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.MassFlow;
import headrace.units.Power;
import headrace.units.Pressure;
import headrace.units.Ratio;
import headrace.units.Temperature;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class CoilTest {
    private static final Liquid WATER = Liquid.water(Temperature.celsius(60));
    private static final Flow DESIGN = Flow.cubicMetresPerHour(4);

    @Test
    void a_coil_takes_its_design_loss_times_the_share_of_flow_to_its_exponent() {
        Coil coil = Coil.of("coil 4", Drop.of(DESIGN, Pressure.kilopascals(30)));
        assertEquals(
                7.5, coil.headAt(DESIGN.times(0.5), WATER).pressureOf(WATER).toKilopascals(), 1e-12);
        double share = Math.pow(0.5, 1.8);
        assertEquals(
                30 * share,
                coil.withExponent(1.8)
                        .headAt(DESIGN.times(0.5), WATER)
                        .pressureOf(WATER)
                        .toKilopascals(),
                1e-12);
        var law = coil.withExponent(1.8).in(WATER);
        double q = DESIGN.si() / 3;
        assertEquals(1.8 * law.headMetres(q) / q, law.slope(q), law.slope(q) * 1e-12);
        assertEquals(-law.headMetres(q), law.headMetres(-q), 0);
    }

    @Test
    void an_impossible_coil_is_refused_with_its_name() {
        Coil coil = Coil.of("coil 4", Drop.of(DESIGN, Head.metres(3)));
        for (Refusal refusal : new Refusal[] {
            assertThrows(Refusal.class, () -> coil.withExponent(2.5)),
            assertThrows(Refusal.class, () -> Coil.of("coil 4", Drop.of(Flow.ZERO, Head.metres(3)))),
            assertThrows(Refusal.class, () -> Coil.of("coil 4", Drop.of(DESIGN, Head.metres(-3)))),
            assertThrows(Refusal.class, () -> coil.withReynolds(-1))
        }) {
            assertEquals(PartProblem.IMPOSSIBLE_PART, refusal.problem());
            assertTrue(refusal.getMessage().contains("coil 4"), refusal.getMessage());
        }
    }

    /** By hand: 9200 at design is 2300 at a quarter. */
    @Test
    void a_coil_whose_flow_turns_laminar_is_noted() {
        Coil coil = Coil.of("coil 4", Drop.of(DESIGN, Head.metres(3))).withReynolds(9200);
        assertTrue(coil.notesAt(DESIGN.times(0.26), WATER).isEmpty());
        assertTrue(coil.notesAt(DESIGN.times(0.24), WATER).has(PartProblem.LAMINAR_COIL));
    }

    /** By hand: a·L/(1 − L + a·L) with a = 0.3 and L = 0.5 is 0.3/1.3 = 0.2308: half the heat at 23 % of the flow. */
    @Test
    void the_emission_law_gives_half_the_heat_at_little_flow_and_goes_back() {
        EmissionLaw law = new EmissionLaw(0.3);
        assertEquals(0.15 / 0.65, law.flowFor(Ratio.of(0.5)).si(), 1e-15);
        assertEquals(0.5, law.heatAt(Ratio.of(0.15 / 0.65)).si(), 1e-15);
        assertEquals(0, law.heatAt(Ratio.ZERO).si(), 0);
        assertEquals(1, law.flowFor(Ratio.of(1)).si(), 1e-15);
        assertEquals(0.37, new EmissionLaw(1).heatAt(Ratio.of(0.37)).si(), 1e-15);
        assertThrows(Refusal.class, () -> new EmissionLaw(0));
        assertThrows(Refusal.class, () -> law.heatAt(Ratio.of(1.1)));
    }

    /**
     * Textbook limits: NTU/(1+NTU) for equal capacity rates against each other, 1 − e^−NTU where one does not change.
     */
    @Test
    void effectiveness_has_its_textbook_limits() {
        assertEquals(0.75, Effectiveness.COUNTER_FLOW.at(3, 1), 1e-15);
        assertEquals(0.75, Effectiveness.COUNTER_FLOW.at(3, 1 - 1e-7), 1e-6);
        for (Effectiveness arrangement : Effectiveness.values()) {
            assertEquals(1 - Math.exp(-2), arrangement.at(2, 0), 1e-12);
            assertEquals(1 - Math.exp(-2), arrangement.at(2, 1e-7), 1e-6);
            assertEquals(0, arrangement.at(0, 0.5), 0);
        }
        // by hand: (1 − e^−1)/(1 − 0.5·e^−1) with NTU = 2 and half
        assertEquals((1 - Math.exp(-1)) / (1 - 0.5 * Math.exp(-1)), Effectiveness.COUNTER_FLOW.at(2, 0.5), 1e-15);
    }

    private static final CoilRating RATING = new CoilRating(
            Power.watts(40_000),
            Flow.cubicMetresPerHour(1.8),
            WATER,
            MassFlow.kilogramsPerSecond(1.6),
            Temperature.celsius(18));

    @Test
    void a_coil_gives_its_rated_heat_at_its_rating() {
        for (Effectiveness arrangement : Effectiveness.values()) {
            CoilHeat coil = CoilHeat.through("heater", RATING, arrangement, Ratio.percent(30));
            assertEquals(
                    40_000,
                    coil.heatAt(RATING.water(), WATER.temperature(), RATING.air(), RATING.enteringAir())
                            .watts(),
                    1e-6);
            assertEquals(1, coil.heatAt(Ratio.of(1)).si(), 1e-12);
            assertEquals(0, coil.heatAt(Ratio.ZERO).si(), 0);
        }
    }

    /** By hand with 30 % on the water side: 1/UA is 0.3·w^−0.85 + 0.7·a^−0.8 of that at design. */
    @Test
    void conductance_falls_with_either_flow() {
        CoilHeat coil = CoilHeat.through("heater", RATING);
        double design = coil.wattsPerKelvinAt(Ratio.of(1), Ratio.of(1));
        double half = coil.wattsPerKelvinAt(Ratio.of(0.5), Ratio.of(0.25));
        assertEquals(0.3 * Math.pow(0.5, -0.85) + 0.7 * Math.pow(0.25, -0.8), design / half, 1e-12);
        assertEquals(0, coil.wattsPerKelvinAt(Ratio.ZERO, Ratio.of(1)), 0);
    }

    @Test
    void heat_rises_with_flow_ever_more_slowly_and_turns_its_sign_with_the_temperatures() {
        CoilHeat coil = CoilHeat.through("heater", RATING);
        double before = 0;
        double gain = Double.POSITIVE_INFINITY;
        for (double share = 0.1; share < 1.05; share += 0.1) {
            double heat = coil.heatAt(Ratio.of(share)).si();
            assertTrue(heat > before && heat - before < gain, "at " + share);
            gain = heat - before;
            before = heat;
        }
        Power cooling = coil.heatAt(RATING.water(), Temperature.celsius(6), RATING.air(), Temperature.celsius(27));
        assertTrue(cooling.watts() < 0);
    }

    /** By hand: 1.6 kg/s of air at 1006 J/(kg·K) warmed by 42 K at most takes 67.6 kW. */
    @Test
    void more_heat_than_can_pass_is_refused_with_the_name_of_the_coil() {
        CoilRating much = new CoilRating(
                Power.watts(68_000), Flow.cubicMetresPerHour(18), WATER, RATING.air(), RATING.enteringAir());
        Refusal refusal = assertThrows(Refusal.class, () -> CoilHeat.through("heater", much));
        assertEquals(PartProblem.IMPOSSIBLE_PART, refusal.problem());
        assertTrue(refusal.getMessage().contains("heater"), refusal.getMessage());
    }
}
