/** The text of a cell, read without compiling it, since it is mostly half-written when it is asked about. */
package headrace.kernel.session.source;
