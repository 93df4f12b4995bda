package headrace.script.java;

import groovy.lang.Closure;
import java.util.List;
import java.util.function.Function;

/** A function of Java where a word takes a block of Groovy. It takes the one value, or several as a list. */
public final class FunctionClosure extends Closure<Object> {
    private static final long serialVersionUID = 1L;

    private final transient Function<Object, ?> function;

    private FunctionClosure(Function<Object, ?> function) {
        super(null);
        this.function = function;
        maximumNumberOfParameters = 1;
        parameterTypes = new Class<?>[] {Object[].class};
    }

    /** Returns a function as a block. */
    @SuppressWarnings("unchecked") // the word decides what its block is given
    public static Closure<?> of(Function<?, ?> function) {
        return new FunctionClosure((Function<Object, ?>) function);
    }

    /** Calls the function. Named as Groovy looks for it. */
    public Object doCall(Object... given) {
        return function.apply(given.length == 1 ? given[0] : List.of(given));
    }
}
