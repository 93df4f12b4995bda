package headrace.kernel.headless.page;

import java.time.LocalDate;

/**
 * What a run was made with, and when.
 *
 * @param headrace the version of this program
 * @param jdk the version of the JDK that runs it
 * @param groovy the version of the language
 * @param day the day of the run
 */
public record Edition(String headrace, String jdk, String groovy, LocalDate day) {}
