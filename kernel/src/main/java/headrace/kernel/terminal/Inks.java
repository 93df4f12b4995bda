package headrace.kernel.terminal;

import java.awt.image.BufferedImage;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The colours with which a terminal draws a picture: those of the picture that cover most of it, so that pale areas and
 * grid lines keep theirs; any other is drawn in the nearest of them.
 */
final class Inks {
    private static final int MOST = 256;
    private static final int FULL = 0xFF;

    /** Five bits of each channel tell colours apart; fewer would tint what is pale. */
    private static final int TOLD_APART = 0xF8F8F8;

    private final List<Integer> inks;
    private final Map<Integer, Integer> places = new HashMap<>();

    private Inks(List<Integer> inks) {
        this.inks = inks;
        for (int i = 0; i < inks.size(); i++) {
            places.put(inks.get(i) & TOLD_APART, i);
        }
    }

    /** Returns the colours for a picture. */
    static Inks of(BufferedImage image) {
        Map<Integer, Integer> pixels = new HashMap<>();
        Map<Integer, Integer> exact = new HashMap<>();
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                int rgb = image.getRGB(x, y) & 0xFFFFFF;
                pixels.merge(rgb & TOLD_APART, 1, Integer::sum);
                exact.putIfAbsent(rgb & TOLD_APART, rgb);
            }
        }
        return new Inks(pixels.entrySet().stream()
                .sorted(Map.Entry.<Integer, Integer>comparingByValue()
                        .reversed()
                        .thenComparing(Map.Entry.comparingByKey()))
                .limit(MOST)
                .map(entry -> exact.get(entry.getKey()))
                .toList());
    }

    /** Returns the colours, each by its place. */
    List<Integer> list() {
        return inks;
    }

    /** Returns the place of the colour in which another one is drawn. */
    int place(int rgb) {
        return places.computeIfAbsent(rgb & TOLD_APART, this::nearest);
    }

    private int nearest(int rgb) {
        int best = 0;
        for (int i = 1; i < inks.size(); i++) {
            best = distance(rgb, inks.get(i)) < distance(rgb, inks.get(best)) ? i : best;
        }
        return best;
    }

    private static int distance(int one, int other) {
        int sum = 0;
        for (int shift = 0; shift <= 16; shift += 8) {
            int step = (one >> shift & FULL) - (other >> shift & FULL);
            sum += step * step;
        }
        return sum;
    }
}
