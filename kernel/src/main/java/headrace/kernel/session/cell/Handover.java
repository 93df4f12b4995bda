package headrace.kernel.session.cell;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;

/** Hands values and calls from Groovy cells to the code that Java cells are compiled to, which knows names only. */
public final class Handover {
    private static final Map<Integer, Handover> ALL = new ConcurrentHashMap<>();
    private static final AtomicInteger LAST = new AtomicInteger();

    private final int number = LAST.incrementAndGet();
    private final Variables variables;
    private volatile Object given;

    private Handover(Variables variables) {
        this.variables = variables;
    }

    /** Opens the way between the languages of a session. */
    public static Handover between(Variables variables) {
        Handover made = new Handover(variables);
        ALL.put(made.number, made);
        return made;
    }

    /** Puts a value where the next {@link #taking() taking} finds it. */
    public void give(Object value) {
        given = value;
    }

    /** Returns the Java expression that takes the value. */
    public String taking() {
        return Handover.class.getName() + ".take(" + number + ")";
    }

    /** Returns the Java expression that calls a method of a Groovy cell, up to its arguments. */
    public String calling(String name) {
        return Handover.class.getName() + ".call(" + number + ", \"" + name + "\"";
    }

    /** Closes the way. */
    public void end() {
        ALL.remove(number);
    }

    /** Takes the value that was given. Called by Java cells. */
    public static Object take(int number) {
        Handover one = ALL.get(number);
        Object value = one.given;
        one.given = null;
        return value;
    }

    /** Calls the newest method of a Groovy cell. Called by Java cells. */
    public static Object call(int number, String name, Object... arguments) {
        return ALL.get(number).variables.method(name).call(arguments);
    }
}
