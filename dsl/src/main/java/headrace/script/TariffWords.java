package headrace.script;

import headrace.control.ControlLaw;
import headrace.control.SteadyState;
import headrace.economics.tariff.Bill;
import headrace.economics.tariff.DemandCharge;
import headrace.economics.tariff.EnergyRate;
import headrace.economics.tariff.EnergyRate.Tier;
import headrace.economics.tariff.PowerSeries;
import headrace.economics.tariff.Tariff;
import headrace.energy.year.LawHours;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.pump.PumpSet;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Energy;
import headrace.units.EnergyPrice;
import headrace.units.Flow;
import headrace.units.Money;
import headrace.units.Ratio;
import headrace.units.Time;
import headrace.work.Steps;
import headrace.work.Work;
import java.time.Month;
import java.time.Year;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/** Words about tariffs and bills. */
public final class TariffWords implements Words {
    @Override
    public String subject() {
        return "Tariffs and bills";
    }

    /** Makes a rate. */
    @Word(
            help = "A price of energy that holds at every hour of the year.",
            example = "rate('every hour', 0.18.EUR.perKWh)")
    public static EnergyRate rate(String name, Object price) {
        return rate(Map.of(), name, price);
    }

    /** Makes a rate of some hours. */
    @Word(
            help =
                    "A price of energy in some hours of the year; or a list of tiers, each up to how much in a month and its"
                            + " price, the last without a limit.",
            example = "rate('day', 0.25.EUR.perKWh, from: 7, to: 22, workdays: true, months: 4..9)",
            choices = {
                "from: hour of the day at which it begins; 0 unless chosen",
                "to: hour of the day at which it ends; 24 unless chosen",
                "workdays: true for Monday to Friday only; every day unless chosen",
                "months: numbers of the months, as 6..8; all unless chosen"
            })
    public static EnergyRate rate(Map<String, ?> given, String name, Object price) {
        Choices choices = Choices.of("rate", given, "from", "to", "workdays", "months");
        EnergyRate rate = price instanceof List<?> tiers
                ? EnergyRate.tiered(name, tiers.stream().map(TariffWords::tier).toList())
                : EnergyRate.at(name, Wanted.price(price, "the price of a rate"));
        rate = rate.between(choices.whole("from", 0), choices.whole("to", 24));
        if (choices.has("months")) {
            rate = rate.inMonths(months(choices.object("months", Collection.class)));
        }
        return choices.yes("workdays", false) ? rate.onWorkdays() : rate;
    }

    private static Tier tier(Object row) {
        if (row instanceof List<?> pair && pair.size() == 2) {
            return new Tier(
                    Optional.of(Wanted.quantity(Energy.KIND, pair.get(0), "the limit of a tier")),
                    Wanted.price(pair.get(1), "the price of a tier"));
        }
        Object last = row instanceof List<?> one && one.size() == 1 ? one.get(0) : row;
        return new Tier(Optional.empty(), Wanted.price(last, "the price of the last tier"));
    }

    private static Set<Month> months(Collection<?> numbers) {
        Set<Month> months = EnumSet.noneOf(Month.class);
        for (Object number : numbers) {
            int month = Wanted.whole(number, "a month of a rate");
            if (month < 1 || month > 12) {
                throw new Refusal(
                        ScriptProblem.WRONG_VALUE,
                        "The number " + month + " was given for a month of a rate",
                        "Months are numbered 1 to 12",
                        "Write summer as 6..8");
            }
            months.add(Month.of(month));
        }
        return months;
    }

    /** Makes a tariff. */
    @Word(
            help = "A tariff of rates, of which the first that holds in an hour counts.",
            example = "tariff('two prices', [rate('day', 0.25.EUR.perKWh, from: 7, to: 22), rate('night',"
                    + " 0.15.EUR.perKWh)])")
    public static Tariff tariff(String name, List<?> rates) {
        return tariff(Map.of(), name, rates);
    }

    /** Makes a tariff with other charges. */
    @Word(
            help = "A tariff of rates, of which the first that holds in an hour counts, with demand and fixed charges.",
            example = "tariff('two prices', [rate('every hour', 0.16.EUR.perKWh)], demand: 9.EUR, window: 15.minute,"
                    + " ratchet: 80.percent, fixed: 25.EUR)",
            choices = {
                "demand: money for 1 kW of the highest demand of a month; none unless chosen",
                "window: over how long demand is a mean; 15 min unless chosen",
                "ratchet: share of the highest demand of the 11 months before that is billed at least; none unless chosen",
                "fixed: money each month; none unless chosen"
            })
    public static Tariff tariff(Map<String, ?> given, String name, List<?> rates) {
        Choices choices = Choices.of("tariff", given, "demand", "window", "ratchet", "fixed");
        List<EnergyRate> all = new ArrayList<>();
        for (Object rate : rates) {
            all.add(Wanted.object(EnergyRate.class, rate, "a rate of tariff"));
        }
        Tariff tariff = Tariff.of(name, all);
        if (choices.has("demand")) {
            DemandCharge charge = DemandCharge.of(
                    choices.object("demand", Money.class), choices.quantity("window", Time.KIND, Time.minutes(15)));
            tariff = tariff.with(choices.has("ratchet") ? charge.ratcheted(choices.ratio("ratchet")) : charge);
        }
        return choices.has("fixed") ? tariff.withFixed(choices.object("fixed", Money.class)) : tariff;
    }

    /** Bills a year. */
    @Word(help = "What a year of powers costs under a tariff, month by month.", example = "bill(tariff, powers)")
    public static Bill bill(Object tariff, Object powers) {
        return Wanted.object(Tariff.class, tariff, "the tariff of bill")
                .bill(Wanted.object(PowerSeries.class, powers, "the powers of bill"));
    }

    /** Tells the price for stated shares. */
    @Word(
            help =
                    "The price of energy of which only the shares at each rate of a tariff are known, as of a load in bins.",
            example = "priceFor(tariff, [day: 70.percent, night: 30.percent])")
    public static EnergyPrice priceFor(Object tariff, Map<String, ?> shares) {
        Map<String, Ratio> stated = new HashMap<>();
        shares.forEach((name, share) -> stated.put(name, Wanted.ratio(share, "a share of priceFor")));
        return Wanted.object(Tariff.class, tariff, "the tariff of priceFor").priceFor(stated);
    }

    /** Makes a year of powers from a list. */
    @Word(
            help = "The powers of a calendar year in equal intervals, from a list of powers.",
            example = "powerYear('quarters of hours', 2025, [3.kW] * 35040)")
    public static PowerSeries powerYear(String name, Object year, List<?> powers) {
        double[] watts = powers.stream()
                .mapToDouble(
                        power -> Wanted.power(power, "a power of powerYear").watts())
                .toArray();
        return PowerSeries.of(name, Wanted.whole(year, "the year of powerYear"), watts, stated(name));
    }

    /** Makes a year of powers hour by hour. */
    @Word(
            help = "The powers of a calendar year, from a block that gives the power of each hour, counted from 0.",
            example = "powerYear('a steady pump', 2025) { hour -> 3.kW }")
    public static PowerSeries powerYear(String name, Object year, Function<Integer, ?> power) {
        int calendar = Wanted.whole(year, "the year of powerYear");
        double[] watts = new double[24 * Year.of(calendar).length()];
        for (int hour = 0; hour < watts.length; hour++) {
            watts[hour] = Wanted.power(power.apply(hour), "the power of an hour of powerYear")
                    .watts();
        }
        return PowerSeries.of(name, calendar, watts, stated(name));
    }

    /** Makes a year of powers under a law. */
    @Word(
            help =
                    "The wire powers of a calendar year under a control law, hour by hour, from a block that gives the share"
                            + " of design flow in each hour, counted from 0; at 0 the pump stands still.",
            example = "powerYear(set, law, 2025) { hour -> hour % 24 in 7..19 ? 60.percent : 0.percent }")
    public static PowerSeries powerYear(Object set, Object law, Object year, Function<Integer, ?> shares) {
        PumpSet pump = ControlWords.set(set, "powerYear");
        ControlLaw control = Wanted.object(ControlLaw.class, law, "the law of powerYear");
        int calendar = Wanted.whole(year, "the year of powerYear");
        Flow design = control.design()
                .orElseThrow(() -> new Refusal(
                        ScriptProblem.WRONG_VALUE,
                        "The law '" + control.name() + "', which is made for no design point, was given to powerYear",
                        "Shares of design flow need a law that is made for a design point",
                        "Use a fixed speed, a constant head, a linear or a quadratic law"))
                .flow();
        double[] watts = new double[24 * Year.of(calendar).length()];
        Map<Double, SteadyState> known = new HashMap<>();
        Notes notes = Notes.NONE;
        Basis basis = pump.basis();
        try (Steps steps = Work.steps("hours of the year", watts.length)) {
            for (int hour = 0; hour < watts.length; hour++) {
                steps.next();
                Ratio share = Wanted.ratio(shares.apply(hour), "the share of an hour of powerYear");
                if (share.value() == 0) {
                    watts[hour] = pump.driveTrain().standby().watts();
                } else {
                    SteadyState state = known.computeIfAbsent(
                            share.value(), each -> SteadyState.of(control, pump, design.times(each)));
                    watts[hour] = state.point().wirePower().watts();
                }
            }
        }
        for (SteadyState state : known.values()) {
            notes = notes.and(state.notes());
            Work.poll();
            basis = basis.and(state.basis());
        }
        return PowerSeries.of(control.name(), calendar, watts, new Stated(notes, basis));
    }

    /** Makes a year of powers of the hours of a law in a circuit. */
    @Word(
            help = "The wire powers of a calendar year of a law of a circuit, as a comparison found them hour by hour.",
            example = "powerYear(comparison.laws().get(0), 2025)")
    public static PowerSeries powerYear(Object hours, Object year) {
        LawHours law = Wanted.object(LawHours.class, hours, "the hours of powerYear");
        return PowerSeries.of(law.law().name(), Wanted.whole(year, "the year of powerYear"), law.hourly(), law);
    }

    private static Traced stated(String name) {
        return new Stated(Notes.NONE, Basis.of("powers '" + name + "' as stated in the script"));
    }

    private record Stated(Notes notes, Basis basis) implements Traced {}
}
