package headrace.trend;

import headrace.energy.LoadBin;
import headrace.energy.LoadProfile;
import headrace.numeric.ChangePoint;
import headrace.numeric.Quantiles;
import headrace.numeric.RandomStreams;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Flow;
import headrace.units.Ratio;
import headrace.units.Temperature;
import headrace.units.Time;
import headrace.work.Steps;
import headrace.work.Work;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The load of a log, extended to a year by the outdoor temperature, with its band.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Loads as shares of design flow.
 *   <dt>Limits
 *   <dd>The load of an hour is a level and a slope on one side of a change point in outdoor temperature, and what the
 *       hours of the log scatter about it. Hours with less than 1 % of design flow count as rest; their share is kept.
 *       Loads are held within 0 and 120 %. Beyond the logged temperatures the load at the nearest of them is taken. The
 *       band is drawn from the days of the log: 95 % of 200 logs made of its days in other numbers lie within it, and
 *       in half of them the line goes on beyond the logged temperatures. It does not know what the log does not have:
 *       another season's use, a holiday.
 *   <dt>Errors
 *   <dd>{@link Refusal} as {@link TrendLog} gives them.
 *   <dt>Source
 *   <dd>The model is that of ASHRAE Guideline 14; drawing days keeps hours that resemble each other together (block
 *       bootstrap, Künsch 1989).
 * </dl>
 */
public final class YearLoad implements Traced {
    private static final int DRAWS = 200;
    private static final double CELL = 0.05;
    private static final int CELLS = 24;
    private static final double REST = 0.01;
    private static final int FEW_DAYS = 28;
    private static final int HOURS_OF_DAY = 24;
    private static final double LOW = 0.025;
    private static final double HIGH = 0.975;

    private final TrendLog log;
    private final Flow design;
    private final OutdoorYear year;
    private final long seed;
    private final Sample sample;
    private final ChangePoint line;
    private final double coldest;
    private final double warmest;
    private final List<Cell> cells;
    private final double[] meanBand;
    private final double mean;

    /**
     * Five per cent of design flow.
     *
     * @param load its middle
     * @param hours how long in the year
     * @param low the lower end of the 95 % band
     * @param high the upper end
     */
    public record Cell(Ratio load, Time hours, Time low, Time high) {}

    /**
     * Hours with the pump running.
     *
     * @param temperatures outdoors in K
     * @param loads as shares
     * @param days where each day begins in these, and their number at the end
     * @param running the share of all hours
     */
    private record Sample(double[] temperatures, double[] loads, List<Integer> days, double running) {
        static Sample of(Hours hours, double design) {
            int n = hours.count();
            double[] t = new double[n];
            double[] load = new double[n];
            List<Integer> days = new ArrayList<>();
            long day = Long.MIN_VALUE;
            int some = 0;
            for (int i = 0; i < n; i++) {
                if (hours.means()[1][i] / design < REST) {
                    continue;
                }
                long today = Math.floorDiv(hours.hours()[i], HOURS_OF_DAY);
                if (today != day) {
                    days.add(some);
                    day = today;
                }
                t[some] = hours.means()[2][i];
                load[some++] = hours.means()[1][i] / design;
            }
            days.add(some);
            double share = n == 0 ? 0 : (double) some / n;
            return new Sample(Arrays.copyOf(t, some), Arrays.copyOf(load, some), days, share);
        }

        int dayCount() {
            return days.size() - 1;
        }

        /** Returns as many days, drawn with putting back. */
        Sample drawn(RandomStreams random, int stream) {
            int n = dayCount();
            int[] chosen = new int[n];
            int size = 0;
            for (int i = 0; i < n; i++) {
                chosen[i] = (int) (random.uniform(stream, i) * n);
                size += days.get(chosen[i] + 1) - days.get(chosen[i]);
            }
            double[] t = new double[size];
            double[] load = new double[size];
            int at = 0;
            for (int day : chosen) {
                int from = days.get(day);
                int length = days.get(day + 1) - from;
                System.arraycopy(temperatures, from, t, at, length);
                System.arraycopy(loads, from, load, at, length);
                at += length;
            }
            return new Sample(t, load, days, running);
        }
    }

    private YearLoad(TrendLog log, Flow design, OutdoorYear year, long seed) {
        this.log = log;
        this.design = design;
        this.year = year;
        this.seed = seed;
        Hours hours = Hours.of(
                log.rows().seconds(),
                log.count(),
                log.step(),
                log.column(Channel.POWER),
                log.column(Channel.FLOW),
                log.column(Channel.OUTDOOR));
        this.sample = Sample.of(hours, design.si());
        requireDays();
        this.line = ChangePoint.of(sample.temperatures, sample.loads);
        this.coldest = Arrays.stream(sample.temperatures).min().orElseThrow();
        this.warmest = Arrays.stream(sample.temperatures).max().orElseThrow();
        double[] best = spread(sample, line, false);
        this.mean = mean(best);
        double[][] draws = draws();
        double[] means = new double[DRAWS];
        for (int d = 0; d < DRAWS; d++) {
            means[d] = mean(draws[d]);
        }
        this.meanBand = Quantiles.of(means).at(new double[] {LOW, HIGH});
        this.cells = cells(best, draws);
    }

    /**
     * Returns the load of a cleaned log with flow and outdoor temperature, extended to a year.
     *
     * @param seed of the drawing of days
     */
    public static YearLoad of(TrendLog log, Flow design, OutdoorYear year, long seed) {
        LoggedLoad.of(log, design);
        log.require(HOURS_OF_DAY, "the load of a year", Channel.FLOW, Channel.OUTDOOR, Channel.POWER);
        return new YearLoad(log, design, year, seed);
    }

    private void requireDays() {
        if (sample.dayCount() < 3 || sample.loads.length < 2 * HOURS_OF_DAY) {
            throw new Refusal(
                    TrendProblem.TOO_SHORT_LOG,
                    "Asked for a year from " + sample.dayCount() + " days and " + sample.loads.length
                            + " hours with flow",
                    "It takes 3 days and 48 hours or more",
                    "Take a longer part of the log");
        }
    }

    /**
     * Returns the hours of the year in each cell: the line at each temperature, and the scatter of the log about it.
     */
    private double[] spread(Sample from, ChangePoint fit, boolean continued) {
        double[] off = new double[from.loads.length];
        for (int i = 0; i < off.length; i++) {
            off[i] = from.loads[i] - fit.at(from.temperatures[i]);
        }
        double[] hours = new double[CELLS];
        for (OutdoorYear.Bin bin : year.bins()) {
            double kelvins = bin.temperature().kelvins();
            double middle = fit.at(continued ? kelvins : Math.min(warmest, Math.max(coldest, kelvins)));
            double each = bin.hours().toHours() * from.running / off.length;
            for (double more : off) {
                int cell = LoggedLoad.cell(Math.max(0, middle + more));
                hours[Math.min(cell, CELLS - 1)] += each;
            }
        }
        return hours;
    }

    private double[][] draws() {
        RandomStreams random = RandomStreams.of(seed);
        double[][] draws = new double[DRAWS][];
        try (Steps steps = Work.steps("drawing years of load", DRAWS)) {
            for (int d = 0; d < DRAWS; d++) {
                steps.next();
                Sample drawn = sample.drawn(random, d);
                draws[d] = spread(drawn, ChangePoint.of(drawn.temperatures, drawn.loads), d % 2 == 1);
            }
        }
        return draws;
    }

    private static double mean(double[] hours) {
        double sum = 0;
        double load = 0;
        for (int i = 0; i < CELLS; i++) {
            sum += hours[i];
            load += hours[i] * (i + 0.5) * CELL;
        }
        return sum > 0 ? load / sum : 0;
    }

    private static List<Cell> cells(double[] best, double[][] draws) {
        List<Cell> cells = new ArrayList<>();
        for (int i = 0; i < CELLS; i++) {
            double[] values = new double[DRAWS];
            for (int d = 0; d < DRAWS; d++) {
                values[d] = draws[d][i];
            }
            double[] band = Quantiles.of(values).at(new double[] {LOW, HIGH});
            cells.add(new Cell(
                    Ratio.of((i + 0.5) * CELL), Time.hours(best[i]), Time.hours(band[0]), Time.hours(band[1])));
        }
        return List.copyOf(cells);
    }

    /** Returns the log. */
    public TrendLog log() {
        return log;
    }

    /** Returns the load over outdoor temperature, in shares and K. */
    public ChangePoint line() {
        return line;
    }

    /** Returns the hours of the year in each 5 % of design flow, with their band. */
    public List<Cell> cells() {
        return cells;
    }

    /** Returns the mean load of the year while running. */
    public Ratio mean() {
        return Ratio.of(mean);
    }

    /** Returns the lower end of its 95 % band. */
    public Ratio lowMean() {
        return Ratio.of(Math.min(mean, meanBand[0]));
    }

    /** Returns the upper end of its 95 % band. */
    public Ratio highMean() {
        return Ratio.of(Math.max(mean, meanBand[1]));
    }

    /** Returns the load profile of the year, as a comparison of laws takes it. */
    public LoadProfile profile() {
        List<LoadBin> bins = cells.stream()
                .filter(cell -> cell.hours().seconds() > 0)
                .map(cell -> new LoadBin(cell.load(), cell.hours()))
                .toList();
        return LoadProfile.of(log.name() + ", extended to a year", bins, basis())
                .with(notes());
    }

    private double beyondLogged() {
        return year.bins().stream()
                        .filter(bin -> bin.temperature().kelvins() < coldest
                                || bin.temperature().kelvins() > warmest)
                        .mapToDouble(bin -> bin.hours().toHours())
                        .sum()
                / year.hours().toHours();
    }

    @Override
    public Notes notes() {
        Notes notes = log.notes();
        double beyond = beyondLogged();
        if (beyond > 0) {
            notes = notes.with(
                    TrendProblem.BEYOND_LOGGED_WEATHER,
                    Ratio.of(beyond)
                            + " of the year's hours have outdoor temperatures that the log does not have; there the load at"
                            + " the nearest one that it has is taken, and the band reaches to where the line goes on");
        }
        if (sample.dayCount() < FEW_DAYS) {
            notes = notes.with(
                    TrendProblem.FEW_LOGGED_DAYS,
                    "The log has " + sample.dayCount() + " days with flow; fewer than " + FEW_DAYS
                            + " say little about other weeks");
        }
        return notes;
    }

    @Override
    public Basis basis() {
        return log.basis()
                .with("loads as shares of the design flow of " + design)
                .with("load of a year: " + Ratio.of(line.base()) + ", and " + Ratio.of(line.slope())
                        + " for each K " + (line.right() ? "above " : "below ")
                        + Temperature.kelvins(line.point()) + " outdoors, scattering as in the log")
                .with("95 % band from " + DRAWS + " drawings of its days, seed " + seed);
    }

    @Override
    public String toString() {
        return log.name() + " extended to a year: " + mean() + " of design flow on average while running, " + lowMean()
                + " to " + highMean();
    }
}
