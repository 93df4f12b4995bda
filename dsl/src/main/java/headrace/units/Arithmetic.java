package headrace.units;

import headrace.problem.Nearest;
import headrace.problem.Refusal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;

/**
 * Arithmetic between values whose kinds are known only when a script runs.
 *
 * <ul>
 *   <li>Two of one kind can be added, subtracted, compared, and divided into a ratio.
 *   <li>A difference of temperatures or pressures moves a temperature, a gauge or an absolute pressure; two of these
 *       differ by such a difference, and have no sum.
 *   <li>Everything but a temperature can be multiplied and divided by a number or a ratio.
 *   <li>Some kinds multiply to another kind, as flow and pressure difference to power, and divide back.
 *   <li>Energy times its price is money. Currencies do not mix.
 * </ul>
 *
 * <p>Everything else is refused with {@code MEANINGLESS_ARITHMETIC}, naming what both are. In Java the typed methods of
 * the quantities do the same, and the compiler refuses the rest.
 */
public final class Arithmetic {
    private static final Map<String, String> PAST =
            Map.of("add", "added", "subtract", "subtracted", "compare", "compared", "divide", "divided into a ratio");

    private Arithmetic() {}

    /** Returns the sum of two values, at least one of them a quantity, money or a price. */
    public static Object plus(Object one, Object other) {
        if (isPoint(other) && isDifference(one, other)) {
            return plus(other, one);
        }
        if (isPoint(one) && isDifference(other, one) || one instanceof Amount<?> && alike(one, other)) {
            Quantity<?> start = (Quantity<?>) one;
            return start.make(start.si() + ((Quantity<?>) other).si());
        }
        if (one instanceof Money money && other instanceof Money more) {
            return money.plus(more);
        }
        if (one instanceof EnergyPrice price && other instanceof EnergyPrice more) {
            return price.plus(more);
        }
        throw meaningless("add", one, other, onlyAlike("added", one, other));
    }

    /** Returns the difference of two values, at least one of them a quantity, money or a price. */
    public static Object minus(Object one, Object other) {
        if (isPoint(one) && alike(one, other)) {
            double difference = ((Quantity<?>) one).si() - ((Quantity<?>) other).si();
            return one instanceof Temperature
                    ? TemperatureDifference.kelvins(difference)
                    : Pressure.pascals(difference);
        }
        if (isPoint(one) ? isDifference(other, one) : alike(one, other)) {
            return plus(one, negative(other));
        }
        throw meaningless("subtract", one, other, onlyAlike("subtracted", one, other));
    }

    /** Returns a value with the other sign. */
    public static Object negative(Object value) {
        if (value instanceof Temperature temperature) {
            throw new Refusal(
                    UnitProblem.MEANINGLESS_ARITHMETIC,
                    "Asked for the negative of the temperature " + temperature,
                    "The zero of a temperature is a convention, so that it has none",
                    "Put the minus before the number, as in -12.degC or (-x).degC");
        }
        return times(value, -1);
    }

    /** Returns the product of two values, at least one of them a quantity, money or a price. */
    public static Object times(Object one, Object other) {
        if (isFactor(other) && isScaled(one)) {
            return scaled(one, value -> value * factor(other));
        }
        if (isFactor(one) && isScaled(other)) {
            return scaled(other, value -> value * factor(one));
        }
        if (one instanceof Energy energy && other instanceof EnergyPrice price) {
            return price.of(energy);
        }
        if (one instanceof EnergyPrice price && other instanceof Energy energy) {
            return price.of(energy);
        }
        if (one instanceof Quantity<?> first && other instanceof Quantity<?> second) {
            var product = Products.product(first.kind(), second.kind());
            if (product.isPresent()) {
                return product.get().make().apply(first.si() * second.si());
            }
        }
        throw meaningless("multiply", one, other, partners(one, "multiplied"));
    }

    /** Returns the quotient of two values, at least one of them a quantity, money or a price. */
    public static Object over(Object one, Object other) {
        if (isFactor(other) && isScaled(one)) {
            return scaled(one, value -> value / factor(other));
        }
        if (one instanceof Money money && other instanceof Energy energy) {
            return money.over(energy);
        }
        if (one instanceof Money money && other instanceof EnergyPrice price) {
            return money.over(price);
        }
        if (one instanceof Money money && other instanceof Money unit) {
            return money.over(unit);
        }
        if (one instanceof Scaled<?> whole && alike(one, other)) {
            return Ratio.of(whole.si() / ((Quantity<?>) other).si());
        }
        if (one instanceof Quantity<?> whole && other instanceof Quantity<?> part) {
            var quotient = Products.quotient(whole.kind(), part.kind());
            if (quotient.isPresent()) {
                return quotient.get().make().apply(whole.si() / part.si());
            }
        }
        throw meaningless("divide", one, other, partners(one, "divided"));
    }

    /** Returns which of two values is greater, as {@link Comparable} does. */
    public static int compare(Object one, Object other) {
        if (one instanceof Money amount && other instanceof Money limit) {
            return amount.compareTo(limit);
        }
        if (one instanceof EnergyPrice price && other instanceof EnergyPrice limit) {
            return price.compareTo(limit);
        }
        if (one instanceof Quantity<?> value && alike(one, other)) {
            return Double.compare(value.si(), ((Quantity<?>) other).si());
        }
        throw meaningless("compare", one, other, onlyAlike("compared", one, other));
    }

    /** Returns the other quantity, or refuses it if it is of another kind. */
    static Quantity<?> alike(String verb, Quantity<?> one, Quantity<?> other) {
        if (!alike((Object) one, other)) {
            throw meaningless(verb, one, other, onlyAlike(PAST.get(verb), one, other));
        }
        return other;
    }

    private static boolean alike(Object one, Object other) {
        return other != null && one.getClass() == other.getClass();
    }

    private static boolean isPoint(Object value) {
        return value instanceof Quantity<?> && !(value instanceof Amount<?>);
    }

    private static boolean isDifference(Object value, Object point) {
        return point instanceof Temperature ? value instanceof TemperatureDifference : value instanceof Pressure;
    }

    private static boolean isFactor(Object value) {
        return value instanceof Number || value instanceof Ratio;
    }

    private static double factor(Object value) {
        return value instanceof Ratio ratio ? ratio.value() : ((Number) value).doubleValue();
    }

    private static boolean isScaled(Object value) {
        return value instanceof Operand && !(value instanceof Temperature);
    }

    private static Object scaled(Object value, DoubleUnaryOperator by) {
        if (value instanceof Money money) {
            return new Money(by.applyAsDouble(money.amount()), money.currency());
        }
        if (value instanceof EnergyPrice price) {
            return new EnergyPrice((Money) scaled(price.perKilowattHour(), by));
        }
        Quantity<?> quantity = (Quantity<?>) value;
        return quantity.make(by.applyAsDouble(quantity.si()));
    }

    private static Refusal meaningless(String verb, Object one, Object other, String possible) {
        return new Refusal(
                UnitProblem.MEANINGLESS_ARITHMETIC,
                "Asked to " + verb + " " + described(one) + " and " + described(other),
                possible,
                next(one, other));
    }

    private static String described(Object value) {
        if (value instanceof Operand operand) {
            return value + " (" + operand.what() + ")";
        }
        return value instanceof Number ? value + " (a bare number)" : "'" + value + "'";
    }

    private static String onlyAlike(String done, Object one, Object other) {
        if (isPoint(one) && alike(one, other)) {
            return "Two of the kind " + ((Operand) one).what() + " have no sum, only a difference";
        }
        return "Only two of one kind can be " + done;
    }

    private static String partners(Object one, String done) {
        if (!(one instanceof Quantity<?> quantity)) {
            return one instanceof Operand
                    ? "That can be " + done + " by a number or a ratio, and energy and its price make money"
                    : "A bare number can be multiplied by a quantity, and not be divided by one";
        }
        String subject = "A" + quantity.kind().one().substring(1);
        List<String> names = new ArrayList<>();
        boolean divided = done.equals("divided");
        for (Kind<?> kind : divided ? Products.divisors(quantity.kind()) : Products.factors(quantity.kind())) {
            names.add(kind.name());
        }
        if (quantity instanceof Scaled<?>) {
            names.addAll(divided ? List.of(quantity.what(), "number", "ratio") : List.of("number", "ratio"));
        }
        return names.isEmpty()
                ? subject + " cannot be " + done + " by anything"
                : subject + " can be " + done + " by: " + Nearest.either(names);
    }

    private static String next(Object one, Object other) {
        String said = (one instanceof Operand a ? a.what() : "") + "/" + (other instanceof Operand b ? b.what() : "");
        if (said.contains("gauge") && said.contains("absolute")) {
            return "Make the gauge pressure absolute first, as in p.toAbsolute(101.325.kPaAbs)";
        }
        if (said.contains("head") && said.contains("pressure")) {
            return "A pressure becomes a head in a liquid, as in 30.kPa.headOf(liquid), and a head a pressure by pressureOf";
        }
        if (said.equals("head/length") || said.equals("length/head")) {
            return "Write the metres as a head, such as 5.mHead; 5.m alone is a length";
        }
        if (said.contains("ratio") && (one instanceof Number || other instanceof Number)) {
            return "Write the number as a ratio, such as 0.25.ratio or 25.percent";
        }
        if (one instanceof Number || other instanceof Number) {
            return "Give the number its unit, as in 5.m";
        }
        return "Bring both to one kind first, or check which quantity was meant";
    }
}
