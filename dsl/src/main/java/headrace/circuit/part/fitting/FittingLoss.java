package headrace.circuit.part.fitting;

import headrace.record.Basis;
import headrace.units.Length;

/**
 * What a fitting takes, by one of the methods of the trade: {@code h = K·v²/2g}, with
 *
 * <ul>
 *   <li>a constant K;
 *   <li>two K: {@code K = K₁/Re + K∞·(1 + 1/D)}, D inside in inches;
 *   <li>three K: {@code K = K₁/Re + K_i·(1 + K_d/D^0.3)}, D in inches;
 *   <li>the length of straight pipe that takes as much, in diameters.
 * </ul>
 *
 * <dl>
 *   <dt>Units
 *   <dd>All numbers without unit but K_d, which is in in^0.3.
 *   <dt>Limits
 *   <dd>All fittings of a pipe by one method. The two-K and three-K forms hold down into laminar flow; D in the three-K
 *       form is the nominal size at its source, the inside diameter here.
 *   <dt>Errors
 *   <dd>None; checked by {@link Fitting}.
 *   <dt>Source
 *   <dd>Two K: Hooper, Chemical Engineering, 24 August 1981. Three K: Darby, Chemical Engineering, April 2001. Constant
 *       K and equivalent length: textbook knowledge.
 * </dl>
 */
public interface FittingLoss {
    /** Returns the method in words; two losses go together if it is the same. */
    String method();

    /** Returns the part of K that does not depend on the Reynolds number, in a pipe of an inside diameter. */
    default double constantAt(Length inside) {
        return 0;
    }

    /** Returns the part of K that is divided by the Reynolds number. */
    default double overReynolds() {
        return 0;
    }

    /** Returns the equivalent length of straight pipe over its diameter. */
    default double diameters() {
        return 0;
    }

    /** Returns where the numbers come from. */
    default Basis basis() {
        return Basis.of("fittings by " + method());
    }

    /** Returns whether its numbers can be: none below 0 or without end. */
    boolean possible();

    /** Returns a constant K. */
    static FittingLoss constant(double k) {
        return new ConstantK(k);
    }

    /** Returns a two-K loss. */
    static FittingLoss twoK(double k1, double kInfinity) {
        return new TwoK(k1, kInfinity);
    }

    /** Returns a three-K loss. */
    static FittingLoss threeK(double k1, double ki, double kd) {
        return new ThreeK(k1, ki, kd);
    }

    /** Returns the loss of so many diameters of straight pipe. */
    static FittingLoss equivalentLength(double diameters) {
        return new EquivalentLength(diameters);
    }
}
