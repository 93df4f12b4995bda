package headrace.economics.study;

import headrace.numeric.Sample;
import headrace.units.Money;
import headrace.units.Numbers;
import headrace.units.Ratio;
import headrace.units.Time;
import java.util.Optional;

/**
 * What comes of the draws against one baseline.
 *
 * <p>A payback that never comes counts as longer than any other, a draw without an internal rate as lower than any
 * other. The internal rate of a draw is searched from −50 % on.
 */
public final class Outcomes {
    private final String baseline;
    private final String currency;
    private final Sample simple;
    private final Sample discounted;
    private final Sample value;
    private final Sample rate;

    Outcomes(String baseline, String currency, double[][] results) {
        this.baseline = baseline;
        this.currency = currency;
        this.simple = new Sample(results[0]);
        this.discounted = new Sample(results[1]);
        this.value = new Sample(results[2]);
        this.rate = new Sample(results[3]);
    }

    /** Returns the baseline in words. */
    public String baseline() {
        return baseline;
    }

    /** Returns how many draws there are. */
    public int draws() {
        return value.size();
    }

    /** Returns the probability that the simple payback is shorter than a time. */
    public Ratio probabilityOfPaybackBelow(Time time) {
        return share(simple.below(time.toYears()));
    }

    /** Returns the probability that the present value is above 0. */
    public Ratio probabilityOfGain() {
        return share(draws() - value.below(Double.MIN_VALUE));
    }

    /** Returns the share of draws whose discounted saving pays the first cost within the years of the study. */
    public Ratio paidBack() {
        return share(discounted.finite());
    }

    /** Returns a quantile of the simple payback; nothing if it lies among draws that never pay back. */
    public Optional<Time> simplePayback(Ratio share) {
        return years(simple.quantile(share.value()));
    }

    /** Returns a quantile of the discounted payback; nothing if it lies among draws that never pay back. */
    public Optional<Time> discountedPayback(Ratio share) {
        return years(discounted.quantile(share.value()));
    }

    /** Returns the mean simple payback; nothing if a draw never pays back. */
    public Optional<Time> meanSimplePayback() {
        return years(simple.mean());
    }

    /** Returns the mean discounted payback of the draws that pay back. */
    public Time meanDiscountedPayback() {
        return Time.years(discounted.meanOfFinite());
    }

    /** Returns a quantile of the present value. */
    public Money netPresentValue(Ratio share) {
        return new Money(value.quantile(share.value()), currency);
    }

    /** Returns the mean present value. */
    public Money meanNetPresentValue() {
        return new Money(value.mean(), currency);
    }

    /** Returns the standard deviation of the present value. */
    public Money deviationOfNetPresentValue() {
        return new Money(value.standardDeviation(), currency);
    }

    /** Returns a quantile of the internal rate; nothing if it lies among draws without one. */
    public Optional<Ratio> internalRate(Ratio share) {
        double found = rate.quantile(share.value());
        return Double.isFinite(found) ? Optional.of(Ratio.of(found)) : Optional.empty();
    }

    /** Returns how many draws have no internal rate. */
    public int withoutRate() {
        return draws() - rate.finite();
    }

    private Ratio share(int count) {
        return Ratio.of((double) count / draws());
    }

    private static Optional<Time> years(double found) {
        return Double.isFinite(found) ? Optional.of(Time.years(found)) : Optional.empty();
    }

    @Override
    public String toString() {
        return "against " + baseline + ": simple payback "
                + simplePayback(Ratio.percent(50))
                        .map(Time::toYears)
                        .map(years -> Numbers.print(years) + " a")
                        .orElse("never")
                + " in the middle, present value " + netPresentValue(Ratio.percent(5)) + " to "
                + netPresentValue(Ratio.percent(95)) + " in nine draws of ten";
    }
}
