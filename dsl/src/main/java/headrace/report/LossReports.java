package headrace.report;

import headrace.data.Column;
import headrace.data.Table;
import headrace.drive.Drive;
import headrace.drive.DriveLosses;
import headrace.drive.FittedLosses;
import headrace.drive.LossModel;
import headrace.drive.LossPoint;
import headrace.units.Power;
import headrace.units.Ratio;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** How loss models, and drives with declared losses, show themselves. */
final class LossReports {
    private LossReports() {}

    static Shown model(LossModel model) {
        Composed composed = Composed.titled("Loss model: " + model.name())
                .line(PlainReports.capital(model.statement()) + ".")
                .fact("efficiency follows load", model.followsLoad() ? "yes" : "no");
        if (model instanceof FittedLosses fitted) {
            composed.fact("residual", fitted.residual() + " of the mean loss")
                    .table(points(
                            new String[] {"speed", "torque"},
                            fitted.points(),
                            point -> fitted.wattsAt(
                                    point.speed().value(), point.torque().value())));
        }
        return composed.shown(model.notes());
    }

    static Shown drive(Drive drive) {
        Composed composed = Composed.titled(PlainReports.capital(drive.name()))
                .fact("loss at 90 % frequency and 100 % torque current", drive.referenceLoss());
        drive.ieClass()
                .ifPresent(ieClass -> composed.fact(
                        "efficiency class by that loss", "IE" + ieClass + ", against the reference losses ± 25 %"));
        if (drive.extras().standby().si() > 0) {
            composed.fact("standby power", drive.extras().standby());
        }
        if (drive.extras().magnetisingCurrent().si() > 0) {
            composed.fact("magnetising current", drive.extras().magnetisingCurrent() + " of the motor's rated current");
        }
        drive.extras().declared().ifPresent(losses -> composed.table(declared(losses)));
        return composed.shown(drive, Caution.RESTART);
    }

    private static Table declared(DriveLosses losses) {
        return points(
                new String[] {"frequency", "torque current"},
                losses.points(),
                point -> losses.wattsAt(point.speed().value(), point.torque().value()));
    }

    private static Table points(String[] names, List<LossPoint> points, ToDoubleFunction<LossPoint> formula) {
        Table table = Table.of(
                "Losses as given and by the formula",
                Column.of(names[0], Ratio.KIND),
                Column.of(names[1], Ratio.KIND),
                Column.of("given", Power.KIND),
                Column.of("by the formula", Power.KIND));
        for (LossPoint point : points) {
            table = table.row(point.speed(), point.torque(), point.loss(), Power.watts(formula.applyAsDouble(point)));
        }
        return table;
    }
}
