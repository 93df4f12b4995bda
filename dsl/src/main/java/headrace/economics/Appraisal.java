package headrace.economics;

import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Money;
import headrace.units.Numbers;
import headrace.units.Ratio;
import headrace.units.Time;
import java.util.Optional;

/**
 * What a saving is worth against its first cost.
 *
 * <dl>
 *   <dt>Units
 *   <dd>One currency; paybacks in years from now.
 *   <dt>Limits
 *   <dd>The simple payback is the first cost after its rebate over the net saving of year 1; there is none where that
 *       saving is not above 0.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_TERM} for a first cost that is not above 0.
 *   <dt>Source
 *   <dd>Textbook knowledge; saving-to-investment ratio and adjusted rate: NIST Handbook 135, 1995 (from memory).
 * </dl>
 *
 * @param name what is weighed, and against which baseline
 * @param firstCost the first cost, before its rebate
 * @param saving the saving of year 1 as calculated
 * @param terms the terms
 * @param flow the money by year
 * @param own what the calculation of the saving had to say
 * @param source what the saving rests on
 */
public record Appraisal(String name, Money firstCost, Money saving, Terms terms, CashFlow flow, Notes own, Basis source)
        implements Traced {

    /** Returns the appraisal of a saving that is stated. */
    public static Appraisal of(String name, Money firstCost, Money saving, Terms terms) {
        return of(name, firstCost, saving, terms, Notes.NONE, Basis.NONE);
    }

    static Appraisal of(String name, Money firstCost, Money saving, Terms terms, Notes own, Basis source) {
        Money outlay = firstCost.minus(terms.rebate().orElse(firstCost.times(0)));
        if (outlay.amount() <= 0) {
            throw new Refusal(
                    EconomicsProblem.IMPOSSIBLE_TERM,
                    "Asked to weigh a saving against a first cost of " + firstCost
                            + terms.rebate()
                                    .map(back -> " with a rebate of " + back)
                                    .orElse(""),
                    "What is laid out at once must be above 0",
                    "What costs nothing needs no payback; check the amounts");
        }
        return new Appraisal(name, firstCost, saving, terms, terms.flow(firstCost, saving), own, source);
    }

    /** Returns the first cost after its rebate. */
    public Money outlay() {
        return flow.in(0).times(-1);
    }

    /** Returns the simple payback: the outlay over the net saving of year 1. */
    public Optional<Time> simplePayback() {
        double first = flow.in(1).amount();
        return first > 0 ? Optional.of(Time.years(outlay().amount() / first)) : Optional.empty();
    }

    /** Returns when the discounted saving has paid the outlay. */
    public Optional<Time> discountedPayback() {
        return flow.payback(terms.discounting().nominal());
    }

    /** Returns the net present value. */
    public Money netPresentValue() {
        return flow.netPresentValue(terms.discounting().nominal());
    }

    /** Returns the internal rates. */
    public InternalRates internalRates() {
        return flow.internalRates();
    }

    /** Returns the present value of all that comes after, over the outlay. */
    public Ratio savingToInvestment() {
        return netPresentValue().plus(outlay()).over(outlay());
    }

    /** Returns the rate at which the outlay would have to grow to give the same, all savings put by at the discount. */
    public Optional<Ratio> adjustedRate() {
        double ratio = savingToInvestment().value();
        return ratio <= 0
                ? Optional.empty()
                : Optional.of(Ratio.of(
                        (1 + terms.discounting().nominal().value()) * Math.pow(ratio, 1.0 / terms.years()) - 1));
    }

    @Override
    public Notes notes() {
        Notes notes = own.and(terms.discounting().notes());
        if (terms.realisation().reasons().isEmpty()) {
            notes = notes.with(
                    EconomicsProblem.REALISATION_NOT_STATED,
                    "The calculated saving is taken in full; in the field often about 40 % of it was found (Gopalakrishnan"
                            + " and Kissock), for bypasses, the place of the sensor and its set point");
        }
        if (flow.in(1).amount() <= 0) {
            notes = notes.with(
                    EconomicsProblem.NOTHING_SAVED, "In year 1 " + flow.in(1) + " is left, so that nothing pays back");
        }
        if (discountedPayback().isPresent()
                && flow.losesAgain(terms.discounting().nominal())) {
            notes = notes.with(
                    EconomicsProblem.PAYBACK_LOST_AGAIN,
                    "After the payback a later cost takes the discounted sum below 0 again");
        }
        return notes.and(internalRates().notes());
    }

    @Override
    public Basis basis() {
        return source.with("saving of year 1 as calculated: " + saving)
                .with("first cost: " + firstCost)
                .with("terms: " + terms);
    }

    @Override
    public String toString() {
        return name + ": "
                + simplePayback()
                        .map(time -> "pays back in " + Numbers.print(time.toYears()) + " years")
                        .orElse("does not pay back")
                + ", present value " + netPresentValue() + " over " + terms.years() + " years, internal rate "
                + internalRates();
    }
}
