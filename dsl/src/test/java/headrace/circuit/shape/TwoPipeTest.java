package headrace.circuit.shape;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.circuit.Circuit;
import headrace.circuit.CircuitSolution;
import headrace.circuit.Closing;
import headrace.circuit.part.Drop;
import headrace.circuit.part.Part;
import headrace.circuit.part.PlantResistance;
import headrace.liquid.Liquid;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Temperature;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class TwoPipeTest {
    private static final Liquid WATER = Liquid.water(Temperature.celsius(12));
    private static final Flow MUCH = Flow.cubicMetresPerHour(50);

    private static Part at(double flow, double metres) {
        return PlantResistance.of("r", Drop.of(Flow.cubicMetresPerHour(flow), Head.metres(metres)));
    }

    private static double flow(CircuitSolution solution, String branch) {
        return solution.branch(branch).flow().toCubicMetresPerHour();
    }

    /** By hand: each way takes 20 m at 10 m³/h, the plant 10 m at 20 m³/h; so 30 m drive 10 m³/h through each. */
    @Test
    void direct_return_lays_both_mains_before_the_farther_terminal() {
        Circuit circuit = TwoPipe.directReturn(
                WATER,
                List.of(at(20, 10)),
                List.of(
                        Tap.of("near", MUCH, at(10, 20)),
                        Tap.of("far", MUCH, at(10, 15)).on(at(10, 2.5))));
        CircuitSolution solution = circuit.solve(Closing.head(Head.metres(30)));
        assertEquals(10, flow(solution, "near"), 1e-6);
        assertEquals(10, flow(solution, "far"), 1e-6);
        assertEquals(20, flow(solution, "plant"), 1e-6);
        assertEquals(10, solution.headAt(TwoPipe.OUTLET).metres() - 20, 1e-6);
    }

    /**
     * By hand: the near one has 2.5 m more in the return, the far one in the supply; 5 m plant, 10 m home, 20 m each.
     */
    @Test
    void reverse_return_takes_the_near_terminal_the_long_way_back() {
        Circuit circuit = TwoPipe.reverseReturn(
                WATER,
                List.of(at(20, 5)),
                List.of(
                        Tap.of("near", MUCH, at(10, 17.5)),
                        Tap.of("far", MUCH, at(10, 17.5)).on(at(10, 2.5))),
                List.of(at(20, 10)));
        CircuitSolution solution = circuit.solve(Closing.head(Head.metres(35)));
        assertEquals(10, flow(solution, "near"), 1e-6);
        assertEquals(10, flow(solution, "far"), 1e-6);
        assertEquals(10, flow(solution, "main on to far"), 1e-6);
        assertEquals(20, flow(solution, "main home"), 1e-6);
    }

    @Test
    void a_terminal_without_mains_shares_the_junctions_of_the_one_before() {
        Circuit circuit = TwoPipe.directReturn(
                WATER, List.of(), List.of(Tap.of("one", MUCH, at(10, 20)), Tap.of("two", MUCH, at(10, 20))));
        assertEquals(List.of("pump inlet", "pump outlet"), circuit.junctions());
        assertEquals(2, circuit.branches().size());
    }

    @Test
    void a_return_main_may_differ_from_the_supply_main() {
        Circuit circuit = TwoPipe.directReturn(
                WATER,
                List.of(),
                List.of(Tap.of("one", MUCH, at(10, 20)).on(at(10, 1)).returning(at(10, 3))));
        assertTrue(circuit.branch("main to one").parts().get(0).toString().contains("1 m at"));
        assertTrue(circuit.branch("main from one").parts().get(0).toString().contains("3 m at"));
    }
}
