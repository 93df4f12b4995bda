/** Numeric routines on plain doubles: fitting, roots, sparse systems, contours. Knows no pump and no unit. */
package headrace.numeric;
