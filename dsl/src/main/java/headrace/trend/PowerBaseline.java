package headrace.trend;

import headrace.numeric.ChangePoint;
import headrace.numeric.LinearFit;
import headrace.numeric.StraightLine;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.pump.PumpSet;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Flow;
import headrace.units.Numbers;
import headrace.units.Power;
import headrace.units.Temperature;
import java.util.function.Function;

/**
 * What a pump would have taken: its power as a function of what drives it, fitted to the hours of a log.
 *
 * <dl>
 *   <dt>Units
 *   <dd>SI inside; hours are means of their rows, and so are the squares of flow in them.
 *   <dt>Limits
 *   <dd>By the pump map: a line through the power of the map at the logged flow and speed. Since the speed is that of
 *       the time, it tells what repair has saved and not what another control has. By flow: a parabola. By outdoor
 *       temperature: a level and a slope on one side of a change point. What lies beyond the fitted hours is a
 *       continuation of these.
 *   <dt>Errors
 *   <dd>{@link Refusal} as {@link TrendLog} gives them.
 *   <dt>Source
 *   <dd>ASHRAE Guideline 14-2014 for the models; n′ = n·(1 − ρ)/(1 + ρ) for readings that resemble each other, there
 *       too.
 * </dl>
 */
public final class PowerBaseline implements Traced {
    private static final int LEAST_HOURS = 24;

    private final TrendLog log;
    private final Model model;
    private final FitQuality quality;
    private final double correlation;

    /**
     * A model of the power.
     *
     * @param hours what the hours of a log bring: the first column their power, the others what drives it
     * @param formula the power in W at what the columns have in an hour
     * @param parameters how many were fitted
     * @param words the formula with its numbers
     */
    private record Model(Function<TrendLog, Hours> hours, Formula formula, int parameters, String words) {}

    private interface Formula {
        double watts(double[][] means, int hour);
    }

    private PowerBaseline(TrendLog log, Model model, Hours hours) {
        this.log = log;
        this.model = model;
        double[] measured = hours.means()[0];
        double[] expected = expected(hours);
        this.quality = FitQuality.of(measured, expected, hours.count(), model.parameters);
        double[] off = new double[measured.length];
        for (int i = 0; i < off.length; i++) {
            off[i] = measured[i] - expected[i];
        }
        this.correlation = new HourSeries(Channel.POWER, hours.hours(), off, off.length).correlation();
    }

    private double[] expected(Hours hours) {
        double[] expected = new double[hours.count()];
        for (int i = 0; i < expected.length; i++) {
            expected[i] = model.formula.watts(hours.means(), i);
        }
        return expected;
    }

    /** Returns the baseline by the pump map, from all rows of a log. */
    public static PowerBaseline byMap(TrendLog log, PumpSet set, MapPower of) {
        log.require(LEAST_HOURS, "a baseline", Channel.FLOW, Channel.SPEED, Channel.POWER);
        Hours hours = mapHours(log, set, of);
        StraightLine line = StraightLine.through(hours.means()[1], hours.means()[0], enough(log, hours));
        String words = Power.watts(line.intercept()) + " + " + Numbers.print(line.slope()) + " × " + of.words();
        Model model = new Model(other -> mapHours(other, set, of), (means, i) -> line.at(means[1][i]), 2, words);
        return new PowerBaseline(log, model, hours);
    }

    private static Hours mapHours(TrendLog log, PumpSet set, MapPower of) {
        MapReadings readings = MapReadings.of(log, set, of);
        return Hours.of(readings.seconds, readings.count, log.step(), readings.watts, readings.mapWatts);
    }

    /** Returns the baseline by flow, from all rows of a log. */
    public static PowerBaseline byFlow(TrendLog log) {
        log.require(LEAST_HOURS, "a baseline", Channel.FLOW, Channel.POWER);
        Hours hours = flowHours(log);
        enough(log, hours);
        double[][] terms = new double[hours.count()][];
        for (int i = 0; i < terms.length; i++) {
            terms[i] = new double[] {1, hours.means()[1][i], hours.means()[2][i]};
        }
        LinearFit fit = LinearFit.of(terms, hours.means()[0]);
        double perHour = Flow.cubicMetresPerHour(1).si();
        String words = Power.watts(fit.coefficient(0)) + signed(fit.coefficient(1) * perHour) + " × Q"
                + signed(fit.coefficient(2) * perHour * perHour) + " × Q² with Q in m³/h";
        Formula formula =
                (means, i) -> fit.coefficient(0) + fit.coefficient(1) * means[1][i] + fit.coefficient(2) * means[2][i];
        return new PowerBaseline(log, new Model(PowerBaseline::flowHours, formula, 3, words), hours);
    }

    /** Returns a term of a sum, with its sign before it. */
    private static String signed(double watts) {
        return (watts < 0 ? " − " : " + ") + Power.watts(Math.abs(watts));
    }

    private static Hours flowHours(TrendLog log) {
        double[] flow = log.column(Channel.FLOW);
        double[] squares = new double[log.count()];
        for (int i = 0; i < squares.length; i++) {
            squares[i] = flow[i] * flow[i];
        }
        return hours(log, flow, squares);
    }

    /** Returns the baseline by outdoor temperature, from all rows of a log. */
    public static PowerBaseline byOutdoor(TrendLog log) {
        log.require(LEAST_HOURS, "a baseline", Channel.OUTDOOR, Channel.POWER);
        Hours hours = hours(log, log.column(Channel.OUTDOOR));
        enough(log, hours);
        ChangePoint fit = ChangePoint.of(hours.means()[1], hours.means()[0]);
        String words = Power.watts(fit.base()) + "," + signed(fit.slope()) + " for each K "
                + (fit.right() ? "above " : "below ") + Temperature.kelvins(fit.point()) + " outdoors";
        Model model = new Model(
                other -> hours(other, other.column(Channel.OUTDOOR)),
                (means, i) -> fit.at(means[1][i]),
                ChangePoint.PARAMETERS,
                words);
        return new PowerBaseline(log, model, hours);
    }

    private static Hours hours(TrendLog log, double[]... drivers) {
        double[][] columns = new double[drivers.length + 1][];
        columns[0] = log.column(Channel.POWER);
        System.arraycopy(drivers, 0, columns, 1, drivers.length);
        return Hours.of(log.rows().seconds(), log.count(), log.step(), columns);
    }

    private static int enough(TrendLog log, Hours hours) {
        if (hours.count() < LEAST_HOURS) {
            throw new Refusal(
                    TrendProblem.TOO_SHORT_LOG,
                    "Asked for a baseline from " + hours.count() + " hours of " + log.name(),
                    "It takes " + LEAST_HOURS + " hours or more of which half the rows are there",
                    "Take a longer part of the log");
        }
        return hours.count();
    }

    /** Returns the hours of another log, the power measured and expected in each. */
    public Compared compared(TrendLog other) {
        other.requireClean();
        Hours hours = model.hours.apply(other);
        enough(other, hours);
        return new Compared(hours.means()[0], expected(hours));
    }

    /**
     * Hours of a log.
     *
     * @param measured the mean power of each in W
     * @param expected what the baseline gives in W
     */
    public record Compared(double[] measured, double[] expected) {}

    /**
     * Returns what was saved in another log against this baseline.
     *
     * @param confidence of the uncertainty, from 0 to 1, such as 0.95
     */
    public MeasuredSaving savingIn(TrendLog after, SavingOption option, double confidence) {
        return MeasuredSaving.of(this, after, option, confidence);
    }

    /** Returns the log that it was fitted to. */
    public TrendLog log() {
        return log;
    }

    /** Returns how well it meets its own hours. */
    public FitQuality quality() {
        return quality;
    }

    /** Returns how much hours that follow each other resemble each other in what the baseline leaves over. */
    public double correlation() {
        return correlation;
    }

    /** Returns how many hours that do not resemble each other tell as much: n′ = n·(1 − ρ)/(1 + ρ). */
    public double independentHours() {
        return quality.readings() * (1 - correlation) / (1 + correlation);
    }

    /** Returns the formula with its numbers. */
    public String words() {
        return model.words;
    }

    @Override
    public Notes notes() {
        return quality.withinHourlyLimits()
                ? log.notes()
                : log.notes()
                        .with(
                                TrendProblem.BASELINE_TOO_LOOSE,
                                "The baseline of " + log.name() + " has " + quality
                                        + "; ASHRAE Guideline 14 has at most " + FitQuality.MOST_SCATTER + " and "
                                        + FitQuality.MOST_BIAS);
    }

    @Override
    public Basis basis() {
        return log.basis().with("baseline of the power: " + words());
    }

    @Override
    public String toString() {
        return "baseline of " + log.name() + ": " + words() + "; " + quality;
    }
}
