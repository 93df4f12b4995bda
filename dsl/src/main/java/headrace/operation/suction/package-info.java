/**
 * The suction side and the pressures: air, tank, NPSH available against required, filling, highest working pressure.
 */
package headrace.operation.suction;
