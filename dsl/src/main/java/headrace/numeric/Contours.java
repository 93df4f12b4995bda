package headrace.numeric;

import headrace.work.Work;
import java.util.ArrayList;
import java.util.List;

/**
 * Lines of equal value in a field, by marching squares on a grid.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Plain numbers; the caller knows what they are.
 *   <dt>Limits
 *   <dd>Every point of a contour lies on its level to rounding, because it is searched for on the field itself along a
 *       side of a cell, not between the values at the corners. Between two points the contour is a straight step, so a
 *       finer grid gives a smoother line. An island that fits between the corners is not seen. Where the field ends
 *       within a cell the contour is taken to that edge and left open.
 *   <dt>Errors
 *   <dd>None: a value that is infinite or not a number counts as outside the field.
 *   <dt>Source
 *   <dd>Marching squares is common practice; the search along the sides and at the edge of the field is our own.
 * </dl>
 */
public final class Contours {
    private Contours() {}

    /** Returns the contours of a field at some levels, level by level in the order given. */
    public static List<Contour> of(Field field, Grid grid, double... levels) {
        FieldSamples samples = new FieldSamples(field, grid);
        List<Contour> found = new ArrayList<>();
        for (double level : levels) {
            ContourTrace trace = new ContourTrace(samples, level);
            for (int j = 0; j < grid.cells(); j++) {
                Work.poll();
                for (int i = 0; i < grid.cells(); i++) {
                    trace.cell(i, j);
                }
            }
            found.addAll(trace.contours());
        }
        return found;
    }
}
