package headrace.circuit.band;

import headrace.units.Flow;

/**
 * What a circuit needs at one total flow: the least and the greatest head over all ways to share the flow.
 *
 * @param flow the total flow
 * @param least the edge below
 * @param greatest the edge above
 */
public record BandPoint(Flow flow, BandEdge least, BandEdge greatest) {}
