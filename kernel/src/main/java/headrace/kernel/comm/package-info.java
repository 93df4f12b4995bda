/** Objects of the kernel that have a twin in a front end. Knows no socket and no script. */
package headrace.kernel.comm;
