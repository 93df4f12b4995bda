package headrace.control;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.circuit.Branch;
import headrace.circuit.Circuit;
import headrace.circuit.CircuitProblem;
import headrace.circuit.band.HeadBand;
import headrace.circuit.part.Drop;
import headrace.circuit.part.PlantResistance;
import headrace.circuit.part.valve.MinimumFlowValve;
import headrace.curve.Duty;
import headrace.drive.SeparateLosses;
import headrace.pump.KnownPump;
import headrace.pump.PumpSet;
import headrace.units.Flow;
import headrace.units.FlowCoefficient;
import headrace.units.Head;
import headrace.units.Ratio;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

/**
 * A main of 1·Q² (m, L/s) and two terminals, 4·q² and 1·q², each up to 2 L/s. At 2 L/s in all the greatest need is 4 +
 * 16 = 20 m, all in the first; at 4 L/s it is 16 + 16 = 32 m. Hand calculations.
 */
@DisplayNameGeneration(ReplaceUnderscores.class)
class BandWithLawsTest {
    private static final PumpSet SET = KnownPump.set(SeparateLosses.ASSUMED);
    private static final Circuit LOOP = Circuit.of(
            KnownPump.WATER,
            "supply",
            "return",
            Branch.of("main", "supply", "tee", loss("pipe", 1)),
            Branch.terminal("steep", "tee", "return", litres(2), loss("steep coil", 4)),
            Branch.terminal("flat", "tee", "return", litres(2), loss("flat coil", 1)));

    private static Flow litres(double value) {
        return Flow.litresPerSecond(value);
    }

    private static PlantResistance loss(String name, double metres) {
        return PlantResistance.of(name, Drop.of(litres(1), Head.metres(metres)));
    }

    private static ControlLaw constant(double metres) {
        return ControlLaw.constantHead(new Duty(litres(4), Head.metres(metres)));
    }

    @Test
    void a_law_below_the_upper_edge_misses_what_the_worst_pattern_needs_there() {
        HeadBand band = HeadBand.of(LOOP, LOOP.designDemands(), 2);
        BandWithLaws with = BandWithLaws.of(band, SET, List.of(constant(25), constant(33)), 1);
        BandWithLaws.Gap gap = with.gap(with.laws().get(0)).orElseThrow();
        assertEquals(4, gap.from().toLitresPerSecond(), 1e-9);
        assertEquals(4, gap.to().toLitresPerSecond(), 1e-9);
        assertEquals(7, gap.missing().metres(), 1e-7);
        assertEquals("steep", gap.worst().greatest().decides());
        assertTrue(with.gap(with.laws().get(1)).isEmpty());
    }

    @Test
    void its_points_are_those_at_which_the_pump_set_settles_with_all_branches_asking_alike() {
        HeadBand band = HeadBand.of(LOOP, LOOP.designDemands(), 1);
        BandWithLaws with = BandWithLaws.of(band, SET, List.of(constant(33)), 2);
        List<LoopOperation> runs = with.points().get(0);
        assertEquals(2, runs.get(0).circuit().flow().toLitresPerSecond(), 1e-9);
        assertEquals(4, runs.get(1).circuit().flow().toLitresPerSecond(), 1e-9);
        assertEquals(33, runs.get(1).circuit().head().metres(), 1e-7);
    }

    @Test
    void a_law_that_makes_no_head_of_flow_alone_is_not_held_against_the_band() {
        HeadBand band = HeadBand.of(LOOP, LOOP.designDemands(), 2);
        ControlLaw needy = ControlLaw.neediestValve(new Duty(litres(4), Head.metres(32)), Ratio.of(1));
        assertTrue(BandWithLaws.of(band, SET, List.of(needy), 1).gap(needy).isEmpty());
    }

    @Test
    void a_minimum_flow_valve_is_no_load_of_the_band_and_the_band_says_so() {
        List<Branch> branches = new ArrayList<>(LOOP.branches());
        branches.add(Branch.terminal(
                "bypass",
                "supply",
                "return",
                litres(1),
                new MinimumFlowValve("valve", litres(1), FlowCoefficient.kv(4))));
        Circuit loop = new Circuit(LOOP.liquid(), "supply", "return", branches);
        HeadBand band = HeadBand.at(loop, loop.designDemands(), litres(2));
        assertEquals(20, band.points().get(0).greatest().head().metres(), 1e-7);
        assertEquals(4 + 16 / 9.0, band.points().get(0).least().head().metres(), 1e-7);
        assertEquals(4, band.demands().total().toLitresPerSecond(), 1e-12);
        assertTrue(band.notes().has(CircuitProblem.BYPASS_BELOW_LEAST_FLOW));
        assertFalse(
                HeadBand.at(LOOP, LOOP.designDemands(), litres(2)).notes().has(CircuitProblem.BYPASS_BELOW_LEAST_FLOW));
    }
}
