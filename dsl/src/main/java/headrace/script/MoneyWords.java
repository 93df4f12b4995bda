package headrace.script;

import headrace.economics.Appraisal;
import headrace.economics.Carbon;
import headrace.economics.CashFlow;
import headrace.economics.CircuitAppraisal;
import headrace.economics.CostItem;
import headrace.economics.Discounting;
import headrace.economics.InternalRates;
import headrace.economics.LawAppraisals;
import headrace.economics.LifeCycleComparison;
import headrace.economics.LifeCycleCost;
import headrace.economics.Realisation;
import headrace.economics.Realisation.Reason;
import headrace.economics.StrategyAppraisal;
import headrace.economics.StrategyAppraisal.FirstCosts;
import headrace.economics.StrategyAppraisal.Priced;
import headrace.economics.Terms;
import headrace.economics.tariff.Tariff;
import headrace.energy.StrategyComparison;
import headrace.energy.year.CircuitYear;
import headrace.problem.Refusal;
import headrace.units.Energy;
import headrace.units.Mass;
import headrace.units.Money;
import headrace.units.Ratio;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;

/** Words about paybacks, cash flows, life-cycle cost and carbon. */
public final class MoneyWords implements Words {
    private static final String YEARS = "years: how many whole years the study runs; always needed";
    private static final String DISCOUNT = "discount: the discount rate a year; always needed";
    private static final String INFLATION =
            "inflation: the inflation that the discount rate contains; none unless chosen, the rate is then a real one";
    private static final String ESCALATION =
            "escalation: by how much the price of energy rises a year; 0 unless chosen";
    private static final String REALISED = "realised: a realisation; the saving in full, which is noted, unless chosen";
    private static final String UPKEEP = "upkeep: money of year 1; none unless chosen";
    private static final String UPKEEP_GROWTH = "upkeepGrowth: by how much upkeep rises a year; 0 unless chosen";
    private static final String REPLACEMENT =
            "replacement: a list of the year, its cost at today's price, and by how much that rises a year";
    private static final String REBATE = "rebate: money that is given back of the first cost; none unless chosen";
    private static final String RESIDUAL = "residual: money that is left at the end; none unless chosen";
    private static final String[] TERMS = {
        "years",
        "discount",
        "inflation",
        "escalation",
        "realised",
        "upkeep",
        "upkeepGrowth",
        "replacement",
        "rebate",
        "residual"
    };

    @Override
    public String subject() {
        return "Paybacks and life-cycle cost";
    }

    /** Tells what each law of a comparison is worth. */
    @Word(
            help =
                    "What each law of a comparison is worth against throttling at constant speed and against fixed design"
                            + " speed: paybacks, present value, every internal rate.",
            example =
                    "payback(comparison, firstCost: 4200.EUR, beyondFixedSpeed: 900.EUR, years: 15, discount: 6.percent,"
                            + " realised: realisation([['bypass left open', 80.percent]]))",
            choices = {
                "firstCost: more than the pump on the mains costs; always needed",
                "beyondFixedSpeed: more than a drive at fixed speed costs; the first cost unless chosen",
                "tariff: a tariff in place of the price; with shares: where the load is in bins",
                "shares: a map of the share of the saved energy at each rate of the tariff",
                YEARS,
                DISCOUNT,
                INFLATION,
                ESCALATION,
                REALISED,
                UPKEEP,
                UPKEEP_GROWTH,
                REPLACEMENT,
                REBATE,
                RESIDUAL
            })
    public static LawAppraisals payback(Map<String, ?> given, Object comparison) {
        Choices choices =
                Choices.of("payback", given, with(TERMS, "firstCost", "beyondFixedSpeed", "tariff", "shares"));
        Money first = choices.object("firstCost", Money.class);
        FirstCosts costs = new FirstCosts(first, choices.object("beyondFixedSpeed", Money.class, first));
        Terms terms = terms(choices);
        if (comparison instanceof CircuitYear year) {
            return new LawAppraisals(
                    choices.has("tariff")
                            ? CircuitAppraisal.of(year, costs, terms, choices.object("tariff", Tariff.class))
                            : CircuitAppraisal.of(year, costs, terms));
        }
        StrategyComparison compared = Wanted.object(StrategyComparison.class, comparison, "the comparison of payback");
        return new LawAppraisals(
                choices.has("tariff")
                        ? StrategyAppraisal.of(compared, costs, terms, priced(choices))
                        : StrategyAppraisal.of(compared, costs, terms));
    }

    private static Priced priced(Choices choices) {
        Map<String, Ratio> shares = new LinkedHashMap<>();
        Map<?, ?> stated = choices.object("shares", Map.class);
        stated.forEach((name, share) ->
                shares.put(String.valueOf(name), Wanted.ratio(share, "the share of the rate '" + name + "'")));
        return new Priced(choices.object("tariff", Tariff.class), shares);
    }

    /** Weighs a saving that is stated. */
    @Word(
            help = "What a yearly saving that is stated is worth against its first cost.",
            example = "appraise('night set-back', firstCost: 900.EUR, saving: 310.EUR, years: 10, discount: 5.percent)",
            choices = {
                "firstCost: money; always needed",
                "saving: money of year 1 as calculated; always needed",
                YEARS,
                DISCOUNT,
                INFLATION,
                ESCALATION,
                REALISED,
                UPKEEP,
                UPKEEP_GROWTH,
                REPLACEMENT,
                REBATE,
                RESIDUAL
            })
    public static Appraisal appraise(Map<String, ?> given, String name) {
        Choices choices = Choices.of("appraise", given, with(TERMS, "firstCost", "saving"));
        return Appraisal.of(
                name, choices.object("firstCost", Money.class), choices.object("saving", Money.class), terms(choices));
    }

    private static String[] with(String[] names, String... more) {
        List<String> all = new ArrayList<>(List.of(more));
        all.addAll(List.of(names));
        return all.toArray(String[]::new);
    }

    private static Terms terms(Choices choices) {
        Terms terms = Terms.over(choices.whole("years"), discounting(choices))
                .escalating(choices.ratio("escalation", Ratio.ZERO))
                .realising(choices.object("realised", Realisation.class, Realisation.FULL));
        if (choices.has("upkeep")) {
            terms = terms.upkeep(choices.object("upkeep", Money.class), choices.ratio("upkeepGrowth", Ratio.ZERO));
        }
        if (choices.has("replacement")) {
            Object[] part = Rows.of(
                    choices.object("replacement", List.class),
                    3,
                    "the choice replacement:",
                    "the year, the cost at today's price and its rise a year");
            terms = terms.replacing(
                    Wanted.whole(part[0], "the year of a replacement"),
                    Wanted.object(Money.class, part[1], "the cost of a replacement"),
                    Wanted.ratio(part[2], "the rise of the price of a replacement"));
        }
        if (choices.has("rebate")) {
            terms = terms.rebate(choices.object("rebate", Money.class));
        }
        return choices.has("residual") ? terms.residual(choices.object("residual", Money.class)) : terms;
    }

    static Discounting discounting(Choices choices) {
        return Discounting.nominal(choices.ratio("discount"), choices.ratio("inflation", Ratio.ZERO));
    }

    /** Says what is left of a calculated saving. */
    @Word(
            help =
                    "What is left of a calculated saving, each reason with the share that it keeps; an empty list takes the"
                            + " saving in full on purpose.",
            example = "realisation([['bypass left open', 90.percent], ['set point raised', 85.percent]])")
    public static Realisation realisation(List<?> reasons) {
        if (reasons.isEmpty()) {
            return new Realisation(List.of(new Reason("taken in full on purpose", Ratio.of(1))));
        }
        List<Reason> made = new ArrayList<>();
        for (Object reason : reasons) {
            Object[] row = Rows.of(reason, 2, "a reason of realisation", "why, and the share that is kept");
            String why = Wanted.object(CharSequence.class, row[0], "the reason of a realisation")
                    .toString();
            made.add(new Reason(why, Wanted.ratio(row[1], "what a reason of realisation keeps")));
        }
        return new Realisation(made);
    }

    /** Says what the field study found. */
    @Word(
            help = "40 % of a calculated saving, as a field study found for variable flow (Gopalakrishnan and Kissock,"
                    + " University of Dayton, ACEEE; abstract read).",
            example = "fieldRealisation()")
    public static Realisation fieldRealisation() {
        return Realisation.FIELD_STUDY;
    }

    /** Makes a cash flow. */
    @Word(
            help = "A cash flow: money now, then at the end of year 1, 2 and so on; outlays are negative.",
            example = "cashFlow([-4200.EUR, 1100.EUR, 1100.EUR, 1100.EUR, 1100.EUR, 1100.EUR])")
    public static CashFlow cashFlow(List<?> amounts) {
        List<Money> money = new ArrayList<>();
        for (Object amount : amounts) {
            money.add(Wanted.object(Money.class, amount, "an amount of cashFlow"));
        }
        return CashFlow.of(money);
    }

    /** Tells the present value. */
    @Word(
            help = "The net present value of a cash flow at a discount rate a year.",
            example = "netPresentValue(cashFlow([-1000.EUR, 600.EUR, 600.EUR]), 6.percent)")
    public static Money netPresentValue(Object flow, Object discount) {
        return Wanted.object(CashFlow.class, flow, "the cash flow of netPresentValue")
                .netPresentValue(Wanted.ratio(discount, "the discount rate of netPresentValue"));
    }

    /** Tells every internal rate. */
    @Word(
            help = "Every internal rate of a cash flow, above -100 % a year: none, one or several.",
            example = "internalRates(cashFlow([-1000.EUR, 2500.EUR, -1540.EUR]))")
    public static InternalRates internalRates(Object flow) {
        return Wanted.object(CashFlow.class, flow, "the cash flow of internalRates")
                .internalRates();
    }

    /** Makes a cost of a life cycle. */
    @Word(
            help =
                    "A cost over a life, in today's money: paid now, every year, every so many years, or once in a year.",
            example = "cost('energy', 11088.USD, when: 'every year')",
            choices = {
                "when: 'now' unless chosen, or 'every year', 'every 2 years', 'year 5'",
                "escalation: by how much its price rises a year beyond inflation; 0 unless chosen"
            })
    public static CostItem cost(Map<String, ?> given, String name, Object today) {
        Choices choices = Choices.of("cost", given, "when", "escalation");
        Money money = Wanted.object(Money.class, today, "the money of a cost");
        return item(name, money, choices.text("when", "now")).escalating(choices.ratio("escalation", Ratio.ZERO));
    }

    /** Makes a cost that is paid now. */
    @Word(help = "A cost over a life that is paid now; below 0 for a credit.", example = "cost('pump', 5000.USD)")
    public static CostItem cost(String name, Object today) {
        return cost(Map.of(), name, today);
    }

    private static CostItem item(String name, Money money, String when) {
        if (when.equals("now")) {
            return CostItem.now(name, money);
        }
        if (when.equals("every year")) {
            return CostItem.yearly(name, money);
        }
        var every = Pattern.compile("every (\\d{1,3}) years").matcher(when);
        if (every.matches()) {
            return CostItem.every(name, money, Integer.parseInt(every.group(1)));
        }
        var once = Pattern.compile("year (\\d{1,3})").matcher(when);
        if (once.matches()) {
            return CostItem.inYear(name, money, Integer.parseInt(once.group(1)));
        }
        throw new Refusal(
                ScriptProblem.WRONG_VALUE,
                "'" + when + "' was given for the choice when: of cost",
                "It is 'now', 'every year', 'every 2 years' or 'year 5'",
                "Write it in one of these ways");
    }

    /** Adds up a life. */
    @Word(
            help =
                    "What something costs over its life at present value, all costs in today's money at the end of a year.",
            example = "lifeCycleCost('trimmed impeller', [cost('trim', 2250.USD), cost('energy', 6720.USD, when: 'every"
                    + " year')], years: 8, discount: 8.percent, inflation: 4.percent)",
            choices = {YEARS, DISCOUNT, INFLATION})
    public static LifeCycleCost lifeCycleCost(Map<String, ?> given, String name, List<?> costs) {
        Choices choices = Choices.of("lifeCycleCost", given, "years", "discount", "inflation");
        List<CostItem> items = new ArrayList<>();
        for (Object cost : costs) {
            items.add(Wanted.object(CostItem.class, cost, "a cost of lifeCycleCost"));
        }
        return new LifeCycleCost(name, items, choices.whole("years"), discounting(choices));
    }

    /** Puts life-cycle costs side by side. */
    @Word(
            help = "Life-cycle costs side by side; the first one is what the others are held against.",
            example = "compareCosts([valve, trimmed])")
    public static LifeCycleComparison compareCosts(List<?> costs) {
        List<LifeCycleCost> all = new ArrayList<>();
        for (Object cost : costs) {
            all.add(Wanted.object(LifeCycleCost.class, cost, "a life-cycle cost of compareCosts"));
        }
        return new LifeCycleComparison(all);
    }

    /** Tells the carbon dioxide of an energy. */
    @Word(
            help = "The carbon dioxide of an energy a year, over years, with the grid as it is and with one that gets"
                    + " cleaner.",
            example =
                    "carbon(12000.kWh, perKWh: 0.35.kg, decline: 4.percent, years: 15, source: 'stated by the supplier,"
                            + " mean of last year')",
            choices = {
                "perKWh: the mass for 1 kWh in year 1; always needed",
                "decline: by which share it falls each year; 0 unless chosen",
                YEARS,
                "source: where the factor comes from; always needed"
            })
    public static Carbon carbon(Map<String, ?> given, Object energy) {
        Choices choices = Choices.of("carbon", given, "perKWh", "decline", "years", "source");
        Carbon.Factor factor = new Carbon.Factor(
                choices.quantity("perKWh", Mass.KIND), choices.ratio("decline", Ratio.ZERO), choices.text("source"));
        return new Carbon(Wanted.quantity(Energy.KIND, energy, "the energy of carbon"), factor, choices.whole("years"));
    }
}
