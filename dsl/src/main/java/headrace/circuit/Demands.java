package headrace.circuit;

import headrace.problem.Refusal;
import headrace.units.Flow;
import headrace.units.Ratio;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;

/**
 * What is asked of the terminals of a circuit at one time: a flow for each, 0 for one that is shut.
 *
 * @param flows the flow by the name of the terminal
 */
public record Demands(Map<String, Flow> flows) {
    /** Refuses flows below 0. */
    public Demands {
        flows = Collections.unmodifiableMap(new LinkedHashMap<>(flows));
        flows.forEach((name, flow) -> {
            if (!(flow.si() >= 0)) {
                throw new Refusal(
                        CircuitProblem.NEGATIVE_DEMAND,
                        "Asked '" + name + "' for " + flow,
                        "A terminal is asked for 0 or more",
                        "Check the sign; a terminal that is off is asked for 0");
            }
        });
    }

    /**
     * Returns the demands of the terminals of a circuit.
     *
     * @param cubicMetresPerSecond a flow for each branch in the order of the circuit; what stands at others does not
     *     count
     */
    public static Demands of(Circuit circuit, double[] cubicMetresPerSecond) {
        Map<String, Flow> all = new LinkedHashMap<>();
        for (int i = 0; i < circuit.branches().size(); i++) {
            if (circuit.branches().get(i).isTerminal()) {
                all.put(circuit.branches().get(i).name(), Flow.cubicMetresPerSecond(cubicMetresPerSecond[i]));
            }
        }
        return new Demands(all);
    }

    /** Returns these demands with another flow for one terminal. */
    public Demands with(String name, Flow flow) {
        Map<String, Flow> all = new LinkedHashMap<>(flows);
        if (all.replace(name, flow) == null) {
            throw Circuit.unknown(name, List.copyOf(flows.keySet()));
        }
        return new Demands(all);
    }

    /** Returns these demands with one terminal shut. */
    public Demands without(String name) {
        return with(name, Flow.ZERO);
    }

    /** Returns a share of each. */
    public Demands times(Ratio share) {
        return each(flow -> flow.times(share.value()));
    }

    /** Returns the sum of all. */
    public Flow total() {
        return Flow.cubicMetresPerSecond(
                flows.values().stream().mapToDouble(Flow::si).sum());
    }

    private Demands each(UnaryOperator<Flow> change) {
        Map<String, Flow> all = new LinkedHashMap<>();
        flows.forEach((name, flow) -> all.put(name, change.apply(flow)));
        return new Demands(all);
    }
}
