package headrace.script;

import headrace.circuit.Circuit;
import headrace.circuit.CircuitSolution;
import headrace.circuit.CircuitSolver;
import headrace.circuit.Demands;
import headrace.circuit.answer.CircuitSurvey;
import headrace.circuit.answer.HeadMargin;
import headrace.circuit.answer.HeadNeed;
import headrace.circuit.answer.HeadProfile;
import headrace.circuit.answer.HeatOfFlow;
import headrace.circuit.answer.ProportionalBalance;
import headrace.circuit.answer.Standing;
import headrace.circuit.band.HeadBand;
import headrace.circuit.part.coil.CoilHeat;
import headrace.circuit.part.coil.EmissionLaw;
import headrace.control.BandWithLaws;
import headrace.control.ControlLaw;
import headrace.control.LoopOperation;
import headrace.problem.Refusal;
import headrace.pump.PumpSet;
import headrace.record.Traced;
import headrace.units.Flow;
import headrace.units.Head;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Words that ask a circuit: who needs the head, who is at risk, what to set, what it may need. */
public final class CircuitAnswerWords implements Words {
    private static final String SURVEY =
            "All about the branches of a circuit in one state: flow, head, opening, both authorities of each valve, what is"
                    + " missing of flow, head and heat, the index circuit, and who is at risk of hunting or of a valve forced"
                    + " open. Each branch is shut in turn for its effective authority.";
    private static final String SURVEY_EXAMPLE = "survey(loop, 14.m, load: 40.percent, heat: emission(0.4))";
    private static final String UNDER = "The same where a pump set runs the circuit under a law.";
    private static final String UNDER_EXAMPLE = "survey(set, constantHead(design), loop, load: 40.percent)";
    private static final String LOAD =
            "load: what all branches are asked for, as a share of design; 100 % unless chosen";
    private static final String DEMANDS =
            "demands: what single branches are asked for, as in demands: [foyer: 8.m3ph, attic: 0.m3ph]";
    private static final String HEAT =
            "heat: how heat goes with flow, emission(0.4) or a coilHeat, for all or as in [attic: emission(0.4)]; heat is"
                    + " left out unless chosen";
    private static final String NEED =
            "The least head at the pump that serves a load pattern, and the index circuit that decides it.";
    private static final String NEED_EXAMPLE = "headNeeded(loop, demands: [attic: 0.m3ph])";
    private static final String BALANCE =
            "The settings of balancing valves by the excess head of each branch, and the order in which to set them by the"
                    + " proportional method. A branch without a valve gets the flow coefficient of one that is wanted. .balanced()"
                    + " is the circuit with all of them set.";
    private static final String BALANCE_EXAMPLE = "balance(loop)";
    private static final String BAND =
            "The least and the greatest head that a circuit may need at each total flow, over all ways to share it, each edge"
                    + " with its pattern.";
    private static final String BAND_EXAMPLE =
            "headBand(loop, set: set, laws: [quadratic(design, minimumHead: 35.percent)])";

    @Override
    public String subject() {
        return "What a circuit needs";
    }

    /** Surveys a circuit. */
    @Word(help = SURVEY, example = "survey(loop, 14.m)")
    public static CircuitSurvey survey(Object circuit, Object head) {
        return survey(Map.of(), circuit, head);
    }

    /** Surveys a circuit. */
    @Word(
            help = SURVEY,
            example = SURVEY_EXAMPLE,
            choices = {LOAD, DEMANDS, HEAT})
    public static CircuitSurvey survey(Map<String, ?> given, Object circuit, Object head) {
        Choices choices = Choices.of("survey", given, "load", "demands", "heat");
        Circuit loop = circuit(circuit, "survey");
        Standing standing = Standing.at(loop, CircuitWords.headAtPump(head, "survey"));
        return CircuitSurvey.of(standing, CircuitWords.demands(loop, choices), heats(loop, choices), Optional.empty());
    }

    /** Surveys a circuit under a law. */
    @Word(help = UNDER, example = UNDER_EXAMPLE)
    public static CircuitSurvey survey(Object set, Object law, Object circuit) {
        return survey(Map.of(), set, law, circuit);
    }

    /** Surveys a circuit under a law. */
    @Word(
            help = UNDER,
            example = UNDER_EXAMPLE,
            choices = {LOAD, DEMANDS, HEAT})
    public static CircuitSurvey survey(Map<String, ?> given, Object set, Object law, Object circuit) {
        Choices choices = Choices.of("survey", given, "load", "demands", "heat");
        Circuit loop = circuit(circuit, "survey");
        PumpSet pumps = ControlWords.set(set, "survey");
        ControlLaw under = Wanted.object(ControlLaw.class, law, "the law of survey");
        CircuitSolver solver = CircuitSolver.of(loop);
        double speed = pumps.maximumSpeed().over(pumps.curve().speed()).value();
        return CircuitSurvey.of(
                demands -> LoopOperation.of(under, pumps, solver, demands).circuit(),
                CircuitWords.demands(loop, choices),
                heats(loop, choices),
                Optional.of(Head.metres(pumps.curve().headMetres(0, speed))));
    }

    private static Map<String, HeatOfFlow> heats(Circuit loop, Choices choices) {
        Map<String, HeatOfFlow> all = new LinkedHashMap<>();
        if (!choices.has("heat")) {
            return all;
        }
        Object given = choices.object("heat", Object.class);
        if (given instanceof Map<?, ?> single) {
            single.forEach((name, law) -> {
                String branch = loop.branch(String.valueOf(name)).name();
                all.put(branch, heat(law));
            });
        } else {
            loop.terminals().forEach(branch -> all.put(branch.name(), heat(given)));
        }
        return all;
    }

    private static HeatOfFlow heat(Object given) {
        return given instanceof CoilHeat coil
                ? HeatOfFlow.of(coil)
                : HeatOfFlow.of(Wanted.object(
                        EmissionLaw.class, given, "the choice heat: of survey, which takes a coilHeat too"));
    }

    /** Says what head is needed. */
    @Word(help = NEED, example = "headNeeded(loop)")
    public static HeadNeed headNeeded(Object circuit) {
        return headNeeded(Map.of(), circuit);
    }

    /** Says what head is needed. */
    @Word(
            help = NEED,
            example = NEED_EXAMPLE,
            choices = {LOAD, DEMANDS})
    public static HeadNeed headNeeded(Map<String, ?> given, Object circuit) {
        Choices choices = Choices.of("headNeeded", given, "load", "demands");
        Circuit loop = circuit(circuit, "headNeeded");
        return HeadNeed.of(loop, CircuitWords.demands(loop, choices));
    }

    /** Says the margin. */
    @Word(
            help = "What a circuit needs for its design flows beside the head that was specified, in a sentence.",
            example = "headMargin(loop, 16.m)")
    public static HeadMargin headMargin(Object circuit, Object specified) {
        return HeadNeed.of(circuit(circuit, "headMargin"))
                .against(Wanted.head(specified, "the specified head of headMargin"));
    }

    /** Balances a circuit. */
    @Word(help = BALANCE, example = BALANCE_EXAMPLE)
    public static ProportionalBalance balance(Object circuit) {
        return balance(Map.of(), circuit);
    }

    /** Balances a circuit. */
    @Word(
            help = BALANCE,
            example = "balance(loop, head: 16.m)",
            choices = "head: the head at the pump while valves are set; what the circuit needs unless chosen")
    public static ProportionalBalance balance(Map<String, ?> given, Object circuit) {
        Choices choices = Choices.of("balance", given, "head");
        return ProportionalBalance.of(
                circuit(circuit, "balance"),
                choices.has("head") ? Optional.of(choices.head("head")) : Optional.empty());
    }

    /** Says the head band. */
    @Word(help = BAND, example = "headBand(loop)")
    public static HeadBand headBand(Object circuit) {
        Circuit loop = circuit(circuit, "headBand");
        return HeadBand.of(loop, loop.designDemands(), 20);
    }

    /** Says the head band. */
    @Word(
            help = BAND,
            example = BAND_EXAMPLE,
            choices = {
                LOAD,
                DEMANDS,
                "at: one total flow; the whole band unless chosen",
                "steps: at how many total flows; 20 unless chosen",
                "laws: control laws to draw upon it, and to run at equal shares of load; none unless chosen",
                "set: the pump set that runs them; always needed with laws:",
                "loads: at how many loads they are run; 5 unless chosen"
            })
    public static Traced headBand(Map<String, ?> given, Object circuit) {
        Choices choices = Choices.of("headBand", given, "load", "demands", "at", "steps", "laws", "set", "loads");
        Circuit loop = circuit(circuit, "headBand");
        Demands demands = CircuitWords.demands(loop, choices);
        if (choices.has("at")) {
            return HeadBand.at(loop, demands, choices.quantity("at", Flow.KIND));
        }
        HeadBand band = HeadBand.of(loop, demands, choices.whole("steps", 20));
        if (!choices.has("laws")) {
            return band;
        }
        List<ControlLaw> laws = new ArrayList<>();
        for (Object law : choices.object("laws", List.class)) {
            laws.add(Wanted.object(ControlLaw.class, law, "a law of headBand"));
        }
        PumpSet set = ControlWords.set(choices.object("set", Object.class), "headBand");
        int loads = choices.whole("loads", 5);
        if (loads < 1) {
            throw new Refusal(
                    ScriptProblem.WRONG_VALUE,
                    "The number " + loads + " was given for the choice loads: of headBand",
                    "Laws are run at one load or more",
                    "Leave it out for 5");
        }
        return BandWithLaws.of(band, set, laws, loads);
    }

    /** Draws heads along the mains. */
    @Word(
            help =
                    "The head along the supply and back along the return, from flows or settle: between the lines is what each"
                            + " branch has.",
            example = "headProfile(flows(loop, 14.m))")
    public static HeadProfile headProfile(Object standing) {
        return HeadProfile.of(
                standing instanceof LoopOperation run
                        ? run.circuit()
                        : Wanted.object(
                                CircuitSolution.class, standing, "what headProfile draws, made by flows or settle"));
    }

    private static Circuit circuit(Object given, String word) {
        return Wanted.object(Circuit.class, given, "the circuit of " + word);
    }
}
