package headrace.pump;

import headrace.numeric.RootScan;
import headrace.numeric.Roots;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.pump.BranchShape.Stretch;
import headrace.record.Basis;
import headrace.units.Flow;
import headrace.units.Head;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/**
 * Pumps side by side between two headers, each on its own branch behind its own check valve; they may differ in curve
 * and speed.
 *
 * <p>The unknown is the head between the headers: each branch then has its flow, and the system must take that head at
 * the sum. A branch whose head falls with flow has one flow for a head. One that droops has two, or none behind a valve
 * that stays shut; each such choice is tried, and what meets is listed. Where there is a choice, the point is the one
 * on falling stretches with the greatest flow.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Heads between the headers, in metres of the liquid.
 *   <dt>Limits
 *   <dd>A system whose head does not fall with flow. With more than {@value #TRIED_TOGETHER} drooping branches the
 *       choices are tried one branch at a time only, which the note on several points says.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code NO_PUMPS}, {@code SHUT_OFF_UNKNOWN}, {@code BEYOND_PUMP_CURVES} or
 *       {@code NO_SHARED_POINT}.
 *   <dt>Source
 *   <dd>Textbook knowledge: equal head between the headers, flows add.
 * </dl>
 */
public final class ParallelPumps {
    private static final int TRIED_TOGETHER = 4;
    private static final double ROUNDING = 1e-9;

    private final List<PumpBranch> branches;
    private final List<List<Stretch>> shapes;

    private ParallelPumps(List<PumpBranch> branches) {
        this.branches = List.copyOf(branches);
        this.shapes = branches.stream()
                .filter(PumpBranch::running)
                .map(BranchShape::of)
                .toList();
    }

    /** Returns pumps on their branches. */
    public static ParallelPumps of(List<PumpBranch> branches) {
        if (branches.isEmpty()) {
            throw new Refusal(
                    PumpProblem.NO_PUMPS,
                    "Asked for several pumps together and given none",
                    "There must be at least one",
                    "Give a list of pumps");
        }
        return new ParallelPumps(branches);
    }

    /** Returns the branches, in the order in which they were given. */
    public List<PumpBranch> branches() {
        return branches;
    }

    /** Returns the greatest head that any of them gives between the headers; 0 if none runs. */
    public Head greatestHead() {
        return Head.metres(shapes.stream()
                .flatMap(List::stream)
                .mapToDouble(Stretch::top)
                .max()
                .orElse(0));
    }

    /** Returns the head between the headers below which one of them leaves its curve; 0 if none runs. */
    public Head leastHead() {
        return Head.metres(shapes.stream()
                .mapToDouble(shape ->
                        shape.stream().mapToDouble(Stretch::lowest).min().orElseThrow())
                .max()
                .orElse(0));
    }

    /** Returns the flow that all of them give together at a head in m, each on a falling stretch. Checks no range. */
    public double totalFlowAt(double metres) {
        return shapes.stream()
                .mapToDouble(shape -> fallingFlowAt(shape, metres))
                .sum();
    }

    /** Returns whether each of them is then inside its tested range, or behind its closed valve. */
    public boolean testedAt(double metres) {
        return shapes.stream().allMatch(shape -> {
            double q = fallingFlowAt(shape, metres);
            return shape.get(0).branch().curve().covers(q, 1) || q == 0;
        });
    }

    private static double fallingFlowAt(List<Stretch> shape, double metres) {
        double greatest = 0;
        for (Stretch stretch : shape) {
            if (!stretch.rises() && metres >= stretch.lowest() && metres <= stretch.highest()) {
                greatest = Math.max(greatest, stretch.flowAt(metres));
            }
        }
        return greatest;
    }

    /**
     * Returns where the pumps and a system meet.
     *
     * @param systemMetres the head that the system takes in m, of its flow in m³/s; must not fall
     * @param system the system in words, for messages and the basis
     */
    public ParallelPoint meeting(DoubleUnaryOperator systemMetres, String system) {
        List<Found> found = new ArrayList<>();
        for (List<Stretch> choice : choices()) {
            for (double metres : heads(choice, systemMetres)) {
                Found next = Found.of(choice, metres);
                if (found.stream().noneMatch(next::same)) {
                    found.add(next);
                }
            }
        }
        if (found.isEmpty()) {
            throw nowhere(systemMetres, system);
        }
        found.sort(
                Comparator.comparing(Found::falling).thenComparing(Found::total).reversed());
        List<ParallelPoint> points =
                found.stream().map(each -> point(each, system)).toList();
        ParallelPoint chosen = points.get(0);
        List<ParallelPoint> others = points.subList(1, points.size());
        return new ParallelPoint(
                chosen.head(),
                chosen.flow(),
                chosen.branches(),
                others,
                chosen.notes().and(severalNotes(chosen, others)),
                chosen.basis());
    }

    /** One choice of stretches and the head at which it meets the system. */
    private record Found(List<Stretch> choice, double metres, double total) {
        static Found of(List<Stretch> choice, double metres) {
            return new Found(
                    choice,
                    metres,
                    choice.stream().mapToDouble(s -> s.flowAt(metres)).sum());
        }

        boolean falling() {
            return choice.stream().noneMatch(stretch -> stretch.rises() || stretch.shut());
        }

        boolean same(Found other) {
            return Math.abs(metres - other.metres) <= ROUNDING * Math.abs(metres)
                    && Math.abs(total - other.total) <= ROUNDING * total;
        }
    }

    private List<List<Stretch>> choices() {
        long drooping = shapes.stream().filter(shape -> shape.size() > 1).count();
        List<List<Stretch>> all = new ArrayList<>(List.of(List.of()));
        for (List<Stretch> shape : shapes) {
            List<List<Stretch>> longer = new ArrayList<>();
            for (List<Stretch> begun : all) {
                for (Stretch stretch : shape) {
                    boolean usual = !stretch.rises() && !stretch.shut();
                    if (drooping <= TRIED_TOGETHER || usual || begun.stream().noneMatch(s -> s.rises() || s.shut())) {
                        List<Stretch> choice = new ArrayList<>(begun);
                        choice.add(stretch);
                        longer.add(choice);
                    }
                }
            }
            all = longer;
        }
        return all;
    }

    /** Returns the heads at which a choice of stretches gives the flow at which the system takes that head. */
    private double[] heads(List<Stretch> choice, DoubleUnaryOperator systemMetres) {
        DoubleUnaryOperator excess = metres -> systemMetres.applyAsDouble(
                        choice.stream().mapToDouble(s -> s.flowAt(metres)).sum())
                - metres;
        double low = choice.stream().mapToDouble(Stretch::lowest).max().orElse(0);
        double shut = Math.max(greatestHead().metres(), systemMetres.applyAsDouble(0));
        double high = choice.stream().mapToDouble(Stretch::highest).min().orElse(shut);
        high = Math.min(high, shut);
        low = choice.isEmpty() ? Math.min(0, shut) : low;
        if (low > high) {
            return new double[0];
        }
        if (choice.stream().anyMatch(Stretch::rises)) {
            return RootScan.between(excess, low, high);
        }
        double atLow = excess.applyAsDouble(low);
        double atHigh = excess.applyAsDouble(high);
        return atLow >= 0 && atHigh <= 0 ? new double[] {Roots.between(excess, low, high)} : new double[0];
    }

    private ParallelPoint point(Found found, String system) {
        List<BranchFlow> flows = new ArrayList<>();
        Notes notes = Notes.NONE;
        Basis basis = Basis.NONE;
        int running = 0;
        for (PumpBranch branch : branches) {
            double q = branch.running() ? found.choice.get(running++).flowAt(found.metres) : 0;
            BranchFlow flow = BranchFlow.of(branch, q);
            flows.add(flow);
            if (branch.running()) {
                notes = notes.and(
                        flow.point().map(at -> at.notes()).orElse(branch.curve().notes()));
                basis = basis.and(branch.curve().basis());
            }
        }
        Head head = Head.metres(found.metres);
        return new ParallelPoint(
                head,
                Flow.cubicMetresPerSecond(found.total),
                flows,
                List.of(),
                notes.and(deadHeadNotes(flows, head)),
                basis.with("system: " + system));
    }

    private static Notes deadHeadNotes(List<BranchFlow> flows, Head head) {
        Notes notes = Notes.NONE;
        for (BranchFlow flow : flows) {
            if (flow.deadHeaded()) {
                notes = notes.with(
                        PumpProblem.DEAD_HEADED_PUMP,
                        flow.branch().name() + " runs against its closed check valve: " + head
                                + " between the headers, and it opens the valve only below "
                                + Head.metres(flow.branch().headerMetres(0)) + "; it heats the liquid inside it");
            }
        }
        return notes;
    }

    private Notes severalNotes(ParallelPoint chosen, List<ParallelPoint> others) {
        if (others.isEmpty()) {
            return Notes.NONE;
        }
        long drooping = shapes.stream().filter(shape -> shape.size() > 1).count();
        return Notes.NONE.with(
                PumpProblem.SEVERAL_SOLUTIONS,
                "A head rises with flow, and the pumps can settle at " + (others.size() + 1) + " points: " + chosen
                        + " is shown, "
                        + String.join(
                                "; ",
                                others.stream().map(ParallelPoint::toString).toList())
                        + " can be too"
                        + (drooping > TRIED_TOGETHER
                                ? "; points with two pumps off their falling branch were not sought"
                                : ""));
    }

    private Refusal nowhere(DoubleUnaryOperator systemMetres, String system) {
        double low = leastHead().metres();
        double flow = totalFlowAt(low);
        Head taken = Head.metres(systemMetres.applyAsDouble(flow));
        boolean beyond = taken.metres() < low;
        String there = "At " + Flow.cubicMetresPerSecond(flow) + ", where the first of them reaches the end of its"
                + " curve, they give " + Head.metres(low) + " and the system takes " + taken;
        return beyond
                ? new Refusal(
                        PumpProblem.BEYOND_PUMP_CURVES,
                        "Asked where " + names() + " meet the " + system,
                        there,
                        "Throttle the system, run more pumps or lower their speed, or extend the curves by choice")
                : new Refusal(
                        PumpProblem.NO_SHARED_POINT,
                        "Asked where " + names() + " meet the " + system,
                        there,
                        "Check that the head of the system does not fall with flow, and that the curves reach it");
    }

    private String names() {
        return String.join(", ", branches.stream().map(PumpBranch::name).toList());
    }

    @Override
    public String toString() {
        return branches.size() + " pumps in parallel: "
                + String.join(", ", branches.stream().map(PumpBranch::toString).toList());
    }
}
