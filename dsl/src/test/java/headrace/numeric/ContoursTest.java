package headrace.numeric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.work.Stopped;
import headrace.work.Watcher;
import headrace.work.Work;
import java.util.List;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class ContoursTest {
    private static final double ROUNDING = 1e-12;
    private static final Grid SQUARE = new Grid(-1, 1, -1, 1, 41);

    @ParameterizedTest
    @ValueSource(ints = {10, 41, 100})
    void of_a_cone_are_closed_circles(int cells) {
        List<Contour> found = Contours.of(Math::hypot, new Grid(-1, 1, -1, 1, cells), 0.3, 0.8);
        assertEquals(2, found.size());
        for (Contour circle : found) {
            assertTrue(circle.closed());
            for (int i = 0; i < circle.size(); i++) {
                assertEquals(circle.level(), Math.hypot(circle.x(i), circle.y(i)), ROUNDING);
            }
        }
        assertEquals(0.3, found.get(0).level());
    }

    /** A chord of length h lies h²/8r inside its circle: 0.1 % here, so the length is right to about that. */
    @Test
    void of_a_cone_have_the_length_of_their_circle() {
        Contour circle = Contours.of(Math::hypot, SQUARE, 0.7).get(0);
        assertEquals(2 * Math.PI * 0.7, circle.length(), 0.001 * 2 * Math.PI * 0.7);
    }

    @Test
    void of_a_plane_are_straight_lines_from_edge_to_edge() {
        List<Contour> found = Contours.of((x, y) -> x + 2 * y, SQUARE, 0.5);
        assertEquals(1, found.size());
        Contour line = found.get(0);
        assertFalse(line.closed());
        assertEquals(Math.hypot(2, 1), line.length(), ROUNDING);
        assertEquals(1, Math.abs(line.x(0)), ROUNDING);
        assertEquals(1, Math.abs(line.x(line.size() - 1)), ROUNDING);
        for (int i = 0; i < line.size(); i++) {
            assertEquals(0.5, line.x(i) + 2 * line.y(i), ROUNDING);
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 40, 41})
    void of_a_saddle_are_two_branches_that_never_touch(int cells) {
        for (double level : new double[] {0.01, -0.01}) {
            List<Contour> found = Contours.of((x, y) -> x * y, new Grid(-1, 1, -1, 1, cells), level);
            assertEquals(2, found.size());
            for (Contour branch : found) {
                assertFalse(branch.closed());
                double side = Math.signum(branch.x(0));
                for (int i = 0; i < branch.size(); i++) {
                    assertEquals(level, branch.x(i) * branch.y(i), ROUNDING);
                    assertEquals(side, Math.signum(branch.x(i)));
                }
            }
        }
    }

    /** The level runs along a column of corners, where every side of a cell meets it twice. */
    @Test
    void through_the_corners_of_the_grid_are_single_lines() {
        List<Contour> found = Contours.of((x, y) -> x, new Grid(0, 1, 0, 1, 10), 0.5);
        assertEquals(1, found.size());
        assertEquals(1, found.get(0).length(), ROUNDING);
        for (int i = 1; i < found.get(0).size(); i++) {
            assertTrue(found.get(0).y(i) != found.get(0).y(i - 1));
        }
    }

    /** The chord of the unit circle at x = 0.3 is 2·√(1 − 0.09) long. */
    @ParameterizedTest
    @ValueSource(ints = {9, 40, 77})
    void stay_open_and_end_where_the_field_ends(int cells) {
        Field disc = onDisc((x, y) -> x);
        List<Contour> found = Contours.of(disc, new Grid(-1.1, 1.2, -1.3, 1.1, cells), 0.3);
        assertEquals(1, found.size());
        Contour chord = found.get(0);
        assertFalse(chord.closed());
        assertEquals(1, Math.hypot(chord.x(0), chord.y(0)), 1e-9);
        assertEquals(1, Math.hypot(chord.x(chord.size() - 1), chord.y(chord.size() - 1)), 1e-9);
        assertEquals(2 * Math.sqrt(1 - 0.09), chord.length(), 1e-9);
    }

    /** A circle about (0.6, 0) of radius 0.7 leaves the unit disc at x = (1 + 0.36 − 0.49) / 1.2 = 0.725. */
    @Test
    void that_leave_the_field_are_not_closed_along_its_edge() {
        Field disc = onDisc((x, y) -> Math.hypot(x - 0.6, y));
        List<Contour> found = Contours.of(disc, new Grid(-1, 1, -1, 1, 60), 0.7);
        assertEquals(1, found.size());
        Contour arc = found.get(0);
        assertFalse(arc.closed());
        assertEquals(0.725, arc.x(0), 1e-9);
        assertEquals(0.725, arc.x(arc.size() - 1), 1e-9);
        assertEquals(0, arc.y(0) + arc.y(arc.size() - 1), 1e-9);
        for (int i = 0; i < arc.size(); i++) {
            assertEquals(0.7, Math.hypot(arc.x(i) - 0.6, arc.y(i)), 1e-9);
        }
    }

    @Test
    void take_a_value_that_is_no_number_for_outside() {
        Field half = (x, y) -> x < 0 ? Double.NaN : x + y;
        List<Contour> found = Contours.of(half, SQUARE, 0.2);
        assertEquals(1, found.size());
        Contour line = found.get(0);
        double least = Math.min(line.x(0), line.x(line.size() - 1));
        assertEquals(0, least, 1e-9);
        for (int i = 0; i < line.size(); i++) {
            assertEquals(0.2, line.x(i) + line.y(i), 1e-9);
        }
    }

    @Test
    void find_each_of_two_islands() {
        Field hills = (x, y) -> Math.max(1 - Math.hypot(x - 0.4, y), 1 - Math.hypot(x + 0.4, y));
        assertEquals(2, Contours.of(hills, SQUARE, 0.7).size());
        assertEquals(1, Contours.of(hills, SQUARE, 0.45).size());
        assertEquals(List.of(), Contours.of(hills, SQUARE, 1.1));
    }

    /** An efficiency by hand: η = 0.78·(2·u − u²) with u = Q/(s·52), less 0.1 for each unit of speed lost. */
    @Test
    void give_the_level_again_at_their_points_and_between_them() {
        Field efficiency = (q, s) -> 0.78 * (2 * q / (s * 52) - q * q / (s * s * 52 * 52)) - 0.1 * (1 - s);
        List<Contour> found = Contours.of(efficiency, new Grid(0, 85, 0.4, 1, 80), 0.5, 0.6, 0.7, 0.75);
        assertTrue(found.size() >= 4);
        assertTrue(found.stream().noneMatch(Contour::closed));
        for (Contour contour : found) {
            for (int i = 1; i < contour.size(); i++) {
                assertEquals(contour.level(), efficiency.at(contour.x(i), contour.y(i)), ROUNDING);
                double middleQ = (contour.x(i) + contour.x(i - 1)) / 2;
                double middleS = (contour.y(i) + contour.y(i - 1)) / 2;
                assertEquals(contour.level(), efficiency.at(middleQ, middleS), 0.001 * contour.level());
            }
        }
    }

    @Test
    void move_to_other_coordinates() {
        Contour line = Contours.of((x, y) -> x, SQUARE, 0.25).get(0).moved((x, y) -> 10 * x, (x, y) -> x + y);
        for (int i = 0; i < line.size(); i++) {
            assertEquals(2.5, line.x(i), 1e-9);
        }
        assertEquals(0.25 - 1, Math.min(line.y(0), line.y(line.size() - 1)), 1e-9);
    }

    @Test
    void stop_when_their_user_asks() {
        Watcher stopping = new Watcher() {
            @Override
            public boolean stopped() {
                return true;
            }

            @Override
            public void progress(String what, double share) {}
        };
        assertThrows(Stopped.class, () -> Work.watched(stopping, () -> Contours.of((x, y) -> x, SQUARE, 0)));
    }

    @Test
    void need_a_grid_with_an_inside() {
        assertThrows(IllegalArgumentException.class, () -> new Grid(1, 1, 0, 1, 10));
        assertThrows(IllegalArgumentException.class, () -> new Grid(0, 1, 0, 1, 0));
        assertThrows(IllegalArgumentException.class, () -> new Grid(0, Double.NaN, 0, 1, 10));
    }

    /** The unit disc; it fails if it is asked outside, beyond rounding. */
    private static Field onDisc(DoubleBinaryOperator value) {
        return new Field() {
            @Override
            public double at(double x, double y) {
                assertTrue(Math.hypot(x, y) <= 1);
                return value.applyAsDouble(x, y);
            }

            @Override
            public boolean covers(double x, double y) {
                return Math.hypot(x, y) <= 1;
            }
        };
    }
}
