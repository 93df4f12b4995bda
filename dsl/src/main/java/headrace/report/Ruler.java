package headrace.report;

import headrace.chart.Axis;
import headrace.units.Kind;
import headrace.units.Quantity;
import headrace.units.Unit;
import headrace.units.UnitSystem;
import java.util.Arrays;

/**
 * Reads SI numbers off in the unit in which this thread prints.
 *
 * @param unit the unit, one without an offset
 */
public record Ruler(Unit unit) {
    /** Returns the ruler of a kind of quantity. */
    public static <Q extends Quantity<Q>> Ruler of(Kind<Q> kind) {
        return new Ruler(UnitSystem.current().unitOf(kind));
    }

    /** Returns a number of the SI unit in the printed unit. */
    public double on(double si) {
        return si / unit.factor();
    }

    /** Returns numbers of the SI unit in the printed unit. */
    public double[] on(double[] si) {
        return Arrays.stream(si).map(this::on).toArray();
    }

    /** Returns an axis in the printed unit. */
    public Axis axis(String name) {
        return Axis.of(name, unit.symbol());
    }
}
