package headrace.kernel.display;

import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A drawing or bitmap in markup, as an image that holds all of it: no script runs in it, it loads nothing, and a front
 * end that does not trust a notebook shows it all the same.
 */
public final class Picture {
    private static final double TALL = 1.3;
    private static final Pattern SIZE =
            Pattern.compile("^<svg\\b[^>]*\\bviewBox=\"[\\d.]+ [\\d.]+ ([\\d.]+) ([\\d.]+)\"");

    private Picture() {}

    /** Returns an SVG drawing as an image, with words for those who cannot see it. */
    public static String svg(String svg, String alt) {
        return image(address(svg), alt, isTall(svg) ? " class=\"tall\"" : "");
    }

    /** Returns an SVG drawing as the address of an image. */
    public static String address(String svg) {
        return address("image/svg+xml", svg.getBytes(StandardCharsets.UTF_8));
    }

    /** Returns a bitmap as an image. */
    static String png(byte[] bytes, String alt) {
        return image(address("image/png", bytes), alt, "");
    }

    private static String address(String type, byte[] bytes) {
        return "data:" + type + ";base64," + Base64.getEncoder().encodeToString(bytes);
    }

    private static String image(String address, String alt, String marks) {
        return "<img" + marks + " src=\"" + address + "\" alt=\"" + Html.escape(alt) + "\"/>";
    }

    /** A drawing that is much higher than wide takes a whole page in print, or it could not be read. */
    private static boolean isTall(String svg) {
        Matcher size = SIZE.matcher(svg);
        return size.find() && Double.parseDouble(size.group(2)) > TALL * Double.parseDouble(size.group(1));
    }
}
