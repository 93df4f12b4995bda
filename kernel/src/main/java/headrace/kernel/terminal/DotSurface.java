package headrace.kernel.terminal;

import headrace.chart.paint.Lettering;
import headrace.chart.paint.Pen;
import headrace.chart.paint.Surface;
import java.awt.Shape;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jline.utils.AttributedString;
import org.jline.utils.AttributedStringBuilder;
import org.jline.utils.AttributedStyle;

/**
 * A surface of characters: lines and areas as the dots of Braille, two across and four down in each character, and
 * lettering as letters.
 *
 * <p>Near-black inks take the colour in which the terminal writes, so that they are seen on dark ground too; what is
 * drawn later or stronger gives a character its colour. Letters stand over dots, and never over other letters.
 *
 * <p>Source: Unicode, block Braille Patterns, for the order of the dots.
 */
final class DotSurface implements Surface {
    /** Pixels of the chart to a character across: the mean width of a letter of its smaller lettering. */
    static final double ACROSS = 6.5;

    /** Characters are about twice as high as wide. */
    private static final double DOWN = 2 * ACROSS;

    private static final int[][] DOT = {{0x01, 0x08}, {0x02, 0x10}, {0x04, 0x20}, {0x40, 0x80}};
    private static final char BRAILLE = '\u2800';
    private static final int WHITE = 0xFFFFFF;
    private static final double STRONG = 0.5;
    private static final int PALE = 0xC8;
    private static final int QUIET = 0x90;
    private static final int COLOURED = 0x28;
    private static final int FURTHEST_SHIFT = 2;

    private final int columns;
    private final int rows;
    private final int[] dots;
    private final int[] inks;
    private final char[] letters;

    private final boolean coloured;

    DotSurface(int columns, double height, boolean coloured) {
        this.coloured = coloured;
        this.columns = columns;
        rows = (int) Math.ceil(height / DOWN);
        dots = new int[columns * rows];
        inks = new int[columns * rows];
        letters = new char[columns * rows];
        Arrays.fill(inks, WHITE);
    }

    @Override
    public void fill(Shape shape, int rgb, double opacity) {
        Rectangle2D box = shape.getBounds2D();
        int left = Math.max(0, (int) (box.getMinX() / dotAcross()));
        int right = Math.min(2 * columns - 1, (int) (box.getMaxX() / dotAcross()));
        int top = Math.max(0, (int) (box.getMinY() / dotDown()));
        int bottom = Math.min(4 * rows - 1, (int) (box.getMaxY() / dotDown()));
        for (int y = top; y <= bottom; y++) {
            for (int x = left; x <= right; x++) {
                if (shape.contains((x + 0.5) * dotAcross(), (y + 0.5) * dotDown())) {
                    dot(x, y, rgb, opacity);
                }
            }
        }
    }

    /** A white area hides what lies beneath; a pale one is sown thinly, and lends no colour to what else is there. */
    private void dot(int x, int y, int rgb, double opacity) {
        int at = y / 4 * columns + x / 2;
        if (rgb == WHITE) {
            if (opacity >= STRONG) {
                dots[at] &= ~DOT[y % 4][x % 2];
            }
            return;
        }
        if (opacity < STRONG && (x % 4 != 0 || y % 4 != 0)) {
            return;
        }
        dots[at] |= DOT[y % 4][x % 2];
        if (paleness(rgb) <= paleness(inks[at])) {
            inks[at] = rgb;
        }
    }

    @Override
    public void stroke(Shape shape, Pen pen) {
        boolean pale = paleness(pen.rgb()) > PALE;
        Walk.along(shape, pen.dashes(), dotAcross() / 2, (x, y) -> {
            int column = (int) (x / dotAcross());
            int row = (int) (y / dotDown());
            boolean inside = column >= 0 && column < 2 * columns && row >= 0 && row < 4 * rows;
            if (inside && (!pale || (column + row) % 4 == 0)) {
                dot(column, row, pen.rgb(), 1);
            }
        });
    }

    @Override
    public void letter(Lettering lettering) {
        String text = lettering.text();
        double middle = lettering.x() + lettering.face().width(text, lettering.size()) / 2;
        int first = (int) Math.round(middle / ACROSS - text.length() / 2.0);
        int row = (int) ((lettering.y() - lettering.size() / 3) / DOWN);
        first = Math.max(0, Math.min(columns - text.length(), first));
        for (int shift = 0; shift <= FURTHEST_SHIFT; shift++) {
            for (int from : new int[] {first + shift, first - shift}) {
                if (isFree(row, from, text.length())) {
                    for (int i = 0; i < text.length(); i++) {
                        letters[row * columns + from + i] = text.charAt(i);
                        inks[row * columns + from + i] = lettering.rgb();
                    }
                    return;
                }
            }
        }
    }

    private boolean isFree(int row, int from, int length) {
        if (row < 0 || row >= rows || from < 0 || from + length > columns) {
            return false;
        }
        for (int i = Math.max(0, from - 1); i <= Math.min(columns - 1, from + length); i++) {
            if (letters[row * columns + i] != 0) {
                return false;
            }
        }
        return true;
    }

    /** Returns the lines, without those at the end on which nothing stands. */
    List<AttributedString> lines() {
        List<AttributedString> lines = new ArrayList<>();
        for (int row = 0; row < rows; row++) {
            AttributedStringBuilder line = new AttributedStringBuilder();
            for (int column = 0; column < columns; column++) {
                int at = row * columns + column;
                char letter = letters[at] != 0 ? letters[at] : dots[at] == 0 ? ' ' : (char) (BRAILLE + dots[at]);
                line.styled(letter == ' ' ? AttributedStyle.DEFAULT : style(inks[at]), String.valueOf(letter));
            }
            lines.add(trimmed(line.toAttributedString()));
        }
        while (!lines.isEmpty() && lines.get(lines.size() - 1).length() == 0) {
            lines.remove(lines.size() - 1);
        }
        return lines;
    }

    private static AttributedString trimmed(AttributedString line) {
        int end = line.length();
        while (end > 0 && line.charAt(end - 1) == ' ') {
            end--;
        }
        return line.subSequence(0, end);
    }

    private AttributedStyle style(int rgb) {
        boolean grey = spread(rgb) < COLOURED || !coloured;
        if (grey) {
            return paleness(rgb) > QUIET ? AttributedStyle.DEFAULT.faint() : AttributedStyle.DEFAULT;
        }
        return AttributedStyle.DEFAULT.foreground(rgb >> 16 & 0xFF, rgb >> 8 & 0xFF, rgb & 0xFF);
    }

    /** How little an ink stands out from white: of a colour, its palest part counts least. */
    private static int paleness(int rgb) {
        return Math.min(Math.min(rgb >> 16 & 0xFF, rgb >> 8 & 0xFF), rgb & 0xFF);
    }

    private static int spread(int rgb) {
        int greatest = Math.max(Math.max(rgb >> 16 & 0xFF, rgb >> 8 & 0xFF), rgb & 0xFF);
        return greatest - paleness(rgb);
    }

    private static double dotAcross() {
        return ACROSS / 2;
    }

    private static double dotDown() {
        return DOWN / 4;
    }
}
