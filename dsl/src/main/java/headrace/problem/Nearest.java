package headrace.problem;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/** Finds what a misspelt name was probably meant to be. */
public final class Nearest {
    private static final int MOST = 3;

    private Nearest() {}

    /**
     * Returns up to three of the names that differ from what was written by a slip of the hand, nearest first; none if
     * all are farther away than a third of the longer name.
     */
    public static List<String> to(String written, Collection<String> names) {
        String given = fold(written);
        return names.stream()
                .distinct()
                .filter(name -> !name.isEmpty())
                .filter(name -> slips(given, fold(name)) <= allowed(given, fold(name)))
                .sorted(Comparator.comparingInt((String name) -> slips(given, fold(name)))
                        .thenComparing(name -> slips(written, name))
                        .thenComparing(Comparator.naturalOrder()))
                .limit(MOST)
                .toList();
    }

    /**
     * Returns a sentence that names the nearest, such as {@code The nearest is gpm}, or another where there are none.
     */
    public static String sentence(List<String> near, String otherwise) {
        return near.isEmpty() ? otherwise : "The nearest " + (near.size() == 1 ? "is " : "are ") + either(near);
    }

    /** Returns names as they stand in a sentence: {@code gpm}, {@code gpm or lpm}, {@code gpm, lpm or lps}. */
    public static String either(List<String> names) {
        int last = names.size() - 1;
        return last < 1 ? String.join("", names) : String.join(", ", names.subList(0, last)) + " or " + names.get(last);
    }

    private static String fold(String name) {
        return name.toLowerCase(Locale.ROOT);
    }

    private static int allowed(String one, String other) {
        return Math.max(1, Math.max(one.length(), other.length()) / 3);
    }

    /**
     * Returns how many letters must be put in, left out, changed or swapped with their neighbour to make one of the
     * other (optimal string alignment).
     */
    private static int slips(String one, String other) {
        int[][] least = new int[one.length() + 1][other.length() + 1];
        for (int i = 0; i <= one.length(); i++) {
            for (int j = 0; j <= other.length(); j++) {
                least[i][j] = i == 0 || j == 0 ? i + j : step(one, other, least, i, j);
            }
        }
        return least[one.length()][other.length()];
    }

    private static int step(String one, String other, int[][] least, int i, int j) {
        boolean same = one.charAt(i - 1) == other.charAt(j - 1);
        int best = least[i - 1][j - 1] + (same ? 0 : 1);
        best = Math.min(best, 1 + Math.min(least[i - 1][j], least[i][j - 1]));
        boolean swapped =
                i > 1 && j > 1 && one.charAt(i - 1) == other.charAt(j - 2) && one.charAt(i - 2) == other.charAt(j - 1);
        return swapped ? Math.min(best, least[i - 2][j - 2] + 1) : best;
    }
}
