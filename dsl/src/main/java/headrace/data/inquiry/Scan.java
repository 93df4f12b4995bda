package headrace.data.inquiry;

import headrace.problem.Nearest;
import headrace.problem.Place;
import headrace.problem.Problem;
import headrace.problem.Refusal;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A text read from left to right by patterns, which knows line and column of where it stands. */
final class Scan {
    /** The name under which a place names the text. */
    static final String NAME = "inquiry";

    private static final Pattern NUMBER = Pattern.compile("[+-]?\\.?[0-9]");
    private static final int MOST_SHOWN = 30;

    private final String original;
    private final String folded;
    private int at;

    Scan(String text) {
        original = text;
        folded = folded(text);
    }

    /**
     * Returns a text in small letters with its raised digits put down, character for character, so that columns stay.
     */
    static String folded(String text) {
        StringBuilder folded = new StringBuilder(text.length());
        for (int i = 0; i < text.length(); i++) {
            folded.append(
                    switch (text.charAt(i)) {
                        case '²' -> '2';
                        case '³' -> '3';
                        case '\u2212', '\u2013' -> '-';
                        case 'º', '˚' -> '°';
                        case 'Δ', 'δ', '∆' -> 'Δ';
                        case '\u00A0', '\u2007', '\u2009', '\u202F' -> ' ';
                        default -> Character.toLowerCase(text.charAt(i));
                    });
        }
        return folded.toString();
    }

    boolean atEnd() {
        return at == folded.length();
    }

    int position() {
        return at;
    }

    /** Steps over a pattern that starts here. */
    boolean skip(Pattern pattern) {
        return take(pattern) != null;
    }

    /** Returns what a pattern finds here and steps over it, or null and stays. */
    Matcher take(Pattern pattern) {
        Matcher matcher = pattern.matcher(folded).region(at, folded.length());
        matcher.useTransparentBounds(true).useAnchoringBounds(false);
        if (!matcher.lookingAt() || matcher.end() == at) {
            return null;
        }
        at = matcher.end();
        return matcher;
    }

    /** Returns whether a word of small letters starts here, as it stands or with capitals, and ends after it. */
    boolean has(String word) {
        if (!folded.startsWith(word, at)) {
            return false;
        }
        int end = at + word.length();
        boolean letterAtEnd = Character.isLetterOrDigit(word.charAt(word.length() - 1));
        return !letterAtEnd || end == folded.length() || !Character.isLetterOrDigit(folded.charAt(end));
    }

    /** Returns whether a word starts here exactly as it is written. */
    boolean hasExactly(String word) {
        return original.startsWith(word, at);
    }

    /** Returns whether a number starts here. */
    boolean startsNumber() {
        return NUMBER.matcher(folded).region(at, folded.length()).lookingAt();
    }

    /** Goes back to where it stood before. */
    void backTo(int position) {
        at = position;
    }

    /** Returns, in small letters, what stands from a position to here. */
    String since(int position) {
        return folded.substring(position, at);
    }

    void stepOver(String word) {
        at += word.length();
    }

    /** Returns the place of a position. */
    Place place(int position) {
        int line = 1;
        int start = 0;
        for (int i = 0; i < position; i++) {
            if (original.charAt(i) == '\n') {
                line++;
                start = i + 1;
            }
        }
        return new Place(NAME, line, position - start + 1);
    }

    Refusal refused(Problem problem, int position, String possible, String next) {
        return new Refusal(problem, "Asked to read '" + shown(position) + "' in an inquiry", possible, next)
                .at(place(position));
    }

    /** Refuses what stands here. */
    Refusal unreadable(List<String> known) {
        String word = shown(at);
        List<String> near = Nearest.to(word.toLowerCase(Locale.ROOT), known);
        return refused(
                InquiryProblem.UNREADABLE_INQUIRY,
                at,
                "An inquiry says flow, head, liquid, number of pumps, heat load, temperature or its difference, and supply",
                near.isEmpty()
                        ? "Leave it out, or write it as in 480 gpm @ 62 ft, 30 % PG, 3 duty"
                        : "The nearest known is " + Nearest.either(near));
    }

    private String shown(int position) {
        int end = position;
        while (end < original.length() && ",;\n".indexOf(original.charAt(end)) < 0 && end - position < MOST_SHOWN) {
            end++;
        }
        return original.substring(position, Math.max(end, Math.min(position + 1, original.length())))
                .strip();
    }
}
