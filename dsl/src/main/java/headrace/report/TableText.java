package headrace.report;

import headrace.data.Cell;
import headrace.data.Column;
import headrace.data.Table;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Lays out a table for a terminal: names over units over values. A table too wide goes on beneath itself, with its
 * first column again.
 */
final class TableText {
    private static final String GAP = "  ";
    private static final int WIDEST_NAME = 14;

    /** How wide a column of text may be: as wide as it likes, else narrower until the table fits. */
    private static final int[] WIDEST_TEXT = {44, 30, 22};

    private final Table table;
    private final int nameLines;
    private final List<List<List<String>>> columns;

    /** Lays out each column as blocks of lines: its head, then a block for each row, all of one width. */
    private TableText(Table table, int widestText) {
        this.table = table;
        nameLines = table.columns().stream()
                .mapToInt(column -> PlainText.broken(column.name(), WIDEST_NAME).size())
                .max()
                .orElse(1);
        columns = IntStream.range(0, table.columns().size())
                .mapToObj(i -> column(i, widestText))
                .toList();
    }

    static List<String> lines(Table table, int width) {
        TableText text = new TableText(table, WIDEST_TEXT[0]);
        for (int i = 1; i < WIDEST_TEXT.length && text.width() > width; i++) {
            text = new TableText(table, WIDEST_TEXT[i]);
        }
        List<String> out = new ArrayList<>(new PlainText(width).wrapped(table.title(), ""));
        for (List<Integer> group : text.groups(width)) {
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
                    text.append(GAP).append(line < lines.size() ? lines.get(line) : " ".repeat(widthOf(i)));
                }
                out.add(text.toString().stripTrailing());
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

    /** Returns the columns that stand side by side: as many as fit, the first always among them. */
    private List<List<Integer>> groups(int width) {
        List<List<Integer>> groups = new ArrayList<>();
        List<Integer> group = new ArrayList<>(List.of(0));
        int used = GAP.length() + widthOf(0);
        for (int i = 1; i < columns.size(); i++) {
            if (group.size() > 1 && used + GAP.length() + widthOf(i) > width) {
                groups.add(group);
                group = new ArrayList<>(List.of(0));
                used = GAP.length() + widthOf(0);
            }
            group.add(i);
            used += GAP.length() + widthOf(i);
        }
        groups.add(group);
        return groups;
    }

    private int width() {
        return IntStream.range(0, columns.size())
                .map(i -> GAP.length() + widthOf(i))
                .sum();
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

    /** Returns name over unit, the names of all columns ending on one line. */
    private List<String> head(Column column) {
        List<String> name = PlainText.broken(column.name(), WIDEST_NAME);
        List<String> lines = new ArrayList<>(Collections.nCopies(nameLines - name.size(), ""));
        lines.addAll(name);
        if (table.columns().stream().anyMatch(any -> !unit(any).isEmpty())) {
            lines.add(unit(column));
        }
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
