package headrace.data;

import headrace.data.Form.Field;
import headrace.problem.Notes;
import headrace.problem.Place;
import headrace.problem.Problem;
import headrace.problem.Refusal;
import headrace.record.Input;
import headrace.units.Quantity;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A file of head lines, one row of column heads, and rows of numbers: read as its {@link Form} allows, with the place
 * of everything at hand.
 */
final class Sheet {
    private final Form form;
    private final NumberStyle style;
    private final TextFile file;
    private final Map<String, Entry> head;
    private final List<Heading> headings;
    private final List<List<Entry>> rows;

    /**
     * A column's head.
     *
     * @param field what the column holds
     * @param unit the word of its unit
     * @param place where it stands
     */
    record Heading(Field<?> field, String unit, Entry place) {}

    Sheet(
            Form form,
            NumberStyle style,
            TextFile file,
            Map<String, Entry> head,
            List<Heading> headings,
            List<List<Entry>> rows) {
        this.form = form;
        this.style = style;
        this.file = file;
        this.head = Map.copyOf(head);
        this.headings = List.copyOf(headings);
        this.rows = List.copyOf(rows);
    }

    static Sheet read(Path path, Form form, NumberStyle style) {
        return new SheetReader(TextFile.read(path), form, style).sheet();
    }

    Notes notes() {
        return file.notes();
    }

    NumberStyle style() {
        return style;
    }

    /** Returns the file as what a result rests on. */
    Input input(String source) {
        return Input.of(Path.of(file.path()).getFileName().toString(), source, file.bytes());
    }

    Optional<Entry> head(String key) {
        return Optional.ofNullable(head.get(key));
    }

    Entry requiredHead(String key, String example) {
        return head(key)
                .orElseThrow(() -> refused(
                        DataProblem.MISSING_HEAD_LINE,
                        "Asked to read a " + form.name() + " that does not say its " + key,
                        "A " + form.name() + " says it in a line such as '# " + key + ": " + example + "'",
                        "Add the line above the columns"));
    }

    int size() {
        return rows.size();
    }

    boolean has(String column) {
        return headings.stream().anyMatch(heading -> heading.field().column().equals(column));
    }

    <Q extends Quantity<Q>> Q quantity(int row, Field<Q> field) {
        int index = indexOf(field);
        return field.quantity(rows.get(row).get(index), headings.get(index).unit(), style);
    }

    /** Returns the quantity that stands there; none where the file has no such column, or nothing in it. */
    <Q extends Quantity<Q>> Optional<Q> given(int row, Field<Q> field) {
        return has(field.column()) && !entry(row, field).empty() ? Optional.of(quantity(row, field)) : Optional.empty();
    }

    /** Returns the text that stands there; none where the file has no such column, or nothing in it. */
    Optional<Entry> text(int row, Field<?> field) {
        return Optional.of(field)
                .filter(column -> has(column.column()))
                .map(column -> entry(row, column))
                .filter(entry -> !entry.empty());
    }

    /** Returns the word of the unit of a column that the file has. */
    String unitOf(Field<?> field) {
        return headings.get(indexOf(field)).unit();
    }

    Entry heading(Field<?> field) {
        return headings.get(indexOf(field)).place();
    }

    Entry entry(int row, Field<?> field) {
        return rows.get(row).get(indexOf(field));
    }

    /** Returns a refusal of the file as a whole, at its last line. */
    Refusal refused(Problem problem, String asked, String possible, String next) {
        return new Refusal(problem, asked, possible, next).at(lastPlace());
    }

    Place lastPlace() {
        return file.place(Math.max(1, file.lines().size()), 0);
    }

    private int indexOf(Field<?> field) {
        for (int i = 0; i < headings.size(); i++) {
            if (headings.get(i).field().equals(field)) {
                return i;
            }
        }
        throw new IllegalArgumentException("The sheet has no column " + field.column());
    }
}
