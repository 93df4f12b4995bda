package headrace.kernel.session.java;

import headrace.kernel.session.cell.Variables;
import java.lang.invoke.MethodType;
import java.lang.reflect.Field;
import org.codehaus.groovy.runtime.ScriptBytecodeAdapter;
import org.codehaus.groovy.runtime.typehandling.GroovyCastException;

/** A variable of Java cells, as Groovy cells see it: the static field that the shell has made for it. */
final class JavaVariable implements Variables.Place {
    private final Field field;
    private final boolean typed;

    /**
     * Creates the view.
     *
     * @param typed whether it was declared with a type, so that it takes only what can be made one of that
     */
    JavaVariable(Field field, boolean typed) {
        this.field = field;
        this.typed = typed;
    }

    @Override
    public Object value() {
        try {
            return field.get(null);
        } catch (IllegalAccessException e) {
            throw new IllegalStateException("The field of a variable is open", e);
        }
    }

    @Override
    public boolean take(Object given) {
        return hold(typed ? cast(given) : given);
    }

    /** Holds a value if its type allows that as it is. */
    boolean hold(Object value) {
        boolean fits = value == null
                ? !field.getType().isPrimitive()
                : MethodType.methodType(field.getType()).wrap().returnType().isInstance(value);
        if (fits) {
            set(value);
        }
        return fits;
    }

    private Object cast(Object given) {
        if (given == null) {
            return null;
        }
        try {
            return ScriptBytecodeAdapter.castToType(given, field.getType());
        } catch (RuntimeException | Error failure) {
            throw failure;
        } catch (Throwable failure) {
            throw new GroovyCastException(given, field.getType());
        }
    }

    private void set(Object value) {
        try {
            field.set(null, value);
        } catch (IllegalAccessException e) {
            throw new IllegalStateException("The field of a variable is open", e);
        }
    }
}
