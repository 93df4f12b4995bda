package headrace.data;

import headrace.data.Form.Field;
import headrace.energy.LoadBin;
import headrace.energy.LoadProfile;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.units.Ratio;
import headrace.units.Time;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Reads a load profile: how many hours of a year the circuit asks for which share of its design flow.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Named by the columns: flow as a share of design flow, such as {@code %}, and time, such as {@code h}.
 *   <dt>Limits
 *   <dd>0 to 120 % of design flow, up to 8784 hours in all, at least one row. The format is described in
 *       {@code docs/pump-file.md}.
 *   <dt>Errors
 *   <dd>{@link Refusal} with file, line and column.
 *   <dt>Source
 *   <dd>A format of our own.
 * </dl>
 */
public final class LoadFile {
    private static final Field<Ratio> FLOW = new Field<>("flow", Ratio.KIND, true, Ratio.ZERO, Ratio.percent(120));
    private static final Field<Time> TIME = new Field<>("time", Time.KIND, true, Time.ZERO, Time.hours(8784));

    private static final Form FORM = new Form("load profile", List.of("name", "source", "date"), List.of(FLOW, TIME));

    private LoadFile() {}

    /** Reads a file with decimal points and commas between the cells. */
    public static LoadProfile read(Path path) {
        return read(path, NumberStyle.DECIMAL_POINT);
    }

    /** Reads a file whose numbers are written in a style. */
    public static LoadProfile read(Path path, NumberStyle style) {
        Sheet sheet = Sheet.read(path, FORM, style);
        Entry name = sheet.requiredHead("name", "Otterbank Library, chilled water");
        if (sheet.size() == 0) {
            throw sheet.refused(
                    DataProblem.TOO_FEW_ROWS,
                    "Asked to read a load profile without rows",
                    "A profile has at least one row of flow and time",
                    "Add the rows");
        }
        List<LoadBin> bins = IntStream.range(0, sheet.size())
                .mapToObj(row -> new LoadBin(sheet.quantity(row, FLOW), sheet.quantity(row, TIME)))
                .toList();
        String source = sheet.head("source").map(Entry::text).orElse("not stated");
        try {
            return LoadProfile.of(name.text(), bins, Basis.of(sheet.input(source)))
                    .with(sheet.notes());
        } catch (Refusal refusal) {
            throw refusal.at(sheet.lastPlace());
        }
    }
}
