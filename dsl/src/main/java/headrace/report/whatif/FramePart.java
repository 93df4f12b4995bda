package headrace.report.whatif;

import headrace.chart.Chart;
import headrace.report.Block;
import headrace.report.Block.ChartBlock;
import headrace.report.Block.TextBlock;
import headrace.report.Shown;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One of the things that are drawn at a position.
 *
 * @param name what it is called among the others; empty where it stands alone
 * @param value the value itself, for a door that draws what has no report
 * @param shown what is shown of it
 */
public record FramePart(String name, Object value, Shown shown) {
    /** Returns its first chart. */
    public Optional<Chart> chart() {
        return shown.blocks().stream()
                .filter(ChartBlock.class::isInstance)
                .map(block -> ((ChartBlock) block).chart())
                .findFirst();
    }

    /**
     * Returns what it says beside the chart: verdict, facts, tables and notes. What it rests on is left out.
     *
     * @param columns how wide it is at most
     */
    public String text(int columns) {
        List<String> texts = new ArrayList<>(List.of(shown.headingText(columns)));
        for (Block block : shown.blocks()) {
            if (!(block instanceof ChartBlock) && !(block instanceof TextBlock)) {
                texts.add(block.toText(columns));
            }
        }
        texts.removeIf(String::isEmpty);
        return String.join("\n\n", texts);
    }
}
