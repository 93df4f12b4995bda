/** What a run rested on and what came out of it, to be kept and compared with another run. */
package headrace.report.run;
