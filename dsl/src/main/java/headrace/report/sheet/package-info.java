/** Sheets that one hands over: what was calculated, with its sources, its assumptions and what changed since. */
package headrace.report.sheet;
