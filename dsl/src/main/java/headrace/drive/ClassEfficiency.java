package headrace.drive;

import headrace.problem.Refusal;
import headrace.units.Power;
import java.util.List;

/**
 * The least full-load efficiency of an efficiency class at 50 Hz: the table at its ratings, the regulation's formula
 * between them, a straight line between 0.55 and 0.75 kW, where its two formulas leave a gap.
 */
final class ClassEfficiency {
    /** Ratings that differ by less than this share are the same rating. */
    private static final double ROUNDING = 1e-9;

    private static final double LEAST = 0.12;
    private static final double SMALL_END = 0.55;
    private static final double LARGE_START = 0.75;
    private static final double LEVEL_START = 200;
    private static final double MOST = 1000;

    /** Class, kW, then per cent for 2, 4, 6, 8 poles; ordered by class and kW. */
    private static final List<double[]> TABLE = PublishedTable.rows("motors-eu-2019-1781.csv");

    /** Class, from kW, to kW, poles, A, B, C, D. */
    private static final List<double[]> COEFFICIENTS = PublishedTable.rows("motor-coefficients-eu-2019-1781.csv");

    private ClassEfficiency() {}

    /** Returns the efficiency in per cent. */
    static double percent(Power rated, int ieClass, int poles) {
        double kilowatts = rated.toKilowatts();
        if (ieClass < 2 || ieClass > 4 || poles < 2 || poles > 8 || poles % 2 != 0 || !inTable(kilowatts)) {
            throw new Refusal(
                    DriveProblem.RATING_OUTSIDE_TABLE,
                    "Asked for a motor of " + rated + ", class IE" + ieClass + ", " + poles + " poles",
                    "The tables hold 0.12 to 1000 kW, IE2, IE3 and IE4, with 2, 4, 6 or 8 poles",
                    "Choose among these, or state the efficiency on the motor's plate");
        }
        double[] row = rowAtOrBelow(kilowatts, ieClass);
        int column = 1 + poles / 2;
        if (kilowatts >= LEVEL_START || kilowatts <= row[1] * (1 + ROUNDING)) {
            return row[column];
        }
        if (kilowatts > SMALL_END && kilowatts < LARGE_START) {
            double above = rowAtOrBelow(LARGE_START, ieClass)[column];
            return row[column] + (above - row[column]) * (kilowatts - SMALL_END) / (LARGE_START - SMALL_END);
        }
        return byFormula(kilowatts, ieClass, poles);
    }

    /** Returns what the formula gives, from 0.12 to 0.55 kW and from 0.75 to 200 kW. */
    static double byFormula(double kilowatts, int ieClass, int poles) {
        double[] row = COEFFICIENTS.stream()
                .filter(each -> each[0] == ieClass && each[3] == poles)
                .filter(each -> kilowatts >= each[1] * (1 - ROUNDING) && kilowatts <= each[2] * (1 + ROUNDING))
                .findFirst()
                .orElseThrow();
        double lg = Math.log10(kilowatts);
        return ((row[4] * lg + row[5]) * lg + row[6]) * lg + row[7];
    }

    private static boolean inTable(double kilowatts) {
        return kilowatts >= LEAST * (1 - ROUNDING) && kilowatts <= MOST * (1 + ROUNDING);
    }

    private static double[] rowAtOrBelow(double kilowatts, int ieClass) {
        double[] found = null;
        for (double[] row : TABLE) {
            if (row[0] == ieClass && row[1] <= kilowatts * (1 + ROUNDING)) {
                found = row;
            }
        }
        return found;
    }
}
