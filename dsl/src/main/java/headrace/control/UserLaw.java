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
import java.time.LocalDateTime;
import java.util.EnumSet;
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

    /** The name under which a law says that it observes the clock. */
    private static final String CLOCK = "clock";

    /** On this day a law that follows the clock is tried, hour by hour. */
    private static final LocalDateTime TRIED = LocalDateTime.of(2026, 1, 1, 0, 0);

    private final String name;
    private final Optional<Duty> design;
    private final Sight sight;
    private final Function<LoopState, ?> rule;
    private final Notes notes;

    /**
     * What a law sees beside the flow: branches by name, and the time if it follows the clock and the time is known.
     */
    private record Sight(List<String> branches, boolean clock, Optional<LocalDateTime> time) {
        static Sight of(List<String> observed) {
            return new Sight(
                    observed.stream().filter(each -> !each.equals(CLOCK)).toList(),
                    observed.contains(CLOCK),
                    Optional.empty());
        }

        Sight at(LocalDateTime now) {
            return new Sight(branches, clock, Optional.of(now));
        }
    }

    private UserLaw(String name, Optional<Duty> design, Sight sight, Function<LoopState, ?> rule, Notes notes) {
        this.name = name;
        this.design = design;
        this.sight = sight;
        this.rule = rule;
        this.notes = notes;
    }

    static UserLaw of(String name, Optional<Duty> design, Function<LoopState, ?> rule) {
        return seeing(name, design, List.of(), rule);
    }

    static UserLaw seeing(String name, Optional<Duty> design, List<String> observed, Function<LoopState, ?> rule) {
        UserLaw untried = new UserLaw(name, design, Sight.of(observed), rule, Notes.NONE);
        if (design.isEmpty() || untried.needsCircuit()) {
            return untried;
        }
        return new UserLaw(name, design, untried.sight, rule, untried.tried(design.get()));
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
        Set<Observed> all = EnumSet.of(Observed.FLOW, Observed.PUMP_HEAD);
        if (needsCircuit()) {
            all.add(Observed.BRANCH_HEAD);
            all.add(Observed.VALVE_OPENING);
        }
        if (sight.clock) {
            all.add(Observed.CLOCK);
        }
        return all;
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
        return !sight.branches.isEmpty();
    }

    @Override
    public boolean followsClock() {
        return sight.clock;
    }

    @Override
    public ControlLaw at(LocalDateTime time) {
        return sight.clock ? new UserLaw(name, design, sight.at(time), rule, notes) : this;
    }

    @Override
    public Demand demand(LoopState state, PumpSet set) {
        return answer(state.flow(), state.circuit());
    }

    @Override
    public Closing closing(PumpSet set) {
        if (!needsCircuit()) {
            return ControlLaw.super.closing(set);
        }
        return place -> {
            SeenBranches seen = new SeenBranches(name, sight.branches, place);
            return loop -> {
                Flow flow = Flow.cubicMetresPerSecond(Math.max(0, loop.flow()));
                Demand demand = answer(flow, Optional.of(seen.in(loop)));
                return ControlLaw.metres(demand, set, loop.flow());
            };
        };
    }

    @Override
    public Optional<Head> requiredHead(Flow flow) {
        if (needsCircuit() || sight.clock && sight.time.isEmpty()) {
            return Optional.empty();
        }
        return answer(flow, Optional.empty()) instanceof Demand.OfHead head
                ? Optional.of(head.head())
                : Optional.empty();
    }

    private Demand answer(Flow flow, Optional<LoopState.Seen> seen) {
        Object answer = rule.apply(new LoopState(flow, seen, sight.time));
        // Where a circuit is looked at, states are tried on the way to the one that holds; the pump's least speed
        // bounds.
        double least = seen.isPresent() ? Double.NEGATIVE_INFINITY : 0;
        if (answer instanceof Head head && head.si() >= least) {
            return new Demand.OfHead(head);
        }
        if (answer instanceof Length metres && metres.si() >= least) {
            return new Demand.OfHead(Head.metres(metres.si()));
        }
        if (answer instanceof Speed speed && speed.si() > 0) {
            return new Demand.OfSpeed(speed);
        }
        throw new Refusal(
                ControlProblem.WRONG_ANSWER_OF_LAW,
                "The control law '" + name + "' was asked at " + flow
                        + sight.time.map(time -> " and " + time.toLocalTime()).orElse("") + " and answered "
                        + (answer == null ? "nothing" : answer),
                "A law answers at every flow, with a head of 0 or more or a speed above 0",
                answer == null
                        ? "Let every branch of it end in a head, such as 5.m"
                        : "End it in a head such as 5.m, or a speed such as 900.rpm; 30.kPa.headOf(liquid) makes a head of"
                                + " a pressure");
    }

    /** Asks the law over its range, at each hour of a day if it follows the clock, and returns what is to be said. */
    private Notes tried(Duty duty) {
        if (!sight.clock) {
            return triedNow(duty);
        }
        Notes all = Notes.NONE;
        for (int hour = 0; hour < 24; hour++) {
            all = all.and(new UserLaw(name, design, sight.at(TRIED.plusHours(hour)), rule, notes).triedNow(duty));
        }
        return all;
    }

    private Notes triedNow(Duty duty) {
        Head before = null;
        for (int i = 0; i <= ASKED; i++) {
            Flow flow = duty.flow().times(i * STEP);
            Demand demand = answer(flow, Optional.empty());
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
