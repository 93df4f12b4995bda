package headrace.control;

import headrace.circuit.Closing;
import headrace.curve.Duty;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.pump.PumpSet;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Length;
import headrace.units.Speed;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/**
 * A law that its user writes: any function of the state of the loop that answers with a head or a speed.
 *
 * <p>It is asked once at every hundredth of its design flow, from no flow to 120 % of it, before it is taken: it has to
 * answer everywhere, in a unit that means something, and is warned of where its head falls as flow rises.
 */
final class UserLaw implements ControlLaw {
    private static final int ASKED = 120;
    private static final double STEP = 0.01;

    private final String name;
    private final Optional<Duty> design;
    private final List<String> branches;
    private final Function<LoopState, ?> rule;
    private final Notes notes;

    private UserLaw(
            String name, Optional<Duty> design, List<String> branches, Function<LoopState, ?> rule, Notes notes) {
        this.name = name;
        this.design = design;
        this.branches = branches;
        this.rule = rule;
        this.notes = notes;
    }

    static UserLaw of(String name, Optional<Duty> design, Function<LoopState, ?> rule) {
        UserLaw unasked = new UserLaw(name, design, List.of(), rule, Notes.NONE);
        return design.map(duty -> new UserLaw(name, design, List.of(), rule, unasked.tried(duty)))
                .orElse(unasked);
    }

    static UserLaw seeing(String name, Optional<Duty> design, List<String> branches, Function<LoopState, ?> rule) {
        return branches.isEmpty()
                ? of(name, design, rule)
                : new UserLaw(name, design, List.copyOf(branches), rule, Notes.NONE);
    }

    @Override
    public String name() {
        return name;
    }

    @Override
    public String statement() {
        return "a law of the user's own, from what it sees of the loop to a head or a speed";
    }

    @Override
    public Set<Observed> observes() {
        return branches.isEmpty()
                ? Set.of(Observed.FLOW, Observed.PUMP_HEAD)
                : Set.of(Observed.FLOW, Observed.PUMP_HEAD, Observed.BRANCH_HEAD, Observed.VALVE_OPENING);
    }

    @Override
    public Optional<Duty> design() {
        return design;
    }

    @Override
    public Notes notes() {
        return notes;
    }

    @Override
    public boolean needsCircuit() {
        return !branches.isEmpty();
    }

    @Override
    public Demand demand(LoopState state, PumpSet set) {
        return answer(state);
    }

    @Override
    public Closing closing(PumpSet set) {
        if (branches.isEmpty()) {
            return ControlLaw.super.closing(set);
        }
        return place -> {
            SeenBranches seen = new SeenBranches(name, branches, place);
            return loop -> {
                Flow flow = Flow.cubicMetresPerSecond(Math.max(0, loop.flow()));
                Demand demand = answer(new LoopState(flow, Optional.of(seen.in(loop))));
                return ControlLaw.metres(demand, set, loop.flow());
            };
        };
    }

    @Override
    public Optional<Head> requiredHead(Flow flow) {
        if (needsCircuit()) {
            return Optional.empty();
        }
        return answer(new LoopState(flow)) instanceof Demand.OfHead head ? Optional.of(head.head()) : Optional.empty();
    }

    private Demand answer(LoopState state) {
        Object answer = rule.apply(state);
        if (answer instanceof Head head && head.si() >= 0) {
            return new Demand.OfHead(head);
        }
        if (answer instanceof Length metres && metres.si() >= 0) {
            return new Demand.OfHead(Head.metres(metres.si()));
        }
        if (answer instanceof Speed speed && speed.si() > 0) {
            return new Demand.OfSpeed(speed);
        }
        throw new Refusal(
                ControlProblem.WRONG_ANSWER_OF_LAW,
                "The control law '" + name + "' was asked at " + state.flow() + " and answered "
                        + (answer == null ? "nothing" : answer),
                "A law answers at every flow, with a head of 0 or more or a speed above 0",
                answer == null
                        ? "Let every branch of it end in a head, such as 5.m"
                        : "End it in a head such as 5.m, or a speed such as 900.rpm; 30.kPa.headOf(liquid) makes a head of"
                                + " a pressure");
    }

    /** Asks the law over its range, and returns what is to be said of its shape. */
    private Notes tried(Duty duty) {
        Head before = null;
        for (int i = 0; i <= ASKED; i++) {
            Flow flow = duty.flow().times(i * STEP);
            Demand demand = answer(new LoopState(flow));
            Head now = demand instanceof Demand.OfHead head ? head.head() : null;
            if (now != null && before != null && now.compareTo(before) < 0) {
                return Notes.NONE.with(
                        ControlProblem.LAW_NOT_MONOTONE,
                        "The control law '" + name + "' asks for less head as flow rises: " + now + " at " + flow
                                + ", after " + before + " just below; such a law can settle at more than one point");
            }
            before = now;
        }
        return Notes.NONE;
    }

    @Override
    public String toString() {
        return name();
    }
}
