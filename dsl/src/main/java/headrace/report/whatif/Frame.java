package headrace.report.whatif;

import headrace.chart.Chart;
import headrace.report.Block;
import headrace.report.Block.ChartBlock;
import headrace.report.Block.TextBlock;
import headrace.report.Shown;
import java.util.List;
import java.util.Optional;

/**
 * What is drawn at one position of all controls.
 *
 * @param at the index of the position of each control
 * @param shown what is shown there
 */
public record Frame(List<Integer> at, Shown shown) {
    private static final int COLUMNS = 100;

    /** Keeps the positions from changing. */
    public Frame {
        at = List.copyOf(at);
    }

    /** Returns its first chart. */
    public Optional<Chart> chart() {
        return shown.blocks().stream()
                .filter(ChartBlock.class::isInstance)
                .map(block -> ((ChartBlock) block).chart())
                .findFirst();
    }

    /** Returns what it says beside the chart: verdict, facts, tables and notes. What it rests on is left out. */
    public String text() {
        StringBuilder text = new StringBuilder(shown.headingText(COLUMNS));
        for (Block block : shown.blocks()) {
            if (!(block instanceof ChartBlock) && !(block instanceof TextBlock)) {
                text.append("\n\n").append(block.toText(COLUMNS));
            }
        }
        return text.toString();
    }
}
