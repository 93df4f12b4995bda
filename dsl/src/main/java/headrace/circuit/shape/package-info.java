/** Circuits of the usual shapes, laid out from their terminals. */
package headrace.circuit.shape;
