package headrace.energy.load;

import static headrace.energy.load.HourlyLoadTest.refused;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.circuit.part.coil.EmissionLaw;
import headrace.energy.load.BranchYear.Asked;
import headrace.units.Flow;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class BranchYearTest {
    /** Three branches of 50, 30 and 20 % of the whole. */
    private static final double[] WEIGHTS = {0.5, 0.3, 0.2};

    private static final List<Asked> BRANCHES = List.of(
            new Asked("near", Flow.cubicMetresPerHour(50), LoadToFlow.constantDifference()),
            new Asked("mid", Flow.cubicMetresPerHour(30), LoadToFlow.constantDifference()),
            new Asked("far", Flow.cubicMetresPerHour(20), LoadToFlow.constantDifference()));

    private static double[] shares(Sharing sharing, double total, int hour) {
        double[] shares = new double[3];
        sharing.fill(total, WEIGHTS, hour, shares);
        return shares;
    }

    @Test
    void evenly_every_branch_is_asked_for_the_same_share() {
        assertArrayEquals(new double[] {0.6, 0.6, 0.6}, shares(Sharing.even(), 0.6, 0), 0.0);
    }

    /** 60 % of all: the near branch takes 50 %, the next 10 of its 30, the far one nothing; and the other way round. */
    @Test
    void near_and_far_branches_are_filled_in_their_order() {
        assertArrayEquals(new double[] {1, 1 / 3.0, 0}, shares(Sharing.near(), 0.6, 0), 1e-12);
        assertArrayEquals(new double[] {0.2, 1, 1}, shares(Sharing.far(), 0.6, 0), 1e-12);
    }

    /** With the 30 % branch off the others share 40 % as 40/70; of 80 % they take their 70, and it the 10 left. */
    @Test
    void one_branch_is_off_until_the_others_are_full() {
        assertArrayEquals(new double[] {4 / 7.0, 0, 4 / 7.0}, shares(Sharing.oneOff(1), 0.4, 0), 1e-12);
        assertArrayEquals(new double[] {1, 1 / 3.0, 1}, shares(Sharing.oneOff(1), 0.8, 0), 1e-12);
    }

    @Test
    void every_sharing_makes_up_the_total_with_no_branch_above_all() {
        for (Sharing sharing : Sharing.all(3, 7)) {
            for (double total = 0; total <= 1; total += 0.05) {
                for (int hour = 0; hour < 50; hour++) {
                    double[] shares = shares(sharing, total, hour);
                    double sum = 0;
                    for (int i = 0; i < 3; i++) {
                        assertTrue(shares[i] >= 0 && shares[i] <= 1 + 1e-12, sharing.name());
                        sum += shares[i] * WEIGHTS[i];
                    }
                    assertEquals(total, sum, 1e-12, sharing.name());
                }
            }
            assertArrayEquals(new double[] {1.1, 1.1, 1.1}, shares(sharing, 1.1, 0), 0.0);
            assertArrayEquals(new double[] {1, 1, 1}, shares(sharing, 1, 0), 1e-12);
        }
        assertEquals(7, Sharing.all(3, 7).size());
        assertEquals(4, Sharing.all(1, 7).size());
    }

    @Test
    void random_shares_are_those_of_their_seed_and_change_from_hour_to_hour() {
        assertArrayEquals(shares(Sharing.random(5), 0.4, 3), shares(Sharing.random(5), 0.4, 3), 0.0);
        assertNotEquals(shares(Sharing.random(5), 0.4, 3)[0], shares(Sharing.random(5), 0.4, 4)[0]);
        assertNotEquals(shares(Sharing.random(5), 0.4, 3)[0], shares(Sharing.random(6), 0.4, 3)[0]);
    }

    private static HourlyLoad load() {
        return HourlyLoadTest.load(
                IntStream.range(0, 8760).mapToDouble(i -> (i % 10) / 10.0).toArray());
    }

    /** Hour 6 asks for 60 %: 50 m³/h near, 10 m³/h of mid, nothing far. */
    @Test
    void an_hour_is_what_a_circuit_is_asked_for() {
        BranchYear year = BranchYear.of(load(), BRANCHES, Sharing.near());
        assertEquals(50, year.demandsAt(6).flows().get("near").toCubicMetresPerHour(), 1e-9);
        assertEquals(10, year.demandsAt(6).flows().get("mid").toCubicMetresPerHour(), 1e-9);
        assertEquals(0, year.demandsAt(6).flows().get("far").toCubicMetresPerHour(), 1e-9);
        assertEquals(60.0 / 3600, year.totalAt(6), 1e-12);
        assertEquals(
                List.of("near", "mid", "far"),
                List.copyOf(year.demandsAt(0).flows().keySet()));
    }

    @Test
    void all_branches_together_are_asked_for_the_same_however_they_share() {
        for (Sharing sharing : Sharing.all(3, 1)) {
            BranchYear year = BranchYear.of(load(), BRANCHES, sharing);
            assertEquals(0.5, year.together().meanFlowFraction().value(), 1e-9);
            assertEquals(7884, year.together().pumpingHours().toHours(), 1e-9);
        }
    }

    /** With a = 0.4 the branch asked for half its load takes 2/7 of its flow; the other keeps its difference. */
    @Test
    void each_branch_turns_its_load_into_flow_in_its_own_way() {
        List<Asked> mixed = List.of(
                new Asked("coil", Flow.cubicMetresPerHour(10), LoadToFlow.emission(new EmissionLaw(0.4))),
                new Asked("open", Flow.cubicMetresPerHour(10), LoadToFlow.constantDifference()));
        BranchYear year = BranchYear.of(load(), mixed, Sharing.even());
        assertEquals(2 / 7.0, year.flowShareAt(5, 0), 1e-12);
        assertEquals(0.5, year.flowShareAt(5, 1), 1e-12);
        assertEquals(876, year.of(1).bins().get(5).hours().toHours(), 1e-9);
        assertTrue(year.basis().toString().contains("emission law"));
        assertTrue(year.basis().toString().contains("load shared among 2 branches: even"));
    }

    @Test
    void branches_that_cannot_share_are_refused() {
        refused(LoadProblem.IMPOSSIBLE_BRANCHES, () -> BranchYear.of(load(), List.of(), Sharing.even()));
        refused(
                LoadProblem.IMPOSSIBLE_BRANCHES,
                () -> BranchYear.of(load(), List.of(BRANCHES.get(0), BRANCHES.get(0)), Sharing.even()));
        refused(LoadProblem.IMPOSSIBLE_BRANCHES, () -> BranchYear.of(load(), BRANCHES, Sharing.oneOff(3)));
        refused(
                LoadProblem.IMPOSSIBLE_BRANCHES,
                () -> BranchYear.of(
                        load(),
                        List.of(new Asked("none", Flow.ZERO, LoadToFlow.constantDifference())),
                        Sharing.even()));
    }
}
