package headrace.report;

import headrace.report.Block.ChartBlock;
import headrace.report.Block.Fact;
import headrace.report.Block.Facts;
import headrace.report.Block.NotesBlock;
import headrace.report.Block.TableBlock;
import headrace.report.Block.TextBlock;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** Lays out what a result shows for a terminal, within so many columns. */
final class PlainText {
    /** As wide as the text is where nothing is known of the place. */
    static final int WIDTH = 100;

    private static final String INDENT = "  ";

    private final int width;

    PlainText(int width) {
        this.width = width;
    }

    String of(Shown shown) {
        List<String> out = new ArrayList<>(heading(shown));
        for (Block block : shown.blocks()) {
            List<String> part = of(block);
            if (!part.isEmpty()) {
                if (!out.isEmpty()) {
                    out.add("");
                }
                out.addAll(part);
            }
        }
        return String.join("\n", out);
    }

    List<String> heading(Shown shown) {
        if (shown.isTitledByItsTable()) {
            return List.of();
        }
        List<String> out = new ArrayList<>(wrapped(shown.title(), ""));
        shown.lines().forEach(line -> out.addAll(wrapped(line, INDENT)));
        return out;
    }

    List<String> of(Block block) {
        if (block instanceof Facts facts) {
            return facts(facts.facts());
        }
        if (block instanceof TableBlock tableBlock) {
            return TableText.lines(tableBlock.table(), width);
        }
        if (block instanceof ChartBlock chart) {
            return wrapped("[" + chart.chart().altText() + "]", INDENT);
        }
        if (block instanceof NotesBlock notes) {
            return listed(
                    "Notes", notes.notes().list().stream().map(Object::toString).toList());
        }
        TextBlock text = (TextBlock) block;
        return listed(text.heading(), text.lines());
    }

    private List<String> facts(List<Fact> facts) {
        int widest =
                facts.stream().mapToInt(fact -> columns(fact.label())).max().orElse(0);
        List<String> out = new ArrayList<>();
        for (Fact fact : facts) {
            String label = INDENT + padded(fact.label(), widest) + INDENT;
            List<String> value = wrapped(fact.value(), " ".repeat(columns(label)));
            out.add(label + value.get(0).substring(label.length()));
            out.addAll(value.subList(1, value.size()));
        }
        return out;
    }

    private List<String> listed(String heading, List<String> lines) {
        List<String> out = new ArrayList<>(List.of(heading));
        for (String line : lines) {
            List<String> parts = wrapped(line, INDENT + INDENT);
            out.add(INDENT + "-" + parts.get(0).substring(3));
            out.addAll(parts.subList(1, parts.size()));
        }
        return out;
    }

    /** Returns the text broken at blanks into lines that fit, each behind the indent; a longer word is cut. */
    List<String> wrapped(String text, String indent) {
        int room = Math.max(1, width - indent.length());
        return broken(text, room).stream().map(line -> indent + line).collect(Collectors.toList());
    }

    static List<String> broken(String text, int room) {
        List<String> out = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String whole : text.strip().split("\\s+(?!%)")) {
            String word = whole;
            if (line.length() > 0 && line.length() + 1 + word.length() > room) {
                out.add(line.toString());
                line.setLength(0);
            }
            while (word.length() > room) {
                out.add(word.substring(0, room));
                word = word.substring(room);
            }
            line.append(line.length() == 0 ? "" : " ").append(word);
        }
        out.add(line.toString());
        return out;
    }

    static String padded(String text, int width) {
        return text + " ".repeat(Math.max(0, width - columns(text)));
    }

    /** Returns how many columns of a terminal a text takes: letters of East Asia two, marks upon a letter none. */
    static int columns(String text) {
        return text.codePoints().map(PlainText::columns).sum();
    }

    private static int columns(int letter) {
        boolean wide = switch (Character.UnicodeScript.of(letter)) {
            case HAN, HIRAGANA, KATAKANA, HANGUL -> true;
            default -> false;
        };
        return wide ? 2 : Character.getType(letter) == Character.NON_SPACING_MARK ? 0 : 1;
    }
}
