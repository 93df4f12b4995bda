/** How many of several alike pumps run: by wire power, by a fixed rule, and with hysteresis in time. */
package headrace.control.staging;
