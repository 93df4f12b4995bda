/** What a circuit is made of, and the head that each part loses. */
package headrace.circuit.part;
