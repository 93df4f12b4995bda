/**
 * Motor and variable-speed drive: from shaft power to wire power, the losses one by one.
 *
 * <p>What the losses do at part load and at reduced speed is a {@link headrace.drive.LossModel} with a name of its own,
 * because whether a control law passes a part-load rule hangs on it.
 */
package headrace.drive;
