package headrace.kernel.session.cell;

import groovy.lang.Binding;
import groovy.lang.Script;
import java.util.List;

/**
 * A cell that compiled.
 *
 * @param script its class
 * @param methods the names of the methods that it defines, each once
 * @param classes the names of the classes that it defines
 */
public record Compiled(Class<? extends Script> script, List<String> methods, List<String> classes) {
    /** Returns the cell, ready to run with these variables. */
    public Script over(Binding variables) {
        try {
            Script made = script.getConstructor().newInstance();
            made.setBinding(variables);
            return made;
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException("A cell's class has a constructor without parameters", e);
        }
    }
}
