package headrace.report;

import headrace.curve.PumpCurve;
import headrace.numeric.Contour;
import headrace.numeric.Contours;
import headrace.numeric.Field;
import headrace.numeric.Grid;
import headrace.pump.PumpSet;
import headrace.units.Ratio;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/**
 * The lines of equal pump efficiency over flow and head.
 *
 * <p>They are traced over the homologous flow and the speed, where the tested map is a rectangle, so that they end
 * exactly where the map does, and are then carried over to flow and head.
 */
final class Islands {
    private static final int CELLS = 96;
    private static final int[] BELOW_BEST = {1, 5, 10, 15, 25, 35};

    private Islands() {}

    /** Returns the contours in m³/s across and m up. */
    static List<Contour> of(PumpSet set, double... levels) {
        PumpCurve curve = set.curve();
        double slowest = set.minimumSpeed().over(curve.speed()).value();
        double fastest = set.maximumSpeed().over(curve.speed()).value();
        if (!(slowest < fastest)) {
            return List.of();
        }
        Field efficiency = new Field() {
            @Override
            public double at(double x, double s) {
                return curve.efficiency(x * s, s);
            }

            /** In a viscous liquid the tested range shrinks as the pump slows down. */
            @Override
            public boolean covers(double x, double s) {
                return curve.covers(x * s, s);
            }
        };
        Grid grid = new Grid(curve.lowestFlow().si(), curve.highestFlow().si(), slowest, fastest, CELLS);
        return Contours.of(efficiency, grid, levels).stream()
                .map(contour -> contour.moved((x, s) -> x * s, (x, s) -> curve.headMetres(x * s, s)))
                .toList();
    }

    /** Returns round levels: the whole per cent below the best, then fives and tens. */
    static double[] levels(PumpSet set) {
        Ratio best =
                set.curve().atSpeed(set.maximumSpeed()).bestEfficiencyPoint().efficiency();
        int top = (int) Math.floor(best.toPercent() - 0.5);
        return DoubleStream.concat(
                        DoubleStream.of(top / 100.0),
                        IntStream.of(BELOW_BEST).mapToDouble(below -> (top - below) / 5 * 5 / 100.0))
                .filter(level -> level >= 0.2)
                .distinct()
                .toArray();
    }
}
