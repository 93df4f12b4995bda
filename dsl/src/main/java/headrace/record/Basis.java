package headrace.record;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * What a result rests on: its inputs and the choices made on the way. A result computed from others rests on what they
 * rest on.
 *
 * @param inputs the inputs, each once, in the order in which they came in
 * @param choices models, methods, seeds and assumed values in words, each once, such as {@code efficiency over speed:
 *     (1−η)/(1−η₀) = (n₀/n)^0.1 at best efficiency (Sârbu and Borza 1998)}
 */
public record Basis(List<Input> inputs, List<String> choices) {
    /** Rests on nothing from outside. */
    public static final Basis NONE = new Basis(List.of(), List.of());

    /** Keeps each entry once. */
    public Basis {
        inputs = List.copyOf(new LinkedHashSet<>(inputs));
        choices = List.copyOf(new LinkedHashSet<>(choices));
    }

    /** Returns the basis of one input. */
    public static Basis of(Input input) {
        return new Basis(List.of(input), List.of());
    }

    /** Returns the basis of one choice. */
    public static Basis of(String choice) {
        return new Basis(List.of(), List.of(choice));
    }

    /** Returns this basis and the other's. */
    public Basis and(Basis other) {
        return new Basis(joined(inputs, other.inputs), joined(choices, other.choices));
    }

    /** Returns this basis with one more choice. */
    public Basis with(String choice) {
        return and(of(choice));
    }

    private static <T> List<T> joined(List<T> first, List<T> second) {
        Set<T> both = new LinkedHashSet<>(first);
        both.addAll(second);
        return new ArrayList<>(both);
    }
}
