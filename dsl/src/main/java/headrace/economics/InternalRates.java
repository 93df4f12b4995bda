package headrace.economics;

import headrace.problem.Notes;
import headrace.units.Ratio;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * The internal rates of a cash flow: every rate above −100 % a year at which its present value is 0.
 *
 * <p>There can be none, one or several. By Descartes' rule of signs there are at most as many as the cash flow changes
 * its sign.
 *
 * @param rates the rates in increasing order
 * @param signChanges how often the amounts change their sign over the years
 */
public record InternalRates(List<Ratio> rates, int signChanges) {
    /** Keeps the rates from changing. */
    public InternalRates {
        rates = List.copyOf(rates);
    }

    /** Returns the rate if it is the only one. */
    public Optional<Ratio> only() {
        return rates.size() == 1 ? Optional.of(rates.get(0)) : Optional.empty();
    }

    /** Returns what has to be said where there is none or more than one. */
    public Notes notes() {
        if (rates.isEmpty()) {
            return Notes.NONE.with(
                    EconomicsProblem.NO_INTERNAL_RATE,
                    "The present value of this cash flow is 0 at no rate above -100 %, so that it has no internal rate");
        }
        if (rates.size() > 1) {
            return Notes.NONE.with(
                    EconomicsProblem.SEVERAL_INTERNAL_RATES,
                    "The cash flow changes its sign " + signChanges + " times and has " + rates.size()
                            + " internal rates, " + this + ", none of which decides; use the present value");
        }
        return Notes.NONE;
    }

    @Override
    public String toString() {
        return rates.isEmpty() ? "none" : rates.stream().map(Ratio::toString).collect(Collectors.joining(" and "));
    }
}
