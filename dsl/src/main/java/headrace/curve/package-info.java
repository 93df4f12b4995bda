/** Pump curves fitted from test points, and how they move with speed and liquid. */
package headrace.curve;
