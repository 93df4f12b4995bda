package headrace.report;

import headrace.report.Block.TableBlock;
import java.util.List;

/**
 * How a result shows itself.
 *
 * @param title what it is, in one line
 * @param lines the verdict: what it says, in one to five sentences or lines
 * @param blocks what stands beneath, from top to bottom
 */
public record Shown(String title, List<String> lines, List<Block> blocks) {
    /** Keeps the parts from changing. */
    public Shown {
        lines = List.copyOf(lines);
        blocks = List.copyOf(blocks);
    }

    /** Returns a result that is told in one line. */
    public static Shown line(String line) {
        return new Shown(line, List.of(), List.of());
    }

    /** Returns it as plain text of at most 100 columns, without a line break at its end. */
    public String toText() {
        return new PlainText(PlainText.WIDTH).of(this);
    }

    /** Returns whether its title stands above its table anyway, so that it need not be said twice. */
    public boolean isTitledByItsTable() {
        return lines.isEmpty()
                && !blocks.isEmpty()
                && blocks.get(0) instanceof TableBlock first
                && first.table().title().equals(title);
    }

    /**
     * Returns title and verdict as plain text of at most so many columns, without a line break at its end; nothing if
     * its table says the title.
     */
    public String headingText(int columns) {
        return String.join("\n", new PlainText(columns).heading(this));
    }

    /** Returns title and verdict, without what stands beneath. */
    @Override
    public String toString() {
        return lines.isEmpty() ? title : title + "\n" + String.join("\n", lines);
    }
}
