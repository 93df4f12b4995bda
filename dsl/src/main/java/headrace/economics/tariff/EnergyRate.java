package headrace.economics.tariff;

import headrace.economics.EconomicsProblem;
import headrace.problem.Refusal;
import headrace.units.Energy;
import headrace.units.EnergyPrice;
import java.time.DayOfWeek;
import java.time.LocalDateTime;
import java.time.Month;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * The price of energy in some hours of a year.
 *
 * @param name what it is called, such as {@code summer peak}
 * @param months the months in which it holds
 * @param days the days of the week on which it holds
 * @param hours the hours of the day in which it holds
 * @param tiers the prices, by how much is taken at this rate in a calendar month
 */
public record EnergyRate(String name, Set<Month> months, Set<DayOfWeek> days, Hours hours, List<Tier> tiers) {
    private static final int DAY = 24;

    /**
     * Hours of the day, in local standard time.
     *
     * @param from the hour at which they begin, 0 to 23
     * @param to the hour at which they end, 1 to 24; before {@code from} if they go on past midnight
     */
    public record Hours(int from, int to) {
        /** The whole day. */
        public static final Hours ALL = new Hours(0, DAY);

        /** Refuses hours that no day has. */
        public Hours {
            if (from < 0 || from >= DAY || to < 1 || to > DAY || from == to) {
                throw new Refusal(
                        EconomicsProblem.IMPOSSIBLE_TARIFF,
                        "Asked for a rate from " + from + " to " + to + " o'clock",
                        "It begins at 0 to 23 and ends at 1 to 24 o'clock",
                        "Write the whole day as 0 to 24");
            }
        }

        boolean has(int hour) {
            return from < to ? hour >= from && hour < to : hour >= from || hour < to;
        }
    }

    /**
     * A price up to an amount in a month.
     *
     * @param upTo up to how much; without limit if absent
     * @param price the price of what lies in this tier
     */
    public record Tier(Optional<Energy> upTo, EnergyPrice price) {}

    /** Keeps the parts from changing; refuses tiers out of order or without an end. */
    public EnergyRate {
        months = Set.copyOf(months);
        days = Set.copyOf(days);
        tiers = List.copyOf(tiers);
        double last = 0;
        for (int i = 0; i < tiers.size(); i++) {
            double limit = tiers.get(i).upTo().map(Energy::joules).orElse(Double.POSITIVE_INFINITY);
            boolean open = limit == Double.POSITIVE_INFINITY;
            if (limit <= last || open != (i == tiers.size() - 1)) {
                throw impossible(name);
            }
            last = limit;
        }
        if (tiers.isEmpty()) {
            throw impossible(name);
        }
    }

    private static Refusal impossible(String name) {
        return new Refusal(
                EconomicsProblem.IMPOSSIBLE_TARIFF,
                "Asked for the rate '" + name + "' with tiers out of order",
                "Tiers go up to more and more energy a month, and the last one has no limit",
                "Put the tiers in order and leave the last one open");
    }

    /** Returns a price that holds at every hour. */
    public static EnergyRate at(String name, EnergyPrice price) {
        return tiered(name, List.of(new Tier(Optional.empty(), price)));
    }

    /** Returns prices by how much is taken in a month, at every hour. */
    public static EnergyRate tiered(String name, List<Tier> tiers) {
        return new EnergyRate(name, EnumSet.allOf(Month.class), EnumSet.allOf(DayOfWeek.class), Hours.ALL, tiers);
    }

    /** Returns this rate in some months only. */
    public EnergyRate inMonths(Set<Month> only) {
        return new EnergyRate(name, only, days, hours, tiers);
    }

    /** Returns this rate on some days of the week only. */
    public EnergyRate onDays(Set<DayOfWeek> only) {
        return new EnergyRate(name, months, only, hours, tiers);
    }

    /**
     * Returns this rate from Monday to Friday only; public holidays are not known and count as their day of the week.
     */
    public EnergyRate onWorkdays() {
        return onDays(EnumSet.range(DayOfWeek.MONDAY, DayOfWeek.FRIDAY));
    }

    /** Returns this rate in some hours of the day only. */
    public EnergyRate between(int from, int to) {
        return new EnergyRate(name, months, days, new Hours(from, to), tiers);
    }

    boolean holds(LocalDateTime time) {
        return holds(time.getMonth(), time.getDayOfWeek(), time.getHour());
    }

    boolean holds(Month month, DayOfWeek day, int hour) {
        return months.contains(month) && days.contains(day) && hours.has(hour);
    }

    /** Returns what an energy of one month costs. */
    double cost(double joules) {
        double cost = 0;
        double from = 0;
        for (Tier tier : tiers) {
            double to = Math.min(joules, tier.upTo().map(Energy::joules).orElse(Double.POSITIVE_INFINITY));
            if (to > from) {
                cost += tier.price().of(Energy.joules(to - from)).amount();
                from = to;
            }
        }
        return cost;
    }

    @Override
    public String toString() {
        StringBuilder text = new StringBuilder(name).append(": ");
        for (Tier tier : tiers) {
            text.append(tier.price());
            tier.upTo().ifPresent(limit -> text.append(" up to ").append(limit).append(" a month, then "));
        }
        if (months.size() < Month.values().length) {
            text.append(", in ")
                    .append(months.stream().sorted().map(EnergyRate::small).toList());
        }
        if (days.size() < DayOfWeek.values().length) {
            text.append(", on ")
                    .append(days.stream().sorted().map(EnergyRate::small).toList());
        }
        return text.append(", from ")
                .append(hours.from())
                .append(" to ")
                .append(hours.to())
                .append(" o'clock")
                .toString();
    }

    private static String small(Enum<?> name) {
        return name.name().charAt(0) + name.name().substring(1, 3).toLowerCase(Locale.ROOT);
    }
}
