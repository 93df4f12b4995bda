package headrace.script;

import headrace.circuit.Branch;
import headrace.circuit.Circuit;
import headrace.circuit.CircuitProblem;
import headrace.circuit.CircuitSolution;
import headrace.circuit.Closing;
import headrace.circuit.Demands;
import headrace.circuit.LeastFlow;
import headrace.circuit.part.BoosterPump;
import headrace.circuit.part.NamedPart;
import headrace.circuit.part.Part;
import headrace.circuit.part.coil.Coil;
import headrace.circuit.part.valve.MinimumFlowValve;
import headrace.circuit.part.valve.PressureIndependentValve;
import headrace.circuit.shape.Tap;
import headrace.circuit.shape.TwoPipe;
import headrace.liquid.Liquid;
import headrace.problem.Refusal;
import headrace.pump.PumpBranch;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Ratio;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** Words that build a circuit from its branches, and say how it stands. */
public final class CircuitWords implements Words {
    private static final String BRANCH =
            "A branch with its parts in the order of flow, for directReturn, reverseReturn or"
                    + " circuit; a pumpBranch among them is a pump of its own. Its design flow is that of its coil or of its pressure-independent valve unless chosen.";
    private static final String BRANCH_EXAMPLE =
            "branch('foyer', coil(16.m3ph, 25.kPa), controlValve(25.kv), main: pipe(24.m, steel: 150))";
    private static final String DIRECT = "A circuit of two pipes with direct return: branches from the nearest to the"
            + " farthest; who is reached first returns first. The plant is a part or a list of parts that all of the flow"
            + " passes.";
    private static final String REVERSE =
            "A circuit of two pipes with reverse return: who is reached first returns last."
                    + " home: is the return main from the last branch to the plant. The main: of the first branch is laid in the"
                    + " supply only.";
    private static final String FLOWS =
            "How a circuit stands at a head at its pump: the flow of each branch, the head across"
                    + " it, where its valve stands, and who gets too little.";
    private static final String FLOWS_EXAMPLE = "flows(loop, 14.m)";

    /** What the words for parts call a part to which no name was given. */
    private static final Set<String> UNNAMED = Set.of(
            "pipe",
            "coil",
            "resistance",
            "strainer",
            "control valve",
            "balancing valve",
            "pressure-independent valve",
            "check valve",
            "bypass valve",
            "minimum-flow valve",
            "decoupler");

    @Override
    public String subject() {
        return "Circuits";
    }

    /** Makes a branch. */
    @Word(help = BRANCH, example = "branch('foyer', coil(16.m3ph, 25.kPa), controlValve(25.kv))")
    public static Object branch(String name, Object... parts) {
        return branch(Map.of(), name, parts);
    }

    /** Makes a branch. */
    @Word(
            help = BRANCH,
            example = BRANCH_EXAMPLE,
            choices = {
                "flow: its design flow; that of its coil unless chosen",
                "main: the pipe, or the list of parts, from the branch before it, in supply and return alike",
                "returnMain: that of the return, where it is another",
                "from: the junction where it begins, for circuit",
                "to: the junction where it ends, for circuit"
            })
    public static Object branch(Map<String, ?> given, String name, Object... parts) {
        Choices choices = Choices.of("branch", given, "flow", "main", "returnMain", "from", "to");
        List<Part> own = parts(List.of(parts), name, "the branch '" + name + "'");
        Optional<Flow> design = choices.has("flow")
                ? Optional.of(choices.quantity("flow", Flow.KIND))
                : own.stream().flatMap(CircuitWords::design).findFirst();
        if (choices.has("from") || choices.has("to")) {
            return new Branch(name, choices.text("from"), choices.text("to"), own, design);
        }
        Object main = choices.object("main", Object.class, List.of());
        Object back = choices.object("returnMain", Object.class, main);
        return new Tap(
                name,
                design.orElseThrow(() -> withoutFlow(name)),
                own,
                parts(main, "main to " + name, "the choice main: of '" + name + "'"),
                parts(back, "main from " + name, "the choice returnMain: of '" + name + "'"));
    }

    private static Stream<Flow> design(Part part) {
        if (part instanceof Coil coil) {
            return Stream.of(coil.design().flow());
        }
        if (part instanceof MinimumFlowValve valve) {
            return Stream.of(valve.least());
        }
        return part instanceof PressureIndependentValve valve ? Stream.of(valve.set()) : Stream.empty();
    }

    private static Refusal withoutFlow(String name) {
        return new Refusal(
                ScriptProblem.MISSING_CHOICE,
                "The branch '" + name + "' has no design flow",
                "It has that of its coil or of its pressure-independent valve, or one of its own",
                "Add flow:, or between two junctions from: and to:");
    }

    /** Lays out direct return. */
    @Word(
            help = DIRECT,
            example = "loop = directReturn(water(12.degC), resistance(80.m3ph, 45.kPa), [branch('foyer', coil(16.m3ph,"
                    + " 25.kPa), controlValve(25.kv)), branch('attic', coil(18.m3ph, 30.kPa), controlValve(32.kv), main:"
                    + " pipe(24.m, steel: 80))])")
    public static Circuit directReturn(Object liquid, Object plant, List<?> branches) {
        return TwoPipe.directReturn(
                liquid(liquid, "directReturn"),
                parts(plant, "plant", "the plant of directReturn"),
                taps(branches, "directReturn"));
    }

    /** Lays out reverse return. */
    @Word(
            help = REVERSE,
            example = "loop = reverseReturn(water(12.degC), resistance(80.m3ph, 45.kPa), [branch('foyer', coil(16.m3ph,"
                    + " 25.kPa), controlValve(25.kv)), branch('attic', coil(18.m3ph, 30.kPa), controlValve(32.kv), main:"
                    + " pipe(24.m, steel: 80))], home: pipe(60.m, steel: 150))",
            choices = "home: the pipe, or the list of parts, from the last branch to the plant; no loss unless chosen")
    public static Circuit reverseReturn(Map<String, ?> given, Object liquid, Object plant, List<?> branches) {
        Choices choices = Choices.of("reverseReturn", given, "home");
        return TwoPipe.reverseReturn(
                liquid(liquid, "reverseReturn"),
                parts(plant, "plant", "the plant of reverseReturn"),
                taps(branches, "reverseReturn"),
                parts(choices.object("home", Object.class, List.of()), "main home", "the choice home:"));
    }

    /** Lays out reverse return. */
    @Word(
            help = "Without home: the last branch returns at the plant.",
            example = "loop = reverseReturn(water(12.degC), resistance(80.m3ph, 45.kPa), [branch('foyer', coil(16.m3ph,"
                    + " 25.kPa), controlValve(25.kv))])")
    public static Circuit reverseReturn(Object liquid, Object plant, List<?> branches) {
        return reverseReturn(Map.of(), liquid, plant, branches);
    }

    /** Makes a circuit of any shape. */
    @Word(
            help =
                    "A circuit of any shape, with loops too: branches between named junctions. The pump stands between two of"
                            + " them.",
            example =
                    "ring = circuit(water(12.degC), pump: ['return', 'supply'], [branch('west', pipe(40.m, steel: 50),"
                            + " from: 'supply', to: 'end'), branch('east', pipe(60.m, steel: 50), from: 'supply', to: 'end'),"
                            + " branch('coil', coil(6.m3ph, 25.kPa), controlValve(10.kv), from: 'end', to: 'return')])",
            choices = "pump: a list of two junctions, where it draws and where it delivers; always needed")
    public static Circuit circuit(Map<String, ?> given, Object liquid, List<?> branches) {
        Object pump = Choices.of("circuit", given, "pump").object("pump", Object.class);
        Object[] sides = Rows.of(pump, 2, "the choice pump: of circuit", "the junctions where it draws and delivers");
        return new Circuit(
                liquid(liquid, "circuit"),
                String.valueOf(sides[1]),
                String.valueOf(sides[0]),
                branches.stream()
                        .map(branch ->
                                Wanted.object(Branch.class, branch, "a branch of circuit, which has from: and to:"))
                        .toList());
    }

    /** Says how a circuit stands. */
    @Word(help = FLOWS, example = FLOWS_EXAMPLE)
    public static CircuitSolution flows(Object circuit, Object head) {
        return flows(Map.of(), circuit, head);
    }

    /** Says how a circuit stands. */
    @Word(
            help = FLOWS,
            example = FLOWS_EXAMPLE,
            choices = {
                "load: what all branches are asked for, as a share of design; 100 % unless chosen",
                "demands: what single branches are asked for, as in demands: [foyer: 8.m3ph, attic: 0.m3ph]"
            })
    public static CircuitSolution flows(Map<String, ?> given, Object circuit, Object head) {
        Choices choices = Choices.of("flows", given, "load", "demands");
        Circuit loop = Wanted.object(Circuit.class, circuit, "the circuit of flows");
        return LeastFlow.solve(loop, demands(loop, choices), Closing.head(headAtPump(head, "flows")));
    }

    /** Returns the head at a pump, which pushes. */
    static Head headAtPump(Object given, String word) {
        Head head = Wanted.head(given, "the head of " + word);
        if (head.si() < 0) {
            throw new Refusal(
                    CircuitProblem.NO_HEAD_AT_PUMP,
                    "Asked for " + word + " at a head of " + head,
                    "A pump adds head: 0 or more",
                    "Check the sign; a pump that stands still is 0.m");
        }
        return head;
    }

    /** Returns what is asked of a circuit: a share of all design flows, and single demands by the branch. */
    static Demands demands(Circuit loop, Choices choices) {
        Demands demands = loop.designDemands().times(choices.ratio("load", Ratio.of(1)));
        Map<?, ?> single = choices.object("demands", Map.class, Map.of());
        for (Map.Entry<?, ?> one : single.entrySet()) {
            String name = String.valueOf(one.getKey());
            demands = demands.with(name, Wanted.flow(one.getValue(), "the demand of '" + name + "'"));
        }
        return demands;
    }

    private static Liquid liquid(Object given, String word) {
        return Wanted.object(Liquid.class, given, "the liquid of " + word);
    }

    private static List<Tap> taps(List<?> branches, String word) {
        if (branches.isEmpty()) {
            throw new Refusal(
                    ScriptProblem.WRONG_VALUE,
                    "An empty list was given for the branches of " + word,
                    "A circuit has at least one branch",
                    "Write them as " + BRANCH_EXAMPLE);
        }
        return branches.stream()
                .map(branch -> Wanted.object(Tap.class, branch, "a branch of " + word + ", without from: and to:"))
                .toList();
    }

    /** Takes a part, or a list of parts, and calls those without a name of their own after where they stand. */
    private static List<Part> parts(Object given, String place, String what) {
        List<Part> parts = new ArrayList<>();
        for (Object one : given instanceof List<?> list ? list : List.of(given)) {
            Part part = one instanceof PumpBranch pump
                    ? new BoosterPump(pump)
                    : Wanted.object(Part.class, one, "a part of " + what);
            parts.add(part instanceof NamedPart named && UNNAMED.contains(named.name()) ? called(named, place) : part);
        }
        return parts;
    }

    private static Part called(NamedPart part, String place) {
        return place.startsWith(part.name()) ? part : part.named(part.name() + " of " + place);
    }
}
