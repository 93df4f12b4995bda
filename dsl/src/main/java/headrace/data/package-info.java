/**
 * Reads and writes the files that people keep beside their scripts: pump files, load profiles and tables.
 *
 * <p>A file is read as it stands or refused with its line and column; nothing in it is guessed. What was read in spite
 * of a blemish says so in a note.
 */
package headrace.data;
