package headrace.drive;

/**
 * The losses of one motor in W over torque {@code t} and speed {@code s} as shares of their rated values:
 * {@code standing + copper·t² + iron·s^a + friction·s^b + stray·t²·s}.
 */
record MotorTerms(double ratedWatts, Watts watts, double ironExponent, double frictionExponent) {
    record Watts(double standing, double copper, double iron, double friction, double stray) {}

    double copper(double torque) {
        return watts.standing + watts.copper * torque * torque;
    }

    double iron(double speed) {
        return watts.iron * power(speed, ironExponent);
    }

    double friction(double speed) {
        return watts.friction * power(speed, frictionExponent);
    }

    double stray(double torque, double speed) {
        return watts.stray * torque * torque * speed;
    }

    double at(double torque, double speed) {
        return copper(torque) + iron(speed) + friction(speed) + stray(torque, speed);
    }

    /** All but the torque is the same for every load of a speed. */
    void fill(double torquePerWatt, double speed, LossArrays arrays, int count) {
        double[] shaft = arrays.shafts();
        double[] out = arrays.motors();
        double constant = watts.standing + iron(speed) + friction(speed);
        double square = (watts.copper + watts.stray * speed) * torquePerWatt * torquePerWatt;
        for (int i = 0; i < count; i++) {
            out[i] = constant + square * shaft[i] * shaft[i];
        }
    }

    /** The torque of a load falls as its speed grows: {@code t²} goes with one over the square of speed. */
    void fillSlopes(double torquePerWatt, double speed, LossSlopes slopes, int count) {
        double[] shaft = slopes.shafts();
        double[] perShaft = slopes.perShaft();
        double[] perSpeed = slopes.perSpeed();
        double square = torquePerWatt * torquePerWatt;
        double growing = 2 * (watts.copper + watts.stray * speed) * square;
        double still = (ironExponent * iron(speed) + frictionExponent * friction(speed)) / speed;
        double falling = (-2 * watts.copper / speed - watts.stray) * square;
        for (int i = 0; i < count; i++) {
            perShaft[i] = growing * shaft[i];
            perSpeed[i] = still + falling * shaft[i] * shaft[i];
        }
    }

    /** Returns a power, by multiplication and a square root where the exponent allows it: this runs in every loop. */
    static double power(double base, double exponent) {
        if (exponent == 1.5) {
            return base * Math.sqrt(base);
        }
        return exponent == 2.5 ? base * base * Math.sqrt(base) : Math.pow(base, exponent);
    }
}
