/**
 * The notebook file format (nbformat 4.5) as values: reading 4.0 to 4.5, writing 4.5. The only package of the format
 * that knows JSON.
 */
package headrace.kernel.notebook;
