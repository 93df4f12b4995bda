package headrace.circuit.part.pipe;

import headrace.units.Length;
import headrace.units.Numbers;

/**
 * A size of pipe from a series: what it is called, and how wide it is inside.
 *
 * @param series the series
 * @param nominal its name in it: the DN of steel, the outside diameter in mm of copper and plastic
 * @param outside the outside diameter
 * @param wall the thickness of the wall
 */
public record PipeSize(PipeSeries series, int nominal, Length outside, Length wall) {
    static PipeSize of(PipeSeries series, int nominal, double outsideMillimetres, double wallMillimetres) {
        return new PipeSize(
                series, nominal, Length.millimetres(outsideMillimetres), Length.millimetres(wallMillimetres));
    }

    /** Returns the inside diameter. */
    public Length inside() {
        return outside.minus(wall.times(2));
    }

    /** Returns the size as the trade calls it, such as {@code DN 50} or {@code 28 x 1}. */
    @Override
    public String toString() {
        return series == PipeSeries.STEEL
                ? "DN " + nominal
                : Numbers.print(outside.toMillimetres()) + " x " + Numbers.print(wall.toMillimetres());
    }
}
