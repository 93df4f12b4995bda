package headrace.curve;

import headrace.liquid.Liquid;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Length;
import headrace.units.Speed;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * A pump test: what was read, and on which pump.
 *
 * @param name the pump's name
 * @param speed the speed to which the points are brought, above 0
 * @param impellerDiameter the impeller's diameter, if stated
 * @param liquid what was pumped
 * @param poles the poles of the motor that it is built for, if stated
 * @param source where the readings come from
 * @param date the day of the test, if stated
 * @param points the readings, three at least, in the order in which they were given
 * @param npsh the readings of the NPSH required, none if it was not tested
 * @param notes what the reader of the test had to say
 * @param basis what the test rests on
 */
public record PumpTest(
        String name,
        Speed speed,
        Optional<Length> impellerDiameter,
        Liquid liquid,
        OptionalInt poles,
        String source,
        Optional<LocalDate> date,
        List<TestPoint> points,
        List<NpshPoint> npsh,
        Notes notes,
        Basis basis)
        implements Traced {
    /** A line through two points says nothing about scatter, and a pump curve bends. */
    private static final int FEWEST_POINTS = 3;

    /** Refuses with {@code TOO_FEW_POINTS} or {@code IMPOSSIBLE_TEST}. */
    public PumpTest {
        points = List.copyOf(points);
        npsh = List.copyOf(npsh);
        require(!name.isBlank(), "without a name", "Every pump has a name");
        require(speed.si() > 0, "at a speed of " + speed, "A test is at a speed above 0");
        require(impellerDiameter.map(d -> d.si() > 0).orElse(true), "with no diameter", "A diameter is above 0");
        int count = poles.orElse(2);
        require(count > 0 && count % 2 == 0, "with " + count + " poles", "Poles come in pairs: 2, 4, 6, 8");
        long flows = points.stream().map(TestPoint::flow).distinct().count();
        if (flows < FEWEST_POINTS) {
            throw new Refusal(
                    CurveProblem.TOO_FEW_POINTS,
                    "Given a test of " + name + " with " + points.size() + " points at " + flows + " different flows",
                    "A curve needs three points at different flows, and six before its scatter can be stated",
                    "Add points");
        }
    }

    /** Makes a test without readings of the NPSH required. */
    public PumpTest(
            String name,
            Speed speed,
            Optional<Length> impellerDiameter,
            Liquid liquid,
            OptionalInt poles,
            String source,
            Optional<LocalDate> date,
            List<TestPoint> points,
            Notes notes,
            Basis basis) {
        this(name, speed, impellerDiameter, liquid, poles, source, date, points, List.of(), notes, basis);
    }

    private static void require(boolean possible, String asked, String rule) {
        if (!possible) {
            throw new Refusal(
                    CurveProblem.IMPOSSIBLE_TEST, "Given a pump test " + asked, rule, "Correct the head of the test");
        }
    }

    /** Returns a test of which only the needful is known. */
    public static PumpTest of(String name, Speed speed, Liquid liquid, List<TestPoint> points) {
        return new PumpTest(
                name,
                speed,
                Optional.empty(),
                liquid,
                OptionalInt.empty(),
                "not stated",
                Optional.empty(),
                points,
                List.of(),
                Notes.NONE,
                Basis.NONE);
    }

    /** Returns this test with other readings. */
    public PumpTest with(List<TestPoint> others) {
        return new PumpTest(name, speed, impellerDiameter, liquid, poles, source, date, others, npsh, notes, basis);
    }

    /** Returns this test with readings of the NPSH required. */
    public PumpTest withNpsh(List<NpshPoint> readings) {
        return new PumpTest(name, speed, impellerDiameter, liquid, poles, source, date, points, readings, notes, basis);
    }

    @Override
    public String toString() {
        return name + ": " + points.size() + " points at " + speed;
    }
}
