package headrace.energy.load;

import headrace.circuit.Demands;
import headrace.energy.LoadBin;
import headrace.energy.LoadProfile;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Flow;
import headrace.units.Ratio;
import headrace.units.Time;
import headrace.work.Steps;
import headrace.work.Work;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;

/**
 * What each branch of a circuit is asked for in every hour of a year.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Flows as shares of the design flow of a branch, m³/s inside.
 *   <dt>Limits
 *   <dd>Design loads of the branches stand to each other as their design flows do.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_BRANCHES}, and {@code LOAD_BEYOND_EMITTER} as {@link LoadToFlow} has it.
 *   <dt>Source
 *   <dd>Of the load, the sharing and the ways from load to flow.
 * </dl>
 */
public final class BranchYear implements Traced {
    private final HourlyLoad load;
    private final List<Asked> branches;
    private final Sharing sharing;
    private final double[] shares;

    /**
     * A branch of the circuit.
     *
     * @param name its name in the circuit
     * @param design its design flow
     * @param way how much flow its load asks for
     */
    public record Asked(String name, Flow design, LoadToFlow way) {}

    private BranchYear(HourlyLoad load, List<Asked> branches, Sharing sharing, double[] shares) {
        this.load = load;
        this.branches = List.copyOf(branches);
        this.sharing = sharing;
        this.shares = shares;
    }

    /**
     * Returns the year of branches that share a load.
     *
     * @param load the load of all of them
     * @param branches the branches, in the order from the pump outwards
     * @param sharing how they share it
     */
    public static BranchYear of(HourlyLoad load, List<Asked> branches, Sharing sharing) {
        require(branches, sharing);
        double all = branches.stream().mapToDouble(branch -> branch.design.si()).sum();
        double[] weights = branches.stream()
                .mapToDouble(branch -> branch.design.si() / all)
                .toArray();
        int count = weights.length;
        double[] shares = new double[load.hours() * count];
        double[] loads = new double[count];
        try (Steps steps = Work.steps("hours of the branches", load.hours())) {
            for (int hour = 0; hour < load.hours(); hour++) {
                steps.next();
                sharing.fill(load.shareAt(hour), weights, hour, loads);
                for (int i = 0; i < count; i++) {
                    shares[hour * count + i] = branches.get(i).way.flowShare(loads[i]);
                }
            }
        }
        return new BranchYear(load, branches, sharing, shares);
    }

    private static void require(List<Asked> branches, Sharing sharing) {
        long names = branches.stream().map(Asked::name).distinct().count();
        boolean flows = branches.stream().allMatch(branch -> branch.design.si() > 0);
        boolean known = !(sharing instanceof Sharing.OneOff off) || off.branch() >= 0 && off.branch() < branches.size();
        if (branches.isEmpty() || names < branches.size() || !flows || !known) {
            throw new Refusal(
                    LoadProblem.IMPOSSIBLE_BRANCHES,
                    "Asked to share a load, " + sharing.name() + ", among " + branches.size() + " branches of " + names
                            + " names",
                    "There is one branch at least, each has its own name and a design flow above 0, and the one that is"
                            + " off is among them",
                    "Name each branch as the circuit does, from the pump outwards");
        }
    }

    /** Returns the load that is shared. */
    public HourlyLoad load() {
        return load;
    }

    /** Returns the branches, from the pump outwards. */
    public List<Asked> branches() {
        return branches;
    }

    /** Returns how they share the load. */
    public Sharing sharing() {
        return sharing;
    }

    /** Returns how they share it, in words. */
    public String shared() {
        return sharing instanceof Sharing.OneOff off ? "'" + branches.get(off.branch()).name + "' off" : sharing.name();
    }

    /** Returns how many hours it has. */
    public int hours() {
        return load.hours();
    }

    /** Returns the share of its design flow that a branch, counted from 0, is asked for in an hour. */
    public double flowShareAt(int hour, int branch) {
        return shares[hour * branches.size() + branch];
    }

    /** Returns what a circuit is asked for in an hour, counted from 0. */
    public Demands demandsAt(int hour) {
        Map<String, Flow> flows = new LinkedHashMap<>();
        for (int i = 0; i < branches.size(); i++) {
            flows.put(branches.get(i).name, branches.get(i).design.times(flowShareAt(hour, i)));
        }
        return new Demands(flows);
    }

    /** Returns the flow of all branches together in an hour, in m³/s. */
    public double totalAt(int hour) {
        double sum = 0;
        for (int i = 0; i < branches.size(); i++) {
            sum += flowShareAt(hour, i) * branches.get(i).design.si();
        }
        return sum;
    }

    /** Returns the year of all branches together, in shares of the sum of their design flows. */
    public LoadProfile together() {
        double all = branches.stream().mapToDouble(branch -> branch.design.si()).sum();
        return profile(
                load.name(),
                IntStream.range(0, hours())
                        .mapToDouble(hour -> totalAt(hour) / all)
                        .toArray());
    }

    /** Returns the year of one branch, counted from 0. */
    public LoadProfile of(int branch) {
        return profile(
                load.name() + ", " + branches.get(branch).name,
                IntStream.range(0, hours())
                        .mapToDouble(hour -> flowShareAt(hour, branch))
                        .toArray());
    }

    private LoadProfile profile(String name, double[] flows) {
        Map<Double, Integer> hours = new TreeMap<>();
        for (double flow : flows) {
            hours.merge(flow, 1, Integer::sum);
        }
        List<LoadBin> bins = new ArrayList<>();
        hours.forEach((flow, count) -> bins.add(new LoadBin(Ratio.of(flow), Time.hours(count))));
        return LoadProfile.of(name, bins, basis()).with(notes());
    }

    /** Returns when its first hour begins. */
    public LocalDateTime start() {
        return load.start();
    }

    @Override
    public Notes notes() {
        return branches.stream().map(branch -> branch.way.notes()).reduce(load.notes(), Notes::and);
    }

    @Override
    public Basis basis() {
        Basis basis = load.basis().with("load shared among " + branches.size() + " branches: " + shared());
        return branches.stream().map(branch -> branch.way.basis()).reduce(basis, Basis::and);
    }

    @Override
    public String toString() {
        return load.name() + " over " + branches.size() + " branches, " + shared();
    }
}
