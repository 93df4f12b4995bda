/** How far a pump set may go: operating region, least flow, heat, overload and torque, over all that it can reach. */
package headrace.operation.limit;
