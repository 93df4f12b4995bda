/** What an engineer asks of a circuit that was solved: who needs the head, who is short, what to set. */
package headrace.circuit.answer;
