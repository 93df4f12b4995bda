package headrace.kernel.session.groovy;

import groovy.lang.Closure;
import headrace.kernel.display.Display;
import headrace.kernel.display.MimeBundle;
import headrace.kernel.display.Moving;
import headrace.kernel.session.cell.Variables;
import org.codehaus.groovy.runtime.MethodClosure;

/**
 * What is shown of a value of a cell: as everywhere, but for methods and closures, whose own text is the machinery's,
 * and for what a what-if prints at positions that are computed ahead, at which nobody looks yet.
 */
final class CellValue {
    private CellValue() {}

    /** Returns a bundle in whose text the classes of the user's bear the names that the user gave them. */
    private static MimeBundle named(MimeBundle bundle) {
        String text = CellSources.bare(bundle.text());
        if (text.equals(bundle.text())) {
            return bundle;
        }
        return bundle.with("text/plain", text);
    }

    /** Returns what is shown of a value. */
    static MimeBundle shown(Object value, Variables variables) {
        if (value instanceof MethodClosure method && variables.methods().containsValue(method)) {
            String name = method.getMethod();
            return MimeBundle.plain(name + variables.methodParameters().get(name) + ", a method of this session");
        }
        if (value instanceof Closure<?> closure) {
            int parameters = closure.getMaximumNumberOfParameters();
            return MimeBundle.plain("a closure of " + parameters + (parameters == 1 ? " parameter" : " parameters"));
        }
        return named(Display.begun(value) instanceof Moving moving ? moving(moving) : Display.of(value));
    }

    private static MimeBundle moving(Moving moving) {
        boolean alone =
                Console.surroundings().map(cell -> cell.output().movesAlone()).orElse(true);
        return alone ? Console.unheard(() -> Display.of(moving)) : Display.beginning(moving);
    }
}
