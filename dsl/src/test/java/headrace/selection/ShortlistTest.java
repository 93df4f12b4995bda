package headrace.selection;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.control.ControlLaw;
import headrace.curve.CurveProblem;
import headrace.curve.Duty;
import headrace.curve.PumpTest;
import headrace.curve.TestPoint;
import headrace.drive.SeparateLosses;
import headrace.energy.LoadBin;
import headrace.energy.LoadProfile;
import headrace.energy.StrategyComparison;
import headrace.liquid.Liquid;
import headrace.problem.Problem;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.rule.PartLoadRule;
import headrace.rule.RuleProblem;
import headrace.selection.Shortlist.Dropped;
import headrace.selection.Wish.Conditions;
import headrace.selection.Wish.Motors;
import headrace.units.EnergyPrice;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Money;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Speed;
import headrace.units.Temperature;
import headrace.units.Time;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

/**
 * Made-up pumps with H = H₀·(1 − 0.4·(Q/Q_m)²) up to Q_m and a shaft power of P_m·(0.4 + 0.6·Q/Q_m), without scatter,
 * for 52 m³/h at 16 m.
 */
@DisplayNameGeneration(ReplaceUnderscores.class)
class ShortlistTest {
    private static final Duty DUTY = new Duty(Flow.cubicMetresPerHour(52), Head.metres(16));
    private static final LoadProfile YEAR = LoadProfile.of(
            "a made-up year",
            List.of(
                    new LoadBin(Ratio.ZERO, Time.hours(2000)),
                    new LoadBin(Ratio.percent(30), Time.hours(3000)),
                    new LoadBin(Ratio.percent(60), Time.hours(3000)),
                    new LoadBin(Ratio.percent(100), Time.hours(760))),
            Basis.NONE);
    private static final ControlLaw LAW = ControlLaw.quadratic(DUTY, Ratio.percent(30));
    private static final Motors MOTORS = new Motors(3, SeparateLosses.ASSUMED, Ratio.percent(25));

    private static final PumpTest GOOD = pump("P-A good", 1450, 24, 70, 4.6);
    private static final PumpTest THIRSTY = pump("P-B thirsty", 1450, 24, 70, 5.2);

    @Test
    void candidates_are_ranked_by_the_energy_of_the_year_and_the_others_dropped_with_their_reasons() {
        Shortlist list = Shortlist.of(
                wish(Conditions.USUAL),
                List.of(
                        THIRSTY,
                        pump("P-C weak", 1450, 14, 70, 3.5),
                        pump("P-D wide", 1450, 24, 200, 13),
                        pump("P-E narrow", 1450, 40, 40, 5),
                        GOOD));
        assertEquals(
                List.of("P-A good", "P-B thirsty"),
                list.ranked().stream().map(Candidate::name).toList());
        Map<String, Problem> reasons = list.dropped().stream()
                .collect(Collectors.toMap(Dropped::name, each -> each.refusal().problem()));
        assertEquals(SelectionProblem.DUTY_BEYOND_SPEED, reasons.get("P-C weak"));
        assertEquals(SelectionProblem.DUTY_OUTSIDE_REGION, reasons.get("P-D wide"));
        assertTrue(reasons.get("P-E narrow") instanceof CurveProblem);
        list.dropped().forEach(each -> assertTrue(each.reason().endsWith("."), each.reason()));
    }

    /** The same year by the comparison of strategies, bin by bin with whole operating points. */
    @Test
    void the_energy_of_the_year_is_that_of_the_comparison_of_strategies() {
        Candidate candidate =
                Shortlist.of(wish(Conditions.USUAL), List.of(GOOD)).ranked().get(0);
        double expected = StrategyComparison.of(
                        candidate.set(), YEAR, new EnergyPrice(new Money(0.2, "EUR")), List.of(LAW))
                .laws()
                .get(0)
                .wireEnergy()
                .toKilowattHours();
        assertEquals(expected, candidate.yearEnergy().toKilowattHours(), 1e-9 * expected);
    }

    /**
     * The greatest shaft power is P_m at the end of the curve: 4.6 kW takes a motor of 5.5 kW, 5.6 kW one of 7.5 kW.
     */
    @Test
    void the_motor_is_the_smallest_standard_one_that_is_never_overloaded() {
        assertEquals(5.5, motor(GOOD), 1e-12);
        assertEquals(7.5, motor(pump("P-F", 1450, 24, 70, 5.6)), 1e-12);
        assertEquals(4, poles(GOOD));
        assertEquals(2, poles(pump("P-G", 2900, 24, 70, 4.6)));
        assertEquals(6, poles(pump("P-H", 970, 24, 70, 4.6)));
    }

    @Test
    void a_window_that_is_empty_drops_a_candidate() {
        Conditions needy = new Conditions(
                Optional.empty(),
                Optional.empty(),
                Conditions.USUAL.margin(),
                Conditions.USUAL.region(),
                Conditions.USUAL.rule(),
                Optional.of(Ratio.percent(90)));
        Shortlist list = Shortlist.of(wish(needy), List.of(GOOD));
        assertTrue(list.ranked().isEmpty());
        assertEquals(
                SelectionProblem.WINDOW_EMPTY, list.dropped().get(0).refusal().problem());
        assertTrue(list.notes().has(SelectionProblem.NOBODY_LEFT));
    }

    /** A rule for motors from 500 kW on says nothing of these, however much minimum head the branches need. */
    @Test
    void a_rule_that_is_not_applicable_drops_nobody() {
        PartLoadRule usual = Conditions.USUAL.rule();
        Conditions large = new Conditions(
                Optional.empty(),
                Optional.empty(),
                Conditions.USUAL.margin(),
                Conditions.USUAL.region(),
                new PartLoadRule(
                        "large motors",
                        "nowhere",
                        "none",
                        usual.flowFraction(),
                        usual.powerFraction(),
                        Power.kilowatts(500),
                        "this test"),
                Optional.of(Ratio.percent(90)));
        Shortlist list = Shortlist.of(wish(large), List.of(GOOD));
        assertTrue(list.dropped().isEmpty(), list.dropped().toString());
        assertTrue(list.ranked().get(0).notes().has(RuleProblem.RULE_NOT_BINDING));
    }

    /** At 30 % of 52 m³/h a pump whose test begins at 30 m³/h is beyond it. */
    @Test
    void a_load_outside_the_test_drops_a_candidate() {
        List<TestPoint> points = new ArrayList<>(GOOD.points());
        points.removeIf(point -> point.flow().in("m3ph") < 30);
        Shortlist list = Shortlist.of(wish(Conditions.USUAL), List.of(GOOD.with(points)));
        assertEquals(
                SelectionProblem.LOAD_BEYOND_TEST,
                list.dropped().get(0).refusal().problem());
    }

    @Test
    void what_could_not_be_read_is_among_the_dropped() {
        Refusal reason = assertThrows(Refusal.class, () -> pump("", 1450, 24, 70, 4.6));
        Shortlist list = Shortlist.of(wish(Conditions.USUAL), List.of(GOOD), List.of(new Dropped("P-X.csv", reason)));
        assertEquals("P-X.csv", list.dropped().get(0).name());
        assertEquals(1, list.ranked().size());
    }

    @Test
    void a_speed_of_no_motor_drops_a_candidate_and_no_candidates_are_refused() {
        Shortlist list = Shortlist.of(wish(Conditions.USUAL), List.of(pump("P-S", 400, 24, 70, 4.6)));
        assertEquals(
                SelectionProblem.NO_MOTOR_FOR_SPEED,
                list.dropped().get(0).refusal().problem());
        assertThrows(Refusal.class, () -> Shortlist.of(wish(Conditions.USUAL), List.of()));
        assertThrows(Refusal.class, () -> new Wish(ControlLaw.fixedSpeed(DUTY), YEAR, Conditions.USUAL, MOTORS));
        Motors fast = new Motors(3, SeparateLosses.ASSUMED, Ratio.percent(100));
        assertThrows(Refusal.class, () -> new Wish(LAW, YEAR, Conditions.USUAL, fast));
    }

    private static double motor(PumpTest test) {
        return candidate(test).set().driveTrain().motor().rated().toKilowatts();
    }

    private static int poles(PumpTest test) {
        return candidate(test).set().driveTrain().motor().poles();
    }

    private static Candidate candidate(PumpTest test) {
        return Shortlist.of(wish(Conditions.USUAL), List.of(test)).ranked().get(0);
    }

    private static Wish wish(Conditions conditions) {
        return new Wish(LAW, YEAR, conditions, MOTORS);
    }

    private static PumpTest pump(String name, double rpm, double metres, double cubicMetres, double kilowatts) {
        List<TestPoint> points = new ArrayList<>();
        for (int i = 0; i <= 10; i++) {
            double share = i / 10.0;
            points.add(new TestPoint(
                    Flow.cubicMetresPerHour(cubicMetres * share),
                    Head.metres(metres * (1 - 0.4 * share * share)),
                    Power.kilowatts(kilowatts * (0.4 + 0.6 * share)),
                    Speed.revolutionsPerMinute(rpm)));
        }
        return PumpTest.of(name, Speed.revolutionsPerMinute(rpm), Liquid.water(Temperature.celsius(20)), points);
    }
}
