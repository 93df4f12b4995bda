package headrace.rule;

import static headrace.pump.KnownPump.DESIGN;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.control.ControlLaw;
import headrace.control.ControlProblem;
import headrace.curve.Duty;
import headrace.drive.CombinedLosses;
import headrace.drive.ConstantEfficiency;
import headrace.drive.Drive;
import headrace.drive.DriveTrain;
import headrace.drive.LossCurve;
import headrace.drive.LossModel;
import headrace.drive.Losses;
import headrace.drive.Motor;
import headrace.drive.SeparateLosses;
import headrace.problem.Notes;
import headrace.problem.Problem;
import headrace.problem.Refusal;
import headrace.pump.KnownPump;
import headrace.pump.PumpSet;
import headrace.rule.MinimumHeadLimit.Outcome;
import headrace.units.Head;
import headrace.units.Power;
import headrace.units.Ratio;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class PartLoadRuleTest {
    private static final PartLoadRule RULE = PartLoadRule.THIRTY_PERCENT_AT_HALF_FLOW;
    private static final PumpSet SET = KnownPump.set(SeparateLosses.ASSUMED);

    /** WAC 51-11C-40344: 30 % of design wattage at 50 % of design flow, motors of 2 hp and more. */
    @Test
    void is_the_rule_as_printed() {
        assertEquals(0.5, RULE.flowFraction().value(), 1e-15);
        assertEquals(0.3, RULE.powerFraction().value(), 1e-15);
        assertEquals(2, RULE.smallestMotor().toHorsepower(), 1e-12);
        assertTrue(RULE.source().contains("WAC 51-11C-40344"));
    }

    /** Common practice, no source: 0.5·(0.4 + 0.25·0.6) = 0.275. */
    @Test
    void sees_27_5_percent_of_design_hydraulic_power_for_40_percent_minimum_head() {
        RuleVerdict verdict = RULE.judge(SET, ControlLaw.quadratic(DESIGN, Ratio.percent(40)));
        assertEquals(0.275, verdict.hydraulicShare().value(), 1e-12);
        assertEquals(0.275, verdict.shaftShare().value(), 1e-12);
        assertTrue(verdict.share().value() > 0.275);
    }

    @Test
    void gives_its_verdict_with_the_number_and_the_margin() {
        RuleVerdict verdict = RULE.judge(SET, ControlLaw.constantHead(DESIGN));
        assertFalse(verdict.passes());
        assertEquals(
                verdict.atPart().point().wirePower().watts()
                        / verdict.atDesign().wirePower().watts(),
                verdict.share().value(),
                1e-15);
        assertEquals(0.3, verdict.share().value() + verdict.margin().value(), 1e-12);
        assertTrue(RULE.judge(SET, ControlLaw.quadratic(DESIGN, Ratio.ZERO)).passes());
        assertTrue(verdict.toString().startsWith("constant head fails: "));
        assertTrue(verdict.basis().choices().stream().anyMatch(choice -> choice.contains("WAC 51-11C-40344")));
    }

    @Test
    void judges_a_law_without_design_by_the_design_named_beside_it() {
        refused(RuleProblem.RULE_WITHOUT_DESIGN, () -> RULE.judge(SET, ControlLaw.constantSpeed()));
        assertFalse(RULE.judge(SET, ControlLaw.constantSpeed(), DESIGN).passes());
    }

    @Test
    void refuses_constant_efficiency_and_says_why() {
        PumpSet constant = SET.with(new ConstantEfficiency());
        ControlLaw law = ControlLaw.quadratic(DESIGN, Ratio.percent(40));
        Refusal refusal = refused(RuleProblem.CONSTANT_EFFICIENCY_REFUSED, () -> RULE.judge(constant, law));
        assertTrue(refusal.getMessage().contains("lose at part load"));
        refused(RuleProblem.CONSTANT_EFFICIENCY_REFUSED, () -> LargestMinimumHead.of(constant, DESIGN, RULE));
        refused(
                RuleProblem.CONSTANT_EFFICIENCY_REFUSED,
                () -> LargestMinimumHead.of(SET, DESIGN, RULE, List.of(new ConstantEfficiency())));
    }

    @Test
    void does_not_bind_a_motor_below_its_size_but_gives_the_number() {
        Power small = Power.kilowatts(1.1);
        DriveTrain train = DriveTrain.of(Motor.ofClass(small, 3, 4), Drive.reference(small), SeparateLosses.ASSUMED);
        RuleVerdict verdict = RULE.judge(PumpSet.of(KnownPump.curve(), train), ControlLaw.constantHead(DESIGN));
        assertFalse(verdict.binds());
        assertTrue(verdict.notes().has(RuleProblem.RULE_NOT_BINDING));
        assertEquals(RuleVerdict.Outcome.NOT_APPLICABLE, verdict.outcome());
        assertTrue(verdict.toString().startsWith("constant head, rule not applicable: "), verdict.toString());
        assertTrue(verdict.toString().contains("margin -"), verdict.toString());
        assertTrue(RULE.judge(SET, ControlLaw.constantHead(DESIGN)).binds());
    }

    /** The design head is 20 m: a rule from 19 m on binds, one from 21 m on does not. */
    @Test
    void binds_from_a_design_head_on_where_it_has_one() {
        ControlLaw law = ControlLaw.constantHead(DESIGN);
        assertEquals(
                RuleVerdict.Outcome.FAILS,
                RULE.fromHead(Head.metres(19)).judge(SET, law).outcome());
        RuleVerdict beyond = RULE.fromHead(Head.metres(21)).judge(SET, law);
        assertEquals(RuleVerdict.Outcome.NOT_APPLICABLE, beyond.outcome());
        assertTrue(
                beyond.notes().toString().contains("21 m on, this one is 20 m"),
                beyond.notes().toString());
        assertEquals(
                RuleVerdict.Outcome.PASSES,
                RULE.judge(SET, ControlLaw.quadratic(DESIGN, Ratio.ZERO)).outcome());
        refused(RuleProblem.IMPOSSIBLE_RULE, () -> RULE.fromHead(Head.metres(-1)));
    }

    /**
     * A loss of c W at every load leaves a closed form: 40·H = 0.3·80·20 − 0.7·c/k, with k the shaft power of 1 m³/h
     * and 1 m, and φ = (H/20 − 0.25)/0.75.
     */
    @ParameterizedTest
    @ValueSource(doubles = {1, 150, 250, 400})
    void finds_the_largest_minimum_head_of_a_closed_form(double watts) {
        double head = (480 - 0.7 * watts / KnownPump.shaftWatts(1, 1)) / 40;
        MinimumHeadLimit limit = limit(new ConstantLoss(watts), RULE);
        assertEquals(Outcome.UP_TO, limit.outcome());
        assertEquals((head / 20 - 0.25) / 0.75, limit.minimumHead().value(), 2e-8);
        assertTrue(limit.verdict().passes());
        assertEquals(0.3, limit.verdict().share().value(), 1e-7);
    }

    @Test
    void says_so_when_every_minimum_head_passes_or_none() {
        PartLoadRule mild = withPower(60);
        MinimumHeadLimit all = limit(new ConstantLoss(1), mild);
        assertEquals(Outcome.ALL, all.outcome());
        assertTrue(all.toString().contains("every minimum head passes"));
        MinimumHeadLimit none = limit(new ConstantLoss(5000), RULE);
        assertEquals(Outcome.NONE, none.outcome());
        assertFalse(none.verdict().passes());
        assertTrue(none.toString().contains("none passes"));
    }

    @Test
    void finds_a_head_that_passes_beside_one_that_does_not_with_each_loss_model() {
        LargestMinimumHead answer = LargestMinimumHead.of(SET, DESIGN, RULE);
        assertEquals(2, answer.limits().size());
        for (MinimumHeadLimit limit : answer.limits()) {
            PumpSet set = SET.with(limit.model());
            double found = limit.minimumHead().value();
            assertEquals(Outcome.UP_TO, limit.outcome());
            assertTrue(RULE.judge(set, ControlLaw.quadratic(DESIGN, Ratio.of(found)))
                    .passes());
            assertFalse(RULE.judge(set, ControlLaw.quadratic(DESIGN, Ratio.of(found + 1e-3)))
                    .passes());
            assertTrue(found < answer.hydraulicLimit().value());
        }
        assertEquals("separate", answer.limits().get(0).model().name());
        assertEquals("combined", answer.limits().get(1).model().name());
        assertTrue(answer.decides().contains("what decides is the losses of motor and drive at"));
        assertTrue(answer.decides().contains("'combined' loses"));
    }

    /** At 94 % speed the pump gives 0.8836·40 − 4 = 31.3 m at half flow, whatever the law asks for. */
    @Test
    void passes_nothing_where_the_least_speed_takes_more_than_the_rule_allows() {
        PumpSet brisk = SET.withMinimumSpeed(KnownPump.SPEED.times(0.94));
        MinimumHeadLimit limit = LargestMinimumHead.of(brisk, DESIGN, RULE, List.of(SeparateLosses.ASSUMED))
                .limits()
                .get(0);
        assertEquals(Outcome.NONE, limit.outcome());
        assertTrue(limit.notes().has(ControlProblem.MINIMUM_SPEED_REACHED));
    }

    /**
     * By hand: 4 m³/h lie inside the tested range, which begins at 5 m³/h, up to a speed of 80 %. There the pump gives
     * 0.64·40 − 0.04 = 25.56 m, which is φ = (25.56/36 − 0.25)/0.75.
     */
    @Test
    void says_when_the_tested_range_ends_before_the_rule_does() {
        Duty small = new Duty(KnownPump.m3ph(8), Head.metres(36));
        MinimumHeadLimit limit = LargestMinimumHead.of(SET, small, withPower(60), List.of(new ConstantLoss(1)))
                .limits()
                .get(0);
        assertEquals((25.56 / 36 - 0.25) / 0.75, limit.minimumHead().value(), 1e-7);
        assertTrue(limit.notes().has(RuleProblem.LIMITED_BY_TESTED_RANGE));
        assertFalse(limit(new ConstantLoss(1), RULE).notes().has(RuleProblem.LIMITED_BY_TESTED_RANGE));
    }

    /** By hand: 0.5·(φ + 0.25·(1 − φ)) = 0.3 at φ = 0.35/0.75. */
    @Test
    void gives_the_limit_of_hydraulic_power_alone() {
        assertEquals(
                0.35 / 0.75,
                LargestMinimumHead.of(SET, DESIGN, RULE).hydraulicLimit().value(),
                1e-12);
        assertEquals(
                1,
                LargestMinimumHead.of(SET, DESIGN, withPower(60))
                        .hydraulicLimit()
                        .value());
    }

    /**
     * A loss that is 100 W more at both points weighs more at part flow; one that is more at the design point does not.
     */
    @Test
    void says_what_decides_between_two_models() {
        String atPart = decides(new ConstantLoss(100), new ConstantLoss(200));
        assertTrue(atPart.contains("what decides is the losses of motor and drive at part flow"), atPart);
        assertTrue(atPart.contains("loses 0.1 kW"), atPart);
        assertTrue(atPart.contains("loses 0.2 kW"), atPart);
        String atDesign = decides(new ConstantLoss(100), new ConstantLoss(100, 200));
        assertTrue(atDesign.contains("what decides is the losses of motor and drive at the design point"), atDesign);
    }

    @Test
    void puts_the_model_of_the_set_first() {
        LargestMinimumHead answer = LargestMinimumHead.of(SET.with(new CombinedLosses()), DESIGN, RULE);
        assertEquals("combined", answer.limits().get(0).model().name());
        assertEquals("separate", answer.limits().get(1).model().name());
        refused(RuleProblem.NOTHING_TO_JUDGE, () -> LargestMinimumHead.of(SET, DESIGN, RULE, List.of()));
    }

    @Test
    void is_refused_with_shares_that_cannot_be() {
        refused(RuleProblem.IMPOSSIBLE_RULE, () -> withPower(0));
        refused(RuleProblem.IMPOSSIBLE_RULE, () -> withPower(101));
    }

    private static PartLoadRule withPower(double percent) {
        return new PartLoadRule(
                "made up", "nowhere", "none", Ratio.percent(50), Ratio.percent(percent), Power.ZERO, "this test");
    }

    private static MinimumHeadLimit limit(LossModel model, PartLoadRule rule) {
        return LargestMinimumHead.of(SET, DESIGN, rule, List.of(model)).limits().get(0);
    }

    private static String decides(LossModel one, LossModel other) {
        return LargestMinimumHead.of(SET, DESIGN, RULE, List.of(one, other)).decides();
    }

    private static Refusal refused(Problem problem, Executable asking) {
        Refusal refusal = assertThrows(Refusal.class, asking);
        assertEquals(problem, refusal.problem());
        return refusal;
    }

    /** Loses the same at every load up to 4 kW and so much more above, so that answers have a closed form. */
    private record ConstantLoss(double watts, double more) implements LossModel {
        ConstantLoss(double watts) {
            this(watts, 0);
        }

        @Override
        public String name() {
            return watts + " W and " + more + " W more";
        }

        @Override
        public String statement() {
            return "loses " + watts + " W, above 4 kW " + more + " W more";
        }

        @Override
        public boolean followsLoad() {
            return true;
        }

        @Override
        public LossCurve withDrive(Motor motor, Drive drive) {
            double low = watts;
            double step = more;
            return new LossCurve() {
                @Override
                public double watts(double shaftWatts, double speedRatio) {
                    return shaftWatts > 4000 ? low + step : low;
                }

                @Override
                public List<Losses.Part> parts(double shaftWatts, double speedRatio) {
                    return List.of(
                            new Losses.Part(Losses.Place.MOTOR, "motor", Power.watts(watts(shaftWatts, speedRatio))));
                }

                @Override
                public Notes notes(double shaftWatts, double speedRatio) {
                    return Notes.NONE;
                }
            };
        }

        @Override
        public LossCurve onMains(Motor motor) {
            return withDrive(motor, null);
        }
    }
}
