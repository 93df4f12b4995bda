package headrace.curve;

import static headrace.curve.CurveProblem.DIAMETER_UNKNOWN;
import static headrace.curve.CurveProblem.IMPOSSIBLE_TRIM;
import static headrace.curve.CurveProblem.TRIMMED_BY_RULE;
import static headrace.curve.CurveProblem.TRIM_BEYOND_VALIDITY;
import static headrace.curve.CurveProblem.TRIM_OUT_OF_RANGE;
import static headrace.curve.Pumps.RATED;
import static headrace.curve.Pumps.WATER;
import static headrace.curve.Pumps.evenly;
import static headrace.curve.Pumps.m3ph;
import static headrace.curve.Pumps.parabola;
import static headrace.curve.Pumps.points;
import static headrace.curve.Pumps.refusal;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.liquid.Liquid;
import headrace.problem.Notes;
import headrace.record.Basis;
import headrace.units.Head;
import headrace.units.Length;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Speed;
import headrace.units.Temperature;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class TrimTest {
    private static final Length FULL = Length.millimetres(250);

    /** H = 32 m − 0.0016·Q², P = 3 kW + 70 W·Q at 250 mm, brought to another diameter by flow and head factors. */
    private static PumpTest tested(double millimetres, double flow, double head) {
        return new PumpTest(
                "P-A",
                RATED,
                Optional.of(Length.millimetres(millimetres)),
                WATER,
                OptionalInt.empty(),
                "invented",
                Optional.empty(),
                points(
                        evenly(9, 0, 110 * flow),
                        q -> head * (32 - 0.0016 * q * q / (flow * flow)),
                        q -> flow * head * (3000 + 70 * q / flow)),
                Notes.NONE,
                Basis.NONE);
    }

    private static PumpCurve full() {
        return PumpCurve.fit(tested(250, 1, 1));
    }

    private static Trim keepingEfficiency(double millimetres, TrimRule rule) {
        return new Trim(Length.millimetres(millimetres), rule, 0);
    }

    /** At 240 of 250 mm: L = 0.96; with an inlet of 120 mm R² = (240² − 120²)/(250² − 120²) = 43200/48100. */
    @Test
    void moves_every_point_by_its_rule_worked_by_hand() {
        check(TrimRule.radial(), 0.96, 0.9216);
        check(TrimRule.exponent(2), 0.9216, 0.9216);
        check(TrimRule.exponent(3), 0.884736, 0.884736);
        check(TrimRule.inlet(Length.millimetres(120)), Math.sqrt(43_200 / 48_100.0), 43_200 / 48_100.0);
    }

    private static void check(TrimRule rule, double flow, double head) {
        PumpCurve trimmed = full().trimmed(keepingEfficiency(240, rule));
        for (double q = 0; q <= 110; q += 10) {
            assertEquals(
                    head * (32 - 0.0016 * q * q), trimmed.headAt(m3ph(q * flow)).metres(), 1e-9);
            assertEquals(
                    flow * head * (3000 + 70 * q),
                    trimmed.shaftPowerAt(m3ph(q * flow)).watts(),
                    1e-6);
            assertEquals(
                    full().efficiencyAt(m3ph(q)).value(),
                    trimmed.efficiencyAt(m3ph(q * flow)).value(),
                    1e-10);
        }
        assertEquals(110 * flow, trimmed.highestFlow().toCubicMetresPerHour(), 1e-9);
        assertEquals(240, trimmed.impellerDiameter().orElseThrow().toMillimetres(), 1e-9);
        assertTrue(trimmed.notes().has(TRIMMED_BY_RULE));
        assertTrue(trimmed.basis().choices().toString().contains(rule.name()));
    }

    /**
     * Radial similarity and ISO 9906 give the family of curves that a change of speed gives; a single power does not.
     */
    @Test
    void by_radial_similarity_is_a_change_of_speed() {
        PumpCurve slower =
                full().withEfficiencyOverSpeed(EfficiencyOverSpeed.affinity()).atSpeed(Ratio.of(0.96));
        PumpCurve trimmed = full().trimmed(keepingEfficiency(240, TrimRule.radial()));
        for (double q = 0; q <= 105; q += 7) {
            assertEquals(
                    slower.headAt(m3ph(q)).metres(), trimmed.headAt(m3ph(q)).metres(), 1e-9);
            assertEquals(
                    slower.shaftPowerAt(m3ph(q)).watts(),
                    trimmed.shaftPowerAt(m3ph(q)).watts(),
                    1e-6);
        }
    }

    /** 4 % off at 0.2 points for each per cent: 0.8 points at best efficiency, and the whole curve in proportion. */
    @Test
    void loses_the_usual_points_of_efficiency() {
        PumpCurve trimmed = full().trimmed(Trim.to(Length.millimetres(240), TrimRule.radial()));
        double best = full().bestEfficiencyPoint().efficiency().value();
        assertEquals(best - 0.008, trimmed.bestEfficiencyPoint().efficiency().value(), 1e-10);
        assertEquals(
                full().efficiencyAt(m3ph(40)).value() * (best - 0.008) / best,
                trimmed.efficiencyAt(m3ph(40 * 0.96)).value(),
                1e-10);
    }

    @Test
    void of_nothing_changes_nothing() {
        PumpCurve same = full().trimmed(Trim.to(FULL, TrimRule.exponent(3)));
        assertEquals(full().headAt(m3ph(50)).metres(), same.headAt(m3ph(50)).metres(), 1e-12);
        assertEquals(
                full().shaftPowerAt(m3ph(50)).watts(),
                same.shaftPowerAt(m3ph(50)).watts(),
                1e-9);
        assertFalse(same.notes().has(TRIMMED_BY_RULE));
    }

    @Test
    void says_where_its_rule_ends() {
        assertFalse(full().trimmed(Trim.to(Length.millimetres(238), TrimRule.radial()))
                .notes()
                .has(TRIM_BEYOND_VALIDITY));
        String note = full().trimmed(Trim.to(Length.millimetres(237), TrimRule.radial()))
                .notes()
                .toString();
        assertTrue(note.contains("the trim of 5.2 % at a type number of 0.3"), note);
        assertFalse(full().trimmed(Trim.to(Length.millimetres(226), TrimRule.exponent(2.5)))
                .notes()
                .has(TRIM_BEYOND_VALIDITY));
        assertTrue(full().trimmed(Trim.to(Length.millimetres(224), TrimRule.exponent(2.5)))
                .notes()
                .has(TRIM_BEYOND_VALIDITY));
        assertFalse(full().trimmed(Trim.to(Length.millimetres(238), TrimRule.exponent(3)))
                .notes()
                .has(TRIM_BEYOND_VALIDITY));
        assertTrue(full().trimmed(Trim.to(Length.millimetres(237), TrimRule.exponent(3)))
                .notes()
                .has(TRIM_BEYOND_VALIDITY));
        TrimRule inlet = TrimRule.inlet(Length.millimetres(100));
        assertTrue(
                full().trimmed(Trim.to(Length.millimetres(237), inlet)).notes().has(TRIM_BEYOND_VALIDITY));
    }

    @Test
    void says_where_an_unchanged_efficiency_ends() {
        String note = full().trimmed(keepingEfficiency(242, TrimRule.radial()))
                .notes()
                .toString();
        assertTrue(note.contains("the efficiency was kept over a trim of 3.2 %"), note);
        assertFalse(full().trimmed(keepingEfficiency(243, TrimRule.radial()))
                .notes()
                .has(TRIM_BEYOND_VALIDITY));
    }

    /** K = ω·√Q/(g·H)^¾; by hand at 1450 rpm, 100 m³/h and 10 m: 151.84·0.16667/(98.0665)^0.75 = 0.8121. */
    @Test
    void knows_the_type_number_of_a_pump() {
        PumpCurve curve = Pumps.curve(new double[] {20, 0, -0.001}, new double[] {1500, 30}, 0, 140);
        CurvePoint best = curve.bestEfficiencyPoint();
        double expected = 151.8436
                * Math.sqrt(best.flow().si())
                / Math.pow(9.80665 * best.head().metres(), 0.75);
        assertEquals(expected, Trim.typeNumber(curve), 1e-4);
        assertEquals(0.8121, 151.8436 * Math.sqrt(100 / 3600.0) / Math.pow(98.0665, 0.75), 5e-4);
    }

    @Test
    void is_refused_beyond_what_an_impeller_allows() {
        String message = refusal(
                        TRIM_OUT_OF_RANGE, () -> full().trimmed(Trim.to(Length.millimetres(187), TrimRule.radial())))
                .getMessage();
        assertTrue(message.contains("A trim goes from 250 mm down to 187.5 mm"), message);
        refusal(TRIM_OUT_OF_RANGE, () -> full().trimmed(Trim.to(Length.millimetres(251), TrimRule.radial())));
        assertEquals(
                187.5,
                full().trimmed(Trim.to(Length.millimetres(187.5), TrimRule.radial()))
                        .impellerDiameter()
                        .orElseThrow()
                        .toMillimetres(),
                1e-9);
    }

    @Test
    void is_refused_without_a_diameter() {
        refusal(DIAMETER_UNKNOWN, () -> parabola().trimmed(Trim.to(FULL, TrimRule.radial())));
        refusal(DIAMETER_UNKNOWN, () -> TestedDiameters.of(List.of(parabola(), parabola())));
    }

    @Test
    void is_refused_where_its_rule_means_nothing() {
        refusal(IMPOSSIBLE_TRIM, () -> TrimRule.exponent(0.9));
        refusal(IMPOSSIBLE_TRIM, () -> TrimRule.exponent(4.1));
        refusal(IMPOSSIBLE_TRIM, () -> TrimRule.exponent(Double.NaN));
        refusal(IMPOSSIBLE_TRIM, () -> TrimRule.inlet(Length.metres(0)));
        refusal(
                IMPOSSIBLE_TRIM,
                () -> full().trimmed(Trim.to(Length.millimetres(240), TrimRule.inlet(Length.millimetres(245)))));
        refusal(
                IMPOSSIBLE_TRIM,
                () -> full().trimmed(Trim.to(Length.millimetres(240), TrimRule.inlet(Length.millimetres(260)))));
        refusal(IMPOSSIBLE_TRIM, () -> new Trim(FULL, TrimRule.radial(), -0.1));
        refusal(IMPOSSIBLE_TRIM, () -> new Trim(FULL, TrimRule.radial(), 1.1));
        refusal(IMPOSSIBLE_TRIM, () -> new Trim(FULL, TrimRule.radial(), Double.NaN));
    }

    private static TestedDiameters family() {
        return TestedDiameters.of(
                List.of(full(), PumpCurve.fit(tested(210, 0.8, 0.7)), PumpCurve.fit(tested(230, 0.9, 0.85))));
    }

    @Test
    void between_tested_diameters_passes_through_each_of_them() {
        for (PumpCurve tested : family().curves()) {
            PumpCurve found = family().at(tested.impellerDiameter().orElseThrow());
            for (int i = 0; i <= 20; i++) {
                assertEquals(
                        tested.headAt(tested.highestFlow().times(i / 20.0)).metres(),
                        found.headAt(found.highestFlow().times(i / 20.0)).metres(),
                        1e-9);
            }
        }
    }

    /** Half way from 230 to 250 mm: range 104.5 m³/h, head 0.925·32 m at shut-off, power the mean of both. */
    @Test
    void between_tested_diameters_goes_in_proportion() {
        PumpCurve found = family().at(Length.millimetres(240));
        assertEquals(104.5, found.highestFlow().toCubicMetresPerHour(), 1e-9);
        assertEquals(0.925 * 32, found.headAt(m3ph(0)).metres(), 1e-9);
        assertEquals(3000 * (1 + 0.9 * 0.85) / 2, found.shaftPowerAt(m3ph(0)).watts(), 1e-6);
        assertEquals(
                (1 + 0.85) / 2 * (32 - 0.0016 * 55 * 55),
                found.headAt(m3ph(52.25)).metres(),
                1e-9);
        assertFalse(found.notes().has(TRIMMED_BY_RULE));
        assertTrue(found.basis().choices().toString().contains("between the tested 230 mm and 250 mm, in proportion"));
    }

    @Test
    void between_tables_goes_in_proportion_too() {
        TestedDiameters tables = TestedDiameters.of(
                List.of(PumpCurve.through(tested(250, 1, 1)), PumpCurve.through(tested(230, 0.9, 0.85))));
        PumpCurve found = tables.at(Length.millimetres(240));
        assertEquals(0.925 * (32 - 0.0016 * 55 * 55), found.headAt(m3ph(52.25)).metres(), 1e-3);
        assertEquals(104.5, found.highestFlow().toCubicMetresPerHour(), 1e-9);
    }

    @Test
    void between_tested_diameters_is_refused_outside_them() {
        refusal(TRIM_OUT_OF_RANGE, () -> family().at(Length.millimetres(209)));
        refusal(TRIM_OUT_OF_RANGE, () -> family().at(Length.millimetres(251)));
        refusal(IMPOSSIBLE_TRIM, () -> TestedDiameters.of(List.of(full())));
        refusal(IMPOSSIBLE_TRIM, () -> TestedDiameters.of(List.of(full(), full())));
        PumpCurve warm = full().inLiquid(Liquid.water(Temperature.celsius(60)));
        refusal(IMPOSSIBLE_TRIM, () -> TestedDiameters.of(List.of(warm, PumpCurve.fit(tested(230, 0.9, 0.85)))));
    }

    /**
     * At L = 0.96 the rules leave heads of 0.9216 and 0.8847 of the full one at shut-off: they disagree by 4 % and
     * more.
     */
    @Test
    void shows_how_much_the_rules_disagree() {
        TrimComparison comparison = TrimComparison.of(
                full(), Length.millimetres(240), Optional.of(Length.millimetres(120)), Optional.of(family()));
        assertEquals(5, comparison.results().size());
        double least = Double.POSITIVE_INFINITY;
        double greatest = 0;
        double q =
                comparison.results().get(0).curve().bestEfficiencyPoint().flow().si();
        for (TrimComparison.Result result : comparison.results()) {
            least = Math.min(least, result.curve().headMetres(q, 1));
            greatest = Math.max(greatest, result.curve().headMetres(q, 1));
        }
        assertEquals(1 - least / greatest, comparison.disagreement().value(), 1e-12);
        assertTrue(comparison.disagreement().value() > 0.04);
        assertTrue(comparison.notes().has(TRIMMED_BY_RULE));
        assertTrue(comparison.basis().choices().toString().contains("radial similarity"));
        assertEquals(
                3,
                TrimComparison.of(full(), Length.millimetres(240), Optional.empty(), Optional.empty())
                        .results()
                        .size());
    }

    @Test
    void sizes_an_impeller_to_a_duty() {
        ImpellerSizing sizing = new ImpellerSizing(full(), TrimRule.radial());
        for (double q : new double[] {0, 40, 80}) {
            PumpCurve found = sizing.toDuty(new Duty(m3ph(q), Head.metres(20)));
            assertEquals(20, found.headAt(m3ph(q)).metres(), 1e-9);
        }
        String tooSmall = refusal(TRIM_OUT_OF_RANGE, () -> sizing.toDuty(new Duty(m3ph(40), Head.metres(35))))
                .getMessage();
        assertTrue(tooSmall.contains("Choose a larger pump, or turn it faster"), tooSmall);
        String tooLarge = refusal(TRIM_OUT_OF_RANGE, () -> sizing.toDuty(new Duty(m3ph(10), Head.metres(5))))
                .getMessage();
        assertTrue(tooLarge.contains("Choose a smaller pump, or turn it slower"), tooLarge);
        refusal(TRIM_OUT_OF_RANGE, () -> sizing.toDuty(new Duty(m3ph(108), Head.metres(12))));
    }

    @Test
    void sizes_an_impeller_to_a_power() {
        ImpellerSizing sizing = new ImpellerSizing(full(), TrimRule.exponent(2.5));
        PumpCurve found = sizing.toPower(Power.kilowatts(8));
        assertEquals(8, found.greatestPower().toKilowatts(), 1e-9);
        assertEquals(10.7, full().greatestPower().toKilowatts(), 1e-9);
        assertEquals(
                FULL, sizing.toPower(Power.kilowatts(11)).impellerDiameter().orElseThrow());
        refusal(TRIM_OUT_OF_RANGE, () -> sizing.toPower(Power.kilowatts(1)));
    }

    @Test
    void sizes_an_impeller_to_its_best_efficiency_beside_the_others() {
        ImpellerSizing sizing = new ImpellerSizing(full(), TrimRule.radial());
        double best = full().bestEfficiencyPoint().flow().toCubicMetresPerHour();
        PumpCurve found = sizing.toBestEfficiency(m3ph(0.9 * best));
        assertEquals(0.9 * 250, found.impellerDiameter().orElseThrow().toMillimetres(), 1e-6);
        List<ImpellerSizing.Sized> all = sizing.sideBySide(new Duty(m3ph(50), Head.metres(20)), Power.kilowatts(1));
        assertEquals(3, all.size());
        assertEquals("duty of 50 m³/h at 20 m", all.get(0).aim());
        assertTrue(all.get(0).curve().isPresent() && all.get(0).refusal().isEmpty());
        assertTrue(all.get(1).curve().isEmpty());
        assertEquals(TRIM_OUT_OF_RANGE, all.get(1).refusal().orElseThrow().problem());
    }

    @Test
    void keeps_speed_liquid_and_model() {
        PumpCurve moved = full().withEfficiencyOverSpeed(EfficiencyOverSpeed.affinity())
                .inLiquid(Liquid.propyleneGlycol(Ratio.percent(40), Temperature.celsius(0)))
                .atSpeed(Speed.revolutionsPerMinute(900));
        PumpCurve trimmed = moved.trimmed(Trim.to(Length.millimetres(230), TrimRule.radial()));
        assertEquals(moved.speed(), trimmed.speed());
        assertEquals(moved.liquid(), trimmed.liquid());
        assertEquals(EfficiencyOverSpeed.affinity(), trimmed.efficiencyOverSpeed());
        assertTrue(trimmed.notes().has(CurveProblem.VISCOSITY_CORRECTED));
    }

    @Test
    void gives_less_of_everything_the_more_is_turned_off() {
        Random random = new Random(2);
        for (int i = 0; i < 50; i++) {
            double large = 190 + 60 * random.nextDouble();
            double small = 188 + (large - 188) * random.nextDouble();
            for (TrimRule rule :
                    List.of(TrimRule.radial(), TrimRule.exponent(2.2), TrimRule.inlet(Length.millimetres(90)))) {
                PumpCurve more = full().trimmed(keepingEfficiency(large, rule));
                PumpCurve less = full().trimmed(keepingEfficiency(small, rule));
                assertTrue(less.headAt(m3ph(20)).compareTo(more.headAt(m3ph(20))) <= 0);
                assertTrue(less.greatestPower().compareTo(more.greatestPower()) <= 0);
            }
        }
    }

    @Test
    void keeps_a_range_that_does_not_begin_at_shut_off() {
        PumpTest fromTen =
                tested(250, 1, 1).with(points(evenly(9, 10, 110), q -> 32 - 0.0016 * q * q, q -> 3000 + 70 * q));
        PumpTest small =
                tested(230, 1, 1).with(points(evenly(9, 12, 92), q -> 27 - 0.0016 * q * q, q -> 2500 + 60 * q));
        PumpCurve trimmed = PumpCurve.fit(fromTen).trimmed(Trim.to(Length.millimetres(240), TrimRule.radial()));
        assertEquals(9.6, trimmed.lowestFlow().toCubicMetresPerHour(), 1e-9);
        TestedDiameters family = TestedDiameters.of(List.of(PumpCurve.fit(fromTen), PumpCurve.fit(small)));
        assertEquals(2, family.curves().size());
        PumpCurve between = family.at(Length.millimetres(240));
        assertEquals(11, between.lowestFlow().toCubicMetresPerHour(), 1e-9);
        assertEquals(101, between.highestFlow().toCubicMetresPerHour(), 1e-9);
        for (double share : new double[] {0, 0.3, 1}) {
            double large = 10 + 100 * share;
            double little = 12 + 80 * share;
            double expected = 0.5 * (32 - 0.0016 * large * large + 27 - 0.0016 * little * little);
            assertEquals(expected, between.headAt(m3ph(11 + 90 * share)).metres(), 1e-9);
        }
    }

    @Test
    void names_its_rules() {
        assertTrue(TrimRule.exponent(2.5).name().contains("to the power of 2.5"));
        assertTrue(TrimRule.inlet(Length.metres(0.12)).name().contains("D₁ = 120 mm"));
        assertTrue(new TrimRule.Exponent(1).name().contains("power of 1"));
        assertEquals(1, Trim.typeNumber(full()) / Trim.typeNumber(full().atSpeed(Ratio.percent(60))), 1e-9);
    }

    @Test
    void sizes_to_a_power_beside_the_others_where_one_does_it() {
        List<ImpellerSizing.Sized> all = new ImpellerSizing(full(), TrimRule.radial())
                .sideBySide(new Duty(m3ph(50), Head.metres(20)), Power.kilowatts(8));
        assertEquals(8, all.get(1).curve().orElseThrow().greatestPower().toKilowatts(), 1e-9);
    }
}
