/** Density, viscosity, vapour pressure and heat capacity of what is pumped, against temperature. */
package headrace.liquid;
