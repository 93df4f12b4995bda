package headrace.kernel.headless;

/** Text as a terminal would leave it: a carriage return goes back to the line's start, a backspace one character. */
final class PrintedText {
    private final int limit;
    private final StringBuilder text = new StringBuilder();
    private long left;
    private int lineStart;
    private boolean back;

    PrintedText(int limit) {
        this.limit = limit;
    }

    void append(String more) {
        for (int i = 0; i < more.length(); i++) {
            append(more.charAt(i));
        }
    }

    private void append(char c) {
        if (back && c != '\n') {
            text.setLength(lineStart);
        }
        back = c == '\r';
        if (c == '\b') {
            text.setLength(Math.max(lineStart, text.length() - 1));
        } else if (text.length() >= limit) {
            left++;
        } else if (c != '\r') {
            text.append(c);
            if (c == '\n') {
                lineStart = text.length();
            }
        }
    }

    /** Returns the text, and how much more there was if not all of it was kept. */
    String kept() {
        return left == 0 ? text.toString() : text + "\n… and " + left + " more characters, not kept here\n";
    }
}
