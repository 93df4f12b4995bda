package headrace.script;

import headrace.problem.Refusal;
import headrace.units.AbsolutePressure;
import headrace.units.EnergyPrice;
import headrace.units.Flow;
import headrace.units.GaugePressure;
import headrace.units.Head;
import headrace.units.Kind;
import headrace.units.Length;
import headrace.units.Power;
import headrace.units.Pressure;
import headrace.units.Quantity;
import headrace.units.Ratio;
import headrace.units.Speed;

/**
 * Takes what a script gave to a word as what the word wants, or refuses it in a sentence that names both.
 *
 * <p>A word declares such a parameter as {@code Object} and begins with a line such as
 *
 * <pre>{@code
 * Head wanted = Wanted.head(head, "the head of a duty");
 * }</pre>
 *
 * <p>Everywhere a text with a unit does as well as a quantity: {@code '16 m'} for {@code 16.m}. A length is taken as a
 * head, in metres of the liquid; a pressure is not. A bare number is refused, since its unit decides what it means.
 *
 * <dl>
 *   <dt>Errors
 *   <dd>{@code WRONG_VALUE}, {@code NUMBER_WITHOUT_UNIT}, {@code PRESSURE_FOR_HEAD}; for a text also what
 *       {@link Kind#parse} refuses
 * </dl>
 */
public final class Wanted {
    private Wanted() {}

    /** Returns the flow that was given. */
    public static Flow flow(Object given, String place) {
        return quantity(Flow.KIND, given, place);
    }

    /** Returns the head that was given; a length is taken as metres of the liquid. */
    public static Head head(Object given, String place) {
        return quantity(Head.KIND, given, place);
    }

    /** Returns the power that was given. */
    public static Power power(Object given, String place) {
        return quantity(Power.KIND, given, place);
    }

    /** Returns the speed of rotation that was given. */
    public static Speed speed(Object given, String place) {
        return quantity(Speed.KIND, given, place);
    }

    /** Returns the ratio that was given: {@code 40.percent}, {@code 0.4.ratio} or {@code '40 %'}. */
    public static Ratio ratio(Object given, String place) {
        return quantity(Ratio.KIND, given, place);
    }

    /** Returns the price of energy that was given: {@code 0.18.perKWh} or {@code '0.18 EUR/kWh'}. */
    public static EnergyPrice price(Object given, String place) {
        if (given instanceof CharSequence text) {
            return EnergyPrice.parse(text.toString());
        }
        if (given instanceof Number number) {
            throw bare(
                    number,
                    place,
                    "a price of energy",
                    number + ".perKWh, or with its currency " + number + ".EUR.perKWh");
        }
        return object(EnergyPrice.class, given, place);
    }

    /**
     * Returns the quantity that was given, as one of the kind that is wanted.
     *
     * @param given what the script gave
     * @param place what it was given for, as it stands in a sentence, such as {@code the head of a duty}
     */
    public static <Q extends Quantity<Q>> Q quantity(Kind<Q> kind, Object given, String place) {
        if (given instanceof CharSequence text) {
            return kind.parse(text.toString());
        }
        if (given instanceof Number number) {
            throw bare(number, place, kind.one(), example(kind, number));
        }
        if (kind.type() == Head.class && given instanceof Length length) {
            return kind.type().cast(Head.metres(length.metres()));
        }
        if (kind.type() == Head.class && isPressure(given)) {
            throw new Refusal(
                    ScriptProblem.PRESSURE_FOR_HEAD,
                    "A pressure of " + given + " was given for " + place,
                    "A pressure becomes a head only in a liquid",
                    "Say in which, as in 30.kPa.headOf(liquid)");
        }
        return object(kind.type(), given, place);
    }

    /** Returns what was given, if it is of the type that is wanted. */
    public static <T> T object(Class<T> type, Object given, String place) {
        if (type.isInstance(given)) {
            return type.cast(given);
        }
        throw new Refusal(
                ScriptProblem.WRONG_VALUE,
                Described.value(given) + " was given for " + place,
                "It must be " + Described.type(type),
                "Give " + Described.type(type) + " there");
    }

    /** Returns the plain number that was given, where no unit belongs to it, such as an exponent. */
    public static double number(Object given, String place) {
        double value = object(Number.class, given, place).doubleValue();
        if (Double.isFinite(value)) {
            return value;
        }
        throw new Refusal(
                ScriptProblem.WRONG_VALUE,
                "The number " + value + " was given for " + place,
                "It must be finite",
                "Look for a division by zero that led to it");
    }

    /** Returns the whole number that was given, such as a number of poles. */
    public static int whole(Object given, String place) {
        double value = number(given, place);
        if (value == Math.rint(value) && Math.abs(value) <= Integer.MAX_VALUE) {
            return (int) value;
        }
        throw new Refusal(
                ScriptProblem.WRONG_VALUE,
                "The number " + given + " was given for " + place,
                "It must be a whole number",
                "Leave out its decimals");
    }

    private static boolean isPressure(Object given) {
        return given instanceof Pressure || given instanceof GaugePressure || given instanceof AbsolutePressure;
    }

    private static Refusal bare(Number number, String place, String wanted, String example) {
        return new Refusal(
                ScriptProblem.NUMBER_WITHOUT_UNIT,
                "The bare number " + number + " was given for " + place,
                "It must be " + wanted,
                "Write it with its unit, such as " + example);
    }

    private static String example(Kind<?> kind, Number number) {
        if (kind.type() == Ratio.class) {
            return "40.percent or 0.4.ratio";
        }
        return number + "." + (kind.type() == Head.class ? "m" : kind.metric());
    }
}
