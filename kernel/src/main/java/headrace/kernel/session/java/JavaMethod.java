package headrace.kernel.session.java;

import groovy.lang.Closure;
import groovy.lang.MissingMethodException;
import headrace.kernel.session.cell.Variables;
import java.lang.reflect.Method;
import java.util.Arrays;
import java.util.List;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.codehaus.groovy.runtime.InvokerHelper;

/** A method of Java cells, as Groovy cells call it: always its newest form, whichever of its forms fits. */
final class JavaMethod extends Closure<Object> implements Variables.WithParameters {
    private static final long serialVersionUID = 1L;

    private final String name;
    private final transient Supplier<List<Class<?>>> newest;

    /**
     * Creates the view.
     *
     * @param newest answers with the classes that hold a method of the name each
     */
    JavaMethod(String name, Supplier<List<Class<?>>> newest) {
        super(null);
        this.name = name;
        this.newest = newest;
    }

    @Override
    public Object call(Object... arguments) {
        for (Class<?> holder : newest.get()) {
            if (!InvokerHelper.getMetaClass(holder)
                    .respondsTo(holder, name, arguments)
                    .isEmpty()) {
                return InvokerHelper.invokeStaticMethod(holder, name, arguments);
            }
        }
        throw new MissingMethodException(name, JavaMethod.class, arguments);
    }

    @Override
    public Object call(Object argument) {
        return call(new Object[] {argument});
    }

    @Override
    public Object call() {
        return call(new Object[0]);
    }

    @Override
    public String parameters() {
        return newest.get().stream()
                .flatMap(holder -> Arrays.stream(holder.getDeclaredMethods()))
                .filter(method -> method.getName().equals(name))
                .map(JavaMethod::parameters)
                .collect(Collectors.joining(" or "));
    }

    private static String parameters(Method method) {
        return Arrays.stream(method.getParameters())
                .map(each -> each.getType().getSimpleName() + (each.isNamePresent() ? " " + each.getName() : ""))
                .collect(Collectors.joining(", ", "(", ")"));
    }
}
