package headrace.rule;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.control.ControlLaw;
import headrace.curve.Duty;
import headrace.drive.SeparateLosses;
import headrace.problem.Refusal;
import headrace.pump.KnownPump;
import headrace.pump.PumpSet;
import headrace.units.Ratio;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

/** Part-load rules and curves against what is published. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class PublishedPartLoadTest {
    private static final PumpSet SET = KnownPump.set(SeparateLosses.ASSUMED);
    private static final Duty DESIGN = KnownPump.DESIGN;

    /** WAC 51-11C-40344: 2 hp, 30 % at 50 %; WAC 51-11C-403294: 7.5 hp. One horsepower is 745.6999 W. */
    @Test
    void the_rules_of_the_washington_code_bind_from_their_motors() {
        PartLoadRule now = PartLoadRule.SHIPPED.get(0);
        PartLoadRule before = PartLoadRule.SHIPPED.get(1);
        assertEquals(2 * 745.6999, now.smallestMotor().watts(), 0.01);
        assertEquals(7.5 * 745.6999, before.smallestMotor().watts(), 0.01);
        for (PartLoadRule rule : PartLoadRule.SHIPPED) {
            assertEquals(0.5, rule.flowFraction().value());
            assertEquals(0.3, rule.powerFraction().value());
            assertFalse(rule.source().isBlank());
        }
    }

    /** The motor of 7.5 kW is 10.06 hp: the rule for motors above 50 hp does not bind it, the others do. */
    @Test
    void a_rule_that_does_not_bind_says_so() {
        ControlLaw law = ControlLaw.quadratic(DESIGN, Ratio.percent(30));
        assertTrue(PartLoadRule.SHIPPED.get(0).judge(SET, law).binds());
        assertTrue(PartLoadRule.SHIPPED.get(1).judge(SET, law).binds());
        assertFalse(PartLoadRule.SHIPPED.get(2).judge(SET, law).binds());
    }

    /** The published coefficients at half and full flow: 0.754350, 0.302888, 0.184688; 1.0336, 1.0063, 1.0059. */
    @Test
    void the_curves_of_compliance_modelling_give_their_published_shares() {
        double[] half = {0.754350, 0.302888, 0.184688};
        double[] full = {1.0336, 1.0063, 1.0059};
        for (int i = 0; i < half.length; i++) {
            PartLoadCurve curve = PartLoadCurve.PUBLISHED.get(i);
            assertEquals(half[i], curve.at(Ratio.percent(50)).value(), 1e-6);
            assertEquals(full[i], curve.at(Ratio.percent(100)).value(), 1e-4);
            assertEquals(0, curve.at(Ratio.ZERO).value());
        }
        assertThrows(Refusal.class, () -> PartLoadCurve.RIDING.at(Ratio.percent(101)));
    }

    /**
     * Plausibility, not a pass mark: the order is the same, and a law that is reset saves as much as they say it does.
     */
    @Test
    void laws_stand_in_the_order_that_compliance_modelling_gives_them() {
        double riding = share(ControlLaw.fixedSpeed(DESIGN));
        double constant = share(ControlLaw.constantHead(DESIGN));
        double reset = share(ControlLaw.quadratic(DESIGN, Ratio.percent(10)));
        assertTrue(riding > constant && constant > reset, riding + " " + constant + " " + reset);
        assertTrue(riding > 0.6 && riding < 0.95, "riding " + riding);
        assertTrue(reset > 0.12 && reset < 0.35, "reset " + reset);
    }

    private static double share(ControlLaw law) {
        return PartLoadRule.THIRTY_PERCENT_AT_HALF_FLOW.judge(SET, law).share().value();
    }
}
