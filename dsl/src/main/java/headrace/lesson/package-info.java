/** Exercises of a lesson: a question, a sealed answer, a check with units and tolerance, hints. */
package headrace.lesson;
