package headrace.report;

import headrace.commission.CommissioningSheet;
import headrace.commission.SiteVerdict;
import headrace.data.Column;
import headrace.data.Table;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Speed;
import java.util.List;

/** How a commissioning sheet and what was read against it show themselves. */
final class CommissionReports {
    private CommissionReports() {}

    static Shown sheet(CommissioningSheet sheet) {
        return Composed.titled(
                        "Commissioning sheet of " + sheet.estimator().map().name())
                .line(
                        "Read at each speed, in this order: head and wire power with the circuit open, then for as short a"
                                + " time as it takes against a closed valve, watched.")
                .fact("design duty", sheet.duty() + " at " + sheet.dutySpeed())
                .fact("against a closed valve", sheet.deadHead().map(time -> time + ", at " + time.speed()))
                .table(expected(sheet, true))
                .table(expected(sheet, false))
                .line("If the wire power does not change when a valve is opened, the flow did not change.")
                .shown(sheet, Caution.RESTART, Caution.DEAD_HEAD, Caution.ROTATION, Caution.HOT, Caution.ESTIMATE);
    }

    private static Table expected(CommissioningSheet sheet, boolean closed) {
        return Table.of(
                        closed
                                ? "Expected against a closed valve, tolerance k = 2"
                                : "Expected with the circuit open as at design, tolerance k = 2",
                        Column.of("speed", Speed.KIND),
                        Column.of("flow", Flow.KIND),
                        Column.of("head", Head.KIND),
                        Column.of("± head", Head.KIND),
                        Column.of("wire power", Power.KIND),
                        Column.of("± wire power", Power.KIND))
                .rows(sheet.rows().stream().map(row -> cells(row, closed)).toList());
    }

    private static Object[] cells(CommissioningSheet.Row row, boolean closed) {
        return closed
                ? new Object[] {
                    row.speed(),
                    Flow.ZERO,
                    row.shutOffHead().value(),
                    row.shutOffHead().expanded(),
                    row.closedPower().value(),
                    row.closedPower().expanded()
                }
                : new Object[] {
                    row.speed(),
                    row.dutyFlow(),
                    row.dutyHead().value(),
                    row.dutyHead().expanded(),
                    row.dutyPower().value(),
                    row.dutyPower().expanded()
                };
    }

    static Shown verdict(SiteVerdict verdict) {
        SiteVerdict.Likely first = verdict.causes().get(0);
        Composed composed = Composed.titled(
                        "Readings of " + verdict.sheet().estimator().map().name())
                .line(capital(verdict.toString()) + ".");
        if (verdict.explained()) {
            composed.line("By this it is told: " + first.cause().sign() + ".")
                    .line(first.cause().next());
        }
        return composed.table(lines(verdict))
                .table(causes(verdict.causes()))
                .shown(verdict, Caution.RESTART, Caution.DEAD_HEAD, Caution.ROTATION, Caution.ESTIMATE);
    }

    private static String capital(String text) {
        return Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }

    private static Table lines(SiteVerdict verdict) {
        return Table.of(
                        "Read and expected",
                        Column.of("speed", Speed.KIND),
                        Column.text("what"),
                        Column.text("read"),
                        Column.text("expected"),
                        Column.text("inside"))
                .rows(verdict.lines().stream()
                        .map(line -> new Object[] {
                            line.speed(), line.what(), line.read(), line.expected(), line.inside() ? "yes" : "no"
                        })
                        .toList());
    }

    private static Table causes(List<SiteVerdict.Likely> causes) {
        return Table.of(
                        "How likely the readings make each cause",
                        Column.text("cause"),
                        Column.of("share", Ratio.KIND),
                        Column.text("size that fits best"))
                .rows(causes.stream()
                        .map(each -> new Object[] {
                            each.cause().toString(),
                            Ratio.of(Math.rint(each.share().value() * 1e4) / 1e4),
                            each.sized()
                        })
                        .toList());
    }
}
