package headrace.chart.paint;

import java.awt.Shape;
import java.awt.geom.Path2D;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A surface that becomes an SVG picture on white ground.
 *
 * <p>Everything is a path, lettering too, its text kept beside it in {@code aria-label}; so the picture needs no font,
 * no style sheet and nothing from outside. The outline of each letter stands there once, under a name that is the same
 * in every picture. Coordinates are rounded to a hundredth of a pixel, and the same chart gives the same bytes.
 *
 * <p>Source: SVG 1.1 (second edition), chapter 5.6 for what is used more than once, path data of chapter 8.
 */
public final class SvgSurface implements Surface {
    private final StringBuilder svg = new StringBuilder();
    private final Map<String, Path2D> letters = new LinkedHashMap<>();

    /** Creates a white surface with a title and a description for those who cannot see it. */
    public SvgSurface(double width, double height, String title, String description) {
        String w = number(width);
        String h = number(height);
        svg.append("<svg xmlns=\"http://www.w3.org/2000/svg\" xmlns:xlink=\"http://www.w3.org/1999/xlink\" width=\"")
                .append(w)
                .append("\" height=\"")
                .append(h);
        svg.append("\" viewBox=\"0 0 ").append(w).append(' ').append(h).append("\" role=\"img\" aria-label=\"");
        svg.append(escaped(description))
                .append("\">\n<title>")
                .append(escaped(title))
                .append("</title>\n<desc>");
        svg.append(escaped(description))
                .append("</desc>\n<path d=\"M0 0h")
                .append(w)
                .append('v')
                .append(h);
        svg.append("h-").append(w).append("z\" fill=\"#ffffff\"/>\n");
    }

    @Override
    public void fill(Shape shape, int rgb, double opacity) {
        svg.append("<path fill=\"").append(colour(rgb));
        if (opacity < 1) {
            svg.append("\" fill-opacity=\"").append(number(opacity));
        }
        path(shape);
    }

    @Override
    public void stroke(Shape shape, Pen pen) {
        svg.append("<path fill=\"none\" stroke=\"").append(colour(pen.rgb()));
        svg.append("\" stroke-width=\"").append(number(pen.width())).append("\" stroke-linejoin=\"round");
        if (!pen.dashes().isEmpty()) {
            List<String> dashes = pen.dashes().stream().map(SvgSurface::number).toList();
            svg.append("\" stroke-dasharray=\"").append(String.join(" ", dashes));
        }
        path(shape);
    }

    @Override
    public void letter(Lettering lettering) {
        Typeface face = lettering.face();
        double scale = lettering.size() / face.unitsPerEm();
        svg.append("<g aria-label=\"").append(escaped(lettering.text()));
        svg.append("\" fill=\"").append(colour(lettering.rgb()));
        svg.append("\" transform=\"translate(").append(number(lettering.x()));
        svg.append(' ').append(number(lettering.y())).append(")scale(").append(scale);
        svg.append(' ').append(-scale).append(")\">");
        for (Typeface.Letter letter : face.letters(lettering.text())) {
            String name = face.name() + letter.glyph();
            letters.putIfAbsent(name, letter.outline());
            svg.append("<use xlink:href=\"#").append(name);
            svg.append("\" x=\"").append(number(letter.across())).append("\"/>");
        }
        svg.append("</g>\n");
    }

    /** Returns the picture. */
    public String toSvg() {
        StringBuilder out = new StringBuilder(svg);
        if (!letters.isEmpty()) {
            out.append("<defs>\n");
            letters.forEach((name, outline) -> {
                out.append("<path id=\"").append(name).append("\" d=\"");
                new SvgPath(out).append(outline);
                out.append("\"/>\n");
            });
            out.append("</defs>\n");
        }
        return out.append("</svg>\n").toString();
    }

    private void path(Shape shape) {
        svg.append("\" d=\"");
        new SvgPath(svg).append(shape);
        svg.append("\"/>\n");
    }

    private static String number(double value) {
        return SvgPath.hundredths(SvgPath.round(value));
    }

    private static String colour(int rgb) {
        return String.format("#%06x", rgb);
    }

    /** Escapes what has a meaning in XML and drops what XML cannot carry at all. */
    private static String escaped(String text) {
        StringBuilder out = new StringBuilder();
        text.codePoints().forEach(letter -> {
            switch (letter) {
                case '&' -> out.append("&amp;");
                case '<' -> out.append("&lt;");
                case '>' -> out.append("&gt;");
                case '"' -> out.append("&quot;");
                case '\'' -> out.append("&#39;");
                default -> {
                    boolean control = letter < 0x20 || letter >= 0x7F && letter < 0xA0;
                    boolean nowhere = letter >= 0xD800 && letter <= 0xDFFF || letter == 0xFFFE || letter == 0xFFFF;
                    out.appendCodePoint(control || nowhere ? ' ' : letter);
                }
            }
        });
        return out.toString();
    }
}
