package headrace.report;

import headrace.chart.Chart;
import headrace.data.Table;
import headrace.problem.Notes;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.report.Block.ChartBlock;
import headrace.report.Block.Fact;
import headrace.report.Block.Facts;
import headrace.report.Block.TableBlock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Puts a result's parts together, from top to bottom. */
public final class Composed {
    private final String title;
    private final List<String> lines = new ArrayList<>();
    private final List<Block> blocks = new ArrayList<>();
    private final List<Fact> facts = new ArrayList<>();

    private Composed(String title) {
        this.title = title;
    }

    /** Begins with a title. */
    public static Composed titled(String title) {
        return new Composed(title);
    }

    /** Adds a sentence. */
    public Composed line(String line) {
        lines.add(line);
        return this;
    }

    /** Adds a fact. */
    public Composed fact(String label, Object value) {
        facts.add(new Fact(label, value.toString()));
        return this;
    }

    /** Adds a fact if there is one. */
    public Composed fact(String label, Optional<?> value) {
        value.ifPresent(there -> fact(label, there));
        return this;
    }

    /** Adds a table. */
    public Composed table(Table table) {
        flush();
        blocks.add(new TableBlock(table));
        return this;
    }

    /** Adds a chart. */
    public Composed chart(Chart chart) {
        flush();
        blocks.add(new ChartBlock(chart));
        return this;
    }

    /** Ends. */
    public Shown shown() {
        flush();
        return new Shown(title, lines, blocks);
    }

    /** Ends with notes alone, for what has no basis of its own. */
    public Shown shown(Notes notes) {
        flush();
        blocks.addAll(Foot.of(notes, Basis.NONE));
        return shown();
    }

    /** Ends with notes, what it rests on, and cautions. */
    public Shown shown(Notes notes, Basis basis, String... cautions) {
        flush();
        blocks.addAll(Foot.of(notes, basis, cautions));
        return shown();
    }

    /** Ends with the notes of a result, what it rests on, and cautions. */
    public Shown shown(Traced result, String... cautions) {
        flush();
        blocks.addAll(Foot.of(result, cautions));
        return shown();
    }

    private void flush() {
        if (!facts.isEmpty()) {
            blocks.add(new Facts(facts));
            facts.clear();
        }
    }
}
