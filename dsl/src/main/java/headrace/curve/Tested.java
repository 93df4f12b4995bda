package headrace.curve;

import headrace.liquid.Liquid;
import headrace.units.Head;
import headrace.units.Length;
import headrace.units.Power;
import headrace.units.Speed;
import java.util.List;
import java.util.Optional;

/**
 * What stays the same when a curve is moved over speed.
 *
 * @param name the pump's name
 * @param speed the speed of the test
 * @param diameter the impeller's diameter, if known
 * @param liquid what is pumped
 * @param testedIn what was pumped in the test
 * @param points the readings, brought to the speed of the test; none if the curve was given as formulas
 * @param head the head fitted at that speed
 * @param power the shaft power fitted at that speed
 */
record Tested(
        String name,
        Speed speed,
        Optional<Length> diameter,
        Liquid liquid,
        Liquid testedIn,
        List<TestPoint> points,
        FittedCurve<Head> head,
        FittedCurve<Power> power) {
    Tested in(Liquid other) {
        return new Tested(name, speed, diameter, other, testedIn, points, head, power);
    }
}
