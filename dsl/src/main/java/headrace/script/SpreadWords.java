package headrace.script;

import headrace.economics.study.Driver;
import headrace.economics.study.PaybackModel;
import headrace.economics.study.PaybackModel.PartReplacement;
import headrace.economics.study.PaybackRange;
import headrace.economics.study.PaybackStudy;
import headrace.economics.study.Spread;
import headrace.energy.Baseline;
import headrace.energy.LawYear;
import headrace.energy.StrategyComparison;
import headrace.energy.YearSaving;
import headrace.problem.Refusal;
import headrace.units.Money;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Time;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.ToDoubleFunction;

/** Words about paybacks that are not known exactly. */
public final class SpreadWords implements Words {
    @Override
    public String subject() {
        return "Paybacks as distributions";
    }

    /**
     * A spread as it was written; its driver says what its values must be.
     *
     * @param shape its shape
     * @param values its values in order
     */
    public record WrittenSpread(Spread.Shape shape, List<Object> values) {
        Spread in(ToDoubleFunction<Object> unit) {
            if (shape == Spread.Shape.LOG_NORMAL) {
                double deviation =
                        Wanted.ratio(values.get(1), "the deviation of a spread").value();
                return Spread.logNormal(unit.applyAsDouble(values.get(0)), deviation);
            }
            double[] v = values.stream().mapToDouble(unit).toArray();
            return switch (shape) {
                case FIXED -> Spread.fixed(v[0]);
                case UNIFORM -> Spread.uniform(v[0], v[1]);
                case TRIANGULAR -> Spread.triangular(v[0], v[1], v[2]);
                default -> Spread.normal(v[0], v[1]);
            };
        }

        @Override
        public String toString() {
            String all = switch (shape) {
                case FIXED -> "fixed at " + values.get(0);
                case UNIFORM -> "anywhere from " + values.get(0) + " to " + values.get(1);
                case TRIANGULAR -> "from " + values.get(0) + " over " + values.get(1) + " to " + values.get(2);
                default -> "mean " + values.get(0) + ", standard deviation " + values.get(1);
            };
            return shape.name().toLowerCase(Locale.ROOT).replace('_', '-') + " spread, " + all;
        }
    }

    /** Spreads a value between two. */
    @Word(help = "A value anywhere between two, each as likely.", example = "between(40.EUR, 120.EUR)")
    public static WrittenSpread between(Object least, Object greatest) {
        return new WrittenSpread(Spread.Shape.UNIFORM, List.of(least, greatest));
    }

    /** Spreads a value over a triangle. */
    @Word(
            help = "A value from a least over a likeliest to a greatest one.",
            example = "triangle(3200.EUR, 4200.EUR, 6000.EUR)")
    public static WrittenSpread triangle(Object least, Object likeliest, Object greatest) {
        return new WrittenSpread(Spread.Shape.TRIANGULAR, List.of(least, likeliest, greatest));
    }

    /** Spreads a value about its mean. */
    @Word(
            help = "A value about its mean with a standard deviation, normally distributed.",
            example = "about(2.5.percent, 1.2.percent)")
    public static WrittenSpread about(Object mean, Object deviation) {
        return new WrittenSpread(Spread.Shape.NORMAL, List.of(mean, deviation));
    }

    /** Spreads a value by factors. */
    @Word(
            help =
                    "A value whose logarithm is normally distributed: its mean, and the standard deviation as a share of it.",
            example = "aboutByFactor(0.18.EUR.perKWh, 12.percent)")
    public static WrittenSpread aboutByFactor(Object mean, Object deviation) {
        return new WrittenSpread(Spread.Shape.LOG_NORMAL, List.of(mean, deviation));
    }

    /** Draws paybacks. */
    @Word(
            help =
                    "The payback of a law of a comparison as a distribution against both baselines, with its drivers ranked."
                            + " What has no spread is fixed; each choice takes a value or a spread.",
            example =
                    "paybackRange(comparison, law: 'quadratic, 35 % minimum head', firstCost: triangle(3200.EUR, 4200.EUR,"
                            + " 6000.EUR), discount: 6.percent, years: 15, seed: 7)",
            choices = {
                "law: the name of the law; the one that takes least unless chosen",
                "firstCost: extra first cost; always needed",
                "years: how many whole years; always needed",
                "discount: discount rate a year; always needed",
                "price: price of energy; that of the comparison unless chosen",
                "escalation: rise of the price a year; 0 unless chosen",
                "hours: pumping hours a year; those of the comparison unless chosen",
                "power: mean wire power at constant speed; that of the comparison unless chosen",
                "saved: share saved against constant speed; that of the comparison unless chosen",
                "fixedSpeed: power of fixed design speed over that of constant speed; that of the comparison unless chosen",
                "realised: share of the saving that comes; 100 % unless chosen",
                "upkeep: upkeep of year 1; none unless chosen",
                "upkeepGrowth: rise of upkeep a year; 0 unless chosen",
                "replacement: a list of the year, its share of the first cost, and the rise of its price a year",
                "correlation: between the price and its rise, -1 to 1; 0 unless chosen",
                "seed: a whole number; 1 unless chosen",
                "draws: how many; 100 000 unless chosen"
            })
    public static PaybackRange paybackRange(Map<String, ?> given, Object comparison) {
        Choices choices = Choices.of(
                "paybackRange",
                given,
                "law",
                "firstCost",
                "years",
                "discount",
                "price",
                "escalation",
                "hours",
                "power",
                "saved",
                "fixedSpeed",
                "realised",
                "upkeep",
                "upkeepGrowth",
                "replacement",
                "correlation",
                "seed",
                "draws");
        StrategyComparison compared =
                Wanted.object(StrategyComparison.class, comparison, "the comparison of paybackRange");
        LawYear law = law(compared, choices);
        YearSaving throttled = saving(compared, law, Baseline.CONSTANT_SPEED);
        YearSaving fixed = saving(compared, law, Baseline.FIXED_DESIGN_SPEED);
        Map<Driver, Spread> spreads = new EnumMap<>(Driver.class);
        double kilowattHours = throttled.before().wireEnergy().toKilowattHours();
        double hours = compared.profile().pumpingHours().toHours();
        Money price = compared.price().perKilowattHour();
        spreads.put(Driver.PRICE, Spread.fixed(price.amount()));
        spreads.put(Driver.ESCALATION, Spread.fixed(0));
        spreads.put(Driver.HOURS, Spread.fixed(hours));
        spreads.put(Driver.POWER, Spread.fixed(kilowattHours / hours));
        spreads.put(Driver.SAVED, Spread.fixed(throttled.share().value()));
        spreads.put(
                Driver.FIXED_SPEED,
                Spread.fixed(fixed.before()
                        .wireEnergy()
                        .over(throttled.before().wireEnergy())
                        .value()));
        spreads.put(Driver.REALISATION, Spread.fixed(1));
        spreads.put(Driver.UPKEEP, Spread.fixed(0));
        choices.object("firstCost", Object.class);
        choices.object("discount", Object.class);
        for (Map.Entry<String, Driver> each : NAMES.entrySet()) {
            if (choices.has(each.getKey())) {
                spreads.put(each.getValue(), spread(each.getKey(), choices, each.getValue(), price.currency()));
            }
        }
        PaybackStudy study = new PaybackStudy(
                price.currency(),
                spreads,
                model(choices),
                throttled.notes().and(fixed.notes()),
                throttled.basis().and(fixed.basis()));
        return study.draw(choices.whole("seed", 1), choices.whole("draws", 100_000));
    }

    private static final Map<String, Driver> NAMES = Map.of(
            "price", Driver.PRICE,
            "escalation", Driver.ESCALATION,
            "hours", Driver.HOURS,
            "power", Driver.POWER,
            "saved", Driver.SAVED,
            "fixedSpeed", Driver.FIXED_SPEED,
            "realised", Driver.REALISATION,
            "firstCost", Driver.FIRST_COST,
            "upkeep", Driver.UPKEEP,
            "discount", Driver.DISCOUNT);

    private static Spread spread(String name, Choices choices, Driver driver, String currency) {
        Object given = choices.object(name, Object.class);
        WrittenSpread written =
                given instanceof WrittenSpread spread ? spread : new WrittenSpread(Spread.Shape.FIXED, List.of(given));
        String place = "the choice " + name + ": of paybackRange";
        return written.in(value -> switch (driver) {
            case PRICE -> inCurrency(Wanted.price(value, place).perKilowattHour(), currency);
            case HOURS -> Wanted.quantity(Time.KIND, value, place).toHours();
            case POWER -> Wanted.quantity(Power.KIND, value, place).toKilowatts();
            case FIRST_COST, UPKEEP -> inCurrency(Wanted.object(Money.class, value, place), currency);
            default -> Wanted.ratio(value, place).value();
        });
    }

    private static double inCurrency(Money money, String currency) {
        return new Money(0, currency).plus(money).amount();
    }

    private static LawYear law(StrategyComparison compared, Choices choices) {
        if (!choices.has("law")) {
            return compared.laws().stream()
                    .min(Comparator.comparing(LawYear::wireEnergy))
                    .orElseThrow();
        }
        String name = choices.text("law");
        return compared.laws().stream()
                .filter(each -> each.law().name().equals(name))
                .findFirst()
                .orElseThrow(() -> new Refusal(
                        ScriptProblem.WRONG_VALUE,
                        "'" + name + "' was given for the choice law: of paybackRange",
                        "The laws of the comparison are "
                                + String.join(
                                        "; ",
                                        compared.laws().stream()
                                                .map(each -> "'" + each.law().name() + "'")
                                                .toList()),
                        "Name one of these"));
    }

    private static YearSaving saving(StrategyComparison compared, LawYear law, Baseline baseline) {
        return compared.yearSavings().stream()
                .filter(each -> each.after() == law && each.baseline() == baseline)
                .findFirst()
                .orElseThrow();
    }

    private static PaybackModel model(Choices choices) {
        PartReplacement part = PartReplacement.NONE;
        if (choices.has("replacement")) {
            Object[] row = Rows.of(
                    choices.object("replacement", List.class),
                    3,
                    "the choice replacement:",
                    "the year, the share of the first cost and the rise of its price a year");
            part = new PartReplacement(
                    Wanted.whole(row[0], "the year of a replacement"),
                    Wanted.ratio(row[1], "the share of a replacement"),
                    Wanted.ratio(row[2], "the rise of the price of a replacement"));
        }
        return new PaybackModel(
                choices.whole("years"),
                choices.ratio("upkeepGrowth", Ratio.ZERO),
                choices.number("correlation", 0),
                part);
    }
}
