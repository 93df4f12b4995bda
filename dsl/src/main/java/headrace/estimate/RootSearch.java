package headrace.estimate;

import headrace.problem.Refusal;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Kind;
import headrace.units.Power;
import headrace.units.Quantity;
import headrace.units.Speed;
import headrace.units.Torque;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/** Finds every flow, with its speed, at which a map has what was read. */
final class RootSearch {
    private static final int MOST_STEPS = 60;
    private static final double ENOUGH = 1e-15;

    private final PowerMap map;

    RootSearch(PowerMap map) {
        this.map = map;
    }

    /** A flow in m³/s and a speed as a share. */
    record At(double flow, double speed) {}

    /** What is looked up: over a place from 0 to 1 along the range, what the map has there, and what was read. */
    record Looked(Pieces pieces, Value read) {}

    /** A value in SI with its kind, for the sentences of a refusal. */
    record Value(double si, Kind<? extends Quantity<?>> kind, String name) {
        String print(double other) {
            return kind.make().apply(other).toString();
        }
    }

    /** Returns the flow at a place from 0 to 1 of the range of a speed. */
    static double flowAt(PowerMap map, double place, double s) {
        double low = map.lowestFlow(s);
        return low + place * (map.highestFlow(s) - low);
    }

    List<At> byPower(Reading reading) {
        double s = speed(reading);
        Power power = reading.power().orElseThrow();
        return atSpeed(s, reading, look(place -> map.wireWatts(flowAt(map, place, s), s), power));
    }

    List<At> byTorque(Reading reading) {
        double s = speed(reading);
        Torque torque = reading.torque().orElseThrow();
        double radians = s * map.speed().si();
        return atSpeed(s, reading, look(place -> map.shaftWatts(flowAt(map, place, s), s) / radians, torque));
    }

    List<At> byHead(Reading reading) {
        double s = speed(reading);
        Head head = reading.head().orElseThrow();
        return atSpeed(s, reading, look(place -> map.headMetres(flowAt(map, place, s), s), head));
    }

    private static <Q extends Quantity<Q>> Looked look(DoubleUnaryOperator has, Q read) {
        return new Looked(
                Pieces.of(has, 0, 1),
                new Value(read.si(), read.kind(), read.kind().name()));
    }

    private List<At> atSpeed(double s, Reading reading, Looked looked) {
        List<At> found = looked.pieces.rootsOf(looked.read.si).stream()
                .map(place -> new At(flowAt(map, place, s), s))
                .toList();
        if (found.isEmpty()) {
            boolean above = looked.read.si > looked.pieces.greatest();
            double bound = above ? looked.pieces.greatest() : looked.pieces.least();
            Flow where = Flow.cubicMetresPerSecond(flowAt(map, looked.pieces.where(above), s));
            throw outside(above, reading, looked.read, looked.read.print(bound) + " at " + where);
        }
        return found;
    }

    private Refusal outside(boolean above, Reading reading, Value read, String bound) {
        String next = above
                ? "Look for another speed than was read, a heavier liquid, rubbing, or a meter that reads too much"
                : "Look for air, a dry pump, another speed than was read, or a meter that reads too little";
        return new Refusal(
                above ? EstimateProblem.READING_ABOVE_MAP : EstimateProblem.READING_BELOW_MAP,
                "Asked for the flow of " + map.name() + " from " + reading,
                "The " + (above ? "greatest " : "least ") + read.name + " of its map there is " + bound
                        + ", the nearest bound",
                next);
    }

    /** Along the range there is one speed at each place at which the head is as read; the power decides the place. */
    List<At> byPowerAndHead(Reading reading) {
        Head head = reading.head().orElseThrow();
        Power power = reading.power().orElseThrow();
        if (head.metres() <= 0) {
            throw outside(
                    false, reading, new Value(head.metres(), Head.KIND, "head"), "above 0 where the speed is not read");
        }
        double last = 1;
        while (last > 0 && !(map.headMetres(flowAt(map, last, 1), 1) > 0)) {
            last -= 1e-3;
        }
        Looked looked = look(
                place -> {
                    double s = speedAt(place, head.metres());
                    return map.wireWatts(flowAt(map, place, s), s);
                },
                power,
                last);
        List<At> found = looked.pieces.rootsOf(power.si()).stream()
                .map(place -> {
                    double s = speedAt(place, head.metres());
                    return new At(flowAt(map, place, s), s);
                })
                .toList();
        List<At> inside = found.stream()
                .filter(at -> at.speed >= map.slowest() && at.speed <= map.fastest())
                .toList();
        if (inside.isEmpty()) {
            boolean above =
                    found.isEmpty() ? looked.pieces.greatest() < power.si() : found.get(0).speed > map.fastest();
            double bound = above ? looked.pieces.greatest() : looked.pieces.least();
            throw outside(
                    above,
                    reading,
                    looked.read,
                    found.isEmpty()
                            ? looked.read.print(bound) + " along that head"
                            : "at a speed from " + print(map.slowest()) + " to " + print(map.fastest())
                                    + ", and the reading would be met at " + print(found.get(0).speed));
        }
        return inside;
    }

    private static <Q extends Quantity<Q>> Looked look(DoubleUnaryOperator has, Q read, double last) {
        return new Looked(
                Pieces.of(has, 0, last),
                new Value(read.si(), read.kind(), read.kind().name()));
    }

    private String print(double share) {
        return map.speed().times(share).toString();
    }

    /** By similarity the head goes nearly with the square of speed at one place of the range; so this is quick. */
    double speedAt(double place, double metres) {
        double s = 1;
        for (int i = 0; i < MOST_STEPS; i++) {
            double next = s * Math.sqrt(metres / map.headMetres(flowAt(map, place, s), s));
            if (Math.abs(next - s) <= ENOUGH * s) {
                return next;
            }
            s = next;
        }
        return s;
    }

    /** Returns the speed that was read as a share, once it lies in the range of the map. */
    double speed(Reading reading) {
        Speed read = reading.speed().orElseThrow();
        double s = read.over(map.speed()).value();
        if (!(s >= map.slowest() && s <= map.fastest())) {
            throw new Refusal(
                    EstimateProblem.SPEED_OUTSIDE_ESTIMATE,
                    "Asked for the flow of " + map.name() + " from " + reading,
                    "Its map is used from " + print(map.slowest()) + " to " + print(map.fastest()),
                    "Check the unit of the speed, or give the pump set its real range of speeds");
        }
        return s;
    }
}
