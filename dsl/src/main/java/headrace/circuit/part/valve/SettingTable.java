package headrace.circuit.part.valve;

import headrace.circuit.part.PartProblem;
import headrace.numeric.MonotoneCubic;
import headrace.numeric.Roots;
import headrace.problem.Refusal;
import headrace.units.FlowCoefficient;
import headrace.units.Numbers;
import java.util.List;

/**
 * The settings of a balancing valve with their flow coefficients, as its data sheet lists them; between two rows a
 * smooth rising curve.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Settings as on the handwheel, mostly turns; Kv.
 *   <dt>Limits
 *   <dd>Two rows at least; settings and flow coefficients rise from row to row. Nothing beyond the first and last row.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_PART}.
 *   <dt>Source
 *   <dd>The curve is that of {@link MonotoneCubic}.
 * </dl>
 */
public final class SettingTable {
    private final List<Row> rows;
    private final MonotoneCubic coefficients;

    /**
     * A row of the table.
     *
     * @param setting the number on the handwheel
     * @param coefficient the flow coefficient at it
     */
    public record Row(double setting, FlowCoefficient coefficient) {}

    private SettingTable(List<Row> rows) {
        this.rows = List.copyOf(rows);
        coefficients = MonotoneCubic.through(
                rows.stream().mapToDouble(Row::setting).toArray(),
                rows.stream().mapToDouble(row -> row.coefficient().kv()).toArray());
    }

    /** Returns the table of these rows. */
    public static SettingTable of(List<Row> rows) {
        boolean rising = rows.size() >= 2 && rows.get(0).coefficient().kv() > 0;
        for (int i = 1; rising && i < rows.size(); i++) {
            Row before = rows.get(i - 1);
            rising = rows.get(i).setting() > before.setting()
                    && rows.get(i).coefficient().compareTo(before.coefficient()) > 0;
        }
        if (!rising) {
            throw new Refusal(
                    PartProblem.IMPOSSIBLE_PART,
                    "Asked for a table of " + rows.size() + " settings: " + rows,
                    "It has two rows or more, with settings and flow coefficients above 0 that rise from row to row",
                    "Put the rows in order, and leave out the shut position");
        }
        return new SettingTable(rows);
    }

    /** Returns the rows. */
    public List<Row> rows() {
        return rows;
    }

    Row first() {
        return rows.get(0);
    }

    Row last() {
        return rows.get(rows.size() - 1);
    }

    boolean holds(double setting) {
        return setting >= first().setting() && setting <= last().setting();
    }

    FlowCoefficient at(double setting) {
        return FlowCoefficient.kv(coefficients.valueAt(setting));
    }

    /** Returns the setting of a flow coefficient, which must lie within the table. */
    double settingOf(FlowCoefficient wanted) {
        return Roots.between(
                setting -> coefficients.valueAt(setting) - wanted.kv(), first().setting(), last().setting());
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof SettingTable table && table.rows.equals(rows);
    }

    @Override
    public int hashCode() {
        return rows.hashCode();
    }

    @Override
    public String toString() {
        return "settings " + Numbers.print(first().setting()) + " to " + Numbers.print(last().setting()) + ", "
                + first().coefficient() + " to " + last().coefficient();
    }
}
