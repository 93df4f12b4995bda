package headrace.kernel.wire;

import java.util.Map;

/**
 * A message of a kernel, as a front end hears it.
 *
 * @param type its kind
 * @param cause the identity of the request that caused it, or empty
 * @param content a tree of maps, lists, strings, numbers, booleans and nulls
 */
public record Heard(String type, String cause, Map<String, Object> content) {}
