package headrace.energy.load;

import headrace.circuit.Demands;

/**
 * One way in which a load can lie over the branches of a circuit.
 *
 * @param name what it is called, such as {@code far branches first at 50 %}
 * @param demands what each branch is asked for
 */
public record LoadPattern(String name, Demands demands) {}
