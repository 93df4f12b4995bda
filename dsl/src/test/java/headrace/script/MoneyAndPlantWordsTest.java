package headrace.script;

import static headrace.script.Scripts.refused;
import static headrace.script.Scripts.run;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.control.duty.DutyRecord;
import headrace.control.staging.StagedRun;
import headrace.control.staging.Staging;
import headrace.economics.Appraisal;
import headrace.economics.Carbon;
import headrace.economics.EconomicsProblem;
import headrace.economics.LawAppraisals;
import headrace.economics.LifeCycleComparison;
import headrace.economics.study.PaybackRange;
import headrace.economics.tariff.Bill;
import headrace.energy.year.CircuitYear;
import headrace.report.Reports;
import headrace.report.Shown;
import headrace.units.Money;
import headrace.units.Power;
import headrace.units.Time;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The words for money, tariffs, staging, duty and standby, as a script uses them. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class MoneyAndPlantWordsTest {
    private static final String SET = """
            import headrace.curve.*; import headrace.liquid.*; import headrace.numeric.*; import headrace.units.*
            formula = new CurveFormula(Polynomial.of(40, 0, -0.0025).ofScaled(3600),
                Polynomial.of(2500, 70).ofScaled(3600), Flow.cubicMetresPerHour(0), Flow.cubicMetresPerHour(110))
            curve = PumpCurve.of('P-A', Speed.revolutionsPerMinute(1450), Liquid.water(Temperature.celsius(20)), formula)
            set = pumpSet(curve, motor(11.kW, ie: 3, poles: 4), drive(11.kW), minimumSpeed: 20.percent)
            design = duty(80.m3ph, 20.m)
            year = loadProfile('a made-up year', [[50.percent, 4000.h], [100.percent, 1000.h]])
            comparison = compare(set, year, price: 0.18.EUR.perKWh, laws: [
                quadratic(design, minimumHead: 40.percent), constantHead(design)])
            """;

    @BeforeEach
    void reads_from_the_project() {
        ScriptFolder.of(Path.of(".."), Path.of("..")).choose();
    }

    /** A year of a circuit is paid back by its own savings at its price, and by two bills under a tariff. */
    @Test
    void a_year_of_a_circuit_is_weighed_at_its_price_and_by_the_difference_of_two_bills() {
        String circuit = SET + """
                loop = directReturn(water(12.degC), resistance(52.m3ph, 45.kPa), [
                    branch('near', coil(26.m3ph, 25.kPa), controlValve(63.kv)),
                    branch('far', coil(26.m3ph, 30.kPa), controlValve(63.kv))])
                load = branchYear(readTypicalDays('demo-data/loads/otterbank-days.csv'), branches: loop)
                found = compare(set, loop, load, price: 0.2.EUR.perKWh,
                    laws: [quadratic(duty(52.m3ph, 16.m), minimumHead: 40.percent)])
                """;
        CircuitYear year = (CircuitYear) run(circuit + "found");
        double saved = year.savings().get(0).atWire().toKilowattHours() * 0.2;
        String terms = "firstCost: 4200.EUR, beyondFixedSpeed: 900.EUR, years: 15, discount: 6.percent";
        LawAppraisals flat = (LawAppraisals) run(circuit + "payback(found, " + terms + ")");
        Appraisal mains = flat.each().get(0);
        assertEquals(4200 / saved, mains.simplePayback().orElseThrow().toYears(), 1e-9);
        String tariff = "tariff('flat', [rate('all', 0.2.EUR.perKWh)], fixed: 25.EUR)";
        LawAppraisals billed = (LawAppraisals) run(circuit + "payback(found, tariff: " + tariff + ", " + terms + ")");
        assertEquals(
                4200 / saved, billed.each().get(0).simplePayback().orElseThrow().toYears(), 1e-9);
        Bill bill = (Bill) run(circuit + "bill(" + tariff + ", powerYear(found.laws()[0], 2025))");
        double wire = year.laws().get(0).energy().wire().toKilowattHours();
        assertEquals(wire * 0.2 + 12 * 25, bill.total().amount(), 1e-6);
    }

    /** A payback of 3000 less 200 over 0.8·1000 − 100 is 4 years. */
    @Test
    void a_stated_saving_is_weighed_on_its_terms() {
        Appraisal appraisal = (Appraisal) run("appraise('reset', firstCost: 3000.EUR, saving: 1000.EUR, years: 10,"
                + " discount: 5.percent, realised: realisation([['bypass', 80.percent]]), upkeep: 100.EUR, rebate: 200.EUR,"
                + " residual: 50.EUR, replacement: [6, 400.EUR, 1.percent])");
        assertEquals(4, appraisal.simplePayback().orElseThrow().toYears(), 1e-12);
        assertTrue(text(appraisal).contains("Simple payback: 4 years"));
    }

    @Test
    void every_law_is_paid_back_against_both_baselines() {
        LawAppraisals laws = (LawAppraisals)
                run(
                        SET
                                + "payback(comparison, firstCost: 4200.EUR, beyondFixedSpeed: 900.EUR, years: 15, discount: 6.percent)");
        assertEquals(2, laws.all().size());
        assertEquals(900, laws.all().get(0).againstFixedSpeed().firstCost().amount());
        String text = text(laws);
        assertTrue(text.contains("against throttling at constant speed"), text);
        assertTrue(text.contains("[realisation-not-stated]"), text);
    }

    @Test
    void a_saving_taken_in_full_on_purpose_is_not_noted() {
        Appraisal full = (Appraisal) run("appraise('reset', firstCost: 3000.EUR, saving: 1000.EUR, years: 10, discount:"
                + " 5.percent, realised: realisation([]))");
        assertFalse(full.notes().has(EconomicsProblem.REALISATION_NOT_STATED));
        assertEquals(1000, full.flow().in(1).amount());
    }

    /** 0.5·0.30 + 0.5·0.10 is 0.20, which is 0.20/0.18 of the saving at the flat price. */
    @Test
    void a_payback_under_a_tariff_takes_stated_shares() {
        String tariff = "two = tariff('two', [rate('day', 0.30.EUR.perKWh, from: 7, to: 22), rate('night',"
                + " 0.10.EUR.perKWh)])\n";
        String terms = "firstCost: 4200.EUR, years: 15, discount: 6.percent";
        LawAppraisals flat = (LawAppraisals) run(SET + "payback(comparison, " + terms + ")");
        LawAppraisals shared = (LawAppraisals) run(SET + tariff + "payback(comparison, " + terms
                + ", tariff: two, shares: [day: 50.percent, night: 50.percent])");
        assertEquals(
                flat.each().get(0).saving().amount() / 0.18 * 0.20,
                shared.each().get(0).saving().amount(),
                1e-9);
    }

    /** The published example of the control valve: 91 827 and 59 481 dollars (DOE/GO-102001-1190, 2001). */
    @Test
    void life_cycle_costs_stand_side_by_side() {
        LifeCycleComparison both = (LifeCycleComparison) run("""
                life = { name, first, energy -> lifeCycleCost(name, [cost('first cost', first),
                    cost('energy', energy, when: 'every year'), cost('upkeep', 500.USD, when: 'every year'),
                    cost('repair', 2500.USD, when: 'every 2 years')], years: 8, discount: 8.percent, inflation: 4.percent) }
                compareCosts([life('new valve', 5000.USD, 11088.USD), life('trimmed impeller', 2250.USD, 6720.USD)])
                """);
        String text = text(both);
        assertTrue(text.contains("91827") && text.contains("59481"), text);
        assertEquals("trimmed impeller", both.least().name());
    }

    /** 8760 h of 2 kW at 0.1, 12 months of 2 kW at 9 and of 25. */
    @Test
    void a_year_of_powers_is_billed() {
        Bill bill = (Bill) run("bill(tariff('flat', [rate('every hour', 0.1.EUR.perKWh)], demand: 9.EUR, window:"
                + " 60.minute, ratchet: 80.percent, fixed: 25.EUR), powerYear('steady', 2025) { hour -> 2.kW })");
        assertEquals(1752 + 216 + 300, bill.total().amount(), 1e-6);
        assertTrue(text(bill).contains("energy 1752 EUR"), text(bill));
        Bill quarters = (Bill) run("bill(tariff('tiers', [rate('all', [[100.kWh, 0.3.EUR.perKWh], 0.2.EUR.perKWh],"
                + " months: 1..12)]), powerYear('quarters', 2025, [2.kW] * 35040))");
        assertEquals(17520 * 0.2 + 12 * 100 * 0.1, quarters.total().amount(), 1e-6);
    }

    @Test
    void a_year_under_a_law_is_billed_hour_by_hour() {
        Bill bill = (Bill) run(SET + "law = quadratic(design, minimumHead: 40.percent)\nbill(tariff('flat',"
                + " [rate('all', 0.1.EUR.perKWh)]), powerYear(set, law, 2025) { hour -> hour % 2 ? 50.percent :"
                + " 0.percent })");
        Power half = (Power)
                run(SET + "steadyState(set, quadratic(design, minimumHead: 40.percent), 40.m3ph).point().wirePower()");
        assertEquals(4380 * half.toKilowatts(), bill.energy().toKilowattHours(), 1e-6);
    }

    @Test
    void a_payback_is_drawn_from_a_seed() {
        PaybackRange range = (PaybackRange) run(SET + """
                paybackRange(comparison, firstCost: triangle(3200.EUR, 4200.EUR, 6000.EUR), discount: 6.percent,
                    price: aboutByFactor(0.18.EUR.perKWh, 12.percent), escalation: about(2.5.percent, 1.2.percent),
                    realised: between(40.percent, 100.percent), correlation: 0.4, upkeep: 80.EUR, upkeepGrowth: 2.percent,
                    replacement: [11, 45.percent, 1.5.percent], years: 15, seed: 7, draws: 2000)
                """);
        assertEquals(2000, range.againstFixedSpeed().draws());
        String text = text(range);
        assertTrue(text.contains("seed 7, 2000 draws"), text);
        assertTrue(text.contains("with a probability of"), text);
        assertTrue(text.contains("What drives the present value"), text);
    }

    /** Without spreads the middle payback is that of the plain calculation. */
    @Test
    void without_spreads_the_range_is_the_plain_payback() {
        PaybackRange range =
                (PaybackRange) run(SET + "paybackRange(comparison, law: 'constant head', firstCost: 4200.EUR,"
                        + " discount: 6.percent, years: 15, draws: 100)");
        LawAppraisals laws =
                (LawAppraisals) run(SET + "payback(comparison, firstCost: 4200.EUR, years: 15, discount: 6.percent)");
        Time plain = laws.all().get(1).againstConstantSpeed().simplePayback().orElseThrow();
        assertEquals(
                plain.toYears(),
                range.againstConstantSpeed().meanSimplePayback().orElseThrow().toYears(),
                1e-9 * plain.toYears());
    }

    @Test
    void pumps_are_staged_and_follow_flows() {
        String plant = SET + "plant = staging(set, quadratic(duty(200.m3ph, 20.m), minimumHead: 40.percent), pumps: 3,"
                + " branchLoss: 0.5.m, leastFlow: 25.percent, margin: 3.percent)\n";
        Staging staging = (Staging) run(plant + "plant");
        assertEquals(2, staging.switches().size());
        assertTrue(text(staging).contains("From 1 to 2 pumps at"), text(staging));
        assertTrue(((Power) run(plant + "penalty(plant, 100.m3ph)")).watts() >= 0);
        StagedRun followed = (StagedRun) run(plant + "runStaged(plant, [40.m3ph] * 8 + [150.m3ph] * 8, step: 15.minute,"
                + " hysteresis: 5.percent, hold: 10.minute, leastRun: 15.minute)");
        assertEquals(4, followed.step().times(followed.running().size()).toHours(), 1e-12);
        assertTrue(text(followed).contains("starts beside the first pump"), text(followed));
    }

    /** The week by hand of the theory page: 295 240 s and 309 630 s. */
    @Test
    void turns_are_booked() {
        DutyRecord week = (DutyRecord) run(
                "dutyRecord(dutyPlan(every: 24.h, overlap: 20.s, faultDelay: 30.s), 7.day, faults: [[1, 58.h, 88.h]])");
        String text = text(week);
        assertTrue(text.contains("295240") && text.contains("309630"), text);
        assertTrue(text.contains("day 3 10:00:00: pump 1 fails"), text);
        DutyRecord hours = (DutyRecord) run(
                "dutyRecord(dutyPlan(every: 24.h, count: 'run hours', anewAfterFault: true, pumps: 3), 7.day, daily: [8,"
                        + " 18])");
        assertEquals(70, hours.wanted().toHours(), 1e-9);
        DutyRecord drawn = (DutyRecord) run("plan = dutyPlan(every: 24.h)\ndutyRecord(plan, 1.year, faults:"
                + " randomFaults(plan, 1.year, between: 40.day, repair: 24.h, seed: 3))");
        assertEquals(0, drawn.unaccounted().seconds());
    }

    @Test
    void cash_flows_and_carbon_are_words_too() {
        assertEquals(
                "10 % and 40 %",
                run("internalRates(cashFlow([-1000.EUR, 2500.EUR, -1540.EUR]))").toString());
        Money value = (Money) run("netPresentValue(cashFlow([-1000.EUR, 550.EUR, 605.EUR]), 10.percent)");
        assertEquals(0, value.amount(), 1e-9);
        Carbon carbon =
                (Carbon) run("carbon(10000.kWh, perKWh: 0.4.kg, decline: 10.percent, years: 3, source: 'invented')");
        assertEquals(10.84, carbon.totalWithDecline().toTonnes(), 1e-12);
        assertTrue(text(run("cashFlow([-1000.EUR, 2500.EUR, -1540.EUR])")).contains("[several-internal-rates]"));
    }

    /**
     * A private helper of a class of words is no word: HandOverWords has one called share, SpreadWords one called law.
     */
    @Test
    void a_block_of_a_script_is_called_by_its_own_name_whatever_the_words_have_inside() {
        assertEquals(6, run("share = { it * 2 }\nshare(3)"));
        assertEquals("b", run("fault = { row -> row[1] }\nfault(['a', 'b'])"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "appraise('x', firstCost: 3000, saving: 1000.EUR, years: 10, discount: 5.percent)",
                "cost('x', 5.EUR, when: 'sometimes')",
                "rate('x', 0.2.EUR.perKWh, months: [13])",
                "dutyPlan(every: 24.h, count: 'moons')"
            })
    void what_no_word_understands_is_refused(String script) {
        refused(ScriptProblem.WRONG_VALUE, script);
    }

    private static String text(Object result) {
        Shown shown = Reports.of(result).orElseThrow();
        return shown.toText();
    }
}
