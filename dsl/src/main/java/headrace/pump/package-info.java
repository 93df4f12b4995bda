/** A pump set: the pump's curves with its motor, its drive and its range of speeds. */
package headrace.pump;
