package headrace.economics;

import headrace.problem.Refusal;
import headrace.units.Money;
import headrace.units.Ratio;
import java.util.List;
import java.util.Optional;

/**
 * The terms on which a saving is weighed against its first cost.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Rates a year. With a nominal discount rate every growth contains inflation; with a real one none does.
 *   <dt>Limits
 *   <dd>1 to 200 years; payments at the end of a year.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_YEARS}, {@code IMPOSSIBLE_RATE} or {@code IMPOSSIBLE_TERM}.
 *   <dt>Source
 *   <dd>Textbook knowledge; NIST Handbook 135, 1995.
 * </dl>
 *
 * @param years how long the study runs
 * @param discounting the discount rate
 * @param escalation by how much the price of energy rises each year after the first
 * @param realisation what is left of the calculated saving
 * @param upkeep what keeping it up costs in year 1 and how that grows; none if absent
 * @param replacement a part that is replaced once; none if absent
 * @param rebate what is given back of the first cost at once; none if absent
 * @param residual what is left at the end of the last year; none if absent
 */
public record Terms(
        int years,
        Discounting discounting,
        Ratio escalation,
        Realisation realisation,
        Optional<Growing> upkeep,
        Optional<Replacement> replacement,
        Optional<Money> rebate,
        Optional<Money> residual) {

    /**
     * A yearly cost that grows.
     *
     * @param first what it is in year 1
     * @param growth by how much it grows each year after
     */
    public record Growing(Money first, Ratio growth) {
        /** Refuses a growth of −100 % or less. */
        public Growing {
            Factors.growth(growth);
        }

        double in(int year) {
            return first.amount() * Math.pow(1 + growth.value(), year - 1);
        }
    }

    /**
     * A part that is replaced once.
     *
     * @param year at the end of which year
     * @param today what it would cost now
     * @param growth by how much its price grows each year from now
     */
    public record Replacement(int year, Money today, Ratio growth) {
        /** Refuses a growth of −100 % or less. */
        public Replacement {
            Factors.growth(growth);
        }

        double in(int asked) {
            return asked == year ? today.amount() * Math.pow(1 + growth.value(), year) : 0;
        }
    }

    /** Refuses years outside the limits. */
    public Terms {
        Factors.years(years);
        Factors.growth(escalation);
        int last = years;
        replacement.ifPresent(part -> {
            if (part.year() < 1 || part.year() > last) {
                throw new Refusal(
                        EconomicsProblem.IMPOSSIBLE_YEARS,
                        "Asked for a replacement at the end of year " + part.year(),
                        "The study runs from year 1 to year " + last,
                        "Leave out a replacement that comes after the study, or make the study longer");
            }
        });
    }

    /** Returns terms over so many years at a discount rate, with the saving in full and the same every year. */
    public static Terms over(int years, Discounting discounting) {
        return new Terms(
                years,
                discounting,
                Ratio.ZERO,
                Realisation.FULL,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    /** Returns these terms with a price of energy that rises. */
    public Terms escalating(Ratio rate) {
        return new Terms(years, discounting, rate, realisation, upkeep, replacement, rebate, residual);
    }

    /** Returns these terms with what is left of the calculated saving. */
    public Terms realising(Realisation left) {
        return new Terms(years, discounting, escalation, left, upkeep, replacement, rebate, residual);
    }

    /** Returns these terms with a cost of upkeep. */
    public Terms upkeep(Money first, Ratio growth) {
        Optional<Growing> cost = Optional.of(new Growing(first, growth));
        return new Terms(years, discounting, escalation, realisation, cost, replacement, rebate, residual);
    }

    /** Returns these terms with a part that is replaced at the end of a year. */
    public Terms replacing(int year, Money today, Ratio growth) {
        Optional<Replacement> part = Optional.of(new Replacement(year, today, growth));
        return new Terms(years, discounting, escalation, realisation, upkeep, part, rebate, residual);
    }

    /** Returns these terms with a part of the first cost that is given back at once. */
    public Terms rebate(Money back) {
        return new Terms(years, discounting, escalation, realisation, upkeep, replacement, Optional.of(back), residual);
    }

    /** Returns these terms with a value that is left at the end of the last year. */
    public Terms residual(Money left) {
        return new Terms(years, discounting, escalation, realisation, upkeep, replacement, rebate, Optional.of(left));
    }

    /** Returns the cash flow of a first cost and a saving in year 1 as calculated. */
    CashFlow flow(Money firstCost, Money saving) {
        Money none = firstCost.times(0);
        Money[] amounts = new Money[years + 1];
        amounts[0] = rebate.orElse(none).minus(firstCost);
        double growth = 1 + escalation.value();
        for (int year = 1; year <= years; year++) {
            int now = year;
            amounts[year] = saving.times(realisation.share().value() * Math.pow(growth, year - 1))
                    .minus(upkeep.map(cost -> money(cost.in(now), cost.first())).orElse(none))
                    .minus(replacement
                            .map(part -> money(part.in(now), part.today()))
                            .orElse(none));
        }
        amounts[years] = amounts[years].plus(residual.orElse(none));
        return CashFlow.of(List.of(amounts));
    }

    private static Money money(double amount, Money like) {
        return new Money(amount, like.currency());
    }

    @Override
    public String toString() {
        StringBuilder text = new StringBuilder(years + " years, discounted at " + discounting
                + ", price of energy rising " + escalation + " a year, " + realisation);
        upkeep.ifPresent(cost -> text.append(", upkeep " + cost.first() + " rising " + cost.growth() + " a year"));
        replacement.ifPresent(part -> text.append(", a replacement of " + part.today() + " at today's price, rising "
                + part.growth() + " a year, at the end of year " + part.year()));
        rebate.ifPresent(back -> text.append(", a rebate of " + back));
        residual.ifPresent(left -> text.append(", a residual value of " + left));
        return text.toString();
    }
}
