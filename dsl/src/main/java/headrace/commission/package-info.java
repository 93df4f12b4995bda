/** What should be read when a pump set is put to work, what was read, and what the difference says. */
package headrace.commission;
