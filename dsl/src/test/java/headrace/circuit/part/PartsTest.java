package headrace.circuit.part;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.circuit.part.Decoupler.Direction;
import headrace.liquid.Liquid;
import headrace.problem.Refusal;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Pressure;
import headrace.units.Ratio;
import headrace.units.Temperature;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class PartsTest {
    private static final Liquid WATER = Liquid.water(Temperature.celsius(20));
    private static final Flow TEN = Flow.cubicMetresPerHour(10);

    /** By hand: half the free area doubles the velocity and takes four times the head. */
    @Test
    void a_strainer_that_is_half_blocked_takes_four_times_as_much() {
        Strainer strainer = Strainer.of("strainer", Drop.of(TEN, Head.metres(0.5)));
        assertEquals(0.5, strainer.headAt(TEN, WATER).si(), 1e-15);
        assertEquals(2, strainer.fouled(Ratio.percent(50)).headAt(TEN, WATER).si(), 1e-12);
        Refusal refusal = assertThrows(Refusal.class, () -> strainer.fouled(Ratio.of(1)));
        assertTrue(refusal.getMessage().contains("the strainer"), refusal.getMessage());
    }

    @Test
    void a_pressure_is_taken_in_the_liquid_of_the_circuit() {
        PlantResistance plant = PlantResistance.of("chiller", Drop.of(TEN, Pressure.kilopascals(40)));
        Liquid glycol = Liquid.ethyleneGlycol(Ratio.percent(30), Temperature.celsius(5));
        assertEquals(40, plant.headAt(TEN, WATER).pressureOf(WATER).toKilopascals(), 1e-12);
        assertEquals(40, plant.headAt(TEN, glycol).pressureOf(glycol).toKilopascals(), 1e-12);
        assertTrue(plant.headAt(TEN, glycol).compareTo(plant.headAt(TEN, WATER)) < 0);
    }

    @Test
    void what_cannot_be_is_refused_with_the_name_of_the_part() {
        for (Drop drop : new Drop[] {
            Drop.of(Flow.ZERO, Head.metres(1)), Drop.of(TEN, Head.metres(-1)), Drop.of(TEN, Pressure.pascals(-1))
        }) {
            Refusal refusal = assertThrows(Refusal.class, () -> PlantResistance.of("chiller", drop));
            assertEquals(PartProblem.IMPOSSIBLE_PART, refusal.problem());
            assertTrue(refusal.getMessage().contains("the resistance 'chiller'"), refusal.getMessage());
        }
        assertThrows(Refusal.class, () -> PlantResistance.of(" ", Drop.of(TEN, Head.metres(1))));
        assertThrows(Refusal.class, () -> new PlantResistance("chiller", Drop.of(TEN, Head.metres(1)), 3));
    }

    @Test
    void a_decoupler_carries_the_difference_and_says_which_way() {
        Decoupler forward = new Decoupler("bridge", TEN, TEN.times(0.6));
        assertEquals(4, forward.flow().toCubicMetresPerHour(), 1e-12);
        assertEquals(Direction.FORWARD, forward.direction());
        assertTrue(forward.notes().isEmpty());
        assertEquals(Direction.STILL, new Decoupler("bridge", TEN, TEN).direction());
        Decoupler backward = new Decoupler("bridge", TEN.times(0.6), TEN);
        assertEquals(Direction.BACKWARD, backward.direction());
        assertEquals(0.4, backward.returnShare().si(), 1e-12);
        assertTrue(backward.notes().has(PartProblem.DECOUPLER_REVERSED));
    }
}
