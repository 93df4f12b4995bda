/**
 * Turns results into what a person looks at: facts, tables, charts and notes, as values that a door (notebook,
 * terminal, page) draws in its own way.
 */
package headrace.report;
