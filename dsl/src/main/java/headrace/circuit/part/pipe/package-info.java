/** Pipes: friction, sizes, velocities. */
package headrace.circuit.part.pipe;
