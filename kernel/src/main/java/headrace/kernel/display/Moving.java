package headrace.kernel.display;

import headrace.report.whatif.Control;
import headrace.report.whatif.Frame;
import headrace.report.whatif.WhatIf;
import java.util.List;

/**
 * A what-if that was shown, for a door that can move it while the session runs.
 *
 * @param whatIf all its positions
 * @param begin what it shows where it begins
 * @param labels how the positions of each control are printed, in the units of the session that shows it
 */
public record Moving(WhatIf whatIf, Frame begin, List<List<String>> labels) {
    /** Makes a what-if that was shown on this thread, whose units are the session's. */
    public Moving(WhatIf whatIf, Frame begin) {
        this(whatIf, begin, whatIf.controls().stream().map(Control::labels).toList());
    }
}
