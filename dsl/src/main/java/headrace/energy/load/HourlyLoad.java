package headrace.energy.load;

import headrace.energy.LoadBin;
import headrace.energy.LoadProfile;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Ratio;
import headrace.units.Time;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The load of every hour of a year.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Shares of design load: of the load that the circuit was sized for, not of the greatest that was seen. Times are
 *       local, without a change of clock.
 *   <dt>Limits
 *   <dd>8760 or 8784 hours in a row, 0 to 120 % of design load; above 100 % noted.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_YEAR} or {@code LOAD_OUT_OF_RANGE}.
 *   <dt>Source
 *   <dd>Named by the basis; the limit of 120 % is an assumption.
 * </dl>
 */
public final class HourlyLoad implements Traced {
    /** The hours of a year without and with a leap day. */
    public static final List<Integer> YEARS = List.of(8760, 8784);

    /** The most that a load may be, as a share of design. */
    public static final double MOST = 1.2;

    private static final double ROUNDING = 1e-9;
    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm");

    private final String name;
    private final LocalDateTime start;
    private final double[] shares;
    private final Notes notes;
    private final Basis basis;

    private HourlyLoad(String name, LocalDateTime start, double[] shares, Notes notes, Basis basis) {
        this.name = name;
        this.start = start;
        this.shares = shares;
        this.notes = notes;
        this.basis = basis;
    }

    /**
     * Returns the load of a year.
     *
     * @param name what it is called
     * @param start when its first hour begins
     * @param shares the share of design load in each hour
     * @param basis where they come from
     */
    public static HourlyLoad of(String name, LocalDateTime start, double[] shares, Basis basis) {
        double[] own = shares.clone();
        if (!YEARS.contains(own.length)) {
            throw new Refusal(
                    LoadProblem.IMPOSSIBLE_YEAR,
                    "Asked for the year '" + name + "' with " + own.length + " hours",
                    "A year has 8760 hours, or 8784 with a leap day",
                    "Give every hour once; for a part of a year make a load profile of bins");
        }
        for (int i = 0; i < own.length; i++) {
            if (!(own[i] >= 0 && own[i] <= MOST * (1 + ROUNDING))) {
                throw new Refusal(
                        LoadProblem.LOAD_OUT_OF_RANGE,
                        "Asked for a load of " + Ratio.of(own[i]) + " of design at "
                                + start.plusHours(i).format(CLOCK) + " in '" + name + "'",
                        "A load lies between 0 and 120 % of design",
                        "Check the unit and the design load; a load that is really greater asks for a greater design");
            }
        }
        return new HourlyLoad(name, start, own, aboveDesign(name, start, own), basis);
    }

    private static Notes aboveDesign(String name, LocalDateTime start, double[] shares) {
        int above = 0;
        int most = 0;
        for (int i = 0; i < shares.length; i++) {
            above += shares[i] > 1 + ROUNDING ? 1 : 0;
            most = shares[i] > shares[most] ? i : most;
        }
        return above == 0
                ? Notes.NONE
                : Notes.NONE.with(
                        LoadProblem.LOAD_ABOVE_DESIGN,
                        "In " + above + " hours of '" + name + "' the load is above design; the greatest is "
                                + Ratio.of(shares[most]) + " at "
                                + start.plusHours(most).format(CLOCK));
    }

    /** Returns this load with what its reader had to say. */
    public HourlyLoad with(Notes more) {
        return new HourlyLoad(name, start, shares, notes.and(more), basis);
    }

    /** Returns what it is called. */
    public String name() {
        return name;
    }

    /** Returns when its first hour begins. */
    public LocalDateTime start() {
        return start;
    }

    /** Returns how many hours it has. */
    public int hours() {
        return shares.length;
    }

    /** Returns the share of design load in an hour, counted from 0. */
    public double shareAt(int hour) {
        return shares[hour];
    }

    /** Returns when an hour begins, in words. */
    public String clockAt(int hour) {
        return start.plusHours(hour).format(CLOCK);
    }

    /** Returns the greatest load. */
    public Ratio greatest() {
        return Ratio.of(Arrays.stream(shares).max().orElseThrow());
    }

    /** Returns the mean load of all hours. */
    public Ratio mean() {
        return Ratio.of(Arrays.stream(shares).average().orElseThrow());
    }

    /** Returns the hours with a load. */
    public Time loaded() {
        return Time.hours(Arrays.stream(shares).filter(share -> share > 0).count());
    }

    /**
     * Returns how the year divides over flows. Hours of the same flow make one bin, so that nothing is rounded.
     *
     * @throws Refusal with {@code LOAD_BEYOND_EMITTER} if a load needs more flow than there can be
     */
    public LoadProfile flows(LoadToFlow way) {
        Map<Double, Integer> count = new HashMap<>();
        for (double share : shares) {
            count.merge(share, 1, Integer::sum);
        }
        List<LoadBin> bins = new ArrayList<>();
        Map<Double, Double> flows = new HashMap<>();
        count.forEach((load, hours) -> flows.merge(way.flowShare(load), (double) hours, Double::sum));
        flows.forEach((flow, hours) -> bins.add(new LoadBin(Ratio.of(flow), Time.hours(hours))));
        return LoadProfile.of(name, bins, basis.and(way.basis())).with(notes.and(way.notes()));
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
        return name + ": " + shares.length + " hours from " + clockAt(0) + ", " + loaded() + " with load, " + mean()
                + " of design load on average, " + greatest() + " at most";
    }
}
