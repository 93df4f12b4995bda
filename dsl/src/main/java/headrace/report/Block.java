package headrace.report;

import headrace.chart.Chart;
import headrace.data.Table;
import headrace.problem.Notes;
import java.util.List;

/** A part of what a result shows, from top to bottom. */
public sealed interface Block {
    /**
     * Returns it as plain text of at most so many columns, without a line break at its end; of a chart what it says.
     */
    default String toText(int columns) {
        return String.join("\n", new PlainText(columns).of(this));
    }

    /**
     * A list of facts, each a label and a value with its unit.
     *
     * @param facts the facts, in order
     */
    record Facts(List<Fact> facts) implements Block {
        /** Keeps the facts from changing. */
        public Facts {
            facts = List.copyOf(facts);
        }
    }

    /**
     * A fact.
     *
     * @param label what it is
     * @param value the value with its unit, as printed
     */
    record Fact(String label, String value) {}

    /**
     * A table.
     *
     * @param table the table
     */
    record TableBlock(Table table) implements Block {}

    /**
     * A chart.
     *
     * @param chart the chart
     */
    record ChartBlock(Chart chart) implements Block {}

    /**
     * What the result says about itself: limits touched, values assumed.
     *
     * @param notes the notes, at least one
     */
    record NotesBlock(Notes notes) implements Block {}

    /**
     * A few lines under a heading of their own, such as a caution or what the result rests on.
     *
     * @param heading the heading, a word or two
     * @param lines the lines
     */
    record TextBlock(String heading, List<String> lines) implements Block {
        /** Keeps the lines from changing. */
        public TextBlock {
            lines = List.copyOf(lines);
        }
    }
}
