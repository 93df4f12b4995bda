/** Coils: what they take of head, and what they give of heat. */
package headrace.circuit.part.coil;
