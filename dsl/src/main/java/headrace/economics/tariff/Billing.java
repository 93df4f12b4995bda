package headrace.economics.tariff;

import headrace.economics.EconomicsProblem;
import headrace.problem.Notes;
import headrace.record.Basis;
import headrace.units.Energy;
import headrace.units.Money;
import headrace.units.Power;
import headrace.units.Time;
import headrace.work.Work;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Goes through a year of powers and sums what a tariff asks for. */
final class Billing {
    private static final int MONTHS = 12;
    private static final int HOUR = 3600;

    private final Tariff tariff;
    private final PowerSeries powers;
    private final double[][] joules;
    private final double[] peaks = new double[MONTHS];

    Billing(Tariff tariff, PowerSeries powers) {
        this.tariff = tariff;
        this.powers = powers;
        this.joules = new double[MONTHS][tariff.rates().size()];
        double window = tariff.demand().map(charge -> charge.window().seconds()).orElse((double) powers.seconds());
        int gathered = Math.max(1, (int) Math.round(window / powers.seconds()));
        LocalDate day = LocalDate.of(powers.year(), 1, 1);
        int interval = 0;
        for (; day.getYear() == powers.year(); day = day.plusDays(1)) {
            Work.poll();
            for (int hour = 0; hour < 24; hour++) {
                int rate = tariff.rateAt(day.getMonth(), day.getDayOfWeek(), hour);
                interval = hour(interval, gathered, day.getMonthValue() - 1, rate);
            }
        }
    }

    private int hour(int from, int gathered, int month, int rate) {
        int perHour = HOUR / powers.seconds();
        double window = 0;
        for (int i = 0; i < perHour; i++) {
            double watts = powers.watts(from + i);
            joules[month][rate] += watts * powers.seconds();
            window += watts;
            if ((i + 1) % gathered == 0) {
                peaks[month] = Math.max(peaks[month], window / gathered);
                window = 0;
            }
        }
        return from + perHour;
    }

    Bill bill() {
        double[] billed = tariff.demand().map(charge -> charge.billed(peaks)).orElse(new double[MONTHS]);
        double perWatt = tariff.demand()
                .map(charge -> charge.perKilowatt().amount() / 1000)
                .orElse(0.0);
        List<BilledMonth> months = new ArrayList<>();
        for (int month = 0; month < MONTHS; month++) {
            Map<String, Energy> byRate = new LinkedHashMap<>();
            double cost = 0;
            for (int rate = 0; rate < tariff.rates().size(); rate++) {
                EnergyRate at = tariff.rates().get(rate);
                byRate.merge(at.name(), Energy.joules(joules[month][rate]), Energy::plus);
                cost += at.cost(joules[month][rate]);
            }
            months.add(new BilledMonth(
                    LocalDate.of(powers.year(), month + 1, 1).getMonth(),
                    byRate,
                    money(cost),
                    new BilledMonth.Demand(
                            Power.watts(peaks[month]), Power.watts(billed[month]), money(billed[month] * perWatt)),
                    tariff.fixed()));
        }
        return new Bill(tariff, powers.name(), months, notes(), basis());
    }

    private Money money(double amount) {
        return new Money(amount, tariff.fixed().currency());
    }

    private Notes notes() {
        Notes notes = powers.notes().and(tariff.notes());
        if (tariff.demand().isEmpty() || tariff.demand().get().window().seconds() >= powers.seconds()) {
            return notes;
        }
        return notes.with(
                EconomicsProblem.DEMAND_WINDOW_COARSE,
                "Demand is billed as the highest mean over "
                        + tariff.demand().get().window()
                        + ", and the powers are means over " + Time.seconds(powers.seconds())
                        + ", so that the true demand may be higher");
    }

    private Basis basis() {
        return powers.basis().with("tariff " + tariff);
    }
}
