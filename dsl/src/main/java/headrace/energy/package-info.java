/** Load profiles, the energy of a year, and the comparison of control laws over it. */
package headrace.energy;
