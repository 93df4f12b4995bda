/** The network solve in bare doubles: links and nodes, Newton with complementarity, all crossings with a pump. */
package headrace.circuit.solve;
