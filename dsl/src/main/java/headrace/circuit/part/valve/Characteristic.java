package headrace.circuit.part.valve;

import headrace.units.Ratio;
import java.util.List;

/**
 * How the flow coefficient of a valve goes with its stroke: {@code κ = Kv/Kvs} against the opening.
 *
 * <ul>
 *   <li>linear: {@code κ = x}, or {@code κ = 1/R + (1 − 1/R)·x} where a rangeability is stated;
 *   <li>equal percentage: {@code κ = R^(x−1)};
 *   <li>quick opening: {@code κ = √x};
 *   <li>through the points of a table.
 * </ul>
 *
 * <dl>
 *   <dt>Units
 *   <dd>Both as shares from 0 to 1.
 *   <dt>Limits
 *   <dd>Openings and shares outside 0 to 1 are taken as the nearer end. With a rangeability R the valve closes on a
 *       straight line over the first 1/R of its stroke, so that it is shut when it stands shut.
 *   <dt>Errors
 *   <dd>{@link headrace.problem.Refusal} with {@code IMPOSSIBLE_PART} for a rangeability or a table that cannot be.
 *   <dt>Source
 *   <dd>Forms of IEC 60534-2-4, from memory, unconfirmed; the straight close is an assumption of our own.
 * </dl>
 */
public sealed interface Characteristic permits RisingShare, QuickOpening, TabulatedShare {
    /** The rangeability of an equal-percentage valve unless another is stated: common practice, no source. */
    double USUAL_RANGEABILITY = 50;

    /** Returns the share of the greatest flow coefficient at an opening. */
    double shareAt(double opening);

    /** Returns the opening at which the valve has a share of its greatest flow coefficient. */
    double openingAt(double share);

    /** Returns a straight line from shut to open. */
    static Characteristic linear() {
        return RisingShare.linear(Double.POSITIVE_INFINITY);
    }

    /** Returns a straight line from 1/R to open. */
    static Characteristic linear(double rangeability) {
        return RisingShare.linear(rangeability);
    }

    /** Returns equal percentage with the usual rangeability of 50. */
    static Characteristic equalPercentage() {
        return equalPercentage(USUAL_RANGEABILITY);
    }

    /** Returns equal percentage with a rangeability. */
    static Characteristic equalPercentage(double rangeability) {
        return RisingShare.equalPercentage(rangeability);
    }

    /** Returns quick opening. */
    static Characteristic quickOpening() {
        return new QuickOpening();
    }

    /**
     * Returns the smooth rising curve through points from shut to open.
     *
     * @param points openings with their shares, both rising from 0 to 100 %
     */
    static Characteristic through(List<Point> points) {
        return TabulatedShare.through(points);
    }

    /**
     * A point of a characteristic.
     *
     * @param opening the share of the stroke
     * @param share the share of the greatest flow coefficient
     */
    record Point(Ratio opening, Ratio share) {}
}
