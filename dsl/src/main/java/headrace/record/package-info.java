/** What a result rests on: the inputs with their hashes and sources, and the models that were chosen. */
package headrace.record;
