package headrace.kernel.session.groovy;

import headrace.kernel.session.Completeness;
import headrace.kernel.session.Completeness.State;
import headrace.kernel.session.source.Ending;
import headrace.kernel.session.source.Indents;
import org.codehaus.groovy.control.CompilationFailedException;
import org.codehaus.groovy.control.CompilerConfiguration;
import org.codehaus.groovy.control.ErrorCollector;
import org.codehaus.groovy.control.SourceUnit;

/**
 * Tells whether a cell could run as it stands.
 *
 * <p>Where Groovy's parser gives up is no sign of whether the text ends too soon; so the text is first looked at for
 * what is still open, and only what is closed is parsed.
 */
final class CompletenessCheck {
    private CompletenessCheck() {}

    static Completeness of(String code) {
        Ending ending = Ending.of(code);
        boolean parses = parses(code);
        if (ending == Ending.OPEN && !parses) {
            return new Completeness(State.INCOMPLETE, Indents.after(code));
        }
        return new Completeness(parses && ending != Ending.BROKEN ? State.COMPLETE : State.INVALID, "");
    }

    private static boolean parses(String code) {
        CompilerConfiguration configuration = new CompilerConfiguration();
        ErrorCollector errors = new ErrorCollector(configuration);
        try {
            SourceUnit source = new SourceUnit("cell.groovy", code, configuration, null, errors);
            source.parse();
            source.completePhase();
            source.nextPhase();
            source.convert();
            return !errors.hasErrors();
        } catch (CompilationFailedException e) {
            return false;
        }
    }
}
