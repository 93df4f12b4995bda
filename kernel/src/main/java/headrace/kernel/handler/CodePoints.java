package headrace.kernel.handler;

/**
 * Turns the protocol's cursors, counted in code points, into the session's, counted in UTF-16 units, and back. They
 * differ behind every character beyond the basic plane, such as 𝜂.
 */
final class CodePoints {
    private CodePoints() {}

    /** Returns a cursor in UTF-16 units; one outside the code becomes the nearest inside. */
    static int toUnits(String code, int cursor) {
        int inside = Math.max(0, Math.min(cursor, code.codePointCount(0, code.length())));
        return code.offsetByCodePoints(0, inside);
    }

    /** Returns a cursor in code points. */
    static int of(String code, int units) {
        return code.codePointCount(0, Math.max(0, Math.min(units, code.length())));
    }
}
