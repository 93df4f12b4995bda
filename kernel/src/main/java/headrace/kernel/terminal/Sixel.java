package headrace.kernel.terminal;

import java.awt.image.BufferedImage;
import java.util.TreeMap;

/**
 * Writes a picture as sixel: bands of six rows, for each colour of a band one character a column, repeats counted.
 *
 * <p>The terminal library writes sixel too, but shrinks a picture to 480 rows, in which a chart of three panels cannot
 * be read, and counts no repeats, which makes a chart ten times as long.
 *
 * <p>Source: the sixel data format of the VT330/VT340 programmer reference, from memory.
 */
final class Sixel {
    private static final int BAND = 6;
    private static final int FULL = 255;
    private static final int PERCENT = 100;
    private static final int WORTH_COUNTING = 3;

    private final BufferedImage image;
    private final Inks inks;
    private final StringBuilder out = new StringBuilder();

    private Sixel(BufferedImage image) {
        this.image = image;
        inks = Inks.of(image);
    }

    /** Returns the characters that draw a picture, in 256 colours. */
    static String of(BufferedImage image) {
        Sixel sixel = new Sixel(image);
        sixel.begin();
        for (int top = 0; top < image.getHeight(); top += BAND) {
            sixel.band(top);
        }
        return sixel.out.append("\u001b\\").toString();
    }

    private void begin() {
        out.append("\u001bP0;1;0q\"1;1;").append(image.getWidth()).append(';').append(image.getHeight());
        for (int ink = 0; ink < inks.list().size(); ink++) {
            out.append('#').append(ink).append(";2");
            for (int shift = 16; shift >= 0; shift -= 8) {
                int level = inks.list().get(ink) >> shift & FULL;
                out.append(';').append(Math.round((float) level * PERCENT / FULL));
            }
        }
    }

    private void band(int top) {
        TreeMap<Integer, byte[]> used = new TreeMap<>();
        int rows = Math.min(BAND, image.getHeight() - top);
        for (int row = 0; row < rows; row++) {
            for (int x = 0; x < image.getWidth(); x++) {
                int ink = inks.place(image.getRGB(x, top + row));
                used.computeIfAbsent(ink, any -> new byte[image.getWidth()])[x] |= (byte) (1 << row);
            }
        }
        used.forEach((ink, columns) -> {
            out.append('#').append(ink);
            columns(columns);
            out.append('$');
        });
        out.append('-');
    }

    private void columns(byte[] columns) {
        for (int x = 0; x < columns.length; ) {
            int end = x + 1;
            while (end < columns.length && columns[end] == columns[x]) {
                end++;
            }
            char dots = (char) ('?' + columns[x]);
            if (end - x > WORTH_COUNTING) {
                out.append('!').append(end - x).append(dots);
            } else {
                out.append(String.valueOf(dots).repeat(end - x));
            }
            x = end;
        }
    }
}
