package headrace.circuit.band;

import headrace.circuit.Demands;
import headrace.units.Head;

/**
 * One edge of a head band at a total flow.
 *
 * @param head the head that the circuit needs at the pump
 * @param pattern the flows of the terminals that make it so
 * @param decides the terminal that needs it: the one whose valve stands fully open
 */
public record BandEdge(Head head, Demands pattern, String decides) {}
