/** A teacher's side of exercises: sealing them, and grading notebooks that students hand in. */
package headrace.kernel.headless.classroom;
