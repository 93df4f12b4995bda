package headrace.script;

import headrace.chart.Chart;
import headrace.circuit.SystemCurve;
import headrace.control.ControlLaw;
import headrace.control.SteadyState;
import headrace.curve.Duty;
import headrace.curve.NpshCurve;
import headrace.data.Column;
import headrace.data.Table;
import headrace.operation.OperatingPoint;
import headrace.problem.Refusal;
import headrace.pump.PumpSet;
import headrace.report.SpeedMap;
import headrace.units.Money;
import headrace.units.Quantity;
import java.util.Collection;
import java.util.List;
import java.util.Map;

/** Words that draw maps and take tables and charts out of results. */
public final class ShowWords implements Words {
    @Override
    public String subject() {
        return "Tables and charts";
    }

    /** Maps a pump set over its speeds. */
    @Word(
            help =
                    "The map of a pump set over its range of speeds: head curves, islands of efficiency, and upon them any"
                            + " of a duty, system curves, control laws and operating points, one by one or in lists; beneath it"
                            + " power and efficiency over flow at each speed, and the NPSH required where an npshCurve is"
                            + " given.",
            example = "map(set, design, systemCurve(design), quadratic(design, minimumHead: 35.percent))")
    public static SpeedMap map(Object set, Object... upon) {
        SpeedMap map = SpeedMap.of(Wanted.object(PumpSet.class, set, "the pump set of a map"));
        for (Object one : upon) {
            map = with(map, one);
        }
        return map;
    }

    private static SpeedMap with(SpeedMap map, Object one) {
        if (one instanceof Collection<?> several) {
            SpeedMap all = map;
            for (Object each : several) {
                all = with(all, each);
            }
            return all;
        }
        if (one instanceof Duty duty) {
            return map.with(duty);
        }
        if (one instanceof SystemCurve system) {
            return map.with(system);
        }
        if (one instanceof ControlLaw law) {
            return map.with(law);
        }
        if (one instanceof SteadyState state) {
            return map.with(state.point());
        }
        if (one instanceof OperatingPoint point) {
            return map.with(point);
        }
        if (one instanceof NpshCurve npsh) {
            return map.with(npsh);
        }
        throw new Refusal(
                ScriptProblem.WRONG_VALUE,
                Described.value(one) + " was given to be drawn on a map",
                "A map takes duties, system curves, control laws, operating points and an NPSH curve",
                "Give one of these, or show it by itself");
    }

    /** Takes the chart out of a result. */
    @Word(help = "The chart that a result shows.", example = "chart(curve)")
    public static Chart chart(Object result) {
        return Parts.chart(result, "");
    }

    /** Takes a chart out of a result. */
    @Word(
            help = "With a text: the one of its charts whose title has the text in it.",
            example = "chart(comparison, 'over flow')")
    public static Chart chart(Object result, Object title) {
        return Parts.chart(
                result,
                Wanted.object(CharSequence.class, title, "the title of a chart").toString());
    }

    /** Takes the table out of a result. */
    @Word(help = "The table that a result shows.", example = "table(test)")
    public static Table table(Object result) {
        return Parts.table(result, "");
    }

    /** Takes a table out of a result, or makes one. */
    @Word(
            help =
                    "With a text behind it: the one of its tables whose title has the text in it. With a title and a list"
                            + " of rows, each a map from the column's name to its value: a new table.",
            example = "table('Heads', [20, 40].collect { [flow: it.m3ph, head: curve.headAt(it.m3ph)] })")
    public static Table table(Object resultOrTitle, Object titleOrRows) {
        if (resultOrTitle instanceof CharSequence title && titleOrRows instanceof List<?> rows) {
            return made(title.toString(), rows);
        }
        return Parts.table(
                resultOrTitle,
                Wanted.object(CharSequence.class, titleOrRows, "the title of a table")
                        .toString());
    }

    private static Table made(String title, List<?> rows) {
        if (rows.isEmpty()) {
            throw new Refusal(
                    ScriptProblem.WRONG_VALUE,
                    "An empty list of rows was given for the table '" + title + "'",
                    "A table takes its columns from its first row",
                    "Give at least one row, such as [flow: 20.m3ph, head: 16.m]");
        }
        Map<?, ?> first = row(rows.get(0));
        Table table = new Table(
                title,
                first.entrySet().stream()
                        .map(entry -> column(String.valueOf(entry.getKey()), entry.getValue()))
                        .toList(),
                List.of());
        List<?> names = List.copyOf(first.keySet());
        return table.rows(rows.stream()
                .map(ShowWords::row)
                .map(row -> names.stream().map(row::get).toArray())
                .toList());
    }

    private static Map<?, ?> row(Object given) {
        return Wanted.object(Map.class, given, "a row of a table");
    }

    private static Column column(String name, Object value) {
        if (value instanceof Quantity<?> quantity) {
            return Column.of(name, quantity.kind());
        }
        if (value instanceof Money money) {
            return Column.in(name, money.currency());
        }
        return value instanceof Number ? Column.number(name) : Column.text(name);
    }
}
