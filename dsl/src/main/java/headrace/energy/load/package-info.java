/** The load of a year: hours, weather, how load becomes flow, and how branches share it. */
package headrace.energy.load;
