package headrace.data;

import headrace.data.Form.Field;
import headrace.energy.LoadBin;
import headrace.energy.LoadProfile;
import headrace.energy.load.HourlyLoad;
import headrace.energy.load.LoadProblem;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.units.Flow;
import headrace.units.Ratio;
import headrace.units.Time;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Reads a load profile from a log of flows.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Named by the columns: {@code time}, local or with its offset from UTC, and {@code flow [m3/h]}; design flow in
 *       a head line, not the greatest that was seen.
 *   <dt>Limits
 *   <dd>Each row stands for the usual step of the log; what is missing is left out and noted. Flows fall into steps of
 *       1 % of design flow, each bin with the mean of its rows, so that the mean flow is kept. Hours are those covered,
 *       unless they are stretched to a year by choice.
 *   <dt>Errors
 *   <dd>{@link Refusal} with file, line and column; {@code HOUR_TWICE} for a time that stands twice or goes back.
 *   <dt>Source
 *   <dd>A format of our own, described in {@code docs/load-files.md}.
 * </dl>
 */
public final class LoadLogFile {
    private static final int CELLS = 121;
    private static final double PERCENT = 100;

    private static final Field<Flow> FLOW =
            new Field<>("flow", Flow.KIND, true, Flow.ZERO, Flow.cubicMetresPerSecond(100));
    private static final Field<Flow> DESIGN =
            new Field<>("design flow", Flow.KIND, true, Flow.litresPerHour(1), Flow.cubicMetresPerSecond(100));

    private static final Form FORM =
            new Form("log of flows", List.of("name", "source", "date", "design flow"), List.of(ClockCell.CLOCK, FLOW));

    private LoadLogFile() {}

    /**
     * Reads a log.
     *
     * @param stretched the hours of the year to which the hours of the log are stretched; none keeps them
     */
    public static LoadProfile read(Path path, NumberStyle style, Optional<Time> stretched) {
        Sheet sheet = Sheet.read(path, FORM, style);
        Entry name = sheet.requiredHead("name", "Otterbank Library, chilled water");
        Flow design = HeadQuantity.of(sheet.requiredHead("design flow", "52 m3/h"), DESIGN, sheet.style());
        if (sheet.size() < 2) {
            throw sheet.refused(
                    DataProblem.TOO_FEW_ROWS,
                    "Asked to read a log of flows with " + sheet.size() + " rows",
                    "A log has two rows at least, which tell its step",
                    "Add the rows");
        }
        long[] steps = steps(HourlyLoadFile.times(sheet));
        long step = usual(steps);
        double[] sums = new double[CELLS];
        int[] rows = new int[CELLS];
        for (int row = 0; row < sheet.size(); row++) {
            double share = share(sheet.quantity(row, FLOW), design, sheet.entry(row, FLOW));
            int cell = Math.min(CELLS - 1, (int) Math.floor(share * PERCENT));
            sums[cell] += share;
            rows[cell]++;
        }
        double covered = sheet.size() * step / 3600.0;
        double factor = stretched.map(hours -> hours.toHours() / covered).orElse(1.0);
        List<LoadBin> bins = new ArrayList<>();
        for (int i = 0; i < CELLS; i++) {
            if (rows[i] > 0) {
                bins.add(new LoadBin(Ratio.of(sums[i] / rows[i]), Time.hours(rows[i] * step / 3600.0 * factor)));
            }
        }
        String source = sheet.head("source").map(Entry::text).orElse("not stated");
        Basis basis = Basis.of(sheet.input(source))
                .with("load from a log: shares of a design flow of " + design + ", in steps of 1 %");
        return LoadProfile.of(name.text(), bins, basis)
                .with(sheet.notes())
                .with(gaps(steps, step))
                .with(stretching(covered, stretched));
    }

    private static double share(Flow flow, Flow design, Entry entry) {
        double share = flow.over(design).value();
        if (share > HourlyLoad.MOST * (1 + 1e-9)) {
            throw entry.refused(
                    DataProblem.VALUE_NOT_POSSIBLE,
                    "Asked to read a flow of " + flow + " with a design flow of " + design,
                    "A flow lies between 0 and 120 % of design",
                    "Check the unit of the column and the design flow");
        }
        return share;
    }

    /** Returns the seconds from each row to the next. */
    private static long[] steps(List<ClockCell> cells) {
        long[] steps = new long[cells.size() - 1];
        for (int i = 0; i < steps.length; i++) {
            ClockCell cell = cells.get(i + 1);
            steps[i] = Duration.between(cells.get(i).at(), cell.at()).toSeconds();
            if (steps[i] <= 0) {
                throw cell.entry()
                        .refused(
                                LoadProblem.HOUR_TWICE,
                                "Asked to read the time " + cell.entry().text() + " after "
                                        + cells.get(i).entry().text(),
                                "Times of a log go forward; where the clock is changed they say their offset from UTC",
                                "Put the rows in order, or write the times with their offset");
            }
        }
        return steps;
    }

    private static long usual(long[] steps) {
        long[] sorted = steps.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }

    private static Notes gaps(long[] steps, long usual) {
        long[] wide = Arrays.stream(steps).filter(step -> step > 1.5 * usual).toArray();
        double missing = Arrays.stream(wide).map(step -> step - usual).sum() / 3600.0;
        return wide.length == 0
                ? Notes.NONE
                : Notes.NONE.with(
                        LoadProblem.GAPS_IN_LOG,
                        "The log has " + (wide.length == 1 ? "a gap" : wide.length + " gaps") + " of "
                                + Time.hours(missing) + " together, which are left out");
    }

    private static Notes stretching(double covered, Optional<Time> stretched) {
        return stretched.isEmpty()
                ? Notes.NONE
                : Notes.NONE.with(
                        LoadProblem.STRETCHED_TO_A_YEAR,
                        "The " + Time.hours(covered) + " of the log were stretched to " + stretched.get()
                                + ", as if the rest of the year were like them");
    }
}
