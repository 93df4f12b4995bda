package headrace.trend;

import headrace.numeric.Students;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Energy;
import headrace.units.Ratio;

/**
 * What was saved against a baseline, and how sure that is.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Energy of the hours that the log has; nothing is added for hours that it has not.
 *   <dt>Limits
 *   <dd>The uncertainty is that of the baseline model alone; the meters come on top. It holds for hours like those the
 *       baseline was fitted to.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_TREND_CHOICE} or {@code TOO_SHORT_LOG}.
 *   <dt>Source
 *   <dd>ASHRAE Guideline 14-2014, annex B: {@code ΔE/E = t·1.26·CV(RMSE)/F·√((n/n′)·(1 + 2/n′)/m)} for n hours of the
 *       baseline, n′ of them independent, m hours after, a saved share F; from memory.
 * </dl>
 *
 * @param baseline the baseline
 * @param after the log in which it was saved
 * @param option how the saving is measured
 * @param expected the energy that the baseline has for these hours
 * @param measured the energy that was taken
 * @param uncertainty half of the interval in which the saving lies
 * @param confidence how surely it lies there
 */
public record MeasuredSaving(
        PowerBaseline baseline,
        TrendLog after,
        SavingOption option,
        Energy expected,
        Energy measured,
        Energy uncertainty,
        Ratio confidence)
        implements Traced {
    private static final double HOUR = 3600;

    /** The empirical factor of Reddy and Claridge, as Guideline 14 has it. */
    private static final double EMPIRICAL = 1.26;

    static MeasuredSaving of(PowerBaseline baseline, TrendLog after, SavingOption option, double confidence) {
        if (!(confidence >= 0.5 && confidence <= 0.999)) {
            throw new Refusal(
                    TrendProblem.IMPOSSIBLE_TREND_CHOICE,
                    "Asked for a saving at a confidence of " + confidence,
                    "It lies from 50 % to 99.9 %",
                    "Common are 90 % and 95 %");
        }
        PowerBaseline.Compared hours = baseline.compared(after);
        double expected = sum(hours.expected());
        double independent = baseline.independentHours();
        double free = Math.max(1, independent - baseline.quality().parameters());
        double spread = Math.sqrt(
                baseline.quality().readings() / independent * (1 + 2 / independent) / hours.measured().length);
        double half = Students.factor(confidence, free)
                * EMPIRICAL
                * baseline.quality().cvRmse().value()
                * spread
                * Math.abs(expected);
        return new MeasuredSaving(
                baseline,
                after,
                option,
                Energy.joules(expected * HOUR),
                Energy.joules(sum(hours.measured()) * HOUR),
                Energy.joules(half * HOUR),
                Ratio.of(confidence));
    }

    private static double sum(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        return sum;
    }

    /** Returns the energy that was saved; below 0 if more was taken. */
    public Energy saved() {
        return expected.minus(measured);
    }

    /** Returns the saving as a share of what the baseline has. */
    public Ratio share() {
        return saved().over(expected);
    }

    /** Returns half of the interval as a share of what the baseline has. */
    public Ratio shareUncertainty() {
        return uncertainty.over(expected);
    }

    @Override
    public Notes notes() {
        Notes notes = baseline.notes().and(after.notes());
        return Math.abs(saved().joules()) > uncertainty.joules()
                ? notes
                : notes.with(
                        TrendProblem.SAVING_WITHIN_UNCERTAINTY,
                        "The saving of " + saved() + " is smaller than its uncertainty of " + uncertainty);
    }

    @Override
    public Basis basis() {
        return baseline.basis()
                .and(after.basis())
                .with("saving by " + option + ", uncertainty of the baseline alone at " + confidence + " confidence");
    }

    @Override
    public String toString() {
        return saved() + " ± " + uncertainty + " (" + share() + " ± " + shareUncertainty() + ", " + confidence
                + " confidence), " + option;
    }
}
