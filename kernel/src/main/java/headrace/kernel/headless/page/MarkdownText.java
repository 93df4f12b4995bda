package headrace.kernel.headless.page;

import headrace.kernel.display.Picture;
import headrace.kernel.notebook.Fields;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.commonmark.ext.gfm.tables.TablesExtension;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.Code;
import org.commonmark.node.Heading;
import org.commonmark.node.HtmlInline;
import org.commonmark.node.Image;
import org.commonmark.node.Link;
import org.commonmark.node.Node;
import org.commonmark.node.SoftLineBreak;
import org.commonmark.node.Text;
import org.commonmark.parser.Parser;
import org.commonmark.renderer.html.AttributeProvider;
import org.commonmark.renderer.html.HtmlRenderer;

/**
 * One Markdown text as part of a page. Markup inside it shows as text, links lead only to pages and mail, and pictures
 * are those that the notebook holds itself.
 */
final class MarkdownText {
    private static final Set<String> BITMAPS = Set.of("image/png", "image/jpeg", "image/gif", "image/webp");

    private static final Pattern LINK = Pattern.compile("(?i)(?:https?://|mailto:|#).*");

    private static final Pattern DATA = Pattern.compile("data:image/(?:png|jpeg|gif|webp);base64,[A-Za-z0-9+/=]*");

    private static final String ATTACHMENT = "attachment:";

    private static final Parser PARSER =
            Parser.builder().extensions(List.of(TablesExtension.create())).build();

    private final Node document;
    private final List<Section> sections = new ArrayList<>();
    private final Map<Node, String> anchors = new IdentityHashMap<>();

    /**
     * A heading.
     *
     * @param level from 1, the highest
     * @param anchor its name in the page
     */
    record Section(int level, String text, String anchor) {}

    private MarkdownText(Node document) {
        this.document = document;
    }

    /**
     * Reads a text.
     *
     * @param attachments the pictures that go with it
     * @param prefix begins the name of each heading in the page
     */
    static MarkdownText of(String source, Fields attachments, String prefix) {
        MarkdownText text = new MarkdownText(PARSER.parse(source));
        text.document.accept(new Pictures(attachments));
        text.document.accept(new Links());
        text.document.accept(new AbstractVisitor() {
            @Override
            public void visit(Heading heading) {
                String anchor = prefix + "-" + (text.sections.size() + 1);
                text.anchors.put(heading, anchor);
                text.sections.add(new Section(heading.getLevel(), plain(heading), anchor));
            }
        });
        return text;
    }

    List<Section> sections() {
        return List.copyOf(sections);
    }

    /** Takes the text's first block away if it is a heading. */
    void withoutLeadingHeading() {
        if (document.getFirstChild() instanceof Heading heading) {
            heading.unlink();
            sections.remove(0);
        }
    }

    String html() {
        AttributeProvider ids = (node, tag, attributes) -> {
            if (node instanceof Heading) {
                attributes.put("id", anchors.get(node));
            } else if (node instanceof Link) {
                attributes.put("rel", "noreferrer");
            }
        };
        return HtmlRenderer.builder()
                .extensions(List.of(TablesExtension.create()))
                .escapeHtml(true)
                .sanitizeUrls(false)
                .attributeProviderFactory(context -> ids)
                .build()
                .render(document);
    }

    private static String plain(Node node) {
        StringBuilder text = new StringBuilder();
        node.accept(new AbstractVisitor() {
            @Override
            public void visit(Text part) {
                text.append(part.getLiteral());
            }

            @Override
            public void visit(Code code) {
                text.append(code.getLiteral());
            }

            @Override
            public void visit(HtmlInline markup) {
                text.append(markup.getLiteral());
            }

            @Override
            public void visit(SoftLineBreak lineBreak) {
                text.append(' ');
            }
        });
        return text.toString().strip();
    }

    /** Turns a link that leads neither to a page nor to mail into its text. */
    private static final class Links extends AbstractVisitor {
        @Override
        public void visit(Link link) {
            visitChildren(link);
            if (!LINK.matcher(link.getDestination()).matches()) {
                while (link.getFirstChild() != null) {
                    link.insertBefore(link.getFirstChild());
                }
                link.unlink();
            }
        }
    }

    /** Puts an attached picture where it is shown, and words where a picture would have to be fetched. */
    private static final class Pictures extends AbstractVisitor {
        private final Fields attachments;

        private Pictures(Fields attachments) {
            this.attachments = attachments;
        }

        @Override
        public void visit(Image image) {
            Optional<String> data = data(image.getDestination());
            if (data.isPresent()) {
                image.setDestination(data.get());
            } else {
                String alt = plain(image);
                image.insertBefore(new Text("[Picture not in the notebook itself, left out: "
                        + (alt.isEmpty() ? image.getDestination() : alt) + "]"));
                image.unlink();
            }
        }

        private Optional<String> data(String destination) {
            if (DATA.matcher(destination).matches()) {
                return Optional.of(destination);
            }
            if (!destination.startsWith(ATTACHMENT)) {
                return Optional.empty();
            }
            Fields forms = attachments.fields(destination.substring(ATTACHMENT.length()));
            Optional<String> drawing =
                    forms.text("image/svg+xml").flatMap(SafeMarkup::svg).map(drawn -> Picture.address(drawn.svg()));
            if (drawing.isPresent()) {
                return drawing;
            }
            return BITMAPS.stream()
                    .sorted()
                    .flatMap(type -> forms.text(type).stream()
                            .map(base64 -> "data:" + type + ";base64," + base64.replaceAll("\\s", "")))
                    .filter(DATA.asMatchPredicate())
                    .findFirst();
        }
    }
}
