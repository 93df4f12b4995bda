/**
 * Java cells through the JDK's own shell, in this process and on the same objects as Groovy cells. Loaded with the
 * first Java cell, since the compiler of Java takes a second to wake.
 */
package headrace.kernel.session.java;
