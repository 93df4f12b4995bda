package headrace.drive;

import headrace.numeric.FixedPower;

/**
 * From what shaft and losses take back to the power at the shaft, for many readings at once: Newton's method on
 * {@code P + L(P)}, which bends so little that four or five steps reach rounding.
 *
 * <p>In blocks, and in loops without a branch, so that the compiler can work on several readings at once.
 */
final class SeparateInverse {
    private static final int BLOCK = 512;
    private static final int MOST_STEPS = 50;
    private static final double ENOUGH = 1e-14;

    private final MotorTerms motor;
    private final DriveTerms drive;
    private final FixedPower iron;
    private final FixedPower friction;
    private final double[] goal = new double[BLOCK];
    private final double[] square = new double[BLOCK];
    private final double[] torque = new double[BLOCK];
    private final double[] slope = new double[BLOCK];
    private final double[] shaft = new double[BLOCK];
    private final double[] step = new double[BLOCK];
    private final double[] speed = new double[BLOCK];

    SeparateInverse(MotorTerms motor, DriveTerms drive) {
        this.motor = motor;
        this.drive = drive;
        this.iron = power(motor.ironExponent());
        this.friction = power(motor.frictionExponent());
    }

    /** The tables of a power are made only where it takes more than a root. */
    private static FixedPower power(double exponent) {
        return byRoot(exponent) ? null : FixedPower.of(exponent);
    }

    private static boolean byRoot(double exponent) {
        return exponent == 1.5 || exponent == 2 || exponent == 2.5;
    }

    void fill(double[] taken, double[] speeds, double[] shafts, int count) {
        for (int from = 0; from < count; from += BLOCK) {
            int here = Math.min(BLOCK, count - from);
            System.arraycopy(taken, from, goal, 0, here);
            System.arraycopy(speeds, from, speed, 0, here);
            prepare(here);
            for (int i = 0; i < here; i++) {
                shaft[i] = 0.9 * goal[i];
            }
            for (int i = 0; i < MOST_STEPS && largestStep(here) > ENOUGH; i++) {
                advance(here);
            }
            for (int i = 0; i < here; i++) {
                shafts[from + i] = shaft[i] >= 0 ? shaft[i] : Double.NEGATIVE_INFINITY;
            }
        }
    }

    /** What does not depend on the load is taken off the goal; the rest is one term in P² and one in the current. */
    private void prepare(int count) {
        MotorTerms.Watts of = motor.watts();
        double still = drive == null ? 0 : drive.magnetising() * drive.magnetising();
        double c0 = drive == null ? 0 : drive.watts().c0() + drive.watts().c4() * still;
        double c1 = drive == null ? 0 : drive.watts().c1();
        double c2 = drive == null ? 0 : drive.watts().c2();
        double c3 = drive == null ? 0 : drive.watts().c3();
        double rated = drive == null ? 1 : motor.ratedWatts() / drive.ratedWatts();
        double share = drive == null ? 0 : (1 - still) * rated * rated;
        double bend = drive == null ? 0 : drive.watts().c4() * share;
        raise(iron, motor.ironExponent(), of.iron(), count);
        for (int i = 0; i < count; i++) {
            goal[i] -= step[i];
        }
        raise(friction, motor.frictionExponent(), of.friction(), count);
        for (int i = 0; i < count; i++) {
            double s = speed[i];
            double perWatt = 1 / (s * motor.ratedWatts());
            double squared = perWatt * perWatt;
            goal[i] = goal[i] - (of.standing() + step[i]) - (c0 + c1 * s);
            torque[i] = squared * share;
            square[i] = (of.copper() + of.stray() * s + bend) * squared;
            slope[i] = c2 + c3 * s;
            step[i] = 1;
        }
    }

    /** Fills the steps with a loss that goes with a power of speed. */
    private void raise(FixedPower fast, double exponent, double watts, int count) {
        if (fast != null) {
            for (int i = 0; i < count; i++) {
                step[i] = watts * fast.at(speed[i]);
            }
            return;
        }
        double whole = exponent == 1.5 ? 0 : 1;
        double root = exponent == 2 ? 0 : 1;
        for (int i = 0; i < count; i++) {
            double s = speed[i];
            step[i] = watts * s * (1 + whole * (s - 1)) * (1 + root * (Math.sqrt(s) - 1));
        }
    }

    private double largestStep(int count) {
        double largest = 0;
        for (int i = 0; i < count; i++) {
            largest = Math.max(largest, Math.abs(step[i]));
        }
        return largest;
    }

    /** One step for every reading, the step kept as a share of the load. */
    private void advance(int count) {
        double still = drive == null ? 0 : drive.magnetising() * drive.magnetising();
        double least = still + Double.MIN_NORMAL;
        for (int i = 0; i < count; i++) {
            double p = shaft[i];
            double t = torque[i] * p;
            double current = Math.sqrt(least + t * p);
            double q = square[i] * p;
            double missing = p + q * p + slope[i] * current - goal[i];
            double by = missing / (1 + 2 * q + slope[i] * t / current);
            shaft[i] = p - by;
            step[i] = by / (Math.abs(p) + 1);
        }
    }
}
