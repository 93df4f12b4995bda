/** Where pump and circuit meet: the operating point, with all that is to be said of it. */
package headrace.operation;
