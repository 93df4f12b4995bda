/**
 * Quantities of the trade, each held in its SI unit and made only by a factory that names the unit.
 *
 * <p>A quantity may have either sign: the place that cannot take a negative one refuses it. Quantities stand at the
 * doors of a calculation; inside, loops run on plain doubles in SI.
 */
package headrace.units;
