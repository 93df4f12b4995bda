package headrace.circuit.answer;

import headrace.circuit.Branch;
import headrace.circuit.BranchState;
import headrace.circuit.Circuit;
import headrace.circuit.CircuitProblem;
import headrace.circuit.CircuitSolution;
import headrace.circuit.Demands;
import headrace.circuit.part.Throttling;
import headrace.circuit.part.valve.Authority;
import headrace.circuit.part.valve.ControlValve;
import headrace.circuit.part.valve.MinimumFlowValve;
import headrace.problem.Notes;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Numbers;
import headrace.units.Pressure;
import headrace.units.Ratio;
import headrace.work.Steps;
import headrace.work.Work;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * All that is to be said of the branches of a circuit in one state: who is served, with what authority, who is at risk.
 *
 * <p>The effective authority is that of this state: each branch is shut in turn, the circuit is solved anew with the
 * same head or law at the pump, and what then stands across the branch is what its valve works against.
 *
 * <dl>
 *   <dt>Units
 *   <dd>As {@link CircuitSolution}.
 *   <dt>Limits
 *   <dd>One solve for each branch with a control valve.
 *   <dt>Errors
 *   <dd>As {@link headrace.circuit.CircuitSolver#solve}.
 *   <dt>Source
 *   <dd>{@link Authority}; an opening below 10 % and an effective authority below 0.25 as risks of hunting: common
 *       practice, no source.
 * </dl>
 *
 * @param solution how the circuit stands
 * @param branches what is to be said of each terminal, in the order of the circuit
 * @param need what the pump would need for these demands; none where nothing is asked
 * @param greatest the greatest head that the pump can put across a shut valve, if it is known
 * @param notes those of the solution, and the branches at risk
 */
public record CircuitSurvey(
        CircuitSolution solution,
        List<BranchAnswer> branches,
        Optional<HeadNeed> need,
        Optional<Head> greatest,
        Notes notes)
        implements Traced {
    /** Keeps the list as it is now. */
    public CircuitSurvey {
        branches = List.copyOf(branches);
    }

    /** Returns the survey of a circuit at a head at its pump. */
    public static CircuitSurvey at(Circuit circuit, Head head, Demands demands) {
        return of(Standing.at(circuit, head), demands, Map.of(), Optional.empty());
    }

    /**
     * Returns the survey of a circuit.
     *
     * @param standing how the circuit stands when other demands are made
     * @param demands what is asked now
     * @param heats the law of heat of the branches for which it is known
     * @param greatest the greatest head of the pump, at no flow and full speed, if it is known
     */
    public static CircuitSurvey of(
            Standing standing, Demands demands, Map<String, HeatOfFlow> heats, Optional<Head> greatest) {
        CircuitSolution now = standing.with(demands);
        List<BranchAnswer> answers = new ArrayList<>();
        Notes notes = now.notes();
        try (Steps steps = Work.steps("branches of the survey", now.terminals().size())) {
            for (BranchState state : now.terminals()) {
                steps.next();
                BranchAnswer answer = answer(now, state, standing, Optional.ofNullable(heats.get(state.name())));
                answers.add(answer);
                notes = notes.and(risks(answer, now.circuit(), greatest));
            }
        }
        Optional<HeadNeed> need =
                demands.total().si() > 0 ? Optional.of(HeadNeed.of(now.circuit(), demands)) : Optional.empty();
        return new CircuitSurvey(now, answers, need, greatest, notes);
    }

    private static BranchAnswer answer(
            CircuitSolution now, BranchState state, Standing standing, Optional<HeatOfFlow> heat) {
        Optional<Ratio> missing = heat.map(law -> missing(law, state));
        Optional<Throttling> valve = state.branch().valve().filter(each -> !(each instanceof MinimumFlowValve));
        if (valve.isEmpty()) {
            return new BranchAnswer(state, state.available(), Optional.empty(), missing);
        }
        boolean asked = state.demand().orElseThrow().si() > 0;
        Head shut = asked
                ? standing.with(now.demands().without(state.name()))
                        .branch(state.name())
                        .available()
                : state.available();
        return new BranchAnswer(state, shut, authority(now.circuit(), state.branch(), shut), missing);
    }

    private static Ratio missing(HeatOfFlow law, BranchState state) {
        double design = state.branch().design().orElseThrow().si();
        double asked = state.demand().orElseThrow().si();
        return law.missing(
                Ratio.of(asked / design), Ratio.of(Math.min(asked, state.flow().si()) / design));
    }

    private static Optional<Authority> authority(Circuit circuit, Branch branch, Head shut) {
        if (!(shut.metres() > 0)) {
            return Optional.empty();
        }
        Flow design = branch.design().orElseThrow();
        double open = branch.valve().orElseThrow().in(circuit.liquid()).headMetres(design.si());
        return Optional.of(Authority.of(Head.metres(open), HeadNeed.loss(branch, design, circuit), shut));
    }

    private static Notes risks(BranchAnswer answer, Circuit circuit, Optional<Head> greatest) {
        Notes notes = Notes.NONE;
        String name = "'" + answer.name() + "'";
        if (answer.isNearSeat()) {
            notes = notes.with(
                    CircuitProblem.HUNTING_BRANCH,
                    "The valve of " + name + " stands at "
                            + answer.state().opening().orElseThrow() + ", below " + BranchAnswer.SMALL_OPENING
                            + ": small strokes move much, and it may hunt");
        }
        if (answer.hasLowAuthority()) {
            notes = notes.with(
                    CircuitProblem.HUNTING_BRANCH,
                    "The effective authority of " + name + " is "
                            + Numbers.print(
                                    answer.authority().orElseThrow().effective().value())
                            + " in this state, below " + Authority.LOW + ": it may hunt");
        }
        return notes.and(forced(answer, circuit, greatest));
    }

    private static Notes forced(BranchAnswer answer, Circuit circuit, Optional<Head> greatest) {
        Optional<Pressure> bears = answer.state()
                .branch()
                .valve()
                .filter(ControlValve.class::isInstance)
                .flatMap(valve -> ((ControlValve) valve).closeOff());
        if (bears.isEmpty()) {
            return Notes.NONE;
        }
        Head most = bears.get().headOf(circuit.liquid());
        if (answer.shut().compareTo(most) > 0) {
            return Notes.NONE.with(
                    CircuitProblem.FORCED_OPEN_VALVE,
                    "When the valve of '" + answer.name() + "' shuts, " + answer.shut()
                            + " stand across it in this state, and" + " its actuator holds it shut against " + most
                            + ": it is forced open");
        }
        return greatest.filter(head -> head.compareTo(most) > 0)
                .map(head -> Notes.NONE.with(
                        CircuitProblem.FORCED_OPEN_VALVE,
                        "The pump reaches " + head + " at full speed and no flow, and the actuator of '" + answer.name()
                                + "' holds its valve shut against " + most))
                .orElse(Notes.NONE);
    }

    /** Returns what is to be said of a branch. */
    public BranchAnswer branch(String name) {
        solution.branch(name);
        return branches.stream()
                .filter(answer -> answer.name().equals(name))
                .findFirst()
                .orElseGet(() -> new BranchAnswer(
                        solution.branch(name), solution.branch(name).available(), Optional.empty(), Optional.empty()));
    }

    /** Returns the names of the branches that may hunt: near the seat, or with little authority in this state. */
    public List<String> huntingBranches() {
        return branches.stream()
                .filter(answer -> answer.isNearSeat() || answer.hasLowAuthority())
                .map(BranchAnswer::name)
                .toList();
    }

    @Override
    public Basis basis() {
        return solution.basis().with("effective authority: each branch shut in turn under the same head or law");
    }

    @Override
    public String toString() {
        return solution + need.map(each -> "; index circuit: " + each.index()).orElse("");
    }
}
