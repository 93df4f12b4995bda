package headrace.report;

import headrace.circuit.SystemCurve;
import headrace.control.ControlLaw;
import headrace.curve.Duty;
import headrace.curve.NpshCurve;
import headrace.operation.OperatingPoint;
import headrace.problem.Notes;
import headrace.pump.PumpSet;
import headrace.record.Basis;
import headrace.record.Traced;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A pump set over its range of speeds, with what is to be drawn upon it.
 *
 * @param set the pump set
 * @param design the design point, if one is to be marked
 * @param systems system curves
 * @param laws control laws; those that follow flow are drawn as lines
 * @param points operating points
 * @param npsh the NPSH required, if it is to be shown beneath
 */
public record SpeedMap(
        PumpSet set,
        Optional<Duty> design,
        List<SystemCurve> systems,
        List<ControlLaw> laws,
        List<OperatingPoint> points,
        Optional<NpshCurve> npsh)
        implements Traced {
    /** Keeps the lists from changing. */
    public SpeedMap {
        systems = List.copyOf(systems);
        laws = List.copyOf(laws);
        points = List.copyOf(points);
    }

    /** Returns the map of a pump set, with nothing drawn upon it yet. */
    public static SpeedMap of(PumpSet set) {
        return new SpeedMap(set, Optional.empty(), List.of(), List.of(), List.of(), Optional.empty());
    }

    /** Returns this map with a design point. */
    public SpeedMap with(Duty duty) {
        return new SpeedMap(set, Optional.of(duty), systems, laws, points, npsh);
    }

    /** Returns this map with a system curve. */
    public SpeedMap with(SystemCurve system) {
        return new SpeedMap(set, design, joined(systems, system), laws, points, npsh);
    }

    /** Returns this map with a control law, and with the design point that it is made for. */
    public SpeedMap with(ControlLaw law) {
        return new SpeedMap(set, design.or(law::design), systems, joined(laws, law), points, npsh);
    }

    /** Returns this map with an operating point. */
    public SpeedMap with(OperatingPoint point) {
        return new SpeedMap(set, design, systems, laws, joined(points, point), npsh);
    }

    /** Returns this map with the NPSH that the pump requires, as it is with the impeller and the liquid of the set. */
    public SpeedMap with(NpshCurve required) {
        return new SpeedMap(set, design, systems, laws, points, Optional.of(required.movedAs(set.curve())));
    }

    private static <T> List<T> joined(List<T> some, T one) {
        List<T> all = new ArrayList<>(some);
        all.add(one);
        return all;
    }

    @Override
    public Notes notes() {
        return points.stream().map(OperatingPoint::notes).reduce(set.notes(), Notes::and);
    }

    @Override
    public Basis basis() {
        return Stream.of(
                        systems.stream().map(SystemCurve::basis),
                        points.stream().map(OperatingPoint::basis),
                        npsh.stream().map(NpshCurve::basis))
                .flatMap(part -> part)
                .reduce(set.basis(), Basis::and);
    }
}
