/** What energy costs and what a saving is worth: cash flows, paybacks, life-cycle cost, carbon. */
package headrace.economics;
