package headrace.circuit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.circuit.part.BoosterPump;
import headrace.circuit.part.DecouplerPipe;
import headrace.circuit.part.Drop;
import headrace.circuit.part.PartProblem;
import headrace.circuit.part.PlantResistance;
import headrace.circuit.part.valve.ControlValve;
import headrace.pump.KnownPump;
import headrace.pump.PumpBranch;
import headrace.units.Flow;
import headrace.units.FlowCoefficient;
import headrace.units.Head;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

/**
 * A plant loop of 8 m at 40 m³/h with the pump of the circuit, a decoupler, and a load loop with a pump of its own: the
 * head across the decoupler is 0, so that the plant loop moves 40·√(H/8) whatever the load does.
 */
@DisplayNameGeneration(ReplaceUnderscores.class)
class DecouplerLinkTest {
    private static Flow m3ph(double value) {
        return Flow.cubicMetresPerHour(value);
    }

    private static Circuit plantAndLoad() {
        return Circuit.of(
                KnownPump.WATER,
                "supply",
                "inlet",
                Branch.of("decoupler", "supply", "back", new DecouplerPipe("decoupler")),
                Branch.of("chiller", "back", "inlet", PlantResistance.of("chiller", Drop.of(m3ph(40), Head.metres(8)))),
                Branch.of("load pump", "supply", "header", new BoosterPump(PumpBranch.of(KnownPump.curve()))),
                Branch.terminal("room", "header", "back", m3ph(30), ControlValve.of("valve", FlowCoefficient.kv(40))));
    }

    @Test
    void what_the_plant_moves_beyond_the_load_goes_forward_through_the_decoupler() {
        CircuitSolution found = plantAndLoad().solve(Closing.head(Head.metres(8)));
        assertEquals(40, found.branch("chiller").flow().toCubicMetresPerHour(), 1e-6);
        assertEquals(30, found.branch("room").flow().toCubicMetresPerHour(), 1e-6);
        assertEquals(10, found.branch("decoupler").flow().toCubicMetresPerHour(), 1e-6);
        assertEquals(0, found.branch("decoupler").available().metres(), 1e-8);
        assertFalse(found.notes().has(PartProblem.DECOUPLER_REVERSED));
    }

    @Test
    void what_the_load_takes_beyond_the_plant_comes_back_through_it_and_is_noted() {
        // 2 m: 40·√(2/8) = 20 m³/h
        CircuitSolution found = plantAndLoad().solve(Closing.head(Head.metres(2)));
        assertEquals(-10, found.branch("decoupler").flow().toCubicMetresPerHour(), 1e-6);
        assertTrue(found.notes().has(PartProblem.DECOUPLER_REVERSED));
    }
}
