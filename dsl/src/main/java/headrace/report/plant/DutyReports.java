package headrace.report.plant;

import headrace.control.duty.DutyEvent;
import headrace.control.duty.DutyPlan;
import headrace.control.duty.DutyRecord;
import headrace.control.duty.Fault;
import headrace.data.Column;
import headrace.data.Table;
import headrace.report.Caution;
import headrace.report.Composed;
import headrace.report.Shown;
import headrace.units.Time;
import java.util.List;

/** How duty and standby show themselves: run times, starts and gaps, and what happened. */
public final class DutyReports {
    private static final int EVENTS = 40;

    private DutyReports() {}

    /** Shows a plan. */
    public static Shown plan(DutyPlan plan) {
        return Composed.titled("Duty and standby: " + plan)
                .fact("pumps", plan.pumps())
                .fact("alternation", plan.interval() + " " + plan.counted().words())
                .fact("overlap", plan.changeover().overlap())
                .fact("start on fault after", plan.changeover().faultDelay())
                .shown();
    }

    /** Shows a record. */
    public static Shown record(DutyRecord record) {
        Table table = Table.of(
                "Books",
                Column.text("pump"),
                Column.in("run time", "s"),
                Column.of("run hours", Time.KIND),
                Column.number("starts"));
        for (int pump = 0; pump < record.ran().size(); pump++) {
            Time ran = record.ran().get(pump);
            table = table.row("pump " + (pump + 1), ran, ran, record.starts().get(pump));
        }
        return Composed.titled("Duty and standby over " + record.length())
                .line("The run times differ by " + record.spread() + "; " + record.alternations() + " alternations, "
                        + record.leftOut() + " left out.")
                .fact("flow wanted", seconds(record.wanted()))
                .fact("no pump after a fault", seconds(record.gap()))
                .fact("no pump fit", seconds(record.nobody()))
                .fact("two pumps at once", seconds(record.overlap()))
                .fact("left over when the books are closed", seconds(record.unaccounted()))
                .table(table)
                .table(events(record))
                .shown(record, Caution.RESTART);
    }

    /** Shows faults, a row each. */
    public static Shown faults(List<Fault> faults) {
        Table table = Table.of(
                        "Faults, since the beginning",
                        Column.text("pump"),
                        Column.of("from", Time.KIND),
                        Column.of("to", Time.KIND),
                        Column.of("out for", Time.KIND))
                .rows(faults.stream()
                        .map(fault -> new Object[] {
                            "pump " + (fault.pump() + 1),
                            Time.seconds(fault.span().from()),
                            Time.seconds(fault.span().to()),
                            Time.seconds(fault.span().seconds())
                        })
                        .toList());
        return Composed.titled(faults.size() + (faults.size() == 1 ? " fault" : " faults"))
                .table(table)
                .shown();
    }

    private static String seconds(Time time) {
        return time + " (" + Math.round(time.seconds()) + " s)";
    }

    private static Table events(DutyRecord record) {
        Table table = Table.of("What happened at first", Column.text("when and what"));
        for (DutyEvent event : record.events().stream().limit(EVENTS).toList()) {
            table = table.row(event.toString());
        }
        return table;
    }
}
