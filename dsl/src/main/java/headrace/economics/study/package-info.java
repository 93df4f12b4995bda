/** Paybacks as distributions: drivers drawn at random, from a seed, and ranked by what they do. */
package headrace.economics.study;
