package headrace.trend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.numeric.Students;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.units.Flow;
import headrace.units.Ratio;
import headrace.units.Temperature;
import headrace.units.Time;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class BaselineTest {
    /** Hourly rows whose flow and outdoor temperature swing with the day, and whose power is a function of flow. */
    private static TrendLog hourly(int hours, DoubleUnaryOperator wattsOfFlow) {
        Map<Channel, double[]> values = new EnumMap<>(Channel.class);
        double[] flow = IntStream.range(0, hours)
                .mapToDouble(i -> (30 + 15 * Math.sin(0.26 * i) + 3 * Math.sin(0.071 * i)) / 3600)
                .toArray();
        values.put(Channel.FLOW, flow);
        values.put(
                Channel.POWER,
                IntStream.range(0, hours)
                        .mapToDouble(i -> wattsOfFlow.applyAsDouble(flow[i]))
                        .toArray());
        values.put(
                Channel.SPEED,
                IntStream.range(0, hours).mapToDouble(i -> 110 + i % 3).toArray());
        values.put(
                Channel.OUTDOOR,
                IntStream.range(0, hours).mapToDouble(i -> 283 + flow[i] * 1000).toArray());
        TrendLog.Rows rows = new TrendLog.Rows(
                IntStream.range(0, hours).mapToLong(i -> 3600L * i).toArray(),
                IntStream.range(2, hours + 2).toArray(),
                values,
                hours,
                ZoneOffset.UTC);
        return TrendLog.read("hourly", rows, List.of(), Basis.NONE).cleaned(CleaningRules.of(InventedLog.set()));
    }

    /**
     * By hand: readings 10, 12, 11, 13 against 10, 11, 12, 12 with one parameter. Σe² = 3 over 3, so RMSE 1; mean 11.5;
     * Σe = 1.
     */
    @Test
    void scatter_and_bias_are_those_worked_by_hand() {
        FitQuality quality = FitQuality.of(new double[] {10, 12, 11, 13}, new double[] {10, 11, 12, 12}, 4, 1);
        assertEquals(1 / 11.5, quality.cvRmse().value(), 1e-15);
        assertEquals(1 / (3 * 11.5), quality.nmbe().value(), 1e-15);
        assertTrue(quality.withinHourlyLimits());
        FitQuality unfitted = FitQuality.of(new double[] {10, 12, 11, 13}, new double[] {10, 11, 12, 12}, 4, 0);
        assertEquals(Math.sqrt(3.0 / 4) / 11.5, unfitted.cvRmse().value(), 1e-15);
        assertEquals(1.0 / 46, unfitted.nmbe().value(), 1e-15);
        assertFalse(
                FitQuality.of(new double[] {1, 2}, new double[] {0, 1}, 2, 0).withinHourlyLimits());
    }

    @Test
    void a_parabola_in_flow_is_found_again_and_leaves_nothing_over() {
        TrendLog log = hourly(400, q -> 300 + 20e3 * q + 4e6 * q * q);
        PowerBaseline baseline = PowerBaseline.byFlow(log);
        assertEquals(0, baseline.quality().cvRmse().value(), 1e-9);
        MeasuredSaving same = baseline.savingIn(log, SavingOption.B, 0.95);
        assertEquals(0, same.share().value(), 1e-9);
    }

    @Test
    void a_line_in_outdoor_temperature_is_found_again() {
        TrendLog log = hourly(400, q -> 300 + 80e3 * q);
        PowerBaseline baseline = PowerBaseline.byOutdoor(log);
        assertTrue(baseline.quality().cvRmse().value() < 1e-3, baseline.toString());
    }

    /** Power on the map, times 1.02 and 30 W more: the line of the map takes up both. */
    @Test
    void the_line_of_the_map_takes_up_a_scale_and_an_offset() {
        InventedLog invented = InventedLog.sound(3, 10);
        TrendLog log = invented.clean();
        PowerBaseline baseline = PowerBaseline.byMap(log, InventedLog.set(), MapPower.WIRE);
        assertTrue(baseline.quality().cvRmse().value() < 0.01, baseline.toString());
        assertEquals(0, baseline.quality().nmbe().value(), 1e-12);
        MapCheck check = invented.check();
        assertEquals(1, check.headFactor().orElseThrow().value(), 0.005);
        assertEquals(1, check.powerLine().slope(), 0.01);
    }

    /** A tenth less power at every flow is a saving of a tenth of what the baseline has, whatever the hours. */
    @Test
    void a_tenth_less_is_saved_as_a_tenth() {
        DoubleUnaryOperator before = q -> 300 + 20e3 * q + 4e6 * q * q;
        PowerBaseline baseline = PowerBaseline.byFlow(hourly(400, before));
        MeasuredSaving saving = baseline.savingIn(hourly(250, q -> 0.9 * before.applyAsDouble(q)), SavingOption.B, 0.9);
        assertEquals(0.1, saving.share().value(), 1e-9);
        assertEquals(saving.expected().joules() * 0.1, saving.saved().joules(), 1e-3);
        assertEquals(250, saving.after().count());
    }

    /** The formula of annex B worked with the baseline's own scatter, its hours and its correlation. */
    @Test
    void the_uncertainty_of_a_saving_is_the_published_formula() {
        Random random = new Random(8);
        DoubleUnaryOperator model = q -> (300 + 20e3 * q + 4e6 * q * q) * (1 + 0.05 * random.nextGaussian());
        PowerBaseline baseline = PowerBaseline.byFlow(hourly(500, model));
        MeasuredSaving saving = baseline.savingIn(hourly(300, q -> 0.8 * model.applyAsDouble(q)), SavingOption.B, 0.9);
        double n = 500;
        double rho = baseline.correlation();
        double independent = n * (1 - rho) / (1 + rho);
        double share = Students.factor(0.9, independent - 3)
                * 1.26
                * baseline.quality().cvRmse().value()
                * Math.sqrt(n / independent * (1 + 2 / independent) / 300);
        assertEquals(share, saving.shareUncertainty().value(), 1e-12);
        assertTrue(saving.toString().contains("option B"));
        assertFalse(saving.notes().has(TrendProblem.SAVING_WITHIN_UNCERTAINTY));
    }

    /**
     * Without any change the true saving is 0; at 90 % confidence at most 10 % of intervals may miss it, and with 200
     * trials more than 20 + 4·√(200·0.1·0.9) = 37 misses would speak against it.
     */
    @Test
    void the_interval_of_a_saving_holds_the_truth_as_often_as_it_says() {
        int missed = 0;
        for (int seed = 500; seed < 700; seed++) {
            Random random = new Random(seed);
            DoubleUnaryOperator model = q -> (300 + 20e3 * q + 4e6 * q * q) * (1 + 0.05 * random.nextGaussian());
            PowerBaseline baseline = PowerBaseline.byFlow(hourly(300, model));
            MeasuredSaving saving = baseline.savingIn(hourly(200, model), SavingOption.B, 0.9);
            missed += Math.abs(saving.saved().joules()) > saving.uncertainty().joules() ? 1 : 0;
        }
        assertTrue(missed <= 37, missed + " of 200 intervals miss the truth");
    }

    @Test
    void a_saving_within_its_uncertainty_says_so() {
        Random random = new Random(9);
        DoubleUnaryOperator model = q -> (300 + 20e3 * q) * (1 + 0.3 * random.nextGaussian());
        PowerBaseline baseline = PowerBaseline.byFlow(hourly(100, model));
        MeasuredSaving saving = baseline.savingIn(hourly(50, q -> 0.999 * (300 + 20e3 * q)), SavingOption.C, 0.95);
        assertTrue(saving.notes().has(TrendProblem.SAVING_WITHIN_UNCERTAINTY));
        assertThrows(Refusal.class, () -> baseline.savingIn(hourly(50, model), SavingOption.C, 1));
        assertThrows(Refusal.class, () -> PowerBaseline.byFlow(hourly(20, model)));
    }

    /** The rows of all bins are the rows of the log, and their energy is the sum of the power. */
    @Test
    void the_load_of_a_log_loses_no_row_and_no_energy() {
        TrendLog log = InventedLog.sound(5, 7).clean();
        LoggedLoad load = LoggedLoad.of(log, InventedLog.DESIGN);
        assertEquals(
                log.count(), load.bins().stream().mapToInt(LoggedLoad.Bin::rows).sum());
        assertEquals(log.count(), IntStream.of(load.cells()).sum());
        double joules = java.util.Arrays.stream(log.values(Channel.POWER)).sum() * 600;
        assertEquals(joules, load.energy().joules(), 1e-9 * joules);
        double flow =
                java.util.Arrays.stream(log.values(Channel.FLOW)).average().orElseThrow();
        assertEquals(flow / InventedLog.DESIGN.si(), load.mean().value(), 1e-12);
        assertThrows(Refusal.class, () -> LoggedLoad.of(log, Flow.ZERO));
    }

    /** A load on the edge of a cell belongs to the upper one, though 0.15/0.05 is below 3 in binary. */
    @Test
    void a_load_on_an_edge_belongs_to_the_upper_cell() {
        for (int k = 0; k <= 24; k++) {
            assertEquals(k, LoggedLoad.cell(k / 20.0));
        }
        assertEquals(2, LoggedLoad.cell(0.1499));
    }

    private static OutdoorYear year() {
        List<OutdoorYear.Bin> bins = new ArrayList<>();
        for (int t = 6; t <= 30; t += 2) {
            bins.add(new OutdoorYear.Bin(Temperature.celsius(t), Time.hours(8760.0 / 13)));
        }
        return new OutdoorYear(bins);
    }

    /** The log is made from 25 % and 4.5 % for each K above 12 °C; the mean over the year follows by hand. */
    @Test
    void a_year_follows_the_weather_that_its_log_was_made_from() {
        YearLoad load = YearLoad.of(InventedLog.sound(6, 40).clean(), InventedLog.DESIGN, year(), 1);
        assertEquals(12 + 273.15, load.line().point(), 0.7);
        assertEquals(0.045, load.line().slope(), 0.002);
        double truth = IntStream.rangeClosed(3, 15)
                .mapToDouble(i -> Math.min(1.175, InventedLog.load(2 * i)))
                .average()
                .orElseThrow();
        assertEquals(truth, load.mean().value(), 0.02);
        assertTrue(load.lowMean().compareTo(load.mean()) <= 0 && load.highMean().compareTo(load.mean()) >= 0);
        double hours = load.cells().stream()
                .mapToDouble(cell -> cell.hours().toHours())
                .sum();
        assertEquals(8760, hours, 1e-6);
        assertEquals(8760, load.profile().hours().toHours(), 1e-6);
        assertTrue(load.notes().has(TrendProblem.BEYOND_LOGGED_WEATHER));
        assertFalse(load.notes().has(TrendProblem.FEW_LOGGED_DAYS));
    }

    @Test
    void the_same_seed_draws_the_same_band_and_fewer_days_a_wider_one() {
        TrendLog log = InventedLog.sound(6, 60).clean();
        YearLoad one = YearLoad.of(log, InventedLog.DESIGN, year(), 1);
        assertEquals(
                one.cells(), YearLoad.of(log, InventedLog.DESIGN, year(), 1).cells());
        YearLoad few = YearLoad.of(
                log.between(InventedLog.START, InventedLog.START.plusSeconds(7 * 86_400)),
                InventedLog.DESIGN,
                year(),
                1);
        assertTrue(width(few).compareTo(width(one)) > 0, few + " against " + one);
        assertTrue(few.notes().has(TrendProblem.FEW_LOGGED_DAYS));
    }

    private static Ratio width(YearLoad load) {
        return load.highMean().minus(load.lowMean());
    }

    @Test
    void a_year_that_cannot_be_is_refused() {
        assertThrows(Refusal.class, () -> new OutdoorYear(List.of()));
        assertThrows(
                Refusal.class,
                () -> new OutdoorYear(List.of(new OutdoorYear.Bin(Temperature.celsius(5), Time.hours(9000)))));
        TrendLog two = InventedLog.sound(6, 2).clean();
        assertThrows(Refusal.class, () -> YearLoad.of(two, InventedLog.DESIGN, year(), 1));
    }
}
