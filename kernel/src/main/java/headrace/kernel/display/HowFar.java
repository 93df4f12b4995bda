package headrace.kernel.display;

import java.time.Duration;
import java.util.Map;
import java.util.Optional;

/**
 * How far a calculation has come. Each door draws it in its own way.
 *
 * @param what the calculation in words
 * @param share from 0 to 1
 * @param left how long it still takes, where that can be told
 */
public record HowFar(String what, double share, Optional<Duration> left) {
    private static final int LONGEST_BAR = 30;
    private static final int SHORTEST_BAR = 8;
    private static final int LEAST_WHAT = 12;

    /** Refuses a share that is none. */
    public HowFar {
        if (!(share >= 0 && share <= 1)) {
            throw new IllegalArgumentException("A share is from 0 to 1, not " + share);
        }
    }

    /** Returns the whole percents that are done. */
    public int percent() {
        return (int) Math.floor(share * 100 + 1e-9);
    }

    /** Returns it as one sentence, such as {@code hours of the year: 40 %, about 25 s left}. */
    public String text() {
        return what + numbers();
    }

    private String numbers() {
        return ": " + percent() + " %" + left.map(time -> ", " + worded(time)).orElse("");
    }

    /**
     * Returns it as one line: the sentence, and a bar where there is room for one. What is calculated is cut short
     * before the numbers are.
     *
     * @param columns so many characters at most
     */
    public String line(int columns) {
        String numbers = numbers();
        int most = Math.max(LEAST_WHAT, columns - numbers.length());
        String text = (what.length() <= most ? what : what.substring(0, most - 1) + "…") + numbers;
        int bar = Math.min(LONGEST_BAR, columns - text.length() - " []".length());
        if (bar < SHORTEST_BAR) {
            return text.substring(0, Math.min(columns, text.length()));
        }
        int filled = (int) Math.floor(share * bar + 1e-9);
        return text + " [" + "#".repeat(filled) + ".".repeat(bar - filled) + "]";
    }

    /** Returns it as markup, with a bar. */
    public String html() {
        String time = left.map(some -> ", " + worded(some)).orElse("");
        return "<p>" + Html.escape(what) + " <progress max=\"100\" value=\"" + percent() + "\"></progress> " + percent()
                + " %" + time + "</p>";
    }

    /** Returns it for a front end that draws it as it draws results. */
    public MimeBundle bundle() {
        return new MimeBundle(Map.of("text/plain", line(Integer.MAX_VALUE), "text/html", html()));
    }

    /** Says a time as roughly as it is known. */
    static String worded(Duration left) {
        double seconds = left.toMillis() / 1000.0;
        if (seconds < 10) {
            return "about " + Math.max(1, (long) Math.ceil(seconds)) + " s left";
        }
        if (seconds < 57.5) {
            return "about " + 5 * Math.round(seconds / 5) + " s left";
        }
        if (seconds < 115) {
            return "about " + 10 * Math.round(seconds / 10) + " s left";
        }
        double minutes = seconds / 60;
        if (minutes < 59.5) {
            return "about " + Math.round(minutes) + " min left";
        }
        long halves = Math.round(minutes / 30);
        return "about " + halves / 2 + (halves % 2 == 0 ? "" : ".5") + " h left";
    }
}
