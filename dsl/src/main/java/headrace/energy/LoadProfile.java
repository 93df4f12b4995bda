package headrace.energy;

import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Ratio;
import headrace.units.Time;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * How a year divides over the flows that a circuit asks for.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Flows in shares of design flow, hours of a year.
 *   <dt>Limits
 *   <dd>Up to 8784 hours. Hours that are not in it are hours without pumping, as are those at no flow.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_PROFILE}.
 *   <dt>Source
 *   <dd>Named by the profile's basis.
 * </dl>
 */
public final class LoadProfile implements Traced {
    static final double ROUNDING = 1e-9;

    private static final double MOST_HOURS = 8784;

    /** Per cent of the time by per cent of design flow. */
    private static final Map<Integer, Integer> CIRCULATOR = Map.of(100, 6, 75, 15, 50, 35, 25, 44);

    private final String name;
    private final List<LoadBin> bins;
    private final Notes notes;
    private final Basis basis;

    private LoadProfile(String name, List<LoadBin> bins, Notes notes, Basis basis) {
        this.name = name;
        this.bins = List.copyOf(bins);
        this.notes = notes;
        this.basis = basis;
    }

    /**
     * Returns the profile of these bins, the least flow first. The hours of bins of the same flow are added and noted.
     *
     * @param name what the profile is called
     * @param bins the bins in any order
     * @param basis where they come from
     * @throws Refusal with {@code IMPOSSIBLE_PROFILE} if no bin has both flow and hours, or the hours are more than
     *     8784
     */
    public static LoadProfile of(String name, List<LoadBin> bins, Basis basis) {
        Map<Ratio, Time> hours = new TreeMap<>();
        Notes notes = Notes.NONE;
        for (LoadBin bin : bins) {
            if (hours.containsKey(bin.flowFraction())) {
                notes = notes.with(
                        EnergyProblem.REPEATED_BINS,
                        "The load profile '" + name + "' has more than one bin at " + bin.flowFraction()
                                + " of design flow, whose hours were added");
            }
            hours.merge(bin.flowFraction(), bin.hours(), Time::plus);
        }
        List<LoadBin> ordered = hours.entrySet().stream()
                .map(entry -> new LoadBin(entry.getKey(), entry.getValue()))
                .toList();
        LoadProfile profile = new LoadProfile(name, ordered, notes, basis);
        double total = profile.hours().toHours();
        if (profile.pumpingHours().seconds() <= 0 || total > MOST_HOURS * (1 + ROUNDING)) {
            throw new Refusal(
                    EnergyProblem.IMPOSSIBLE_PROFILE,
                    "Asked for the load profile '" + name + "' with " + bins.size() + " bins and " + profile.hours()
                            + " in all, " + profile.pumpingHours() + " of them with flow",
                    "A profile has some hours with flow, and no more than 8784 hours in all",
                    "Check the column of hours and its unit");
        }
        return profile;
    }

    /**
     * Returns the profile of circulators: 6, 15, 35 and 44 % of the hours at 100, 75, 50 and 25 % of design flow, after
     * Commission Regulation (EC) 641/2009 Annex II as amended.
     *
     * @param hours the hours of a year in which the circulator runs
     */
    public static LoadProfile circulator(Time hours) {
        List<LoadBin> bins = CIRCULATOR.entrySet().stream()
                .map(entry -> new LoadBin(Ratio.percent(entry.getKey()), hours.times(entry.getValue() / 100.0)))
                .toList();
        return of(
                "circulator profile over " + hours,
                bins,
                Basis.of("load profile: 6, 15, 35 and 44 % of the time at 100, 75, 50 and 25 % flow (EC 641/2009 Annex"
                        + " II)"));
    }

    /** Returns this profile with what its reader had to say. */
    public LoadProfile with(Notes more) {
        return new LoadProfile(name, bins, notes.and(more), basis);
    }

    /** Returns what the profile is called. */
    public String name() {
        return name;
    }

    /** Returns the bins, the least flow first, each flow once. */
    public List<LoadBin> bins() {
        return bins;
    }

    /** Returns all hours together. */
    public Time hours() {
        return bins.stream().map(LoadBin::hours).reduce(Time.ZERO, Time::plus);
    }

    /** Returns the hours with flow. */
    public Time pumpingHours() {
        return bins.stream()
                .filter(bin -> bin.flowFraction().value() > 0)
                .map(LoadBin::hours)
                .reduce(Time.ZERO, Time::plus);
    }

    /** Returns the mean flow of the hours with flow, as a share of design flow. */
    public Ratio meanFlowFraction() {
        double sum = bins.stream()
                .mapToDouble(bin -> bin.flowFraction().value() * bin.hours().toHours())
                .sum();
        return Ratio.of(sum / pumpingHours().toHours());
    }

    @Override
    public Notes notes() {
        return notes;
    }

    @Override
    public Basis basis() {
        return basis;
    }

    @Override
    public String toString() {
        return name + ": " + pumpingHours() + " with flow, " + meanFlowFraction() + " of design flow on average";
    }
}
