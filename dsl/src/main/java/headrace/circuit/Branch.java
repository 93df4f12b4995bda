package headrace.circuit;

import headrace.circuit.part.FlowLimiting;
import headrace.circuit.part.Part;
import headrace.circuit.part.Passage;
import headrace.circuit.part.Throttling;
import headrace.problem.Refusal;
import headrace.units.Flow;
import java.util.List;
import java.util.Optional;

/**
 * A piece of a circuit between two junctions: parts in a row, from a name to a name.
 *
 * <p>With a design flow it is a terminal, a branch that serves a load: it delivers the flow that is asked of it, or its
 * valve stands fully open. Without one it carries whatever the heads at its ends drive through it.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Quantities.
 *   <dt>Limits
 *   <dd>Two different junctions, a design flow above 0, at most one valve that throttles, which needs a design flow,
 *       and at most one part that holds a flow.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_CIRCUIT_BRANCH}.
 *   <dt>Source
 *   <dd>The form "delivers its demand or stands fully open" is common practice, no source.
 * </dl>
 *
 * @param name what it is called; no other branch of the circuit is called so
 * @param from the junction at which a positive flow enters
 * @param to the junction at which it leaves
 * @param parts what stands in it, in the order of flow; none is a short connection without loss
 * @param design the design flow of a terminal
 */
public record Branch(String name, String from, String to, List<Part> parts, Optional<Flow> design) {
    /** Refuses what is no branch. */
    public Branch {
        parts = List.copyOf(parts);
        if (name.isBlank() || from.isBlank() || to.isBlank()) {
            throw refusal(
                    "'" + name + "' from '" + from + "' to '" + to + "'",
                    "A branch and both its junctions have names",
                    "Name what has none; any text will do");
        }
        if (from.equals(to)) {
            throw refusal(
                    "'" + name + "' from '" + from + "' to '" + to + "'",
                    "A branch leads from one junction to another",
                    "Give the junction at its other end");
        }
        if (design.isPresent() && !(design.get().si() > 0)) {
            throw refusal(
                    "'" + name + "' with a design flow of " + design.get(),
                    "The design flow of a terminal is above 0",
                    "Leave a branch out that serves nothing, or ask it for 0 when the circuit is solved");
        }
        if (count(parts, Throttling.class) > (design.isPresent() ? 1 : 0)) {
            throw refusal(
                    "'" + name + "' with " + named(parts, Throttling.class)
                            + (design.isPresent() ? "" : " and without a design flow"),
                    "One valve throttles a branch to the flow that is asked of it, so the branch has a design flow",
                    design.isPresent()
                            ? "Keep the control valve; a balancing valve is a part of its own"
                            : "Give the branch its design flow");
        }
        if (count(parts, FlowLimiting.class) > 1) {
            throw refusal(
                    "'" + name + "' with " + named(parts, FlowLimiting.class),
                    "One part can hold the flow of a branch",
                    "Keep the one that is set lower");
        }
    }

    /** Returns a branch that carries what the heads at its ends drive through it. */
    public static Branch of(String name, String from, String to, Part... parts) {
        return new Branch(name, from, to, List.of(parts), Optional.empty());
    }

    /** Returns a terminal with a design flow. */
    public static Branch terminal(String name, String from, String to, Flow design, Part... parts) {
        return new Branch(name, from, to, List.of(parts), Optional.of(design));
    }

    /** Returns whether it serves a load. */
    public boolean isTerminal() {
        return design.isPresent();
    }

    /** Returns the control valve, if there is one. */
    public Optional<Throttling> valve() {
        return first(Throttling.class);
    }

    /** Returns the part that holds the flow, if there is one. */
    public Optional<FlowLimiting> limiter() {
        return first(FlowLimiting.class);
    }

    /** Returns whether nothing flows back through it. */
    public boolean isOneWay() {
        return isTerminal() || parts.stream().anyMatch(part -> part.passage() == Passage.FORWARD);
    }

    /** Returns this branch under another name. */
    public Branch named(String other) {
        return new Branch(other, from, to, parts, design);
    }

    private <T> Optional<T> first(Class<T> kind) {
        return parts.stream().filter(kind::isInstance).map(kind::cast).findFirst();
    }

    private static long count(List<Part> parts, Class<?> kind) {
        return parts.stream().filter(kind::isInstance).count();
    }

    private static String named(List<Part> parts, Class<?> kind) {
        return String.join(
                " and ",
                parts.stream()
                        .filter(kind::isInstance)
                        .map(part -> "'" + part.name() + "'")
                        .toList());
    }

    private static Refusal refusal(String what, String possible, String next) {
        return new Refusal(CircuitProblem.IMPOSSIBLE_CIRCUIT_BRANCH, "Asked for the branch " + what, possible, next);
    }
}
