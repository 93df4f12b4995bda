package headrace.report.circuit;

import headrace.chart.mark.Diagram.Side;
import headrace.circuit.Branch;
import headrace.circuit.Circuit;
import headrace.circuit.part.BoosterPump;
import headrace.circuit.part.DecouplerPipe;
import headrace.circuit.part.Passage;
import headrace.circuit.part.pipe.Pipe;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Which junctions of a circuit stand on the side of supply and which on that of return, and the mains by which each is
 * reached from the pump.
 *
 * <p>Junctions that the mains reach from the discharge are supply, those from the suction return; whichever is nearer
 * by mains where both do. A junction that only terminals reach stands opposite to where its terminal begins.
 */
final class SidedJunctions {
    private final Circuit circuit;
    private final Map<String, Side> sides = new LinkedHashMap<>();
    private final Map<String, Branch> mains = new LinkedHashMap<>();
    private final Map<String, List<String>> children = new LinkedHashMap<>();
    private final List<String> roots = new ArrayList<>();
    private final List<Branch> plant = new ArrayList<>();

    SidedJunctions(Circuit circuit) {
        this.circuit = circuit;
        root(circuit.discharge(), Side.LEFT);
        root(circuit.suction(), Side.RIGHT);
        spread(new ArrayDeque<>(roots));
        boolean more = true;
        while (more) {
            more = false;
            for (Branch branch : circuit.branches()) {
                more |= across(branch);
            }
        }
        foldPlant();
    }

    /** What the whole flow passes before the pump, pipes apart, stands on the row of the pump. */
    private void foldPlant() {
        String junction = circuit.suction();
        while (children.get(junction).size() == 1 && touches(junction) == (plant.isEmpty() ? 1 : 2)) {
            String next = children.get(junction).get(0);
            Branch main = mains.get(next);
            if (main.parts().stream().allMatch(Pipe.class::isInstance)) {
                return;
            }
            plant.add(main);
            mains.remove(next);
            roots.set(roots.indexOf(junction), next);
            junction = next;
        }
    }

    private long touches(String junction) {
        return circuit.branches().stream()
                .filter(branch -> other(branch, junction) != null)
                .count();
    }

    private void root(String junction, Side side) {
        sides.put(junction, side);
        children.put(junction, new ArrayList<>());
        roots.add(junction);
    }

    private void spread(Deque<String> open) {
        while (!open.isEmpty()) {
            String junction = open.remove();
            for (Branch branch : circuit.branches()) {
                String other = other(branch, junction);
                if (other != null && isMain(branch) && !sides.containsKey(other)) {
                    sides.put(other, sides.get(junction));
                    children.put(other, new ArrayList<>());
                    children.get(junction).add(other);
                    mains.put(other, branch);
                    open.add(other);
                }
            }
        }
    }

    /** Takes in a junction that no main reaches, with all that mains reach from it. */
    private boolean across(Branch branch) {
        boolean begins = sides.containsKey(branch.from());
        if (begins == sides.containsKey(branch.to())) {
            return false;
        }
        String near = begins ? branch.from() : branch.to();
        String far = begins ? branch.to() : branch.from();
        root(far, sides.get(near) == Side.LEFT ? Side.RIGHT : Side.LEFT);
        Deque<String> open = new ArrayDeque<>();
        open.add(far);
        spread(open);
        return true;
    }

    /** A pump of its own lifts a side further and stands in its main; a decoupler ties both sides. */
    private static boolean isMain(Branch branch) {
        return !branch.isTerminal()
                && branch.parts().stream().noneMatch(part -> part instanceof DecouplerPipe)
                && (hasPump(branch) || branch.parts().stream().noneMatch(part -> part.passage() == Passage.FORWARD));
    }

    /** Returns whether a branch has a pump of its own. */
    static boolean hasPump(Branch branch) {
        return branch.parts().stream().anyMatch(BoosterPump.class::isInstance);
    }

    private static String other(Branch branch, String junction) {
        if (branch.from().equals(junction)) {
            return branch.to();
        }
        return branch.to().equals(junction) ? branch.from() : null;
    }

    Side side(String junction) {
        return sides.get(junction);
    }

    /** Returns the junctions from which a side begins: a side of the pump, and such as only terminals reach. */
    List<String> roots(Side side) {
        return roots.stream().filter(root -> sides.get(root) == side).toList();
    }

    List<String> children(String junction) {
        return children.get(junction);
    }

    /** Returns the main by which a junction is reached; none for a root. */
    Branch main(String junction) {
        return mains.get(junction);
    }

    /** Returns what stands on the row of the pump, from the pump back. */
    List<Branch> plant() {
        return plant;
    }

    /** Returns the branches that are drawn across: all but the mains by which junctions are reached, and the plant. */
    List<Branch> across() {
        return circuit.branches().stream()
                .filter(branch -> !mains.containsValue(branch) && !plant.contains(branch))
                .toList();
    }
}
