package headrace.kernel.terminal;

import java.util.ArrayList;
import java.util.List;

/** Text that is broken at blanks into lines as wide as a terminal, so that no number is torn. */
final class Fitted {
    private static final String HANGING = "  ";

    private Fitted() {}

    /**
     * Returns the lines of a text in lines that fit; what has no blank to be broken at stays as it is, and so does a
     * line with a tab. What is broken off stands under the line, a little further in.
     *
     * @param text one line or several, with all their line breaks
     * @param columns how wide a line may be
     * @param at the column at which the first line begins
     */
    static String of(String text, int columns, int at) {
        StringBuilder out = new StringBuilder();
        int from = at;
        for (String line : text.split("(?<=\n)", -1)) {
            out.append(
                    from + line.stripTrailing().length() <= columns || line.contains("\t")
                            ? line
                            : String.join("\n", broken(line, columns, from)));
            from = 0;
        }
        return out.toString();
    }

    private static List<String> broken(String line, int columns, int at) {
        List<String> out = new ArrayList<>();
        String indent = line.substring(0, line.length() - line.stripLeading().length()) + HANGING;
        String rest = line;
        int room = columns - at;
        for (int blank = place(rest, room); blank > 0; blank = place(rest, room)) {
            out.add(rest.substring(0, blank).stripTrailing());
            rest = indent + rest.substring(blank).replaceFirst("^ +", "");
            room = columns;
        }
        out.add(rest);
        return out;
    }

    /** Returns where to break: the last blank with room before it, else the first; 0 if the line fits or has none. */
    private static int place(String line, int room) {
        if (line.stripTrailing().length() <= room) {
            return 0;
        }
        int begin = line.length() - line.stripLeading().length();
        int best = 0;
        for (int i = line.indexOf(' ', begin); i > 0 && (i <= room || best == 0); i = line.indexOf(' ', i + 1)) {
            boolean parts = i + 1 < line.length() && line.charAt(i + 1) != '%' && line.charAt(i + 1) != '\n';
            best = parts ? i : best;
        }
        return best;
    }
}
