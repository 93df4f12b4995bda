/** The same words for a script written in Java: one class of static methods, made from the words themselves. */
package headrace.script.java;
