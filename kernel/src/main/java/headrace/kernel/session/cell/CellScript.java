package headrace.kernel.session.cell;

import groovy.lang.Closure;
import groovy.lang.MissingMethodException;
import headrace.script.HeadraceScript;
import org.codehaus.groovy.runtime.FormatHelper;

/** The base of every cell: prints to where its cell shows, and looks for a method in the cells before it. */
public abstract class CellScript extends HeadraceScript {
    /** Creates a cell without variables. */
    protected CellScript() {}

    /**
     * Calls a method of an earlier cell. Called by Groovy where the cell itself has no method that takes these
     * arguments.
     */
    public Object methodMissing(String name, Object arguments) {
        Object[] all = (Object[]) arguments;
        Closure<?> kept = getBinding() instanceof Variables variables ? variables.method(name) : null;
        if (kept == null || kept.getOwner() == this) {
            throw new MissingMethodException(name, getClass(), all);
        }
        return kept.call(all);
    }

    @Override
    public void println() {
        System.out.println();
    }

    @Override
    public void print(Object value) {
        System.out.print(FormatHelper.toString(value));
    }

    @Override
    public void println(Object value) {
        System.out.println(FormatHelper.toString(value));
    }
}
