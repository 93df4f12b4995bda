package headrace.data;

import headrace.circuit.Branch;
import headrace.circuit.Circuit;
import headrace.circuit.part.PartProblem;
import headrace.data.Form.Field;
import headrace.liquid.Liquid;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.units.Flow;
import headrace.units.FlowCoefficient;
import headrace.units.Kind;
import headrace.units.Length;
import headrace.units.Pressure;
import headrace.units.Quantity;
import headrace.units.Ratio;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * Reads a circuit: a row for each branch, with the junctions between which it lies and the parts that stand in it.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Named by the columns, such as {@code flow [m3/h]} and {@code valve [Kv]}.
 *   <dt>Limits
 *   <dd>The columns that are listed in {@code docs/circuit-file.md}. A cell may be empty where a branch has no such
 *       part.
 *   <dt>Errors
 *   <dd>{@link Refusal} with file, line and column; nothing is taken of a file that is refused.
 *   <dt>Source
 *   <dd>A format of our own.
 * </dl>
 */
public final class CircuitFile {
    static final Field<Ratio> BRANCH = Field.text("branch", true);
    static final Field<Ratio> FROM = Field.text("from", true);
    static final Field<Ratio> TO = Field.text("to", true);
    static final Field<Flow> FLOW = positive("flow", Flow.ZERO, Flow.cubicMetresPerSecond(100), Flow.KIND);
    static final Field<Pressure> LOSS = positive("loss", Pressure.ZERO, Pressure.megapascals(10), Pressure.KIND);
    static final Field<Flow> LOSS_AT = positive("loss at", Flow.ZERO, Flow.cubicMetresPerSecond(100), Flow.KIND);
    static final Field<Ratio> PIPE = Field.text("pipe", false);
    static final Field<Length> INSIDE = positive("inside", Length.ZERO, Length.metres(10), Length.KIND);
    static final Field<Length> ROUGHNESS = positive("roughness", Length.ZERO, Length.metres(1), Length.KIND);
    static final Field<Length> LENGTH = positive("length", Length.ZERO, Length.kilometres(100), Length.KIND);
    static final Field<Ratio> K = positive("k", Ratio.ZERO, Ratio.of(1e6), Ratio.KIND);
    static final Field<FlowCoefficient> VALVE = coefficient("valve");
    static final Field<FlowCoefficient> BALANCING = coefficient("balancing");
    static final Field<FlowCoefficient> CHECK = coefficient("check");
    static final Field<FlowCoefficient> BYPASS = coefficient("bypass");
    static final Field<Pressure> OPENS_AT =
            positive("opens at", Pressure.ZERO, Pressure.megapascals(10), Pressure.KIND);
    static final Field<Flow> LEAST_FLOW = positive("least flow", Flow.ZERO, Flow.cubicMetresPerSecond(100), Flow.KIND);
    static final Field<Pressure> CLOSE_OFF =
            positive("close-off", Pressure.ZERO, Pressure.megapascals(10), Pressure.KIND);
    static final Field<Pressure> LIMITER = positive("limiter", Pressure.ZERO, Pressure.megapascals(10), Pressure.KIND);

    private static final String DRAWS = "pump draws from";
    private static final String DELIVERS = "pump delivers into";

    private static final Form FORM = new Form(
            "circuit",
            List.of("name", "source", "date", DRAWS, DELIVERS),
            List.of(
                    BRANCH,
                    FROM,
                    TO,
                    FLOW,
                    LOSS,
                    LOSS_AT,
                    PIPE,
                    INSIDE,
                    ROUGHNESS,
                    LENGTH,
                    K,
                    VALVE,
                    BALANCING,
                    LIMITER,
                    CHECK,
                    BYPASS,
                    OPENS_AT,
                    LEAST_FLOW,
                    CLOSE_OFF));

    private CircuitFile() {}

    private static <Q extends Quantity<Q>> Field<Q> positive(String column, Q least, Q most, Kind<Q> kind) {
        return new Field<>(column, kind, false, least, most);
    }

    private static Field<FlowCoefficient> coefficient(String column) {
        return positive(column, FlowCoefficient.ZERO, FlowCoefficient.kv(1e6), FlowCoefficient.KIND);
    }

    /** Reads a file with decimal points and commas between the cells. */
    public static Circuit read(Path path, Liquid liquid) {
        return read(path, liquid, NumberStyle.DECIMAL_POINT);
    }

    /** Reads a file whose numbers are written in a style. */
    public static Circuit read(Path path, Liquid liquid, NumberStyle style) {
        Sheet sheet = Sheet.read(path, FORM, style);
        Entry draws = sheet.requiredHead(DRAWS, "return");
        Entry delivers = sheet.requiredHead(DELIVERS, "supply");
        oneCoefficient(sheet);
        if (sheet.size() == 0) {
            throw sheet.refused(
                    DataProblem.TOO_FEW_ROWS,
                    "Asked to read a circuit without rows",
                    "A circuit has at least one branch",
                    "Add the rows");
        }
        String source = sheet.head("source").map(Entry::text).orElse("not stated");
        Basis origin = Basis.of(sheet.input(source));
        List<Branch> branches = branches(sheet);
        try {
            return new Circuit(liquid, delivers.text(), draws.text(), branches, origin);
        } catch (Refusal refusal) {
            throw refusal.at(sheet.lastPlace());
        }
    }

    private static List<Branch> branches(Sheet sheet) {
        List<Branch> branches = new ArrayList<>();
        Map<String, Entry> names = new HashMap<>();
        for (int row = 0; row < sheet.size(); row++) {
            Entry name = sheet.entry(row, BRANCH);
            Entry first = names.putIfAbsent(name.text(), name);
            if (first != null) {
                throw name.refused(
                        DataProblem.CONTRADICTING_STATEMENTS,
                        "Asked to read a second branch '" + name.text() + "'",
                        "The first stands in line " + first.place().line() + ", and each has a name of its own",
                        "Rename one of them");
            }
            branches.add(new CircuitRow(sheet, row).branch());
        }
        return branches;
    }

    /** Kv and Cv side by side are more likely a slip than a wish. */
    private static void oneCoefficient(Sheet sheet) {
        List<Field<FlowCoefficient>> all = Stream.of(VALVE, BALANCING, CHECK, BYPASS)
                .filter(field -> sheet.has(field.column()))
                .toList();
        for (Field<FlowCoefficient> field : all) {
            String one = sheet.unitOf(all.get(0));
            String other = sheet.unitOf(field);
            if (!one.equals(other)) {
                throw sheet.heading(field)
                        .refused(
                                PartProblem.MIXED_FLOW_COEFFICIENTS,
                                "Asked to read a circuit with the column '"
                                        + all.get(0).column() + "' in " + symbol(one) + " and '" + field.column()
                                        + "' in " + symbol(other),
                                "A file has all flow coefficients in one unit",
                                "Convert one of the columns: 1 Kv is 1.156 Cv");
            }
        }
    }

    private static String symbol(String unit) {
        return FlowCoefficient.KIND.unit(unit).symbol();
    }
}
