package headrace.report;

import headrace.data.Cell;
import headrace.data.Column;
import headrace.data.Table;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Lays out a table for a terminal: names over units over values. A table too wide goes on beneath itself, with the
 * columns again by which its rows are told apart, if they leave room for others.
 */
final class TableText {
    private static final String GAP = "  ";
    private static final int WIDEST_NAME = 14;

    /** How wide a column of text may be: as wide as it likes, else narrower where that fits better. */
    private static final int[] WIDEST_TEXT = {44, 30, 22, 16};

    private final Table table;
    private final List<List<List<String>>> columns;

    /** Lays out each column as blocks of lines: its head, then a block for each row, all of one width. */
    private TableText(Table table, int widestText) {
        this.table = table;
        columns = IntStream.range(0, table.columns().size())
                .mapToObj(i -> column(i, widestText))
                .toList();
    }

    static List<String> lines(Table table, int width) {
        TableText text = IntStream.of(WIDEST_TEXT)
                .mapToObj(widest -> new TableText(table, widest))
                .min(Comparator.comparingInt(each -> each.trouble(width)))
                .orElseThrow();
        List<String> out = new ArrayList<>(new PlainText(width).wrapped(table.title(), ""));
        boolean first = true;
        for (List<Integer> group : text.groups(width)) {
            if (!first) {
                out.add("");
            }
            first = false;
            out.addAll(text.lines(group));
        }
        return out;
    }

    private List<String> lines(List<Integer> group) {
        List<String> out = new ArrayList<>();
        for (int block = 0; block <= table.rows().size(); block++) {
            int height = height(group, block);
            for (int line = 0; line < height; line++) {
                StringBuilder text = new StringBuilder();
                for (int i : group) {
                    List<String> lines = columns.get(i).get(block);
                    int at = block == 0
                            ? line - height + lines.size()
                            : line; // heads end on one line, rows begin on one
                    text.append(GAP).append(at >= 0 && at < lines.size() ? lines.get(at) : " ".repeat(widthOf(i)));
                }
                if (block > 0 || !text.toString().isBlank()) {
                    out.add(text.toString().stripTrailing());
                }
            }
        }
        return out;
    }

    private int height(List<Integer> group, int block) {
        return group.stream()
                .mapToInt(i -> columns.get(i).get(block).size())
                .max()
                .orElse(0);
    }

    /**
     * Returns the columns that stand side by side: as many as fit, those that tell the rows apart always among them.
     */
    private List<List<Integer>> groups(int width) {
        List<Integer> apart = apart(width);
        List<List<Integer>> groups = new ArrayList<>();
        List<Integer> group = new ArrayList<>(apart);
        for (int i = apart.size(); i < columns.size(); i++) {
            if (group.size() > apart.size() && width(group) + GAP.length() + widthOf(i) > width) {
                groups.add(group);
                group = new ArrayList<>(apart);
            }
            group.add(i);
        }
        groups.add(group);
        return groups;
    }

    /** Returns the first columns by which no two rows are alike; only the first if these leave no room for others. */
    private List<Integer> apart(int width) {
        int count = 1;
        while (count < columns.size() - 1 && !tellsApart(count)) {
            count++;
        }
        List<Integer> first = IntStream.range(0, count).boxed().toList();
        int widest =
                IntStream.range(count, columns.size()).map(this::widthOf).max().orElse(0);
        return tellsApart(count) && width(first) + GAP.length() + widest <= width ? first : List.of(0);
    }

    private boolean tellsApart(int count) {
        long unlike = table.rows().stream()
                .map(row -> row.subList(0, count).stream().map(Cell::print).toList())
                .distinct()
                .count();
        return unlike == table.rows().size();
    }

    private int width(List<Integer> group) {
        return group.stream().mapToInt(i -> GAP.length() + widthOf(i)).sum();
    }

    /**
     * Returns how badly it fits: going on beneath once more is bad, rows that cannot be told apart are worse, and lines
     * too long are worst.
     */
    private int trouble(int width) {
        List<List<Integer>> groups = groups(width);
        boolean tooWide = groups.stream().anyMatch(group -> width(group) > width);
        boolean alike = groups.size() > 1 && !tellsApart(apart(width).size());
        return groups.size() + (alike ? columns.size() : 0) + (tooWide ? 2 * columns.size() : 0);
    }

    private int widthOf(int i) {
        return PlainText.columns(columns.get(i).get(0).get(0));
    }

    private List<List<String>> column(int index, int widestText) {
        Column column = table.columns().get(index);
        List<List<String>> blocks = new ArrayList<>();
        blocks.add(head(column));
        for (List<Cell> row : table.rows()) {
            blocks.add(PlainText.broken(row.get(index).print(), widestText));
        }
        int width = blocks.stream()
                .flatMap(List::stream)
                .mapToInt(PlainText::columns)
                .max()
                .orElse(0);
        blocks.get(0).add("─".repeat(width));
        return blocks.stream()
                .map(lines -> lines.stream()
                        .map(line -> aligned(line, width, column.numeric()))
                        .toList())
                .toList();
    }

    /** Returns name over unit. */
    private static List<String> head(Column column) {
        List<String> lines = new ArrayList<>(PlainText.broken(column.name(), WIDEST_NAME));
        lines.add(unit(column));
        return lines;
    }

    private static String unit(Column column) {
        return column.unit().filter(unit -> !unit.equals("1")).orElse("");
    }

    private static String aligned(String text, int width, boolean right) {
        String padding = " ".repeat(Math.max(0, width - PlainText.columns(text)));
        return right ? padding + text : text + padding;
    }
}
