package headrace.chart.paint;

import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.nio.ByteBuffer;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * The letters of a TrueType file as outlines, in the file's own units with the base line at 0 and up positive.
 *
 * <p>Source: OpenType specification 1.9, table {@code glyf}: simple and composite glyphs.
 */
final class GlyphOutlines {
    private static final int ON_CURVE = 1;
    private static final int SHORT_X = 2;
    private static final int SHORT_Y = 4;
    private static final int REPEAT = 8;
    private static final int SAME_OR_POSITIVE_X = 16;
    private static final int SAME_OR_POSITIVE_Y = 32;

    private static final int WORDS = 1;
    private static final int OFFSETS = 2;
    private static final int ONE_SCALE = 8;
    private static final int MORE = 32;
    private static final int TWO_SCALES = 64;
    private static final int MATRIX = 128;

    private final ByteBuffer file;
    private final int glyf;
    private final int loca;
    private final boolean longOffsets;
    private final Map<Integer, Path2D> known = new ConcurrentHashMap<>();

    GlyphOutlines(ByteBuffer file, int glyf, int loca, boolean longOffsets) {
        this.file = file;
        this.glyf = glyf;
        this.loca = loca;
        this.longOffsets = longOffsets;
    }

    Path2D of(int glyph) {
        Path2D outline = known.get(glyph);
        if (outline == null) {
            outline = read(glyph);
            known.put(glyph, outline);
        }
        return outline;
    }

    private Path2D read(int glyph) {
        Path2D.Double path = new Path2D.Double(Path2D.WIND_NON_ZERO);
        int start = offset(glyph);
        if (start == offset(glyph + 1)) {
            return path;
        }
        ByteBuffer in = file.duplicate().position(glyf + start);
        int contours = in.getShort();
        in.position(in.position() + 8);
        if (contours >= 0) {
            readSimple(in, contours, path);
        } else {
            readComposite(in, path);
        }
        return path;
    }

    private int offset(int glyph) {
        return longOffsets ? file.getInt(loca + 4 * glyph) : 2 * (file.getShort(loca + 2 * glyph) & 0xFFFF);
    }

    private static void readSimple(ByteBuffer in, int contours, Path2D.Double path) {
        int[] ends = new int[contours];
        for (int i = 0; i < contours; i++) {
            ends[i] = in.getShort() & 0xFFFF;
        }
        in.position(in.position() + 2 + (in.getShort(in.position()) & 0xFFFF));
        int[] flags = readFlags(in, contours == 0 ? 0 : ends[contours - 1] + 1);
        int[] x = readCoordinates(in, flags, SHORT_X, SAME_OR_POSITIVE_X);
        int[] y = readCoordinates(in, flags, SHORT_Y, SAME_OR_POSITIVE_Y);
        int first = 0;
        for (int end : ends) {
            addContour(path, flags, x, y, first, end - first + 1);
            first = end + 1;
        }
    }

    private static int[] readFlags(ByteBuffer in, int count) {
        int[] flags = new int[count];
        for (int i = 0; i < count; i++) {
            flags[i] = in.get();
            int again = (flags[i] & REPEAT) != 0 ? in.get() & 0xFF : 0;
            for (; again > 0; again--) {
                flags[i + 1] = flags[i];
                i++;
            }
        }
        return flags;
    }

    private static int[] readCoordinates(ByteBuffer in, int[] flags, int isShort, int sameOrPositive) {
        int[] values = new int[flags.length];
        int value = 0;
        for (int i = 0; i < flags.length; i++) {
            boolean bit = (flags[i] & sameOrPositive) != 0;
            if ((flags[i] & isShort) != 0) {
                int step = in.get() & 0xFF;
                value += bit ? step : -step;
            } else if (!bit) {
                value += in.getShort();
            }
            values[i] = value;
        }
        return values;
    }

    /** Between two points off the curve lies one on it, halfway; a contour may begin with a point off the curve. */
    private static void addContour(Path2D.Double path, int[] flags, int[] x, int[] y, int first, int count) {
        int begin = 0;
        while (begin < count && (flags[first + begin] & ON_CURVE) == 0) {
            begin++;
        }
        if (begin == count) {
            return;
        }
        path.moveTo(x[first + begin], y[first + begin]);
        int control = -1;
        for (int i = 1; i <= count; i++) {
            int at = first + (begin + i) % count;
            boolean on = (flags[at] & ON_CURVE) != 0;
            if (control >= 0) {
                double toX = on ? x[at] : (x[control] + x[at]) / 2.0;
                double toY = on ? y[at] : (y[control] + y[at]) / 2.0;
                path.quadTo(x[control], y[control], toX, toY);
            } else if (on) {
                path.lineTo(x[at], y[at]);
            }
            control = on ? -1 : at;
        }
        path.closePath();
    }

    private void readComposite(ByteBuffer in, Path2D.Double path) {
        int flags;
        do {
            flags = in.getShort();
            Path2D part = of(in.getShort() & 0xFFFF);
            double dx = (flags & WORDS) != 0 ? in.getShort() : in.get();
            double dy = (flags & WORDS) != 0 ? in.getShort() : in.get();
            double[] m = {1, 0, 0, 1};
            if ((flags & ONE_SCALE) != 0) {
                m[0] = m[3] = fraction(in);
            } else if ((flags & TWO_SCALES) != 0) {
                m[0] = fraction(in);
                m[3] = fraction(in);
            } else if ((flags & MATRIX) != 0) {
                m = new double[] {fraction(in), fraction(in), fraction(in), fraction(in)};
            }
            boolean moved = (flags & OFFSETS) != 0;
            path.append(
                    part.getPathIterator(new AffineTransform(m[0], m[1], m[2], m[3], moved ? dx : 0, moved ? dy : 0)),
                    false);
        } while ((flags & MORE) != 0);
    }

    private static double fraction(ByteBuffer in) {
        return in.getShort() / 16384.0;
    }
}
