package headrace.report;

import headrace.curve.CurvePoint;
import headrace.curve.PumpCurve;
import headrace.data.Column;
import headrace.data.Table;
import headrace.pump.PumpSet;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Speed;
import java.util.ArrayList;
import java.util.List;

/** How a map over speed shows itself: the chart, and the best point at each speed. */
final class SpeedMapReport {
    private SpeedMapReport() {}

    static Shown of(SpeedMap map) {
        PumpSet set = map.set();
        Composed composed = Composed.titled("Map of " + set.curve().name() + " over speed")
                .line("From " + set.minimumSpeed() + (set.minimumSpeedStated() || !set.hasDrive() ? "" : " (assumed)")
                        + " to " + set.maximumSpeed() + ", by the affinity laws; tested at "
                        + set.curve().testedSpeed() + ".")
                .chart(SpeedMapChart.of(map))
                .chart(SpeedPanelsChart.of(map))
                .table(speeds(map));
        if (!map.points().isEmpty()) {
            composed.table(OperatingPoints.table("Operating points", map.points()));
        }
        List<String> cautions = new ArrayList<>(List.of(Caution.ESTIMATE));
        if (set.maximumSpeed().si() > set.curve().testedSpeed().si() * (1 + 1e-9)) {
            cautions.add(Caution.OVERSPEED);
        }
        return composed.shown(map, cautions.toArray(String[]::new));
    }

    private static Table speeds(SpeedMap map) {
        Table table = Table.of(
                "Best efficiency at each speed",
                Column.of("speed", Speed.KIND),
                Column.of("shut-off head", Head.KIND),
                Column.of("flow", Flow.KIND),
                Column.of("head", Head.KIND),
                Column.of("shaft power", Power.KIND),
                Column.of("pump efficiency", Ratio.KIND));
        for (Speed speed : SpeedMapChart.speeds(map)) {
            PumpCurve moved = map.set().curve().atSpeed(speed);
            CurvePoint best = moved.bestEfficiencyPoint();
            Head shutOff = moved.lowestFlow().si() == 0 ? moved.headAt(Flow.ZERO) : null;
            table = table.row(speed, shutOff, best.flow(), best.head(), best.shaftPower(), best.efficiency());
        }
        return table;
    }
}
