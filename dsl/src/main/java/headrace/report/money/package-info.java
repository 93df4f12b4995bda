/** How money shows itself: paybacks, cash flows, life-cycle costs, bills. */
package headrace.report.money;
