package headrace.energy.load;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.control.ControlLaw;
import headrace.drive.SeparateLosses;
import headrace.energy.LawYear;
import headrace.energy.LoadBin;
import headrace.energy.LoadProfile;
import headrace.energy.StrategyComparison;
import headrace.problem.GatheredNotes;
import headrace.problem.Note;
import headrace.problem.Notes;
import headrace.problem.Problem;
import headrace.problem.Refusal;
import headrace.pump.KnownPump;
import headrace.pump.PumpSet;
import headrace.record.Basis;
import headrace.units.EnergyPrice;
import headrace.units.Money;
import headrace.units.Ratio;
import headrace.units.Temperature;
import headrace.units.Time;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

@DisplayNameGeneration(ReplaceUnderscores.class)
class HourlyLoadTest {
    static final LocalDateTime START = LocalDateTime.of(2025, 1, 1, 0, 0);
    private static final EnergyPrice PRICE = new EnergyPrice(new Money(0.18, "EUR"));

    static Refusal refused(Problem problem, Executable asking) {
        Refusal refusal = assertThrows(Refusal.class, asking);
        assertEquals(problem, refusal.problem(), refusal.getMessage());
        return refusal;
    }

    static HourlyLoad load(double... shares) {
        return HourlyLoad.of("a year", START, shares, Basis.NONE);
    }

    /**
     * Shares of 10, 20 … 100 %, in an order of a seed: so many hours of each as its number of tens times 100, and rest.
     */
    private static double[] onBins() {
        List<Double> hours = new ArrayList<>();
        for (int tens = 1; tens <= 10; tens++) {
            hours.addAll(Collections.nCopies(100 * tens, tens / 10.0));
        }
        hours.addAll(Collections.nCopies(8760 - hours.size(), 0.0));
        Collections.shuffle(hours, new Random(3));
        return hours.stream().mapToDouble(Double::doubleValue).toArray();
    }

    @Test
    void hours_on_bins_give_the_energies_of_the_bins() {
        List<LoadBin> bins = new ArrayList<>();
        for (int tens = 1; tens <= 10; tens++) {
            bins.add(new LoadBin(Ratio.of(tens / 10.0), Time.hours(100 * tens)));
        }
        bins.add(new LoadBin(Ratio.ZERO, Time.hours(8760 - 5500)));
        PumpSet set = KnownPump.set(SeparateLosses.ASSUMED);
        List<ControlLaw> laws = List.of(
                ControlLaw.fixedSpeed(KnownPump.DESIGN), ControlLaw.quadratic(KnownPump.DESIGN, Ratio.percent(40)));
        StrategyComparison ofBins = StrategyComparison.of(set, LoadProfile.of("bins", bins, Basis.NONE), PRICE, laws);
        StrategyComparison ofHours =
                StrategyComparison.of(set, load(onBins()).flows(LoadToFlow.constantDifference()), PRICE, laws);
        double[] hours = onBins();
        for (int i = 0; i < laws.size(); i++) {
            double expected = ofBins.laws().get(i).wireEnergy().joules();
            assertEquals(expected, ofHours.laws().get(i).wireEnergy().joules(), 1e-9 * expected);
            LawYear year = ofBins.laws().get(i);
            Map<Double, Double> watts = year.bins().stream()
                    .collect(Collectors.toMap(
                            bin -> bin.bin().flowFraction().value(),
                            bin -> bin.wirePower().watts()));
            double hourByHour = 3600 * Arrays.stream(hours).map(watts::get).sum();
            assertEquals(expected, hourByHour, 1e-9 * expected);
        }
    }

    @Test
    void a_year_has_its_hours_its_mean_and_its_greatest_load() {
        double[] shares = new double[8760];
        Arrays.fill(shares, 0, 4380, 0.5);
        shares[100] = 1;
        HourlyLoad year = load(shares);
        assertEquals(8760, year.hours());
        assertEquals((4380 * 0.5 + 0.5) / 8760, year.mean().value(), 1e-12);
        assertEquals(1, year.greatest().value(), 0.0);
        assertEquals(4380, year.loaded().toHours(), 1e-9);
        assertEquals("2025-01-05 04:00", year.clockAt(100));
        assertEquals(1, year.shareAt(100), 0.0);
        shares[100] = 0;
        assertEquals(1, year.shareAt(100), 0.0);
        assertTrue(year.notes().isEmpty());
    }

    @Test
    void what_is_no_year_or_no_load_is_refused_with_its_hour() {
        refused(LoadProblem.IMPOSSIBLE_YEAR, () -> load(new double[8759]));
        refused(LoadProblem.IMPOSSIBLE_YEAR, () -> load(new double[8761]));
        assertEquals(8784, load(new double[8784]).hours());
        double[] shares = new double[8760];
        shares[24] = 1.21;
        Refusal above = refused(LoadProblem.LOAD_OUT_OF_RANGE, () -> load(shares));
        assertTrue(above.getMessage().contains("121 % of design at 2025-01-02 00:00"), above.getMessage());
        shares[24] = -0.01;
        refused(LoadProblem.LOAD_OUT_OF_RANGE, () -> load(shares));
        shares[24] = Double.NaN;
        assertThrows(Refusal.class, () -> load(shares));
    }

    @Test
    void hours_above_design_are_counted_in_one_note() {
        double[] shares = new double[8760];
        shares[5] = 1.1;
        shares[7] = 1.2;
        String notes = load(shares).notes().toString();
        assertTrue(
                notes.contains("In 2 hours of 'a year' the load is above design; the greatest is 120 % at 2025-01-01"
                        + " 07:00"),
                notes);
        assertTrue(load(shares).flows(LoadToFlow.constantDifference()).notes().has(LoadProblem.LOAD_ABOVE_DESIGN));
    }

    /** 8760 different flows at constant head with a least speed: a note of each would be thousands. */
    @Test
    void a_year_of_hours_gathers_no_thousands_of_notes() {
        double[] shares =
                IntStream.range(0, 8760).mapToDouble(i -> (i + 1) / 8760.0).toArray();
        PumpSet set = KnownPump.set(SeparateLosses.ASSUMED).withMinimumSpeed(KnownPump.SPEED.times(0.5));
        PumpSet whole = set.with(set.curve().extendedTo(KnownPump.m3ph(0)));
        StrategyComparison year = StrategyComparison.of(
                whole,
                load(shares).flows(LoadToFlow.constantDifference()),
                PRICE,
                List.of(ControlLaw.quadratic(KnownPump.DESIGN, Ratio.percent(10))));
        assertEquals(8760, year.laws().get(0).bins().size());
        List<Note> notes = year.notes().list();
        assertTrue(notes.size() < 30, notes.size() + " notes");
        assertTrue(notes.toString().contains("more cases; in the last of them: "), notes.toString());
    }

    @Test
    void a_typical_day_of_each_month_is_laid_over_its_days() {
        double[][] days = new double[12][24];
        days[1][7] = 0.4;
        days[11][23] = 0.9;
        HourlyLoad year = MonthHourLoad.of("days", days, Basis.NONE);
        assertEquals(
                28, IntStream.range(0, 8760).filter(i -> year.shareAt(i) == 0.4).count());
        assertEquals(0.4, year.shareAt(31 * 24 + 7), 0.0);
        assertEquals(0.4, year.shareAt((31 + 27) * 24 + 7), 0.0);
        assertEquals(0.0, year.shareAt((31 + 28) * 24 + 7), 0.0);
        assertEquals(0.9, year.shareAt(8759), 0.0);
        assertEquals(
                31, IntStream.range(0, 8760).filter(i -> year.shareAt(i) == 0.9).count());
        refused(LoadProblem.IMPOSSIBLE_YEAR, () -> MonthHourLoad.of("days", new double[11][24], Basis.NONE));
        refused(LoadProblem.IMPOSSIBLE_YEAR, () -> MonthHourLoad.of("days", new double[12][23], Basis.NONE));
    }

    /**
     * EC 641/2009 Annex II: 6, 15, 35 and 44 % of the time; the mean flow is 0.06 + 0.1125 + 0.175 + 0.11 = 45.75 %.
     */
    @Test
    void the_circulator_profile_has_the_shares_of_the_regulation() {
        LoadProfile profile = LoadProfile.circulator(Time.hours(5000));
        double[] flows = {0.25, 0.5, 0.75, 1};
        double[] hours = {2200, 1750, 750, 300};
        for (int i = 0; i < 4; i++) {
            assertEquals(flows[i], profile.bins().get(i).flowFraction().value(), 1e-12);
            assertEquals(hours[i], profile.bins().get(i).hours().toHours(), 1e-9);
        }
        assertEquals(0.4575, profile.meanFlowFraction().value(), 1e-12);
    }

    private static HourlyWeather weather(double first, double rest) {
        List<Temperature> outdoor = new ArrayList<>(Collections.nCopies(8760, Temperature.celsius(rest)));
        outdoor.set(0, Temperature.celsius(first));
        return HourlyWeather.of("Fenmouth", START, outdoor, Basis.NONE);
    }

    /** Base 10 %, heating from 15 °C with design at −10 °C: at 5 °C 10 % + 90 %·10/25 = 46 %; at 20 °C the base. */
    @Test
    void a_heating_load_rises_below_its_change_point() {
        ChangePoint heating = new ChangePoint(Temperature.celsius(15), Temperature.celsius(-10), Ratio.percent(10));
        HourlyLoad load = heating.over(weather(5, 20), "heating");
        assertEquals(0.46, load.shareAt(0), 1e-12);
        assertEquals(0.1, load.shareAt(1), 1e-12);
        assertTrue(load.basis().toString().contains("heating load: 10 % of design from 15 °C up"));
    }

    /** Cooling from 16 °C with design at 32 °C: at 24 °C half, at 10 °C nothing, at 33.6 °C 110 %. */
    @Test
    void a_cooling_load_rises_above_its_change_point() {
        ChangePoint cooling = new ChangePoint(Temperature.celsius(16), Temperature.celsius(32), Ratio.ZERO);
        HourlyLoad load = cooling.over(weather(24, 10), "cooling");
        assertEquals(0.5, load.shareAt(0), 1e-12);
        assertEquals(0, load.shareAt(1), 0.0);
        HourlyLoad hot = cooling.over(weather(33.6, 10), "cooling");
        assertEquals(1.1, hot.shareAt(0), 1e-12);
        assertTrue(hot.notes().has(LoadProblem.LOAD_ABOVE_DESIGN));
        HourlyLoad capped = cooling.over(weather(33.6, 10), "cooling", Ratio.of(1));
        assertEquals(1, capped.shareAt(0), 0.0);
        assertTrue(
                capped.notes().toString().contains("In 1 hours the weather asks for up to 110 % of design; 100 % was"),
                capped.notes().toString());
        assertFalse(
                cooling.over(weather(24, 10), "cooling", Ratio.of(1)).notes().has(LoadProblem.LOAD_CAPPED));
        refused(LoadProblem.LOAD_OUT_OF_RANGE, () -> cooling.over(weather(36, 10), "cooling"));
    }

    @Test
    void weather_and_change_points_that_cannot_be_are_refused() {
        refused(LoadProblem.WEATHER_OUT_OF_RANGE, () -> weather(99.9, 10));
        refused(
                LoadProblem.IMPOSSIBLE_YEAR,
                () -> HourlyWeather.of("Fenmouth", START, List.of(Temperature.celsius(5)), Basis.NONE));
        refused(
                LoadProblem.IMPOSSIBLE_CHANGE_POINT,
                () -> new ChangePoint(Temperature.celsius(15), Temperature.celsius(15.5), Ratio.ZERO));
        refused(
                LoadProblem.IMPOSSIBLE_CHANGE_POINT,
                () -> new ChangePoint(Temperature.celsius(15), Temperature.celsius(-10), Ratio.percent(100)));
    }

    @Test
    void of_many_notes_of_a_kind_the_first_and_the_last_are_kept_and_the_rest_counted() {
        GatheredNotes gathered = new GatheredNotes();
        for (int i = 1; i <= 100; i++) {
            gathered.add(Notes.NONE.with(LoadProblem.GAPS_IN_LOG, "number " + i));
            gathered.add(Notes.NONE.with(LoadProblem.LOAD_CAPPED, "always the same"));
        }
        List<Note> notes = gathered.notes().list();
        assertEquals(GatheredNotes.MOST_OF_A_KIND + 2, notes.size());
        assertEquals("number 1", notes.get(0).text());
        assertEquals(
                "So it is in 96 more cases; in the last of them: number 100",
                notes.get(notes.size() - 1).text());
        assertEquals(
                1,
                notes.stream()
                        .filter(note -> note.problem() == LoadProblem.LOAD_CAPPED)
                        .count());
    }
}
