/** Pumps for a duty and a load: who can do it, what each takes in a year, and why the others were dropped. */
package headrace.selection;
