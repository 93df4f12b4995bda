/** Control laws as objects: what each observes, what it asks for, and what the limits of speed make of that. */
package headrace.control;
