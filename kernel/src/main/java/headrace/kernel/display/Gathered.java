package headrace.kernel.display;

import headrace.data.Table;
import headrace.report.Block;
import headrace.report.Block.TableBlock;
import headrace.report.Reports;
import headrace.report.Shown;
import headrace.report.whatif.WhatIf;
import java.util.ArrayList;
import java.util.Collection;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What a value shows that holds results: a list, a map by name, an array, one inside another.
 *
 * <p>A list of one kind that has a table shows that. Otherwise each result shows itself, and what stands between them,
 * such as a number, its text in a line.
 */
final class Gathered {
    /** More than so many charts and tables are a page, not a look at a value. */
    private static final int MOST_SHOWN = 24;

    /** So many elements are looked at to find whether there is a result, so that a million numbers are not walked. */
    private static final int LOOKED_AT = 50;

    private static final int MOST_DEPTH = 3;

    private final List<Shown> all = new ArrayList<>();
    private final Map<Object, Optional<Shown>> made = new IdentityHashMap<>();
    private int left;

    private Gathered() {}

    /** Returns what a value shows; nothing if it is no result and holds none. */
    static List<Shown> of(Object value) {
        Object held = Reports.opened(value);
        Gathered gathered = new Gathered();
        if (!gathered.holdsResult(held, 0)) {
            return List.of();
        }
        gathered.add("", held, 0);
        if (gathered.left > 0) {
            gathered.all.add(Shown.line("… and " + gathered.left + " more; show them one by one, or make a table"));
        }
        return gathered.all;
    }

    private boolean holdsResult(Object value, int depth) {
        if (value == null || depth > MOST_DEPTH) {
            return false;
        }
        if (elements(value).isPresent()) {
            return elements(value).get().stream()
                    .limit(LOOKED_AT)
                    .anyMatch(each -> holdsResult(Reports.opened(each), depth + 1));
        }
        return value instanceof WhatIf || report(value).isPresent();
    }

    private static Optional<Collection<?>> elements(Object value) {
        if (value instanceof Map<?, ?> map) {
            return Optional.of(map.values());
        }
        return value instanceof Collection<?> several ? Optional.of(several) : Optional.empty();
    }

    private Optional<Shown> report(Object value) {
        return value == null ? Optional.empty() : made.computeIfAbsent(value, Reports::of);
    }

    private void add(String name, Object value, int depth) {
        Optional<Shown> whole = report(value);
        if (whole.isPresent()) {
            keep(titled(name, whole.get()));
        } else if (value instanceof WhatIf whatIf) {
            whatIf.at(whatIf.start()).parts().forEach(part -> keep(titled(joined(name, part.name()), part.shown())));
        } else if (value instanceof Map<?, ?> map && depth <= MOST_DEPTH && holdsResult(value, depth)) {
            new LinkedHashMap<>(map)
                    .forEach((key, each) -> add(joined(name, PlainValue.text(key)), Reports.opened(each), depth + 1));
        } else if (value instanceof Collection<?> several && depth <= MOST_DEPTH && holdsResult(value, depth)) {
            several.forEach(each -> add(name, Reports.opened(each), depth + 1));
        } else {
            keep(Shown.line(joined(name, PlainValue.text(value))));
        }
    }

    private void keep(Shown shown) {
        if (all.size() < MOST_SHOWN) {
            all.add(shown);
        } else {
            left++;
        }
    }

    /** Returns something shown under a name, if it has one. */
    static Shown titled(String name, Shown shown) {
        String title = joined(name, shown.title());
        List<Block> blocks = new ArrayList<>(shown.blocks());
        if (shown.isTitledByItsTable()) {
            Table table = ((TableBlock) blocks.get(0)).table();
            blocks.set(0, new TableBlock(new Table(title, table.columns(), table.rows())));
        }
        return new Shown(title, shown.lines(), blocks);
    }

    private static String joined(String name, String rest) {
        return name.isEmpty() || rest.isEmpty() ? name + rest : name + ": " + rest;
    }
}
