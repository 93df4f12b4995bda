/** The words of a script, one file a subject, each registering itself with its help; and how a script is compiled. */
package headrace.script;
