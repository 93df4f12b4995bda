package headrace.circuit.shape;

import headrace.circuit.part.Part;
import headrace.units.Flow;
import java.util.List;

/**
 * A terminal on mains of two pipes, with the mains that lead to it from the one before.
 *
 * @param name what the terminal is called
 * @param design its design flow
 * @param parts what stands in it, in the order of flow
 * @param supplyMain the supply main from the terminal before it, or from the plant; nothing if they share a junction
 * @param returnMain the return main beside that
 */
public record Tap(String name, Flow design, List<Part> parts, List<Part> supplyMain, List<Part> returnMain) {
    /** Keeps the lists as they are now. */
    public Tap {
        parts = List.copyOf(parts);
        supplyMain = List.copyOf(supplyMain);
        returnMain = List.copyOf(returnMain);
    }

    /** Returns a terminal that shares the junctions of the one before it. */
    public static Tap of(String name, Flow design, Part... parts) {
        return new Tap(name, design, List.of(parts), List.of(), List.of());
    }

    /** Returns this terminal at the end of a main, the same in supply and return. */
    public Tap on(Part... main) {
        return new Tap(name, design, parts, List.of(main), List.of(main));
    }

    /** Returns this terminal with a return main of its own kind. */
    public Tap returning(Part... main) {
        return new Tap(name, design, parts, supplyMain, List.of(main));
    }
}
