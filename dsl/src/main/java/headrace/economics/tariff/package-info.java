/** Tariffs of electricity, and what a year of powers costs under them. */
package headrace.economics.tariff;
