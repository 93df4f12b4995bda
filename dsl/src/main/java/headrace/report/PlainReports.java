package headrace.report;

import headrace.chart.Chart;
import headrace.curve.CurvePoint;
import headrace.curve.Droop;
import headrace.data.Table;
import headrace.liquid.Liquid;
import headrace.report.Block.ChartBlock;
import headrace.report.Block.TableBlock;
import java.util.List;
import java.util.Locale;

/** How the small objects of a script show themselves. */
final class PlainReports {
    private static final double SCALDING = 60;
    private static final double FLASHING = 100;
    private static final double NEAR_FREEZING = 5;

    private PlainReports() {}

    static Shown table(Table table) {
        return new Shown(table.title(), List.of(), List.of(new TableBlock(table)));
    }

    static Shown chart(Chart chart) {
        return new Shown(chart.title(), List.of(), List.of(new ChartBlock(chart)));
    }

    static Shown liquid(Liquid liquid) {
        return Composed.titled(capital(liquid.toString()))
                .fact("density", liquid.density())
                .fact("viscosity", liquid.viscosity())
                .fact("kinematic viscosity", liquid.kinematicViscosity())
                .fact("vapour pressure", liquid.vapourPressure())
                .fact("heat capacity", liquid.heatCapacity())
                .shown(liquid, cautions(liquid));
    }

    private static String[] cautions(Liquid liquid) {
        double celsius = liquid.temperature().toCelsius();
        if (celsius > FLASHING) {
            return new String[] {Caution.FLASHING, Caution.HOT};
        }
        if (celsius > SCALDING) {
            return new String[] {Caution.HOT};
        }
        boolean nearFreezing = liquid.freezingPoint()
                .map(freezing -> celsius - freezing.toCelsius() < NEAR_FREEZING)
                .orElse(false);
        return nearFreezing ? new String[] {Caution.FREEZING} : new String[0];
    }

    static Shown curvePoint(CurvePoint point) {
        return Composed.titled("Point of a pump curve")
                .fact("flow", point.flow())
                .fact("head", point.head())
                .fact("shaft power", point.shaftPower())
                .fact("efficiency", point.efficiency())
                .fact("speed", point.speed())
                .shown(point.notes());
    }

    static Shown droop(Droop droop) {
        return Composed.titled("Droop of a head curve")
                .line("The head rises by " + droop.rise() + " from " + droop.foot() + " to its maximum of "
                        + droop.maximum() + " at " + droop.flowOfMaximum() + ": heads in between belong to two flows.")
                .shown();
    }

    static String capital(String text) {
        return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
    }
}
