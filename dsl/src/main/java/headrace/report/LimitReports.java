package headrace.report;

import headrace.data.Column;
import headrace.data.Table;
import headrace.energy.RegionHours;
import headrace.operation.limit.DeadHead;
import headrace.operation.limit.MinimumFlow;
import headrace.operation.limit.OperatingRegion.Zone;
import headrace.operation.limit.Overload;
import headrace.operation.limit.PumpLimits;
import headrace.operation.limit.TorqueOverSpeed;
import headrace.units.Flow;
import headrace.units.Numbers;
import headrace.units.Ratio;
import headrace.units.Speed;
import headrace.units.Time;
import headrace.units.Torque;
import java.util.List;

/** How the limits of a pump set show themselves. */
final class LimitReports {
    private LimitReports() {}

    static Shown limits(PumpLimits limits) {
        Overload overload = limits.overload();
        MinimumFlow least = limits.minimumFlowAt(limits.reach().set().maximumSpeed());
        return Composed.titled("Limits of " + limits.reach().set().curve().name())
                .line(
                        overload.nonOverloading()
                                ? "Nothing within reach overloads the motor: it gives " + overload.available()
                                        + ", and the pump takes at most " + overload.greatest() + " at "
                                        + overload.at() + "."
                                : "The motor gives " + overload.available() + " and is overloaded from "
                                        + overload.from().orElse(overload.at()) + " on, up to "
                                        + overload.greatest() + " at " + overload.at() + ".")
                .fact("within reach", limits.reach())
                .fact("operating region", limits.region())
                .fact("least stable flow at " + least.speed(), least.stable())
                .fact("least flow for a rise of " + least.limit(), least.thermal())
                .chart(LimitChart.of(limits))
                .table(torque(limits))
                .shown(limits, Caution.DEAD_HEAD, Caution.ESTIMATE);
    }

    private static Table torque(PumpLimits limits) {
        return Table.of(
                        "Torque over speed, the greatest within reach",
                        Column.of("speed", Speed.KIND),
                        Column.of("torque of the pump", Torque.KIND),
                        Column.of("torque that the motor gives", Torque.KIND),
                        Column.of("least flow", Flow.KIND))
                .rows(limits.torque().rows().stream()
                        .map(row -> row(limits, row))
                        .toList());
    }

    private static Object[] row(PumpLimits limits, TorqueOverSpeed.Row row) {
        return new Object[] {
            row.speed(),
            row.pump(),
            row.motor(),
            limits.minimumFlowAt(row.speed()).flow()
        };
    }

    static Shown deadHead(DeadHead time) {
        return Composed.titled("Against a closed valve at " + time.speed())
                .line("Never use this time as permission.")
                .fact(
                        "time to " + time.limit() + ", without heat given off",
                        Numbers.print(time.time().toMinutes()) + " min")
                .fact("shaft power at no flow", time.power())
                .shown(time, Caution.DEAD_HEAD);
    }

    static Shown hours(RegionHours hours) {
        return Composed.titled("Hours in the operating region: " + hours.law())
                .line(hours.share(Zone.PREFERRED) + " of the running hours lie in the preferred region.")
                .table(hours("Hours in the operating region", List.of(hours)))
                .shown(hours);
    }

    static Table hours(String title, List<RegionHours> laws) {
        return Table.of(
                        title,
                        Column.text("law"),
                        Column.of("preferred", Time.KIND),
                        Column.of("allowable", Time.KIND),
                        Column.of("outside", Time.KIND),
                        Column.of("off", Time.KIND),
                        Column.of("share preferred", Ratio.KIND))
                .rows(laws.stream()
                        .map(law -> new Object[] {
                            law.law(),
                            law.hours().get(Zone.PREFERRED),
                            law.hours().get(Zone.ALLOWABLE),
                            law.hours().get(Zone.OUTSIDE),
                            law.off(),
                            law.share(Zone.PREFERRED)
                        })
                        .toList());
    }
}
