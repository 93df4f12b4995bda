package headrace.script;

import headrace.units.Dense;
import headrace.units.EnergyPrice;
import headrace.units.Money;
import headrace.units.Quantities;
import headrace.units.Quantity;
import java.util.Collection;
import java.util.Locale;
import java.util.Map;

/** Names values and types as they stand in a sentence to somebody who writes scripts and not Java. */
final class Described {
    private Described() {}

    /** Returns a value with what it is, such as {@code 30 kPa (a pressure difference)}. */
    static String value(Object value) {
        if (value == null) {
            return "Nothing (null)";
        }
        if (value instanceof Quantity<?> || value instanceof Money || value instanceof EnergyPrice) {
            return value + " (" + type(value.getClass()) + ")";
        }
        if (value instanceof CharSequence) {
            return "The text '" + value + "'";
        }
        return value instanceof Number ? "The number " + value : capital(type(value.getClass()));
    }

    /** Returns what the values of a class are, such as {@code a head}, {@code a pump curve} or {@code a list}. */
    static String type(Class<?> type) {
        return article(name(type));
    }

    private static String name(Class<?> type) {
        for (var kind : Quantities.KINDS) {
            if (kind.type() == type) {
                return kind.name();
            }
        }
        if (Number.class.isAssignableFrom(type)) {
            return "number";
        }
        if (CharSequence.class.isAssignableFrom(type)) {
            return "text";
        }
        if (Map.class.isAssignableFrom(type)) {
            return "map";
        }
        if (Collection.class.isAssignableFrom(type)) {
            return "list";
        }
        if (type.getPackageName().isEmpty() || type.getPackageName().startsWith(ScriptLanguage.CELLS)) {
            return type.getSimpleName(); // a class of the user's, under the name that the user gave it
        }
        return type == Dense.class ? "liquid" : spaced(type.getSimpleName());
    }

    /** Returns {@code PumpCurve} as {@code pump curve}. */
    private static String spaced(String name) {
        return name.replaceAll("(?<=[a-z])(?=[A-Z])", " ").toLowerCase(Locale.ROOT);
    }

    private static String article(String noun) {
        return ("aeio".indexOf(noun.charAt(0)) >= 0 ? "an " : "a ") + noun;
    }

    private static String capital(String sentence) {
        return sentence.substring(0, 1).toUpperCase(Locale.ROOT) + sentence.substring(1);
    }
}
