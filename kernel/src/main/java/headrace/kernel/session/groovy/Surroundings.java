package headrace.kernel.session.groovy;

import headrace.kernel.session.Output;
import headrace.kernel.session.cell.Variables;
import java.util.Set;

/**
 * What a running cell can reach beyond its own text.
 *
 * @param output where it prints and shows, and whom it can ask
 * @param faults words what goes wrong, and keeps the last of it in full
 * @param variables the variables of the session
 * @param places the named places in which something is shown in the session
 */
record Surroundings(Output output, Faults faults, Variables variables, Set<String> places) {}
