/**
 * A building's trend log: cleaning, load profile, baseline, saving, residuals, drift.
 *
 * <p>Rows stand in columns of bare SI numbers, because a log of a year has half a million of them; quantities stand at
 * the doors. What reads the file stands in {@code headrace.data.log}; what residuals say about faults in
 * {@code headrace.trend.fault}.
 */
package headrace.trend;
