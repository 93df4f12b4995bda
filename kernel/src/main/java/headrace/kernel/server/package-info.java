/** The notebook kernel as a process: sockets, heartbeat, and the dispatcher that hands requests to handlers. */
package headrace.kernel.server;
