package headrace.report.circuit;

import headrace.chart.mark.Diagram.Side;
import headrace.circuit.Branch;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** In which row each branch is drawn across, and over which rows each junction reaches. The pump stands in row 0. */
final class RowPlan {
    /** The first and last row of a junction. */
    record Span(int first, int last) {
        Span with(int row) {
            return new Span(Math.min(first, row), Math.max(last, row));
        }

        /** Returns the row of this span that is nearest to a row. */
        int nearest(int row) {
            return Math.max(first, Math.min(last, row));
        }
    }

    private final SidedJunctions sided;
    private final List<Branch> rows = new ArrayList<>();
    private final Map<String, Span> spans = new HashMap<>();
    private final Map<Branch, String> attached = new HashMap<>();

    RowPlan(SidedJunctions sided) {
        this.sided = sided;
        Set<Branch> left = new LinkedHashSet<>(sided.across());
        for (String root : sided.roots(Side.LEFT)) {
            walk(root, left);
        }
        rows.addAll(left);
        reach(sided.roots(Side.LEFT).get(0), 0);
        reach(sided.roots(Side.RIGHT).get(0), 0);
        for (int row = 0; row < rows.size(); row++) {
            Branch branch = rows.get(row);
            if (isOneSided(branch)) {
                reach(attached(branch), row + 1);
            } else {
                reach(branch.from(), row + 1);
                reach(branch.to(), row + 1);
            }
        }
        for (Side side : Side.values()) {
            sided.roots(side).forEach(this::settle);
        }
    }

    /** Takes the branches that begin at a junction, then those beyond it. */
    private void walk(String junction, Set<Branch> left) {
        for (Branch branch : List.copyOf(left)) {
            boolean here = branch.from().equals(junction) || branch.to().equals(junction);
            if (here) {
                left.remove(branch);
                rows.add(branch);
                attached.put(branch, junction);
            }
        }
        sided.children(junction).forEach(child -> walk(child, left));
    }

    private void reach(String junction, int row) {
        spans.merge(junction, new Span(row, row), (one, other) -> one.with(row));
    }

    /** A junction without a row of its own stands in the first one of those beyond it. */
    private int settle(String junction) {
        int first = Integer.MAX_VALUE;
        for (String child : sided.children(junction)) {
            first = Math.min(first, settle(child));
        }
        if (!spans.containsKey(junction)) {
            int row = first == Integer.MAX_VALUE ? rows.size() : first;
            spans.put(junction, new Span(row, row));
        }
        return spans.get(junction).first();
    }

    /** Returns whether a branch closes a loop of mains on one side: it is drawn at one of its ends only. */
    boolean isOneSided(Branch branch) {
        return sided.side(branch.from()) == sided.side(branch.to());
    }

    /** Returns the junction at which such a branch is drawn. */
    String attached(Branch branch) {
        return attached.getOrDefault(branch, branch.from());
    }

    /** Returns the branches that are drawn across, from row 1 on. */
    List<Branch> branches() {
        return rows;
    }

    /** Returns whether a junction is drawn: those within the row of the pump are not. */
    boolean has(String junction) {
        return spans.containsKey(junction);
    }

    Span span(String junction) {
        return spans.get(junction);
    }
}
