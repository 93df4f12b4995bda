package headrace.data;

import headrace.data.Form.Field;
import headrace.energy.load.HourlyLoad;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.work.Work;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * Reads the load of every hour of a year.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Named by the columns: {@code time}, local or with its offset from UTC, and either {@code load [%]}, a share of
 *       design load, or {@code heat [kW]} with a head line {@code design load}.
 *   <dt>Limits
 *   <dd>8760 or 8784 rows, an hour each, in order. A change of clock is noted; any other hour that is missing or stands
 *       twice is refused, as is a load below 0 or above 120 % of design.
 *   <dt>Errors
 *   <dd>{@link Refusal} with file, line and column.
 *   <dt>Source
 *   <dd>A format of our own, described in {@code docs/load-files.md}; ISO 8601 for the times.
 * </dl>
 */
public final class HourlyLoadFile {
    static final Field<Ratio> LOAD =
            new Field<>("load", Ratio.KIND, false, Ratio.ZERO, Ratio.percent(100 * HourlyLoad.MOST));
    private static final Field<Power> HEAT = new Field<>("heat", Power.KIND, false, Power.ZERO, Power.megawatts(1000));

    private static final Field<Power> DESIGN =
            new Field<>("design load", Power.KIND, true, Power.watts(1), Power.megawatts(1000));

    private static final Form FORM = new Form(
            "year of hours", List.of("name", "source", "date", "design load"), List.of(ClockCell.CLOCK, LOAD, HEAT));

    private HourlyLoadFile() {}

    /** Reads a file with decimal points and commas between the cells. */
    public static HourlyLoad read(Path path) {
        return read(path, NumberStyle.DECIMAL_POINT);
    }

    /** Reads a file whose numbers are written in a style. */
    public static HourlyLoad read(Path path, NumberStyle style) {
        Sheet sheet = Sheet.read(path, FORM, style);
        Entry name = sheet.requiredHead("name", "Otterbank Library, chilled water");
        if (sheet.size() == 0) {
            throw sheet.refused(
                    DataProblem.TOO_FEW_ROWS,
                    "Asked to read a year of hours without rows",
                    "A year has 8760 or 8784",
                    "Add the rows");
        }
        double[] shares = shares(sheet);
        HourRows rows = HourRows.of(times(sheet));
        String source = sheet.head("source").map(Entry::text).orElse("not stated");
        return HourlyLoad.of(name.text(), rows.start(), shares, Basis.of(sheet.input(source)))
                .with(sheet.notes())
                .with(rows.notes());
    }

    static List<ClockCell> times(Sheet sheet) {
        ClockCell.Reader reader = new ClockCell.Reader();
        List<ClockCell> cells = new ArrayList<>();
        for (int row = 0; row < sheet.size(); row++) {
            Work.poll();
            cells.add(reader.read(sheet.entry(row, ClockCell.CLOCK)));
        }
        return cells;
    }

    private static double[] shares(Sheet sheet) {
        boolean load = sheet.has(LOAD.column());
        if (load == sheet.has(HEAT.column())) {
            throw sheet.refused(
                    DataProblem.MISSING_COLUMN,
                    "Asked to read a year of hours with " + (load ? "both a load and a heat" : "neither load nor heat"),
                    "One of the columns load, a share of design load, and heat, a power, is there",
                    load ? "Keep one of the two" : "Add one, as in: time, load [%]");
        }
        double[] shares = new double[sheet.size()];
        Power design = load ? Power.ZERO : design(sheet);
        for (int row = 0; row < shares.length; row++) {
            shares[row] = load
                    ? sheet.quantity(row, LOAD).value()
                    : share(sheet.quantity(row, HEAT), design, sheet.entry(row, HEAT));
        }
        return shares;
    }

    private static Power design(Sheet sheet) {
        Entry entry = sheet.requiredHead("design load", "300 kW");
        return HeadQuantity.of(entry, DESIGN, sheet.style());
    }

    private static double share(Power heat, Power design, Entry entry) {
        double share = heat.over(design).value();
        if (share > HourlyLoad.MOST * (1 + 1e-9)) {
            throw entry.refused(
                    DataProblem.VALUE_NOT_POSSIBLE,
                    "Asked to read a heat of " + heat + " with a design load of " + design,
                    "A load lies between 0 and 120 % of design",
                    "Check the unit of the column and the design load");
        }
        return share;
    }
}
