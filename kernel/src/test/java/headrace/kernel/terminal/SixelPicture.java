package headrace.kernel.terminal;

import java.awt.image.BufferedImage;
import java.util.HashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads a sixel picture back: colours in per cent of red, green and blue, bands of six dots, repeats.
 *
 * <p>Source: the sixel data format of the VT330/VT340 programmer reference, from memory.
 */
final class SixelPicture {
    private static final Pattern PART =
            Pattern.compile("#(\\d+)(?:;2;(\\d+);(\\d+);(\\d+))?|!(\\d+)(.)|(\\$)|(-)|([?-~])");

    private SixelPicture() {}

    static BufferedImage read(String text) {
        int start = text.indexOf('q', text.indexOf("\u001bP")) + 1;
        String data = text.substring(start, text.indexOf("\u001b\\", start));
        if (data.startsWith("\"")) {
            data = data.substring(data.indexOf('#'));
        }
        Map<Integer, Integer> inks = new HashMap<>();
        Map<Long, Integer> dots = new HashMap<>();
        int ink = 0;
        int x = 0;
        int y = 0;
        int width = 0;
        Matcher part = PART.matcher(data);
        while (part.find()) {
            if (part.group(1) != null) {
                ink = Integer.parseInt(part.group(1));
                if (part.group(2) != null) {
                    inks.put(ink, level(part.group(2)) << 16 | level(part.group(3)) << 8 | level(part.group(4)));
                }
            } else if (part.group(7) != null) {
                x = 0;
            } else if (part.group(8) != null) {
                x = 0;
                y += 6;
            } else {
                int times = part.group(5) == null ? 1 : Integer.parseInt(part.group(5));
                int bits = (part.group(5) == null ? part.group(9) : part.group(6)).charAt(0) - '?';
                for (int i = 0; i < times; i++, x++) {
                    for (int bit = 0; bit < 6; bit++) {
                        if ((bits >> bit & 1) == 1) {
                            dots.put((long) (y + bit) << 32 | x, inks.get(ink));
                        }
                    }
                }
                width = Math.max(width, x);
            }
        }
        int height =
                1 + (int) dots.keySet().stream().mapToLong(at -> at >> 32).max().orElse(0);
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        dots.forEach((at, rgb) -> image.setRGB((int) (at & 0xFFFFFFFFL), (int) (at >> 32), rgb));
        return image;
    }

    private static int level(String percent) {
        return Integer.parseInt(percent) * 255 / 100;
    }
}
