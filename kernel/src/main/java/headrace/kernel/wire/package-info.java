/** Records to signed frames and back, and the file that says where to listen. Opens no socket. */
package headrace.kernel.wire;
