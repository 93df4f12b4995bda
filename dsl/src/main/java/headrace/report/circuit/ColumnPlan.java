package headrace.report.circuit;

import headrace.chart.mark.Diagram.Side;
import headrace.report.circuit.RowPlan.Span;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** In which column of its side each junction stands, so that no upright runs along another. */
final class ColumnPlan {
    private record Taken(int column, int first, int last, String junction) {}

    private final SidedJunctions sided;
    private final RowPlan rows;
    private final Map<String, Integer> columns = new HashMap<>();

    ColumnPlan(SidedJunctions sided, RowPlan rows) {
        this.sided = sided;
        this.rows = rows;
        place(Side.LEFT);
        place(Side.RIGHT);
    }

    int column(String junction) {
        return columns.get(junction);
    }

    /** Returns the row of the junction before it in which its upright begins. */
    int begin(String junction, String parent) {
        return rows.span(parent).nearest(rows.span(junction).first());
    }

    private void place(Side side) {
        List<Taken> taken = new ArrayList<>();
        Deque<String> open = new ArrayDeque<>();
        for (String root : sided.roots(side)) {
            Span span = rows.span(root);
            take(taken, root, "", 0, span.first(), span.last());
            open.add(root);
        }
        while (!open.isEmpty()) {
            String parent = open.remove();
            List<String> children = new ArrayList<>(sided.children(parent));
            children.sort(Comparator.comparingInt((String child) -> -length(child, parent)));
            for (String child : children) {
                Span span = rows.span(child);
                int begin = begin(child, parent);
                take(
                        taken,
                        child,
                        parent,
                        columns.get(parent),
                        Math.min(begin, span.first()),
                        Math.max(begin, span.last()));
                open.add(child);
            }
        }
    }

    private int length(String child, String parent) {
        return Math.abs(rows.span(child).first() - begin(child, parent));
    }

    private void take(List<Taken> taken, String junction, String parent, int wanted, int first, int last) {
        int column = wanted;
        while (isTaken(taken, column, parent, first, last)) {
            column++;
        }
        columns.put(junction, column);
        taken.add(new Taken(column, first, last, junction));
    }

    /** An upright may touch the one from which it begins, and no other. */
    private static boolean isTaken(List<Taken> taken, int column, String parent, int first, int last) {
        for (Taken one : taken) {
            if (one.column() != column) {
                continue;
            }
            int from = Math.max(one.first(), first);
            int to = Math.min(one.last(), last);
            if (from < to || from == to && !one.junction().equals(parent)) {
                return true;
            }
        }
        return false;
    }
}
