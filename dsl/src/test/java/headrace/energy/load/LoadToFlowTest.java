package headrace.energy.load;

import static headrace.energy.load.HourlyLoadTest.refused;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.circuit.part.coil.CoilHeat;
import headrace.circuit.part.coil.CoilRating;
import headrace.circuit.part.coil.EmissionLaw;
import headrace.energy.LoadProfile;
import headrace.liquid.Liquid;
import headrace.units.Flow;
import headrace.units.MassFlow;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Temperature;
import java.util.Arrays;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class LoadToFlowTest {
    private static final CoilRating RATING = new CoilRating(
            Power.kilowatts(90),
            Flow.cubicMetresPerHour(5.2),
            Liquid.water(Temperature.celsius(70)),
            MassFlow.kilogramsPerSecond(3),
            Temperature.celsius(10));

    @Test
    void with_a_constant_temperature_difference_flow_goes_with_the_load() {
        for (double load : new double[] {0, 0.3, 1, 1.2}) {
            assertEquals(load, LoadToFlow.constantDifference().flowShare(load), 0.0);
        }
    }

    /**
     * By hand with a = 0.4: half the load takes 0.2/(1 − 0.5 + 0.2) = 28.57 % of the flow; a = 1 is a straight line.
     */
    @Test
    void by_an_emission_law_half_the_load_takes_less_than_half_the_flow() {
        LoadToFlow law = LoadToFlow.emission(new EmissionLaw(0.4));
        assertEquals(2 / 7.0, law.flowShare(0.5), 1e-15);
        assertEquals(0, law.flowShare(0), 0.0);
        assertEquals(1, law.flowShare(1), 1e-15);
        assertEquals(0.37, LoadToFlow.emission(new EmissionLaw(1)).flowShare(0.37), 1e-15);
        refused(LoadProblem.LOAD_BEYOND_EMITTER, () -> law.flowShare(1.01));
    }

    @Test
    void a_coil_gives_the_load_at_the_flow_that_is_found_for_it() {
        LoadToFlow coil = LoadToFlow.coil(RATING);
        CoilHeat heat = CoilHeat.through("coil", RATING);
        assertEquals(0, coil.flowShare(0), 0.0);
        assertEquals(1, coil.flowShare(1), 1e-9);
        for (double load = 0.05; load <= 1; load += 0.05) {
            double flow = coil.flowShare(load);
            assertEquals(load, heat.heatAt(Ratio.of(flow)).value(), 1e-9);
            assertTrue(flow <= load + 1e-9, "at " + load);
        }
        refused(LoadProblem.LOAD_BEYOND_EMITTER, () -> coil.flowShare(1.2));
    }

    /** Supply halfway between 70 and 40 °C at half the load: 55 °C, and so the heat there. */
    @Test
    void a_reset_supply_takes_more_flow_at_part_load_and_the_same_at_design() {
        LoadToFlow reset = LoadToFlow.coil(RATING, Temperature.celsius(40));
        LoadToFlow plain = LoadToFlow.coil(RATING);
        assertEquals(1, reset.flowShare(1), 1e-9);
        double flow = reset.flowShare(0.5);
        assertTrue(flow > plain.flowShare(0.5));
        Power heat = CoilHeat.through("coil", RATING)
                .heatAt(RATING.water().times(flow), Temperature.celsius(55), RATING.air(), RATING.enteringAir());
        assertEquals(45, heat.toKilowatts(), 1e-6);
        refused(LoadProblem.LOAD_BEYOND_EMITTER, () -> LoadToFlow.coil(RATING, Temperature.celsius(5)));
        refused(LoadProblem.LOAD_BEYOND_EMITTER, () -> LoadToFlow.coil(RATING, Temperature.celsius(80)));
    }

    @Test
    void the_way_is_named_in_what_rests_on_it_and_makes_a_difference() {
        double[] shares = new double[8760];
        Arrays.fill(shares, 0.5);
        HourlyLoad load = HourlyLoadTest.load(shares);
        LoadProfile plain = load.flows(LoadToFlow.constantDifference());
        LoadProfile emitted = load.flows(LoadToFlow.emission(new EmissionLaw(0.4)));
        assertEquals(0.5, plain.meanFlowFraction().value(), 1e-12);
        assertEquals(2 / 7.0, emitted.meanFlowFraction().value(), 1e-12);
        assertTrue(plain.basis().toString().contains("by a constant temperature difference"));
        assertTrue(emitted.basis().toString().contains("by the emission law with a = 0.4"));
    }
}
