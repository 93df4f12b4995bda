/** The closed loop that the pump serves: one system curve, or named branches that are solved together. */
package headrace.circuit;
