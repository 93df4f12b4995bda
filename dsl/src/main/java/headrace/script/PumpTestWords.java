package headrace.script;

import headrace.curve.NpshPoint;
import headrace.curve.PumpTest;
import headrace.curve.TestPoint;
import headrace.liquid.Liquid;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Input;
import headrace.units.Length;
import headrace.units.Speed;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/** Words that make a pump test in the script itself. */
public final class PumpTestWords implements Words {
    @Override
    public String subject() {
        return "Pump tests";
    }

    /** Makes a pump test. */
    @Word(
            help =
                    "A pump test written in the script: for each point its flow, head and shaft power, and its speed where it"
                            + " is another than the test's.",
            example = "pumpTest('P-A', speed: 1450.rpm, liquid: water(20.degC), points: [[0.m3ph, 32.m, 1.2.kW],"
                    + " [30.m3ph, 28.m, 3.1.kW], [60.m3ph, 17.m, 4.4.kW]])",
            choices = {
                "speed: the speed of the test",
                "liquid: what was pumped",
                "points: a list of points, three at least, each a list of flow, head, shaft power and, if need be, speed",
                "npsh: the NPSH required where it was read, a list of pairs of flow and head, if known",
                "diameter: the impeller's diameter, if known",
                "poles: the poles of its motor, if known",
                "source: where the readings come from; 'this script' unless chosen"
            })
    public static PumpTest pumpTest(Map<String, ?> given, String name) {
        Choices choices =
                Choices.of("pumpTest", given, "speed", "liquid", "points", "npsh", "diameter", "poles", "source");
        Speed speed = choices.quantity("speed", Speed.KIND);
        List<TestPoint> points = new ArrayList<>();
        for (Object row : choices.object("points", List.class)) {
            points.add(point(Wanted.object(List.class, row, "a point of pumpTest"), speed));
        }
        String source = choices.text("source", "this script");
        return new PumpTest(
                name,
                speed,
                choices.has("diameter") ? Optional.of(choices.quantity("diameter", Length.KIND)) : Optional.empty(),
                choices.object("liquid", Liquid.class),
                choices.has("poles") ? OptionalInt.of(choices.whole("poles")) : OptionalInt.empty(),
                source,
                Optional.empty(),
                points,
                npsh(choices, speed),
                Notes.NONE,
                Basis.of(Input.of(name, source, points.toString())));
    }

    private static List<NpshPoint> npsh(Choices choices, Speed speed) {
        List<NpshPoint> readings = new ArrayList<>();
        for (Object row : choices.object("npsh", List.class, List.of())) {
            List<?> cells = Wanted.object(List.class, row, "a reading of npsh: of pumpTest");
            if (cells.size() != 2) {
                throw new Refusal(
                        ScriptProblem.WRONG_VALUE,
                        "A reading of npsh: of pumpTest was given as " + cells,
                        "It must be a list of flow and head",
                        "Write it as [30.m3ph, 2.1.m]");
            }
            readings.add(new NpshPoint(
                    Wanted.flow(cells.get(0), "the flow of a reading"),
                    Wanted.head(cells.get(1), "the NPSH of a reading"),
                    speed));
        }
        return readings;
    }

    private static TestPoint point(List<?> cells, Speed speed) {
        if (cells.size() < 3 || cells.size() > 4) {
            throw new Refusal(
                    ScriptProblem.WRONG_VALUE,
                    "A point of pumpTest was given as " + cells,
                    "It must be a list of flow, head and shaft power, and its speed where it is another than the test's",
                    "Write it as [30.m3ph, 28.m, 3.1.kW]");
        }
        return new TestPoint(
                Wanted.flow(cells.get(0), "the flow of a point"),
                Wanted.head(cells.get(1), "the head of a point"),
                Wanted.power(cells.get(2), "the shaft power of a point"),
                cells.size() == 4 ? Wanted.speed(cells.get(3), "the speed of a point") : speed);
    }
}
