package headrace.chart.paint;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class TrackTest {
    private static final Box BOX = new Box(2, 2, 4, 4);
    private static final Track DIAGONAL = Track.through(new double[] {0, 8}, new double[] {0, 8});

    /** In and out twice: along y = 3 to the right, then back along y = 5. */
    private static final Track HAIRPIN = Track.through(new double[] {0, 10, 10, 0}, new double[] {3, 3, 5, 5});

    @Test
    void is_cut_where_it_meets_a_box() {
        assertEquals(List.of(Track.through(new double[] {2, 6}, new double[] {2, 6})), DIAGONAL.within(BOX));
        assertEquals(
                List.of(
                        Track.through(new double[] {0, 2}, new double[] {0, 2}),
                        Track.through(new double[] {6, 8}, new double[] {6, 8})),
                DIAGONAL.without(BOX));
        assertEquals(4 * Math.sqrt(2), DIAGONAL.lengthWithin(BOX), 1e-12);
    }

    @Test
    void falls_into_as_many_pieces_as_it_enters_a_box() {
        assertEquals(2, HAIRPIN.within(BOX).size());
        assertEquals(8, HAIRPIN.lengthWithin(BOX), 1e-12);
        assertEquals(3, HAIRPIN.without(BOX).size());
        assertEquals(22, HAIRPIN.length(), 1e-12);
    }

    @Test
    void stays_whole_beside_a_box() {
        Box beside = new Box(20, 20, 1, 1);
        assertEquals(List.of(HAIRPIN), HAIRPIN.without(beside));
        assertEquals(List.of(), HAIRPIN.within(beside));
    }

    @Test
    void knows_its_points_by_their_share_of_the_length() {
        assertArrayEquals(new double[] {5, 3, 1, 0}, HAIRPIN.at(5 / 22.0), 1e-12);
        assertArrayEquals(new double[] {10, 4, 0, 1}, HAIRPIN.at(0.5), 1e-12);
        assertArrayEquals(new double[] {0, 5, -1, 0}, HAIRPIN.at(1), 1e-12);
    }

    @Test
    void hatches_an_ellipse_inside_its_outline_and_nowhere_else() {
        Shape ellipse = new Ellipse2D.Double(10, 20, 60, 30);
        List<Track> lines = Hatching.over(ellipse, 7);
        assertTrue(lines.size() > 8);
        for (Track line : lines) {
            for (double share : new double[] {0.02, 0.5, 0.98}) {
                double[] at = line.at(share);
                assertTrue(ellipse.contains(at[0], at[1]), line.toString());
            }
            double[] beyond = line.at(1);
            assertTrue(!ellipse.contains(beyond[0] + beyond[2], beyond[1] + beyond[3]), line.toString());
        }
    }
}
