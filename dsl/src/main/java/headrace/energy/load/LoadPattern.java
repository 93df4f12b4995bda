package headrace.energy.load;

import headrace.circuit.Branch;
import headrace.circuit.Circuit;
import headrace.circuit.Demands;
import headrace.problem.Refusal;
import headrace.units.Flow;
import headrace.units.Ratio;
import headrace.work.Steps;
import headrace.work.Work;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * One way in which a load can lie over the branches of a circuit.
 *
 * @param name what it is called, such as {@code far branches first at 50 %}
 * @param demands what each branch is asked for
 */
public record LoadPattern(String name, Demands demands) {
    /**
     * Returns the patterns of a circuit at several loads: shared in every way, flow going with load.
     *
     * @param circuit the circuit, its terminals from the pump outwards
     * @param loads the shares of the design load of all of it
     * @param seed the seed of the random one
     */
    public static List<LoadPattern> all(Circuit circuit, List<Ratio> loads, long seed) {
        List<Branch> terminals = circuit.terminals();
        double all = circuit.designFlow().si();
        double[] weights = terminals.stream()
                .mapToDouble(branch -> branch.design().orElseThrow().si() / all)
                .toArray();
        List<LoadPattern> patterns = new ArrayList<>();
        List<Sharing> ways = Sharing.all(terminals.size(), seed);
        try (Steps steps = Work.steps("making patterns of load", (long) loads.size() * ways.size())) {
            for (Ratio load : loads) {
                requireLoad(load);
                for (Sharing sharing : ways) {
                    steps.next();
                    double[] shares = new double[weights.length];
                    sharing.fill(load.value(), weights, 0, shares);
                    Map<String, Flow> flows = new LinkedHashMap<>();
                    for (int i = 0; i < shares.length; i++) {
                        flows.put(
                                terminals.get(i).name(),
                                terminals.get(i).design().orElseThrow().times(shares[i]));
                    }
                    patterns.add(new LoadPattern(named(sharing, terminals) + " at " + load, new Demands(flows)));
                }
            }
        }
        return patterns;
    }

    /**
     * Refuses a load that a building cannot ask of its design.
     *
     * @throws Refusal with {@code LOAD_OUT_OF_RANGE} below 0 or above 120 % of design
     */
    public static void requireLoad(Ratio load) {
        if (!(load.value() >= 0 && load.value() <= HourlyLoad.MOST)) {
            throw new Refusal(
                    LoadProblem.LOAD_OUT_OF_RANGE,
                    "Asked for a load pattern at " + load + " of design load",
                    "A load lies between 0 and 120 % of design",
                    "Write the load with its %, or size the circuit for the greater load");
        }
    }

    private static String named(Sharing sharing, List<Branch> terminals) {
        return sharing instanceof Sharing.OneOff off
                ? terminals.get(off.branch()).name() + " off"
                : sharing.name();
    }

    @Override
    public String toString() {
        return name + ": " + demands.total();
    }
}
