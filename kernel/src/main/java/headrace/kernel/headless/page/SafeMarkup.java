package headrace.kernel.headless.page;

import headrace.kernel.display.Html;
import headrace.kernel.display.Picture;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/**
 * Copies the harmless part of a result's markup: elements and attributes that are known to hold only text and form.
 * Everything else is left out with what it holds. A drawing inside the markup becomes a picture, where no script runs
 * and nothing is loaded.
 *
 * <p>Markup that is not well-formed XML is not copied at all, since browsers would read it in ways of their own.
 */
final class SafeMarkup {
    private static final Set<String> HTML = words("""
            a abbr article aside b br button caption code col colgroup dd del details div dl dt em figcaption
            figure footer h1 h2 h3 h4 h5 h6 header hr i img input ins kbd li mark ol option output p pre
            q s samp section select small span strong sub summary sup table tbody td tfoot th thead time tr u ul var wbr
            """);

    private static final Set<String> EMPTY = words("br col hr img input wbr");

    private static final Set<String> HTML_ATTRIBUTES = words("""
            align alt checked class colspan data-alt data-as data-at data-bitmap data-labels data-lines data-name data-picture data-said
            dir height hidden
            href lang max min open role rowspan scope span src start step style title type value width
            """);

    private static final Set<String> SVG = words("""
            circle clippath defs desc ellipse g line lineargradient marker mask path pattern polygon
            polyline radialgradient rect stop svg symbol text title tspan use
            """);

    private static final Pattern LINK = Pattern.compile("(?i)(?:https?://|mailto:|#).*");

    private static final Pattern PICTURE =
            Pattern.compile("data:image/(?:png|jpeg|gif|webp|svg\\+xml);base64,[A-Za-z0-9+/=\\s]*");

    /** What is packed becomes texts and the addresses of pictures when it is opened, where no script runs. */
    private static final Pattern PACKED = Pattern.compile("[A-Za-z0-9+/=]*");

    private static final Pattern NUMBERS = Pattern.compile("[0-9 -]*");

    /** A control that can be moved, but into which nothing can be typed. */
    private static final Set<String> MOVED = words("range checkbox");

    /** A button that does nothing by itself. */
    private static final Set<String> PRESSED = words("button");

    private static final Pattern STYLE = Pattern.compile("[-\\w#%.,:;()'\"\\s!+*/]*");

    private static final Pattern STYLE_THAT_LOADS =
            Pattern.compile("(?i)url|expression|import|position|behavior|binding");

    private static final XMLInputFactory FACTORY = factory();

    private final XMLStreamReader reader;
    private final BasisLines basis;
    private final StringBuilder out = new StringBuilder();

    private SafeMarkup(String markup, BasisLines basis) throws XMLStreamException {
        this.basis = basis;
        reader = FACTORY.createXMLStreamReader(new StringReader(markup));
    }

    private static Set<String> words(String text) {
        return Set.of(text.strip().split("\\s+"));
    }

    private static XMLInputFactory factory() {
        XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        factory.setProperty(XMLInputFactory.IS_NAMESPACE_AWARE, true);
        factory.setProperty(XMLInputFactory.IS_COALESCING, true);
        return factory;
    }

    /**
     * Returns the harmless part of markup, or empty if it is not well formed.
     *
     * @param basis takes what the result says it rests on; what it has taken before is not said again
     */
    static Optional<String> html(String markup, BasisLines basis) {
        try {
            SafeMarkup safe = new SafeMarkup("<div>" + markup.replace("&nbsp;", "&#160;") + "</div>", basis);
            safe.reader.nextTag();
            safe.copyContent();
            safe.requireEnd();
            return Optional.of(safe.out.toString());
        } catch (XMLStreamException | RuntimeException e) {
            return Optional.empty();
        }
    }

    /**
     * A drawing that was made harmless.
     *
     * @param svg the drawing
     * @param label what it shows, in words; empty if it does not say
     */
    record Drawing(String svg, String label) {
        /** Returns the drawing as a picture, with words for those who cannot see it. */
        String picture(String otherwise) {
            return Picture.svg(svg, label.isBlank() ? otherwise : label);
        }
    }

    /** Returns the harmless part of a drawing, or empty if it is not well formed or no drawing. */
    static Optional<Drawing> svg(String drawing) {
        try {
            SafeMarkup safe = new SafeMarkup(drawing.strip(), new BasisLines());
            while (safe.reader.next() != XMLStreamConstants.START_ELEMENT) {
                continue;
            }
            return safe.reader.getLocalName().equals("svg") ? Optional.of(safe.drawing()) : Optional.empty();
        } catch (XMLStreamException | RuntimeException e) {
            return Optional.empty();
        }
    }

    /** Ends with an exception if markup goes on after its outermost element was closed. */
    private void requireEnd() throws XMLStreamException {
        while (reader.hasNext()) {
            reader.next();
        }
    }

    /** Copies what stands in the element whose start was just read, up to and past its end. */
    private void copyContent() throws XMLStreamException {
        for (int event = reader.next(); event != XMLStreamConstants.END_ELEMENT; event = reader.next()) {
            if (event == XMLStreamConstants.START_ELEMENT) {
                copyElement();
            } else if (event == XMLStreamConstants.CHARACTERS || event == XMLStreamConstants.SPACE) {
                out.append(Html.escape(reader.getText()));
            }
        }
    }

    private void copyElement() throws XMLStreamException {
        String name = reader.getLocalName().toLowerCase(Locale.ROOT);
        if (name.equals("svg")) {
            out.append(drawing().picture("Drawing"));
        } else if (!HTML.contains(name)) {
            skip();
        } else if (name.equals("section") && "basis".equals(reader.getAttributeValue(null, "class"))) {
            copyBasis();
        } else if (name.equals("input") && !MOVED.contains(typeOf())
                || name.equals("button") && !PRESSED.contains(typeOf())) {
            skip();
        } else {
            out.append('<').append(name);
            copyAttributes();
            out.append('>');
            if (EMPTY.contains(name)) {
                skip();
            } else {
                copyContent();
                out.append("</").append(name).append('>');
            }
        }
    }

    private void copyBasis() throws XMLStreamException {
        List<String> lines = new ArrayList<>();
        int depth = 1;
        while (depth > 0) {
            int event = reader.next();
            if (event == XMLStreamConstants.END_ELEMENT) {
                depth--;
            } else if (event == XMLStreamConstants.START_ELEMENT
                    && reader.getLocalName().equals("li")) {
                lines.add(reader.getElementText().strip());
            } else if (event == XMLStreamConstants.START_ELEMENT) {
                depth++;
            }
        }
        List<String> added = basis.added(lines);
        if (!added.isEmpty()) {
            String heading = added.size() == lines.size() ? "Basis" : "Basis, beside what is named above";
            out.append("<section class=\"basis\"><h4>").append(heading).append("</h4>");
            out.append(list(added)).append("</section>");
        }
    }

    private void copyAttributes() {
        for (int i = 0; i < reader.getAttributeCount(); i++) {
            String name = reader.getAttributeLocalName(i).toLowerCase(Locale.ROOT);
            String value = reader.getAttributeValue(i);
            if ((HTML_ATTRIBUTES.contains(name) || name.startsWith("aria-")) && isHarmless(name, value)) {
                append(name, value);
            }
        }
    }

    private String typeOf() {
        String type = reader.getAttributeValue(null, "type");
        return type == null ? "" : type;
    }

    private static boolean isHarmless(String name, String value) {
        return switch (name) {
            case "href" -> LINK.matcher(value.strip()).matches();
            case "src" -> PICTURE.matcher(value).matches();
            case "data-lines" -> PACKED.matcher(value).matches();
            case "data-alt", "data-bitmap", "data-picture", "data-said" ->
                NUMBERS.matcher(value).matches();
            case "style" ->
                STYLE.matcher(value).matches()
                        && !STYLE_THAT_LOADS.matcher(value).find();
            default -> true;
        };
    }

    private void append(String name, String value) {
        out.append(' ').append(name).append("=\"").append(Html.escape(value)).append('"');
    }

    /** Returns a list of texts. */
    static String list(List<String> lines) {
        StringBuilder list = new StringBuilder("<ul>\n");
        lines.forEach(line -> list.append("<li>").append(Html.escape(line)).append("</li>\n"));
        return list.append("</ul>\n").toString();
    }

    /** Takes the drawing whose start was just read. */
    private Drawing drawing() throws XMLStreamException {
        String label = reader.getAttributeValue(null, "aria-label");
        int before = out.length();
        copyDrawing();
        String svg = out.substring(before);
        out.setLength(before);
        return new Drawing(svg, label == null ? "" : label);
    }

    private void copyDrawing() throws XMLStreamException {
        String name = reader.getLocalName();
        out.append('<').append(name);
        if (name.equals("svg")) {
            append("xmlns", "http://www.w3.org/2000/svg");
        }
        for (int i = 0; i < reader.getAttributeCount(); i++) {
            String attribute = reader.getAttributeLocalName(i);
            String value = reader.getAttributeValue(i);
            if (isHarmlessInDrawing(attribute.toLowerCase(Locale.ROOT), value)) {
                append(attribute, value);
            }
        }
        out.append('>');
        for (int event = reader.next(); event != XMLStreamConstants.END_ELEMENT; event = reader.next()) {
            if (event == XMLStreamConstants.START_ELEMENT) {
                if (SVG.contains(reader.getLocalName().toLowerCase(Locale.ROOT))) {
                    copyDrawing();
                } else {
                    skip();
                }
            } else if (event == XMLStreamConstants.CHARACTERS) {
                out.append(Html.escape(reader.getText()));
            }
        }
        out.append("</").append(name).append('>');
    }

    private static boolean isHarmlessInDrawing(String name, String value) {
        if (name.startsWith("on") || name.equals("base")) {
            return false;
        }
        if (name.equals("href") || name.equals("src")) {
            return value.startsWith("#");
        }
        String plain = value.replaceAll("url\\(\\s*['\"]?#[^)]*\\)", "");
        return !plain.toLowerCase(Locale.ROOT).contains("url") && !plain.contains("\\") && !plain.contains("@");
    }

    private void skip() throws XMLStreamException {
        int depth = 1;
        while (depth > 0) {
            int event = reader.next();
            if (event == XMLStreamConstants.START_ELEMENT) {
                depth++;
            } else if (event == XMLStreamConstants.END_ELEMENT) {
                depth--;
            }
        }
    }
}
