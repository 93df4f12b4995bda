package headrace.chart;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;

/**
 * The range of an axis and the round numbers along it.
 *
 * @param from where the axis begins
 * @param to where it ends
 * @param values the round numbers in between
 * @param labels how they are printed
 * @param power the power of ten that is left out of the labels and named in the title; 0 for none
 */
record Ticks(double from, double to, List<Double> values, List<String> labels, int power) {
    private static final String THIN_SPACE = "\u2009";
    private static final String SUPERSCRIPTS = "⁰¹²³⁴⁵⁶⁷⁸⁹";

    /** What is smaller counts as 0. */
    private static final double SMALLEST = 1e-100;

    /** A range counts as a single value if it is smaller than this share of its own size. */
    private static final double ROUNDING = 1e-9;

    /**
     * Returns round numbers, 1, 2 or 5 times a power of ten apart.
     *
     * @param axis whose fixed ends are kept
     * @param extent of what is drawn
     * @param most how many steps there is room for
     */
    static Ticks over(Axis axis, Extent extent, double most) {
        double low = extent.low();
        double high = extent.high();
        double size = Math.max(Math.abs(low), Math.abs(high));
        size = size < SMALLEST ? 0 : size;
        double from = axis.from().orElse(low >= 0 && low <= 0.5 * high ? 0 : low);
        double to = axis.to().orElse(high <= 0 && high >= 0.5 * low ? 0 : high);
        if (to - from <= Math.max(ROUNDING * size, SMALLEST)) {
            double around = size == 0 ? 1 : 0.1 * size;
            from = axis.from().orElse(Math.min(from, to) - (size == 0 ? 0 : around));
            to = axis.to().orElse(Math.max(to, from) + around);
        }
        BigDecimal step = step((to - from) / Math.max(1, most));
        step = axis.counts() ? step.max(BigDecimal.ONE) : step;
        long first = floor(from, step);
        long last = -floor(-to, step);
        if (axis.from().isPresent()) {
            first = -floor(-from, step);
        } else {
            from = step.multiply(BigDecimal.valueOf(first)).doubleValue();
        }
        if (axis.to().isPresent()) {
            last = floor(to, step);
        } else {
            to = step.multiply(BigDecimal.valueOf(last)).doubleValue();
        }
        return labelled(from, to, step, first, last);
    }

    private static Ticks labelled(double from, double to, BigDecimal step, long first, long last) {
        double size = Math.max(Math.abs(from), Math.abs(to));
        int thousands = (int) Math.floor(Math.log10(size) / 3 + 1e-12);
        int power = size >= 1e6 || size < 1e-2 ? 3 * thousands : 0;
        int decimals = Math.max(0, step.stripTrailingZeros().scale() + power);
        List<Double> values = new ArrayList<>();
        List<String> labels = new ArrayList<>();
        for (long i = first; i <= last; i++) {
            BigDecimal value = step.multiply(BigDecimal.valueOf(i));
            values.add(value.doubleValue());
            labels.add(print(value.scaleByPowerOfTen(-power).setScale(decimals, RoundingMode.HALF_EVEN)));
        }
        return new Ticks(from, to, List.copyOf(values), List.copyOf(labels), power);
    }

    /** Returns the least of 1, 2 and 5 times a power of ten that is not below a size. */
    private static BigDecimal step(double least) {
        int exponent = (int) Math.floor(Math.log10(least));
        for (int factor : new int[] {1, 2, 5}) {
            BigDecimal step = BigDecimal.valueOf(factor).scaleByPowerOfTen(exponent);
            if (step.doubleValue() >= least * (1 - ROUNDING)) {
                return step;
            }
        }
        return BigDecimal.ONE.scaleByPowerOfTen(exponent + 1);
    }

    /** Returns how many whole steps lie below a value, a value within rounding of a whole step counting as that. */
    private static long floor(double value, BigDecimal step) {
        double steps = value / step.doubleValue();
        double near = Math.rint(steps);
        return (long) (Math.abs(steps - near) < 1e-6 ? near : Math.floor(steps));
    }

    /** Prints a number with a true minus sign, its thousands apart from five digits on. */
    static String print(BigDecimal value) {
        String digits = value.abs().toPlainString();
        int point = digits.indexOf('.') < 0 ? digits.length() : digits.indexOf('.');
        StringBuilder out = new StringBuilder(digits);
        if (point >= 5) {
            for (int i = point - 3; i > 0; i -= 3) {
                out.insert(i, THIN_SPACE);
            }
        }
        return (value.signum() < 0 ? "−" : "") + out;
    }

    /** Returns the title of an axis with the power of ten that its labels leave out. */
    String title(Axis axis) {
        if (power == 0) {
            return axis.title();
        }
        StringBuilder ten = new StringBuilder("10").append(power < 0 ? "⁻" : "");
        for (char digit : Integer.toString(Math.abs(power)).toCharArray()) {
            ten.append(SUPERSCRIPTS.charAt(digit - '0'));
        }
        return axis.name() + " in " + ten + (axis.unit().isBlank() ? "" : " " + axis.unit());
    }
}
