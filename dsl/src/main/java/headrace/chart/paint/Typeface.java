package headrace.chart.paint;

import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * The outlines and widths of the letters that the charts are set in.
 *
 * <p>Read from a TrueType file in the program's own resources, without the platform's fonts: those need system
 * libraries and settings that a machine with nothing but a JDK may not have. A letter that the file lacks shows as its
 * empty box.
 *
 * <p>Source: OpenType specification 1.9, tables {@code cmap} (format 4), {@code head}, {@code hhea}, {@code hmtx},
 * {@code loca}; {@code glyf} is read by {@link GlyphOutlines}.
 */
public final class Typeface {
    /** For everything but titles. */
    public static final Typeface REGULAR = read("hr", "SourceSans3-Regular.ttf");
    /** For titles. */
    public static final Typeface SEMIBOLD = read("hs", "SourceSans3-Semibold.ttf");

    /** How far capitals and figures rise above the base line, as a share of the size. Measured on the typeface. */
    public static final double CAPITAL_HEIGHT = 0.66;
    /** How far letters fall below the base line, as a share of the size. */
    public static final double DESCENT = 0.22;
    /** How far accents rise above the base line, as a share of the size. */
    public static final double ASCENT = 0.78;

    private final String name;
    private final ByteBuffer file;
    private final Map<String, Integer> tables = new HashMap<>();
    private final GlyphOutlines outlines;
    private final double unitsPerEm;
    private final int advances;
    private final Map<Integer, Integer> glyphs = new ConcurrentHashMap<>();

    private Typeface(String name, ByteBuffer file) {
        this.name = name;
        this.file = file;
        int count = file.getShort(4);
        for (int i = 0; i < count; i++) {
            int entry = 12 + 16 * i;
            byte[] tag = new byte[4];
            file.get(entry, tag);
            tables.put(new String(tag, java.nio.charset.StandardCharsets.US_ASCII), file.getInt(entry + 8));
        }
        int head = tables.get("head");
        unitsPerEm = file.getShort(head + 18);
        advances = unsigned(tables.get("hhea") + 34);
        outlines = new GlyphOutlines(file, tables.get("glyf"), tables.get("loca"), file.getShort(head + 50) == 1);
    }

    private static Typeface read(String name, String resource) {
        try (InputStream in = Typeface.class.getResourceAsStream(resource)) {
            return new Typeface(name, ByteBuffer.wrap(in.readAllBytes()));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Returns how far a text reaches across at a size, both in pixels. */
    public double width(String text, double size) {
        return text.codePoints().mapToDouble(this::advance).sum() * size / unitsPerEm;
    }

    /** Returns the outline of a text that begins at a point of its base line. */
    public Path2D outline(String text, double size, double x, double y) {
        Path2D.Double path = new Path2D.Double(Path2D.WIND_NON_ZERO);
        double scale = size / unitsPerEm;
        for (Letter letter : letters(text)) {
            AffineTransform place = new AffineTransform(scale, 0, 0, -scale, x + letter.across() * scale, y);
            path.append(letter.outline().getPathIterator(place), false);
        }
        return path;
    }

    /**
     * A letter in a line of text, in the typeface's own units with the base line at 0 and up positive.
     *
     * @param glyph its number in the typeface
     * @param outline its outline, from where it begins; not to be changed
     * @param across where it begins
     */
    record Letter(int glyph, Path2D outline, double across) {}

    /** Returns the letters of a text that leave something to see. */
    List<Letter> letters(String text) {
        List<Letter> letters = new ArrayList<>();
        double pen = 0;
        for (int letter : text.codePoints().toArray()) {
            int glyph = glyph(letter);
            Path2D outline = outlines.of(glyph);
            if (outline.getCurrentPoint() != null) {
                letters.add(new Letter(glyph, outline, pen));
            }
            pen += advance(letter);
        }
        return letters;
    }

    /** Returns a short name, the same whenever and wherever. */
    String name() {
        return name;
    }

    /** Returns how many of its own units make its size. */
    double unitsPerEm() {
        return unitsPerEm;
    }

    /** Returns whether the typeface has the letter. */
    public boolean has(int letter) {
        return glyph(letter) != 0;
    }

    private double advance(int letter) {
        return unsigned(tables.get("hmtx") + 4 * Math.min(glyph(letter), advances - 1));
    }

    /** Spaces that the typeface lacks are set as its ordinary one. */
    private int glyph(int letter) {
        return glyphs.computeIfAbsent(letter, wanted -> {
            int found = findGlyph(wanted);
            return found == 0 && Character.isSpaceChar(wanted) ? findGlyph(' ') : found;
        });
    }

    /** Looks a letter up in the character map for the basic plane, which has all letters of the trade. */
    private int findGlyph(int letter) {
        int map = basicPlane();
        int segments = unsigned(map + 6) / 2;
        for (int i = 0; i < segments; i++) {
            int end = unsigned(map + 14 + 2 * i);
            if (letter <= end) {
                int start = unsigned(map + 16 + 2 * (segments + i));
                int delta = unsigned(map + 16 + 2 * (2 * segments + i));
                int offsetAt = map + 16 + 2 * (3 * segments + i);
                int offset = unsigned(offsetAt);
                if (letter < start) {
                    return 0;
                }
                int glyph = offset == 0 ? letter : unsigned(offsetAt + offset + 2 * (letter - start));
                return glyph == 0 ? 0 : glyph + delta & 0xFFFF;
            }
        }
        return 0;
    }

    private int basicPlane() {
        int map = tables.get("cmap");
        int count = unsigned(map + 2);
        for (int i = 0; i < count; i++) {
            int entry = map + 4 + 8 * i;
            int subtable = map + file.getInt(entry + 4);
            if (unsigned(subtable) == 4) {
                return subtable;
            }
        }
        throw new IllegalStateException("the typeface in the resources has no character map of format 4");
    }

    private int unsigned(int at) {
        return file.getShort(at) & 0xFFFF;
    }
}
