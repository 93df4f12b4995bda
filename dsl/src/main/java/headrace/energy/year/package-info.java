/** A year of a circuit, hour by hour, under control laws: energy, what is not met, and where the energy goes. */
package headrace.energy.year;
