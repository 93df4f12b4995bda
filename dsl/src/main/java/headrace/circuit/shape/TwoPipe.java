package headrace.circuit.shape;

import headrace.circuit.Branch;
import headrace.circuit.Circuit;
import headrace.circuit.part.Part;
import headrace.liquid.Liquid;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Lays out circuits of two pipes: a supply main and a return main with terminals between them.
 *
 * <ul>
 *   <li>direct return: the terminal that is reached first returns first, so the last one is farthest by both mains;
 *   <li>reverse return: the terminal that is reached first returns last, so the way by every terminal is about as long.
 * </ul>
 *
 * <p>The junctions are called after the terminals, {@code foyer, supply} and {@code foyer, return}; the mains
 * {@code main to foyer} and {@code main from foyer}.
 */
public final class TwoPipe {
    /** The junction into which the pump delivers. */
    public static final String OUTLET = "pump outlet";

    /** The junction from which the pump draws. */
    public static final String INLET = "pump inlet";

    /** The branch of the plant. */
    public static final String PLANT = "plant";

    private static final String HEADER = "return to plant";

    private final List<Branch> branches = new ArrayList<>();

    private TwoPipe() {}

    /**
     * Returns a circuit with direct return.
     *
     * @param liquid what flows in it
     * @param plant what the whole flow passes on its way back to the pump; may be nothing
     * @param taps the terminals, the nearest first
     */
    public static Circuit directReturn(Liquid liquid, List<? extends Part> plant, List<Tap> taps) {
        TwoPipe shape = new TwoPipe();
        String supply = OUTLET;
        String back = plant.isEmpty() ? INLET : HEADER;
        shape.main(PLANT, back, INLET, plant);
        for (Tap tap : taps) {
            supply = shape.main("main to " + tap.name(), supply, tap.name() + ", supply", tap.supplyMain());
            back = shape.mainBack("main from " + tap.name(), tap.name() + ", return", back, tap.returnMain());
            shape.terminal(tap, supply, back);
        }
        return new Circuit(liquid, OUTLET, INLET, shape.branches);
    }

    /**
     * Returns a circuit with reverse return.
     *
     * @param liquid what flows in it
     * @param plant what the whole flow passes on its way back to the pump; may be nothing
     * @param taps the terminals, the nearest first; the return main of the first is not laid
     * @param home the return main from the last terminal to the plant; may be nothing
     */
    public static Circuit reverseReturn(
            Liquid liquid, List<? extends Part> plant, List<Tap> taps, List<? extends Part> home) {
        TwoPipe shape = new TwoPipe();
        String supply = OUTLET;
        String back = null;
        for (Tap tap : taps) {
            supply = shape.main("main to " + tap.name(), supply, tap.name() + ", supply", tap.supplyMain());
            back = back == null
                    ? tap.name() + ", return"
                    : shape.main("main on to " + tap.name(), back, tap.name() + ", return", tap.returnMain());
            shape.terminal(tap, supply, back);
        }
        String end = back == null ? supply : back;
        shape.branches.add(Branch.of("main home", end, HEADER, home.toArray(Part[]::new)));
        shape.branches.add(Branch.of(PLANT, HEADER, INLET, plant.toArray(Part[]::new)));
        return new Circuit(liquid, OUTLET, INLET, shape.branches);
    }

    private void terminal(Tap tap, String supply, String back) {
        branches.add(new Branch(tap.name(), supply, back, tap.parts(), Optional.of(tap.design())));
    }

    /** Lays a main and returns the junction at its end; nothing to lay leaves the junction where it is. */
    private String main(String name, String from, String to, List<? extends Part> parts) {
        if (parts.isEmpty()) {
            return from;
        }
        branches.add(Branch.of(name, from, to, parts.toArray(Part[]::new)));
        return to;
    }

    /** Lays a main back to a junction and returns the junction where it begins. */
    private String mainBack(String name, String from, String to, List<? extends Part> parts) {
        main(name, from, to, parts);
        return parts.isEmpty() ? to : from;
    }
}
