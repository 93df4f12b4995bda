package headrace.control.staging;

import headrace.units.Flow;
import headrace.units.Power;
import headrace.units.Ratio;

/**
 * A total flow at which another number of pumps takes least.
 *
 * @param flow the flow
 * @param share the flow as a share of design flow
 * @param below how many pumps run below it
 * @param above how many run above it
 * @param power the wire power there with the number above it
 * @param reason {@code equal wire power}, or the limit that decides
 */
public record Switch(Flow flow, Ratio share, int below, int above, Power power, String reason) {
    /** The reason where no limit decides. */
    public static final String EQUAL_POWER = "equal wire power";

    @Override
    public String toString() {
        return below + " to " + above + " pumps at " + flow + " (" + share + " of design flow), " + reason;
    }
}
