package headrace.energy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.problem.Problem;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.units.Ratio;
import headrace.units.Time;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

@DisplayNameGeneration(ReplaceUnderscores.class)
class LoadProfileTest {
    @Test
    void puts_its_bins_in_order_and_adds_their_hours() {
        LoadProfile profile = profile(100, 500, 0, 3760, 50, 4500);
        assertEquals(
                List.of(0.0, 0.5, 1.0),
                profile.bins().stream().map(bin -> bin.flowFraction().value()).toList());
        assertEquals(8760, profile.hours().toHours(), 1e-9);
        assertEquals(5000, profile.pumpingHours().toHours(), 1e-9);
        assertEquals(0.55, profile.meanFlowFraction().value(), 1e-12);
        assertTrue(profile.notes().isEmpty());
    }

    @Test
    void adds_the_hours_of_repeated_bins_and_says_so() {
        LoadProfile profile = profile(50, 1000, 100, 10, 50, 500, 50, 1);
        assertEquals(2, profile.bins().size());
        assertEquals(1501, profile.bins().get(0).hours().toHours(), 1e-9);
        assertEquals(1, profile.notes().list().size());
        assertTrue(profile.notes().has(EnergyProblem.REPEATED_BINS));
    }

    @Test
    void takes_a_leap_year_and_no_more() {
        assertEquals(8784, profile(60, 8784).hours().toHours(), 1e-9);
        refused(EnergyProblem.IMPOSSIBLE_PROFILE, () -> profile(60, 8784, 70, 0.01));
    }

    @Test
    void is_refused_without_pumping() {
        refused(EnergyProblem.IMPOSSIBLE_PROFILE, LoadProfileTest::profile);
        refused(EnergyProblem.IMPOSSIBLE_PROFILE, () -> profile(0, 8760));
        refused(EnergyProblem.IMPOSSIBLE_PROFILE, () -> profile(50, 0));
    }

    @Test
    void is_refused_with_a_bin_that_cannot_be() {
        assertEquals(1, profile(120, 10).bins().size());
        refused(EnergyProblem.IMPOSSIBLE_BIN, () -> profile(-1, 10));
        refused(EnergyProblem.IMPOSSIBLE_BIN, () -> profile(120.1, 10));
        refused(EnergyProblem.IMPOSSIBLE_BIN, () -> profile(50, -10));
    }

    private static LoadProfile profile(double... percentAndHours) {
        List<LoadBin> bins = new ArrayList<>();
        for (int i = 0; i < percentAndHours.length; i += 2) {
            bins.add(new LoadBin(Ratio.percent(percentAndHours[i]), Time.hours(percentAndHours[i + 1])));
        }
        return LoadProfile.of("a made-up year", bins, Basis.NONE);
    }

    private static void refused(Problem problem, Executable asking) {
        assertEquals(problem, assertThrows(Refusal.class, asking).problem());
    }
}
