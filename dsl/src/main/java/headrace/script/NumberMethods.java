package headrace.script;

import groovy.lang.Closure;
import headrace.problem.Refusal;
import headrace.units.Arithmetic;
import java.util.ArrayList;
import java.util.List;
import org.codehaus.groovy.runtime.DefaultGroovyMethods;

/**
 * Groovy's own methods of numbers whose answer would be a decimal of ten digits, or whose steps must be one, done in
 * doubles like everything else in a script.
 */
public final class NumberMethods {
    /** A step that comes within this share of a step before the end has reached it. */
    private static final double ROUNDING = 1e-9;

    private NumberMethods() {}

    /** Returns the mean of numbers, or of quantities of one kind. */
    public static Object average(Iterable<?> self) {
        List<Object> all = new ArrayList<>();
        self.forEach(all::add);
        if (all.isEmpty()) {
            throw new Refusal(
                    ScriptProblem.WRONG_VALUE,
                    "Asked for the average of an empty list",
                    "An average needs one value or more",
                    "Check what was to be in the list");
        }
        Object sum = DefaultGroovyMethods.sum((Iterable<?>) all);
        return sum instanceof Number number
                ? (Object) (number.doubleValue() / all.size())
                : Arithmetic.over(sum, all.size());
    }

    /** Returns the mean of what a closure makes of each. */
    public static Object average(Iterable<?> self, Closure<?> each) {
        List<Object> made = new ArrayList<>();
        self.forEach(one -> made.add(each.call(one)));
        return average(made);
    }

    /**
     * Calls a closure with every number from this on, so far apart, that comes before the end; whole ones stay whole.
     */
    public static void step(Number self, Number end, Number by, Closure<?> each) {
        double way = end.doubleValue() - self.doubleValue();
        double steps = way / by.doubleValue();
        if (way != 0 && !(steps > 0 && Double.isFinite(steps))) {
            throw new Refusal(
                    ScriptProblem.WRONG_VALUE,
                    "Asked to go from " + self + " to " + end + " in steps of " + by,
                    "The steps must lead to the end",
                    "Give the step as the second argument, negative to go down, as in 1.step(0, -0.25)");
        }
        boolean whole = self instanceof Integer && by instanceof Integer;
        for (int i = 0; i < steps - ROUNDING; i++) {
            double value = self.doubleValue() + i * by.doubleValue();
            each.call(whole ? (Object) (int) value : (Object) value);
        }
    }
}
