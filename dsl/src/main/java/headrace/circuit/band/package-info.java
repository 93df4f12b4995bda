/** The band of heads that a circuit needs at a total flow, over all ways in which the flow can be shared. */
package headrace.circuit.band;
