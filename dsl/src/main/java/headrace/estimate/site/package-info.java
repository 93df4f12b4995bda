/** An estimate held against what is known on site: calibration, and a sweep against the truth. */
package headrace.estimate.site;
