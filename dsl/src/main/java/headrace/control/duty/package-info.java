/** Duty and standby pumps: who runs when, second by second, through alternations and faults. */
package headrace.control.duty;
