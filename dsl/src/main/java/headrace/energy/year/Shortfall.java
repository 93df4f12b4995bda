package headrace.energy.year;

import headrace.units.Head;
import headrace.units.Ratio;

/**
 * The hour in which a branch got least of what was asked of it.
 *
 * @param branch the branch
 * @param when when the hour begins
 * @param delivered what it got over what was asked
 * @param missing the head that it lacked
 */
public record Shortfall(String branch, String when, Ratio delivered, Head missing) {
    @Override
    public String toString() {
        return "'" + branch + "' with " + delivered + " of its demand at " + when + ", short by " + missing;
    }
}
