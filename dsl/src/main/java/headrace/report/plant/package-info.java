/** How several pumps show themselves over flow and time: staging, duty and standby. */
package headrace.report.plant;
