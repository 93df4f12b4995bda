package headrace.data;

import headrace.curve.PumpTest;
import headrace.curve.TestPoint;
import headrace.data.Form.Field;
import headrace.liquid.Liquid;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Length;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Speed;
import headrace.units.Temperature;
import java.nio.file.Path;
import java.util.List;

/**
 * Reads a pump file: head lines that say which pump was tested how, and a row for each point.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Each column and each head line names its own; there is no usual unit to fall back on.
 *   <dt>Limits
 *   <dd>UTF-8, at most 1 MiB, at least three points at different flows. The format is described in
 *       {@code docs/pump-file.md}.
 *   <dt>Errors
 *   <dd>{@link Refusal} with file, line and column. A blemish that changes nothing (a byte-order mark, unordered rows,
 *       repeated flows, a speed at each point) is a note of the test.
 *   <dt>Source
 *   <dd>A format of our own. Test speeds within 50 to 120 % of the stated one: ISO 9906:2012, from memory, unconfirmed.
 * </dl>
 */
public final class PumpFile {
    static final Field<Flow> FLOW = new Field<>("flow", Flow.KIND, true, Flow.ZERO, Flow.cubicMetresPerSecond(100));
    static final Field<Head> HEAD = new Field<>("head", Head.KIND, true, Head.ZERO, Head.metres(5000));
    static final Field<Power> POWER =
            new Field<>("shaft power", Power.KIND, true, Power.watts(0.1), Power.megawatts(100));
    static final Field<Speed> SPEED =
            new Field<>("speed", Speed.KIND, false, Speed.revolutionsPerMinute(10), Speed.revolutionsPerMinute(60_000));
    static final Field<Ratio> EFFICIENCY = new Field<>("efficiency", Ratio.KIND, false, Ratio.ZERO, Ratio.of(1));
    static final Field<Head> NPSH = new Field<>("npsh", Head.KIND, false, Head.metres(0.01), Head.metres(1000));
    static final Field<Length> DIAMETER =
            new Field<>("impeller diameter", Length.KIND, false, Length.millimetres(10), Length.metres(5));
    static final Field<Temperature> TEMPERATURE =
            new Field<>("temperature", Temperature.KIND, false, Temperature.celsius(0), Temperature.celsius(150));

    private static final Form FORM = new Form(
            "pump file",
            List.of("name", "speed", "impeller diameter", "liquid", "poles", "source", "date"),
            List.of(FLOW, HEAD, POWER, SPEED, EFFICIENCY, NPSH));

    private PumpFile() {}

    /** Reads a file with decimal points and commas between the cells. */
    public static PumpTest read(Path path) {
        return read(path, NumberStyle.DECIMAL_POINT);
    }

    /** Reads a file whose numbers are written in a style. */
    public static PumpTest read(Path path, NumberStyle style) {
        Sheet sheet = Sheet.read(path, FORM, style);
        PumpHead head = new PumpHead(sheet);
        PumpPoints points = new PumpPoints(sheet);
        String name = head.name();
        Speed speed = head.speed();
        Liquid liquid = head.liquid();
        List<TestPoint> read = points.points(speed, liquid);
        return new PumpTest(
                name,
                speed,
                head.impellerDiameter(),
                liquid,
                head.poles(speed),
                head.source(),
                head.date(),
                read,
                points.npsh(speed),
                sheet.notes().and(head.notes()).and(points.notes()),
                Basis.of(sheet.input(head.source())));
    }
}
