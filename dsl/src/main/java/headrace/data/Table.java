package headrace.data;

import headrace.problem.Refusal;
import headrace.units.Money;
import headrace.units.Quantity;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * A table: what a result shows in rows and columns, and what is saved for a spreadsheet.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Each column of numbers names its unit and keeps its numbers in it, at full precision; only printing rounds.
 *   <dt>Limits
 *   <dd>Every row has a cell for each column. Text is kept in one line and without blanks at its ends.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code ROW_DOES_NOT_FIT} for a row that does not fit the columns, with
 *       {@code UNKNOWN_UNIT} for a quantity of another kind than its column.
 *   <dt>Source
 *   <dd>Own.
 * </dl>
 *
 * @param title what the table shows, in one line
 * @param columns the columns, each name once, at least one
 * @param rows the rows, a cell for each column
 */
public record Table(String title, List<Column> columns, List<List<Cell>> rows) {
    /** Refuses rows that do not fit. */
    public Table {
        title = new Cell.Text(title).text();
        columns = List.copyOf(columns);
        rows = rows.stream().map(Table::withoutEmptyText).toList();
        long names = columns.stream().map(Column::name).distinct().count();
        if (columns.isEmpty() || names < columns.size()) {
            throw new Refusal(
                    DataProblem.WRONG_COLUMN,
                    "Asked for a table with the columns "
                            + columns.stream().map(Column::name).toList(),
                    "A table has at least one column, and no name twice",
                    "Give each column a name of its own");
        }
        for (List<Cell> row : rows) {
            requireFit(columns, row);
        }
    }

    /** Returns a table without rows yet. */
    public static Table of(String title, Column... columns) {
        return new Table(title, List.of(columns), List.of());
    }

    /**
     * Returns this table with one more row.
     *
     * @param values for each column in order: a {@link Quantity} of the column's kind, {@link Money} of its currency, a
     *     number in its unit, a text, or null where there is no value
     */
    public Table row(Object... values) {
        return rows(List.<Object[]>of(values));
    }

    /** Returns this table with more rows, each as {@link #row} takes it. */
    public Table rows(List<Object[]> more) {
        List<List<Cell>> all = new ArrayList<>(rows);
        more.forEach(values -> all.add(cells(values)));
        return new Table(title, columns, all);
    }

    private List<Cell> cells(Object[] values) {
        if (values.length != columns.size()) {
            throw misfit(values.length + " cells", columns.size() + " columns");
        }
        return IntStream.range(0, values.length)
                .mapToObj(i -> cellOf(columns.get(i), values[i]))
                .toList();
    }

    /** Returns the numbers of a column in its unit, those that are there. */
    public double[] numbers(String column) {
        int index = indexOf(column);
        return rows.stream()
                .map(row -> row.get(index))
                .filter(Cell.Number.class::isInstance)
                .mapToDouble(cell -> ((Cell.Number) cell).value())
                .toArray();
    }

    private static List<Cell> withoutEmptyText(List<Cell> row) {
        return row.stream()
                .map(cell -> cell instanceof Cell.Text text && text.text().isEmpty() ? Cell.NOTHING : cell)
                .toList();
    }

    private int indexOf(String column) {
        return IntStream.range(0, columns.size())
                .filter(i -> columns.get(i).name().equals(column))
                .findFirst()
                .orElseThrow(() -> new Refusal(
                        DataProblem.MISSING_COLUMN,
                        "Asked the table '" + title + "' for a column '" + column + "'",
                        "It has "
                                + String.join(
                                        ", ", columns.stream().map(Column::name).toList()),
                        "Use one of these names"));
    }

    private static Cell cellOf(Column column, Object value) {
        if (value == null) {
            return Cell.NOTHING;
        }
        if (!column.numeric()) {
            return new Cell.Text(value.toString());
        }
        if (value instanceof Quantity<?> quantity) {
            return new Cell.Number(column.numberOf(quantity));
        }
        if (value instanceof Money money) {
            if (!column.unit().orElse("").equals(money.currency().isEmpty() ? "1" : money.currency())) {
                throw misfit(money.toString(), "the column " + column.heading());
            }
            return new Cell.Number(money.amount());
        }
        if (value instanceof Number number) {
            return new Cell.Number(number.doubleValue());
        }
        throw misfit("'" + value + "'", "the column " + column.heading());
    }

    private static void requireFit(List<Column> columns, List<Cell> row) {
        if (row.size() != columns.size()) {
            throw misfit(row.size() + " cells", columns.size() + " columns");
        }
        for (int i = 0; i < row.size(); i++) {
            Cell cell = row.get(i);
            boolean fits = columns.get(i).numeric()
                    ? !(cell instanceof Cell.Text)
                            && !(cell instanceof Cell.Number number && !Double.isFinite(number.value()))
                    : !(cell instanceof Cell.Number);
            if (!fits) {
                throw misfit(cell.toString(), "the column " + columns.get(i).heading());
            }
        }
    }

    private static Refusal misfit(String what, String where) {
        return new Refusal(
                DataProblem.ROW_DOES_NOT_FIT,
                "Asked to put " + what + " into " + where + " of a table",
                "A row has one cell for each column, finite numbers where the column has a unit and text where it has none",
                "Give the row as the columns are");
    }
}
