package headrace.report;

import headrace.data.Column;
import headrace.data.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Lays out a table for a terminal: names over units over values. A table too wide goes on beneath itself, with its
 * first column again.
 */
final class TableText {
    private static final String GAP = "  ";
    private static final int WIDEST_NAME = 14;
    private static final int WIDEST_TEXT = 44;

    private TableText() {}

    static List<String> lines(Table table, int width) {
        List<List<String>> columns = IntStream.range(0, table.columns().size())
                .mapToObj(i -> column(table, i))
                .toList();
        List<String> out = new ArrayList<>(PlainText.wrapped(table.title(), ""));
        for (List<Integer> group : groups(columns, width)) {
            for (int line = 0; line < columns.get(0).size(); line++) {
                StringBuilder text = new StringBuilder();
                for (int i : group) {
                    text.append(GAP).append(columns.get(i).get(line));
                }
                out.add(text.toString().stripTrailing());
            }
        }
        return out;
    }

    /** Returns the columns that stand side by side: as many as fit, the first always among them. */
    private static List<List<Integer>> groups(List<List<String>> columns, int width) {
        List<List<Integer>> groups = new ArrayList<>();
        List<Integer> group = new ArrayList<>(List.of(0));
        int used = widthOf(columns, 0);
        for (int i = 1; i < columns.size(); i++) {
            if (group.size() > 1 && used + widthOf(columns, i) > width) {
                groups.add(group);
                group = new ArrayList<>(List.of(0));
                used = widthOf(columns, 0);
            }
            group.add(i);
            used += widthOf(columns, i);
        }
        groups.add(group);
        return groups;
    }

    private static int widthOf(List<List<String>> columns, int i) {
        return GAP.length() + PlainText.columns(columns.get(i).get(0));
    }

    /** Returns a column as lines of one width: its name, its unit, a rule, its cells. */
    private static List<String> column(Table table, int index) {
        Column column = table.columns().get(index);
        int names = table.columns().stream()
                .mapToInt(other -> PlainText.broken(other.name(), WIDEST_NAME).size())
                .max()
                .orElse(1);
        List<String> name = PlainText.broken(column.name(), WIDEST_NAME);
        List<String> lines = new ArrayList<>();
        for (int i = 0; i < names; i++) {
            int own = i - (names - name.size());
            lines.add(own < 0 ? "" : name.get(own));
        }
        lines.add(column.unit().filter(unit -> !unit.equals("1")).orElse(""));
        table.rows().forEach(row -> lines.add(shortened(row.get(index).print())));
        int width = lines.stream().mapToInt(PlainText::columns).max().orElse(0);
        lines.add(names + 1, "─".repeat(width));
        return lines.stream()
                .map(line -> aligned(line, width, column.numeric()))
                .toList();
    }

    private static String shortened(String text) {
        return text.length() <= WIDEST_TEXT ? text : text.substring(0, WIDEST_TEXT - 1) + "…";
    }

    private static String aligned(String text, int width, boolean right) {
        String padding = " ".repeat(Math.max(0, width - PlainText.columns(text)));
        return right ? padding + text : text + padding;
    }
}
