/** The shell: lines edited, charts drawn inline, in the same session and with the same words as a notebook. */
package headrace.kernel.terminal;
