package headrace.chart.paint;

import static org.junit.jupiter.api.Assertions.assertEquals;

import headrace.chart.paint.LabelPlacer.Candidate;
import headrace.chart.paint.LabelPlacer.Wish;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class LabelPlacerTest {
    private static final Box LEFT = new Box(10, 40, 30, 10);
    private static final Box RIGHT = new Box(60, 40, 30, 10);
    private static final Track OWN = level(38);

    private final LabelPlacer placer = new LabelPlacer(new Box(0, 0, 100, 100), 2);

    @Test
    void takes_the_place_that_is_liked_best() {
        assertEquals(Optional.of(RIGHT), place(new Candidate(LEFT, 3), new Candidate(RIGHT, 1)));
    }

    @Test
    void gives_no_place_twice() {
        assertEquals(Optional.of(LEFT), place(new Candidate(LEFT, 0)));
        assertEquals(Optional.empty(), place(new Candidate(LEFT, 0)));
        assertEquals(Optional.empty(), place(new Candidate(new Box(41, 40, 30, 10), 0)));
        assertEquals(Optional.of(RIGHT), place(new Candidate(RIGHT, 0)));
    }

    @Test
    void keeps_off_the_frame() {
        assertEquals(Optional.empty(), place(new Candidate(new Box(75, 40, 30, 10), 0)));
        assertEquals(Optional.empty(), place(new Candidate(new Box(-1, 40, 30, 10), 0)));
    }

    @Test
    void keeps_off_a_symbol() {
        placer.keepClear(new Box(20, 42, 5, 5));
        assertEquals(Optional.of(RIGHT), place(new Candidate(LEFT, 0), new Candidate(RIGHT, 20)));
    }

    @Test
    void rather_hides_no_line() {
        placer.avoid(upright(20), 3, false);
        assertEquals(Optional.of(RIGHT), place(new Candidate(LEFT, 0), new Candidate(RIGHT, 20)));
    }

    @Test
    void hides_a_line_where_nothing_else_is_left_and_it_is_allowed() {
        placer.avoid(upright(20), 3, false);
        assertEquals(Optional.of(LEFT), place(new Candidate(LEFT, 0)));
        placer.avoid(upright(70), 30, false);
        assertEquals(Optional.empty(), place(new Candidate(RIGHT, 0)));
    }

    @Test
    void rather_stands_where_no_other_line_is_nearer() {
        Track rival = Track.through(new double[] {5, 45}, new double[] {51, 51});
        placer.avoid(OWN, 3, true);
        placer.avoid(rival, 3, true);
        assertEquals(Optional.of(RIGHT), place(new Candidate(LEFT, 0), new Candidate(RIGHT, 20)));
    }

    @Test
    void sets_a_label_into_its_own_line_without_cost_but_never_hides_most_of_it() {
        Track through = Track.through(new double[] {-50, 100}, new double[] {45, 45});
        placer.avoid(through, 30, true);
        assertEquals(Optional.empty(), place(new Candidate(LEFT, 0)));
        assertEquals(Optional.of(LEFT), placer.place(new Wish(List.of(new Candidate(LEFT, 0)), through, true, 50)));
        Track little = Track.through(new double[] {65, 85}, new double[] {45, 45});
        placer.avoid(little, 1, false);
        assertEquals(Optional.empty(), placer.place(new Wish(List.of(new Candidate(RIGHT, 0)), little, true, 50)));
    }

    private Optional<Box> place(Candidate... candidates) {
        return placer.place(new Wish(List.of(candidates), OWN, false, 50));
    }

    private static Track level(double y) {
        return Track.through(new double[] {0, 100}, new double[] {y, y});
    }

    private static Track upright(double x) {
        return Track.through(new double[] {x, x}, new double[] {0, 100});
    }
}
