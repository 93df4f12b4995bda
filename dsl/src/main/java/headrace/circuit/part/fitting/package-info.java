/** Fittings, by one method at a time. */
package headrace.circuit.part.fitting;
