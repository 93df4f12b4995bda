/** The minimum heads that pass a part-load rule and starve no branch. */
package headrace.rule.window;
