package headrace.circuit;

import headrace.circuit.part.Part;
import headrace.circuit.part.PartProblem;
import headrace.circuit.part.valve.ControlValve;
import headrace.circuit.part.valve.FixedValve;
import headrace.circuit.solve.Crossings;
import headrace.circuit.solve.LinkState;
import headrace.circuit.solve.Scan;
import headrace.problem.Notes;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Numbers;
import headrace.work.Work;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What has to be said about a circuit as it stands. */
final class CircuitNotes {
    private CircuitNotes() {}

    static Notes of(Circuit circuit, List<BranchState> states) {
        Notes all = circuit.notes();
        for (BranchState state : states) {
            Work.poll();
            all = all.and(starved(circuit, state)).and(driven(circuit, state));
            for (Part part : state.branch().parts()) {
                if (state.state() != LinkState.REMOVED) {
                    all = all.and(part.notesAt(state.flow(), circuit.liquid()));
                }
            }
        }
        return all;
    }

    /** Names the valves that are given in another unit than the first: easily mistaken, if not wrong. */
    static Notes mixedUnits(Circuit circuit) {
        Map<String, String> first = new LinkedHashMap<>();
        Notes all = Notes.NONE;
        for (Branch branch : circuit.branches()) {
            for (Part part : branch.parts()) {
                Optional<String> unit = part instanceof ControlValve valve
                        ? valve.open().said()
                        : part instanceof FixedValve set ? set.coefficient().said() : Optional.empty();
                if (unit.isPresent() && !first.isEmpty() && !first.containsKey(unit.get())) {
                    all = all.with(
                            PartProblem.MIXED_FLOW_COEFFICIENTS,
                            "'" + part.name() + "' is given in " + unit.get() + ", '"
                                    + first.values().iterator().next() + "' in "
                                    + first.keySet().iterator().next() + "; the two differ by a factor of 1.156");
                } else if (unit.isPresent()) {
                    first.putIfAbsent(unit.get(), part.name());
                }
            }
        }
        return all;
    }

    /** What has to be said of one of several solutions. */
    static Notes oneOf(List<Crossings.Point> points, Crossings.Point point) {
        String all = String.join(
                ", ",
                points.stream()
                        .map(each -> Flow.cubicMetresPerSecond(each.cubicMetresPerSecond()) + " at "
                                + Head.metres(each.metres()))
                        .toList());
        return Notes.NONE.with(
                CircuitProblem.SEVERAL_OPERATING_POINTS,
                "One of " + points.size() + " points at which pumps and circuit agree: " + all + "; this one "
                        + (point.settled() ? "holds when it is disturbed" : "does not hold when it is disturbed"));
    }

    /** What has to be said of a solution that was looked for. */
    static Notes searched(Scan scan) {
        return Notes.NONE.with(
                CircuitProblem.LOOKED_FOR_OPERATING_POINT,
                "Newton's method did not meet the law; " + scan.looked() + " heads from 0 to " + Head.metres(scan.to())
                        + " were looked at, and law and circuit meet "
                        + scan.heads().size()
                        + (scan.heads().size() == 1 ? " time" : " times, of which this is the lowest"));
    }

    /** A valve that would not pass the demand if it had the whole head of its branch for itself. */
    private static Notes beyondValve(Circuit circuit, BranchState state) {
        Flow asked = state.demand().orElseThrow();
        return state.branch()
                .valve()
                .filter(valve -> valve.headAt(asked, circuit.liquid()).compareTo(state.available()) > 0)
                .map(valve -> Notes.NONE.with(
                        PartProblem.DEMAND_ABOVE_OPEN_VALVE,
                        "'" + valve.name() + "' takes " + valve.headAt(asked, circuit.liquid()) + " at " + asked
                                + " when it is open, more than the " + state.available() + " that stand across '"
                                + state.name() + "'"))
                .orElse(Notes.NONE);
    }

    private static Notes starved(Circuit circuit, BranchState state) {
        if (!state.isStarved()) {
            return Notes.NONE;
        }
        if (state.flow().si() <= 0) {
            return Notes.NONE.with(
                    CircuitProblem.BRANCH_NOT_FED,
                    "'" + state.name() + "' is asked for " + state.demand().orElseThrow()
                            + " and gets nothing: the head across it is " + state.available());
        }
        return beyondValve(circuit, state)
                .with(
                        CircuitProblem.STARVED_BRANCH,
                        "'" + state.name() + "' gets " + state.flow() + " of "
                                + state.demand().orElseThrow() + ", "
                                + Numbers.print(state.delivered().toPercent()) + " %, and is short by "
                                + state.missing());
    }

    /** A pump in a branch that has head to give and moves nothing forward. */
    private static Notes driven(Circuit circuit, BranchState state) {
        if (state.state() == LinkState.REMOVED || state.flow().si() > 0) {
            return Notes.NONE;
        }
        Notes all = Notes.NONE;
        for (Part part : state.branch().parts()) {
            if (part.in(circuit.liquid()).headMetres(0) < 0) {
                all = all.with(
                        CircuitProblem.PUMPS_FIGHTING,
                        "'" + part.name() + "' in '" + state.name() + "' works against other pumps: its flow is "
                                + state.flow() + " at " + state.available() + " across the branch");
            }
        }
        return all;
    }
}
