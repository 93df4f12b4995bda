package headrace.kernel.display;

import headrace.report.whatif.Frame;
import headrace.report.whatif.WhatIf;

/**
 * A what-if that was shown, for a door that can move it while the session runs.
 *
 * @param whatIf all its positions
 * @param begin what it shows where it begins
 */
public record Moving(WhatIf whatIf, Frame begin) {}
