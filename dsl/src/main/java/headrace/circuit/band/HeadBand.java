package headrace.circuit.band;

import headrace.circuit.Branch;
import headrace.circuit.Circuit;
import headrace.circuit.CircuitProblem;
import headrace.circuit.CircuitSolver;
import headrace.circuit.Demands;
import headrace.circuit.LeastFlow;
import headrace.circuit.part.valve.MinimumFlowValve;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Flow;
import headrace.work.Steps;
import headrace.work.Work;
import java.util.ArrayList;
import java.util.List;

/**
 * The head that a circuit needs at the pump against total flow: not a curve but a band, because it depends on which
 * valves take the flow.
 *
 * <p>At a total flow the least need is that of the flows that all open valves would share; the greatest is reached
 * where all terminals but one take all or nothing.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Heads of the liquid at the pump.
 *   <dt>Limits
 *   <dd>Total flows above 0 and up to the sum of the demands. Minimum-flow valves are no loads: the band is that of the
 *       loads, and says so. Both edges are exact where the mains are two trees along each other (direct return). With
 *       loops, reverse return or a bypass the upper edge is searched, and the band says so: the true one is not below
 *       it.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code FLOW_OUTSIDE_DEMANDS}.
 *   <dt>Source
 *   <dd>The need is convex in the flows: least by one solve with complementarity, greatest at a corner of the set of
 *       flows; own derivation, written out in the theory pages.
 * </dl>
 *
 * @param circuit the circuit
 * @param demands the most that each terminal takes
 * @param points the band, by rising flow
 * @param searched whether the upper edge was searched
 * @param notes what has to be said about it
 */
public record HeadBand(Circuit circuit, Demands demands, List<BandPoint> points, boolean searched, Notes notes)
        implements Traced {
    /** Copies the list. */
    public HeadBand {
        points = List.copyOf(points);
    }

    /**
     * Returns the band of a circuit up to given demands.
     *
     * @param steps at how many total flows, evenly up to the sum of the demands; 1 or more
     */
    public static HeadBand of(Circuit circuit, Demands demands, int steps) {
        Demands loads = LeastFlow.loads(circuit, demands);
        if (steps < 1 || loads.total().si() == 0) {
            throw new Refusal(
                    CircuitProblem.FLOW_OUTSIDE_DEMANDS,
                    "Asked for the head band of a " + circuit + " at " + steps + " flows up to " + loads.total(),
                    "A band has one flow or more, and its branches are asked for something",
                    "Ask at least one branch for a flow, and for 1 or more steps; 20 are usual");
        }
        BandSearch search = new BandSearch(CircuitSolver.of(circuit), loads);
        List<BandPoint> points = new ArrayList<>();
        try (Steps flows = Work.steps("flows of the head band", steps)) {
            for (int i = 1; i <= steps; i++) {
                flows.next();
                points.add(search.at(search.total() * i / steps));
            }
        }
        return new HeadBand(circuit, loads, points, search.isSearched(), notes(circuit, search));
    }

    /**
     * Returns the band at one total flow.
     *
     * @throws Refusal with {@code FLOW_OUTSIDE_DEMANDS} unless the flow is above 0 and at most the sum of the demands
     */
    public static HeadBand at(Circuit circuit, Demands demands, Flow flow) {
        Demands loads = LeastFlow.loads(circuit, demands);
        BandSearch search = new BandSearch(CircuitSolver.of(circuit), loads);
        if (!(flow.si() > 0 && flow.si() <= search.total() * (1 + 1e-12))) {
            throw new Refusal(
                    CircuitProblem.FLOW_OUTSIDE_DEMANDS,
                    "Asked for the head that a circuit needs at " + flow,
                    "Its terminals take flows above 0 and up to " + Flow.cubicMetresPerSecond(search.total())
                            + " together",
                    "Ask for a flow in that range, or for larger demands");
        }
        BandPoint point = search.at(Math.min(flow.si(), search.total()));
        return new HeadBand(circuit, loads, List.of(point), search.isSearched(), notes(circuit, search));
    }

    private static Notes notes(Circuit circuit, BandSearch search) {
        Notes all = circuit.notes();
        for (Branch bypass : LeastFlow.bypasses(circuit)) {
            MinimumFlowValve valve = (MinimumFlowValve) bypass.valve().orElseThrow();
            all = all.with(
                    CircuitProblem.BYPASS_BELOW_LEAST_FLOW,
                    "The head band is that of the loads. Below " + valve.least() + " '" + bypass.name()
                            + "' adds what the pump lacks, which takes further head in the mains that it passes");
        }
        return search.isSearched()
                ? all.with(
                        CircuitProblem.BAND_SEARCHED,
                        "The mains of this circuit are no two trees along each other: the upper edge of its head band is"
                                + " the greatest need that was found, and may lie higher")
                : all;
    }

    @Override
    public Basis basis() {
        return circuit.basis()
                .with("head band over all ways to share a total flow, each terminal up to its demand; upper edge "
                        + (searched ? "searched" : "over all corners"));
    }

    @Override
    public String toString() {
        BandPoint last = points.get(points.size() - 1);
        if (points.size() == 1) {
            return "from " + last.least().head() + " to " + last.greatest().head() + " at " + last.flow();
        }
        return "head band of " + points.size() + " flows up to " + last.flow() + ", there from "
                + last.least().head() + " to " + last.greatest().head();
    }
}
