package headrace.script;

import headrace.chart.Chart;
import headrace.data.DataProblem;
import headrace.data.Table;
import headrace.problem.Refusal;
import headrace.report.Block;
import headrace.report.Block.ChartBlock;
import headrace.report.Block.TableBlock;
import headrace.report.Reports;
import headrace.report.Shown;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Collectors;

/** The tables and charts of what a result shows. */
final class Parts {
    private Parts() {}

    /**
     * Returns what a result shows.
     *
     * @throws Refusal with {@code NOTHING_TO_SHOW}
     */
    static Shown shown(Object result) {
        return Reports.of(result)
                .orElseThrow(() -> new Refusal(
                        DataProblem.NOTHING_TO_SHOW,
                        "Asked for a table or a chart of " + Described.value(result),
                        "Results of calculations show such",
                        "Give a curve, a map, a comparison or another result"));
    }

    /** Returns the table of a result, or the one whose title has this text in it. */
    static Table table(Object result, String title) {
        List<Table> tables = blocks(result, TableBlock.class, TableBlock::table);
        return chosen(result, "table", title, tables, Table::title);
    }

    /** Returns the chart of a result, or the one whose title has this text in it. */
    static Chart chart(Object result, String title) {
        List<Chart> charts = blocks(result, ChartBlock.class, ChartBlock::chart);
        return chosen(result, "chart", title, charts, Chart::title);
    }

    private static <B extends Block, T> List<T> blocks(Object result, Class<B> type, Function<B, T> part) {
        return shown(result).blocks().stream()
                .filter(type::isInstance)
                .map(type::cast)
                .map(part)
                .toList();
    }

    private static <T> T chosen(Object result, String what, String title, List<T> all, Function<T, String> titleOf) {
        List<T> found = all.stream()
                .filter(one -> titleOf.apply(one).toLowerCase(Locale.ROOT).contains(title.toLowerCase(Locale.ROOT)))
                .toList();
        if (found.size() == 1) {
            return found.get(0);
        }
        String titles = all.stream().map(one -> "'" + titleOf.apply(one) + "'").collect(Collectors.joining(", "));
        throw new Refusal(
                DataProblem.NOTHING_TO_SHOW,
                "Asked for the " + what + (title.isEmpty() ? "" : " '" + title + "'") + " of "
                        + Described.value(result),
                all.isEmpty() ? "It shows no " + what : "It shows " + titles,
                all.isEmpty()
                        ? "Ask for what it shows"
                        : "Name one of them by a part of its title that no other has, as in " + what + ": "
                                + titles.split(", '")[0]);
    }
}
