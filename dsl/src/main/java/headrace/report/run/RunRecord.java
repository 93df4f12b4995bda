package headrace.report.run;

import headrace.data.Cell;
import headrace.data.Column;
import headrace.data.Table;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Input;
import headrace.record.Traced;
import headrace.report.Block;
import headrace.report.Block.Fact;
import headrace.report.Block.Facts;
import headrace.report.Block.TableBlock;
import headrace.report.Reports;
import headrace.report.Shown;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * A run as it was: the versions, every input with the hash of its bytes, every choice, and every number that the
 * results show.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Numbers of tables to the last bit in the unit of their column, other facts as printed.
 *   <dt>Limits
 *   <dd>Two runs of one script on one JDK give the same record; another JDK may differ in the last digits.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code NOTHING_TO_RECORD} or {@code NO_RUN_RECORD}.
 *   <dt>Source
 *   <dd>None.
 * </dl>
 *
 * @param name what the run is called, such as {@code revision A}
 * @param entries what it rested on and what came out
 */
public record RunRecord(String name, List<Entry> entries) {
    private static final String KIND = "kind";
    private static final String WHAT = "what";
    private static final String VALUE = "value";
    private static final String PREFIX = "Run: ";

    /** What an entry is. */
    public enum Kind {
        /** A version of what the run was made with. */
        EDITION,
        /** An input, its value being the hash of its bytes. */
        INPUT,
        /** A choice: a model, a method, a seed, an assumed value. */
        CHOICE,
        /** A number or a word that a result shows. */
        RESULT
    }

    /**
     * One line of a record.
     *
     * @param kind what it is
     * @param what what it says something about
     * @param value what it says
     */
    public record Entry(Kind kind, String what, String value) {}

    /** Keeps the entries from changing. */
    public RunRecord {
        entries = List.copyOf(entries);
    }

    /**
     * Records a run.
     *
     * @param name what the run is called
     * @param language the version of the script language
     * @param results the results, each of which shows itself
     */
    public static RunRecord of(String name, int language, List<?> results) {
        List<Entry> entries = new ArrayList<>();
        entries.add(new Entry(Kind.EDITION, "script language", String.valueOf(language)));
        entries.add(new Entry(Kind.EDITION, "JDK", System.getProperty("java.version")));
        entries.add(new Entry(Kind.EDITION, "processor", System.getProperty("os.arch")));
        Basis basis = Basis.NONE;
        for (Object result : results) {
            basis = result instanceof Traced traced ? basis.and(traced.basis()) : basis;
        }
        for (Input input : basis.inputs()) {
            entries.add(new Entry(Kind.INPUT, input.name(), input.sha256()));
        }
        basis.choices().forEach(choice -> entries.add(choice(choice)));
        Map<String, String> shown = new LinkedHashMap<>();
        results.forEach(result -> collect(result, shown));
        shown.forEach((what, value) -> entries.add(new Entry(Kind.RESULT, what, value)));
        if (shown.isEmpty()) {
            throw new Refusal(
                    RunProblem.NOTHING_TO_RECORD,
                    "Asked to record '" + name + "' with " + results.size() + " results, none of which shows a number",
                    "A record holds what results show: a curve, an operating point, a comparison, a table",
                    "Give at least one of these");
        }
        return new RunRecord(name, entries);
    }

    /** Splits a choice such as {@code energy price: 0.18} at its colon, so that a changed value is seen as one. */
    private static Entry choice(String choice) {
        int colon = choice.indexOf(": ");
        return colon < 0
                ? new Entry(Kind.CHOICE, choice, "yes")
                : new Entry(Kind.CHOICE, choice.substring(0, colon), choice.substring(colon + 2));
    }

    private static void collect(Object result, Map<String, String> into) {
        Shown shown = Reports.of(result).orElseGet(() -> Shown.line(String.valueOf(result)));
        String title = shown.title();
        for (Block block : shown.blocks()) {
            if (block instanceof Facts facts) {
                for (Fact fact : facts.facts()) {
                    put(into, title + " | " + fact.label(), fact.value());
                }
            } else if (block instanceof TableBlock table) {
                cells(title, table.table(), into);
            }
        }
    }

    private static void cells(String title, Table table, Map<String, String> into) {
        for (List<Cell> row : table.rows()) {
            for (int i = 1; i < row.size(); i++) {
                Column column = table.columns().get(i);
                String unit = column.unit()
                        .filter(symbol -> !symbol.equals("1"))
                        .map(symbol -> " " + symbol)
                        .orElse("");
                String value = row.get(i) instanceof Cell.Number number
                        ? number.value() + unit
                        : row.get(i).print();
                put(into, title + " | " + table.title() + " | " + row.get(0).print() + " | " + column.name(), value);
            }
        }
    }

    /** Two results of one name are told apart by a number. */
    private static void put(Map<String, String> into, String what, String value) {
        String name = what;
        for (int i = 2; into.containsKey(name); i++) {
            name = what + " (" + i + ")";
        }
        into.put(name, value);
    }

    /** Returns the entries of a kind by what they speak of. */
    public Map<String, String> of(Kind kind) {
        return entries.stream()
                .filter(entry -> entry.kind == kind)
                .collect(Collectors.toMap(
                        Entry::what, Entry::value, (one, other) -> one + "; " + other, LinkedHashMap::new));
    }

    /** Returns the record as a table, which can be saved and read back. */
    public Table toTable() {
        return Table.of(PREFIX + name, Column.text(KIND), Column.text(WHAT), Column.text(VALUE))
                .rows(entries.stream()
                        .map(entry ->
                                new Object[] {entry.kind.name().toLowerCase(Locale.ROOT), entry.what, entry.value})
                        .toList());
    }

    /**
     * Returns the record that a table holds.
     *
     * @throws Refusal with {@code NO_RUN_RECORD} for any other table
     */
    public static RunRecord of(Table table) {
        List<String> columns = table.columns().stream().map(Column::name).toList();
        if (!table.title().startsWith(PREFIX) || !columns.equals(List.of(KIND, WHAT, VALUE))) {
            throw new Refusal(
                    RunProblem.NO_RUN_RECORD,
                    "Asked for the run that the table '" + table.title() + "' records",
                    "A record has the columns kind, what and value, and a title that begins with '" + PREFIX + "'",
                    "Give a table that was saved from runRecord");
        }
        List<Entry> entries = table.rows().stream()
                .map(row -> new Entry(
                        Kind.valueOf(row.get(0).print().toUpperCase(Locale.ROOT)),
                        row.get(1).print(),
                        row.get(2).print()))
                .toList();
        return new RunRecord(table.title().substring(PREFIX.length()), entries);
    }

    @Override
    public String toString() {
        return "run '" + name + "': " + of(Kind.INPUT).size() + " inputs, "
                + of(Kind.CHOICE).size() + " choices, " + of(Kind.RESULT).size() + " results";
    }
}
