package headrace.circuit.answer;

import headrace.circuit.Branch;
import headrace.circuit.Circuit;
import headrace.circuit.CircuitProblem;
import headrace.circuit.CircuitSolution;
import headrace.circuit.Closing;
import headrace.circuit.part.Part;
import headrace.circuit.part.valve.BalancingValve;
import headrace.circuit.part.valve.FixedValve;
import headrace.circuit.part.valve.MinimumFlowValve;
import headrace.circuit.part.valve.Orifice;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.FlowCoefficient;
import headrace.units.Head;
import headrace.units.Ratio;
import headrace.work.Steps;
import headrace.work.Work;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * The settings of the balancing valves of a circuit, and the order in which to set them on site by the proportional
 * method.
 *
 * <p>Each valve takes the excess head of its branch at its design flow, with all control valves fully open. On site,
 * one begins with everything open; the least favoured branch, which has no excess head, is the reference and stays
 * open. Then, from the farthest inwards, each valve is turned until its branch shows the same share as the reference
 * shows at that moment. What comes later changes all shares set before by the same factor, so none is touched twice.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Kv, heads of the liquid, flows as shares of design.
 *   <dt>Limits
 *   <dd>The farthest branch is the one with the least head across it at design. That set branches keep their proportion
 *       is exact for losses that go with the square of flow and direct return, and nearly so otherwise. A branch that
 *       holds its flow itself needs no setting.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code NOTHING_TO_BALANCE}, with {@code NO_SUCH_SETTING} where a valve cannot take its
 *       excess; as {@link HeadNeed}.
 *   <dt>Source
 *   <dd>Proportional balancing: textbook knowledge.
 * </dl>
 *
 * @param balanced the circuit with its valves set
 * @param need what it needs at its pump at design flow
 * @param head the head at the pump while the valves are set
 * @param steps what to do, in this order; the first is the reference
 */
public record ProportionalBalance(Circuit balanced, HeadNeed need, Head head, List<Step> steps) implements Traced {
    /** Shares are read with the control valves fully open: more is asked than will flow. */
    private static final double ALL_OPEN = 20;

    /**
     * One valve set.
     *
     * @param branch its branch
     * @param excess the head that it takes, 0 in the reference
     * @param coefficient its flow coefficient; none where nothing has to be taken and no valve stands
     * @param setting its setting, where its table is known
     * @param before measured over design flow before it is set
     * @param after the same when it is set
     * @param reference that of the reference branch at this moment
     */
    public record Step(
            String branch,
            Head excess,
            Optional<FlowCoefficient> coefficient,
            Optional<Double> setting,
            Ratio before,
            Ratio after,
            Ratio reference) {}

    /** Keeps the list as it is now. */
    public ProportionalBalance {
        steps = List.copyOf(steps);
    }

    /** Returns the settings, found at the head that the circuit needs. */
    public static ProportionalBalance of(Circuit circuit) {
        return of(circuit, Optional.empty());
    }

    /**
     * Returns the settings.
     *
     * @param head the head at the pump while they are made; that which the circuit needs unless given
     */
    public static ProportionalBalance of(Circuit circuit, Optional<Head> head) {
        Circuit open = opened(circuit);
        HeadNeed need = HeadNeed.of(open);
        Head kept = head.orElse(need.head());
        if (!(kept.si() > 0)) {
            throw new Refusal(
                    CircuitProblem.NO_HEAD_AT_PUMP,
                    "Asked to balance a " + circuit + " at " + kept,
                    "Valves are set while something flows",
                    "Give a head above 0, or leave it out for the " + need.head() + " that the circuit needs");
        }
        List<HeadNeed.Need> order = order(need, open);
        List<Step> steps = new ArrayList<>();
        CircuitSolution now = standing(open, kept);
        try (Steps valves = Work.steps("valves to balance", order.size())) {
            for (HeadNeed.Need branch : order) {
                valves.next();
                Branch set = set(now.circuit().branch(branch.name()), branch);
                CircuitSolution after =
                        branch.excess().si() > 0 ? standing(now.circuit().with(set), kept) : now;
                steps.add(step(set, branch, order.get(0).name(), share(now, branch.name()), after));
                now = after;
            }
        }
        return new ProportionalBalance(now.circuit(), need, kept, steps);
    }

    /** The reference first, which has the least excess head, then from the farthest inwards. */
    private static List<HeadNeed.Need> order(HeadNeed need, Circuit circuit) {
        List<HeadNeed.Need> all = need.branches().stream()
                .filter(each -> !holdsItself(circuit.branch(each.name())))
                .sorted(Comparator.comparing(HeadNeed.Need::available))
                .toList();
        HeadNeed.Need reference = all.stream()
                .min(Comparator.comparing(HeadNeed.Need::excess))
                .orElseThrow(() -> new Refusal(
                        CircuitProblem.NOTHING_TO_BALANCE,
                        "Asked to balance a " + circuit,
                        "Each of its branches holds its flow itself, so that there is no valve to set",
                        "See with survey whether each has the head that its valve needs"));
        List<HeadNeed.Need> order = new ArrayList<>(List.of(reference));
        all.stream().filter(each -> each != reference).forEach(order::add);
        return order;
    }

    private static boolean holdsItself(Branch branch) {
        return branch.limiter().isPresent() || branch.valve().orElse(null) instanceof MinimumFlowValve;
    }

    private static Step step(Branch set, HeadNeed.Need branch, String reference, Ratio before, CircuitSolution after) {
        Optional<Part> valve =
                set.parts().stream().filter(ProportionalBalance::isBalancing).findFirst();
        return new Step(
                set.name(),
                branch.excess(),
                valve.map(ProportionalBalance::coefficient),
                valve.filter(BalancingValve.class::isInstance).map(each -> ((BalancingValve) each).setting()),
                before,
                share(after, set.name()),
                share(after, reference));
    }

    private static boolean isBalancing(Part part) {
        return part instanceof BalancingValve || part instanceof FixedValve;
    }

    private static FlowCoefficient coefficient(Part valve) {
        return valve instanceof BalancingValve balancing ? balancing.coefficient() : ((FixedValve) valve).coefficient();
    }

    /** Every balancing valve with a table fully open; one without is left out, since its opening is not known. */
    private static Circuit opened(Circuit circuit) {
        List<Branch> all = circuit.branches().stream()
                .map(branch -> branch.isTerminal() ? opened(branch) : branch)
                .toList();
        return new Circuit(circuit.liquid(), circuit.discharge(), circuit.suction(), all, circuit.origin());
    }

    private static Branch opened(Branch branch) {
        List<Part> parts = branch.parts().stream()
                .filter(part -> !(part instanceof FixedValve))
                .map(part -> part instanceof BalancingValve valve
                        ? (Part) BalancingValve.open(valve.name(), valve.table())
                        : part)
                .toList();
        return new Branch(branch.name(), branch.from(), branch.to(), parts, branch.design());
    }

    private static Branch set(Branch branch, HeadNeed.Need need) {
        if (need.excess().metres() <= 0) {
            return branch;
        }
        List<Part> parts = new ArrayList<>(branch.parts());
        for (int i = 0; i < parts.size(); i++) {
            if (parts.get(i) instanceof BalancingValve valve) {
                double own = Orifice.law(valve.coefficient())
                        .headMetres(need.demand().si());
                parts.set(i, valve.taking(need.excess().plus(Head.metres(own)), need.demand()));
                return new Branch(branch.name(), branch.from(), branch.to(), parts, branch.design());
            }
        }
        parts.add(new FixedValve("balancing valve of " + branch.name(), Orifice.taking(need.excess(), need.demand())));
        return new Branch(branch.name(), branch.from(), branch.to(), parts, branch.design());
    }

    private static CircuitSolution standing(Circuit circuit, Head head) {
        return circuit.solve(circuit.designDemands().times(Ratio.of(ALL_OPEN)), Closing.head(head));
    }

    private static Ratio share(CircuitSolution standing, String branch) {
        return Ratio.of(standing.branch(branch).flow().si()
                / standing.circuit().branch(branch).design().orElseThrow().si());
    }

    /** Returns the branch that stays open, to which the others are set. */
    public String reference() {
        return steps.get(0).branch();
    }

    @Override
    public Notes notes() {
        return balanced.notes();
    }

    @Override
    public Basis basis() {
        return balanced.basis().with("balancing valves set by the excess head of each branch at design flow");
    }

    @Override
    public String toString() {
        return steps.size() + " branches set at " + head + ", reference: " + reference();
    }
}
