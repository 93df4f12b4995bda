/**
 * Runs a notebook or a script without anybody at the keyboard: text to the terminal, the executed notebook and one
 * self-contained page to a folder.
 */
package headrace.kernel.headless;
