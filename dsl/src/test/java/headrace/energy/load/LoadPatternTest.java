package headrace.energy.load;

import static headrace.pump.KnownPump.m3ph;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.circuit.Branch;
import headrace.circuit.Circuit;
import headrace.circuit.part.Drop;
import headrace.circuit.part.PlantResistance;
import headrace.problem.Refusal;
import headrace.pump.KnownPump;
import headrace.units.Head;
import headrace.units.Ratio;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class LoadPatternTest {
    private static final Circuit LOOP = Circuit.of(
            KnownPump.WATER,
            "supply",
            "return",
            Branch.terminal("near", "supply", "return", m3ph(30), loss("a")),
            Branch.terminal("far", "supply", "return", m3ph(10), loss("b")));

    @Test
    void every_pattern_asks_for_its_share_of_the_design_flow_and_no_branch_for_more_than_its_own() {
        List<LoadPattern> patterns = LoadPattern.all(LOOP, List.of(Ratio.percent(25), Ratio.percent(60)), 3);
        for (LoadPattern pattern : patterns) {
            double share = pattern.name().endsWith("25 %") ? 0.25 : 0.6;
            assertEquals(40 * share, pattern.demands().total().toCubicMetresPerHour(), 1e-9, pattern.name());
            assertTrue(pattern.demands().flows().get("far").toCubicMetresPerHour() <= 10 + 1e-9, pattern.name());
        }
    }

    @Test
    void a_load_above_120_percent_of_design_is_no_pattern() {
        LoadPattern.all(LOOP, List.of(Ratio.percent(120)), 3);
        Refusal refusal = assertThrows(Refusal.class, () -> LoadPattern.all(LOOP, List.of(Ratio.percent(130)), 3));
        assertEquals(LoadProblem.LOAD_OUT_OF_RANGE, refusal.problem());
    }

    /** A quarter of 40 m³/h: 7.5 and 2.5, all of it near, all of it far, none of it far. */
    @Test
    void a_quarter_lies_evenly_near_far_or_with_one_off() {
        assertEquals(List.of(7.5, 2.5), flows("even at 25 %"));
        assertEquals(List.of(10.0, 0.0), flows("near branches first at 25 %"));
        assertEquals(List.of(0.0, 10.0), flows("far branches first at 25 %"));
        assertEquals(List.of(10.0, 0.0), flows("far off at 25 %"));
    }

    private static List<Double> flows(String name) {
        LoadPattern pattern = LoadPattern.all(LOOP, List.of(Ratio.percent(25)), 3).stream()
                .filter(one -> one.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new AssertionError(name));
        return pattern.demands().flows().values().stream()
                .map(flow -> Math.rint(flow.toCubicMetresPerHour() * 1e9) / 1e9)
                .toList();
    }

    private static PlantResistance loss(String name) {
        return PlantResistance.of(name, Drop.of(m3ph(40), Head.metres(4)));
    }
}
