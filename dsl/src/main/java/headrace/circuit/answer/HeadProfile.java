package headrace.circuit.answer;

import headrace.circuit.Branch;
import headrace.circuit.Circuit;
import headrace.circuit.CircuitSolution;
import headrace.circuit.part.Part;
import headrace.circuit.part.pipe.Pipe;
import headrace.problem.Notes;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Head;
import headrace.units.Length;
import headrace.work.Work;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The head along the supply and back along the return of a circuit as it stands: between the two lines is what each
 * branch has.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Lengths of pipe from the pump; heads of the liquid above its suction.
 *   <dt>Limits
 *   <dd>A junction of the supply lies as far from the pump as the pipes on the shortest way to it are long, without
 *       those in branches that serve a load; where a branch returns lies beneath where it began, and any other junction
 *       of the return as far as its way to the suction is long. Where no pipe is stated, each main counts as one.
 *   <dt>Errors
 *   <dd>None of its own.
 *   <dt>Source
 *   <dd>Textbook knowledge.
 * </dl>
 *
 * @param solution how the circuit stands
 * @param distances how far each junction lies from the pump, in m of pipe or in mains
 * @param inMetres whether the distances are lengths
 */
public record HeadProfile(CircuitSolution solution, Map<String, Double> distances, boolean inMetres) implements Traced {
    /** Keeps the distances as they are now. */
    public HeadProfile {
        distances = Map.copyOf(distances);
    }

    /** Returns the profile of a circuit as it stands. */
    public static HeadProfile of(CircuitSolution solution) {
        Circuit circuit = solution.circuit();
        boolean inMetres = circuit.branches().stream()
                .filter(branch -> !branch.isTerminal())
                .anyMatch(branch -> length(branch) > 0);
        Map<String, Double> supply = from(circuit, circuit.discharge(), circuit.suction(), inMetres);
        Map<String, Double> back = from(circuit, circuit.suction(), circuit.discharge(), inMetres);
        Map<String, Double> all = new LinkedHashMap<>(supply);
        back.forEach((junction, far) -> {
            if (!(supply.getOrDefault(junction, Double.POSITIVE_INFINITY) < far)) {
                all.put(junction, far);
            }
        });
        for (Branch branch : circuit.terminals()) {
            Double far = supply.get(branch.from());
            if (far != null && back.containsKey(branch.to()) && !branch.to().equals(circuit.suction())) {
                all.put(branch.to(), far);
            }
        }
        return new HeadProfile(solution, all, inMetres);
    }

    private static double length(Branch branch) {
        double sum = 0;
        for (Part part : branch.parts()) {
            sum += part instanceof Pipe pipe ? pipe.length().metres() : 0;
        }
        return sum;
    }

    /** The shortest way to each junction over mains; a shorter way found later is followed once more. */
    private static Map<String, Double> from(Circuit circuit, String start, String other, boolean inMetres) {
        Map<String, Double> far = new LinkedHashMap<>(Map.of(start, 0.0));
        Deque<String> next = new ArrayDeque<>(List.of(start));
        while (!next.isEmpty()) {
            Work.poll();
            String here = next.remove();
            for (Branch main : circuit.branches()) {
                String there = main.from().equals(here) ? main.to() : main.to().equals(here) ? main.from() : null;
                if (there != null && !main.isTerminal() && !there.equals(other)) {
                    double reached = far.get(here) + (inMetres ? length(main) : 1);
                    if (reached < far.getOrDefault(there, Double.POSITIVE_INFINITY)) {
                        far.put(there, reached);
                        next.add(there);
                    }
                }
            }
        }
        return far;
    }

    /** Returns whether a junction is reached from the pump over mains alone. */
    public boolean reaches(String junction) {
        return distances.containsKey(junction);
    }

    /** Returns how far a junction lies, in m of pipe or in mains. */
    public double distance(String junction) {
        return distances.get(junction);
    }

    /** Returns the farthest of all, as a length where lengths are known. */
    public Length farthest() {
        return Length.metres(
                distances.values().stream().mapToDouble(each -> each).max().orElse(0));
    }

    /** Returns the head across a branch: what stands between both lines there. */
    public Head across(String branch) {
        return solution.branch(branch).available();
    }

    @Override
    public Notes notes() {
        return solution.notes();
    }

    @Override
    public Basis basis() {
        return solution.basis();
    }

    @Override
    public String toString() {
        return "heads along the mains at " + solution;
    }
}
