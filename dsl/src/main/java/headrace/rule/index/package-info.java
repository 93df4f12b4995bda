/**
 * Energy indices of regulations as calculation aids: type constants as data, formulas, scope. None of them is a rating:
 * a rating comes from the tests and samples that its regulation lays down.
 */
package headrace.rule.index;
