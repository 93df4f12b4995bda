/** A session whose cells are Groovy: how they run, print, ask, fail and are stopped. */
package headrace.kernel.session.groovy;
