/** The closed loop that the pump serves; so far as one system curve. */
package headrace.circuit;
