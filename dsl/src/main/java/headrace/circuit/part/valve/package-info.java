/** Valves: flow coefficients, characteristics, authority, balancing, limiting, checking, bypassing. */
package headrace.circuit.part.valve;
