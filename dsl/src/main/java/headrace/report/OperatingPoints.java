package headrace.report;

import headrace.data.Column;
import headrace.data.Table;
import headrace.operation.OperatingPoint;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Speed;
import java.util.List;

/** Operating points as the rows of a table. */
final class OperatingPoints {
    private OperatingPoints() {}

    static Table table(String title, List<OperatingPoint> points) {
        return Table.of(
                        title,
                        Column.of("flow", Flow.KIND),
                        Column.of("head", Head.KIND),
                        Column.of("speed", Speed.KIND),
                        Column.of("pump efficiency", Ratio.KIND),
                        Column.of("shaft power", Power.KIND),
                        Column.of("wire power", Power.KIND),
                        Column.of("wire-to-water", Ratio.KIND))
                .rows(points.stream().map(OperatingPoints::row).toList());
    }

    private static Object[] row(OperatingPoint point) {
        return new Object[] {
            point.flow(),
            point.head(),
            point.speed(),
            point.pumpEfficiency(),
            point.shaftPower(),
            point.wirePower(),
            point.wireToWater()
        };
    }
}
