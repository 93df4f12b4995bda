package headrace.script;

import groovy.lang.Binding;
import groovy.lang.GroovyShell;
import headrace.problem.Problem;
import headrace.problem.Refusal;
import java.util.Set;
import org.junit.jupiter.api.Assertions;

/** Runs scripts as the doors do. */
final class Scripts {
    private Scripts() {}

    static Object run(String script) {
        return new GroovyShell(new Binding(), ScriptLanguage.configuration()).evaluate(script);
    }

    /** Returns what the refusal of a script says, whether it came from the calculation or from a misspelt name. */
    static String refused(Problem problem, String script, String... variables) {
        Throwable thrown = Assertions.assertThrows(Throwable.class, () -> run(script), script);
        Refusal refusal = thrown instanceof Refusal already
                ? already
                : Misspelling.explain(thrown, Set.of(variables)).orElseThrow(() -> new AssertionError(script, thrown));
        Assertions.assertEquals(problem, refusal.problem(), refusal.getMessage());
        return refusal.getMessage();
    }
}
