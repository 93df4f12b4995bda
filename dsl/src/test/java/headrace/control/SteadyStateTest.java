package headrace.control;

import static headrace.pump.KnownPump.DESIGN;
import static headrace.pump.KnownPump.SPEED;
import static headrace.pump.KnownPump.m3ph;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.curve.CurveProblem;
import headrace.curve.Duty;
import headrace.drive.Losses;
import headrace.drive.SeparateLosses;
import headrace.problem.Problem;
import headrace.problem.Refusal;
import headrace.pump.KnownPump;
import headrace.pump.PumpProblem;
import headrace.pump.PumpSet;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Ratio;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

@DisplayNameGeneration(ReplaceUnderscores.class)
class SteadyStateTest {
    private static final PumpSet SET = KnownPump.set(SeparateLosses.ASSUMED);

    /** Design head 25 m, minimum head 12.5 m: at half flow 18.75 m linear, 15.625 m quadratic (closed form). */
    @Test
    void asks_for_the_head_of_the_control_curve() {
        Duty design = new Duty(m3ph(80), Head.metres(25));
        Ratio half = Ratio.percent(50);
        assertEquals(18.75, asked(ControlLaw.linear(design, half), 40), 1e-12);
        assertEquals(15.625, asked(ControlLaw.quadratic(design, half), 40), 1e-12);
        assertEquals(25, asked(ControlLaw.constantHead(design), 40), 1e-12);
        assertEquals(12.5, asked(ControlLaw.linear(design, half), 0), 1e-12);
        assertEquals(25, asked(ControlLaw.quadratic(design, half), 80), 1e-12);
    }

    /** By hand at 40 m³/h: s² = (H + 0.0025·40²)/40, shaft power ρ·g·Q·H/0.8. */
    @Test
    void turns_at_the_speed_that_gives_that_head() {
        SteadyState state = SteadyState.of(ControlLaw.quadratic(DESIGN, Ratio.percent(40)), SET, m3ph(40));
        assertEquals(11, state.point().head().metres(), 1e-11);
        assertEquals(Math.sqrt(15 / 40.0), state.point().speedRatio().value(), 1e-12);
        assertEquals(KnownPump.shaftWatts(40, 11), state.point().shaftPower().watts(), 1e-8);
        assertEquals(SteadyState.Limit.NONE, state.limit());
        assertEquals(0, state.excessHead().metres(), 1e-11);
    }

    /** By hand at 40 m³/h: 40 − 4 = 36 m at full speed, 0.9·40 − 4 = 32 m at the design speed. */
    @Test
    void rides_the_curve_of_the_pump_at_a_fixed_speed() {
        SteadyState full = SteadyState.of(ControlLaw.constantSpeed(), SET, m3ph(40));
        assertEquals(36, full.point().head().metres(), 1e-11);
        assertEquals(0, full.point().losses().of(Losses.Place.DRIVE).watts());
        assertTrue(full.asked().isEmpty());
        SteadyState through = SteadyState.of(ControlLaw.constantSpeedThroughDrive(), SET, m3ph(40));
        assertEquals(36, through.point().head().metres(), 1e-11);
        assertTrue(through.point().losses().of(Losses.Place.DRIVE).watts() > 0);
        SteadyState fixed = SteadyState.of(ControlLaw.fixedSpeed(DESIGN), SET, m3ph(40));
        assertEquals(32, fixed.point().head().metres(), 1e-11);
        assertEquals(Math.sqrt(0.9), fixed.point().speedRatio().value(), 1e-12);
    }

    /** By hand at 20 m³/h: the law asks for 20/16 m, the pump at half speed gives 10 − 1 = 9 m. */
    @Test
    void stays_above_the_law_at_its_least_speed() {
        PumpSet set = SET.withMinimumSpeed(SPEED.times(0.5));
        SteadyState state = SteadyState.of(ControlLaw.quadratic(DESIGN, Ratio.ZERO), set, m3ph(20));
        assertEquals(SteadyState.Limit.MINIMUM_SPEED, state.limit());
        assertEquals(9, state.point().head().metres(), 1e-11);
        assertEquals(7.75, state.excessHead().metres(), 1e-11);
        assertEquals(
                "'quadratic, 0 % minimum head' asks for 1.25 m at 20 m³/h; at its least speed of 725 rpm the pump gives"
                        + " 9 m, 7.75 m more",
                note(state, ControlProblem.MINIMUM_SPEED_REACHED));
    }

    /** By hand at 80 m³/h: full speed gives 40 − 16 = 24 m of the 26 m that are asked for. */
    @Test
    void falls_short_of_the_law_at_its_greatest_speed() {
        Duty beyond = new Duty(m3ph(80), Head.metres(26));
        SteadyState state = SteadyState.of(ControlLaw.constantHead(beyond), SET, m3ph(80));
        assertEquals(SteadyState.Limit.MAXIMUM_SPEED, state.limit());
        assertEquals(-2, state.excessHead().metres(), 1e-11);
        assertTrue(note(state, ControlProblem.MAXIMUM_SPEED_REACHED).endsWith("gives 24 m, 2 m short"));
        SteadyState fixed = SteadyState.of(ControlLaw.fixedSpeed(beyond), SET, m3ph(80));
        assertEquals(SteadyState.Limit.MAXIMUM_SPEED, fixed.limit());
        assertEquals(24, fixed.point().head().metres(), 1e-11);
    }

    /** At no flow and no minimum head the law asks for nothing; the least speed still gives its shut-off head. */
    @Test
    void stays_at_its_least_speed_when_nothing_is_asked_for() {
        PumpSet set = SET.with(SET.curve().extendedTo(Flow.ZERO));
        Refusal refusal = assertThrows(
                Refusal.class, () -> SteadyState.of(ControlLaw.quadratic(DESIGN, Ratio.ZERO), set, Flow.ZERO));
        assertEquals(CurveProblem.POWER_FALLS_TO_ZERO, refusal.problem());
        SteadyState state = SteadyState.of(ControlLaw.quadratic(DESIGN, Ratio.ZERO), set, m3ph(0.1));
        assertEquals(SteadyState.Limit.MINIMUM_SPEED, state.limit());
    }

    @Test
    void takes_less_for_less_minimum_head_and_for_less_flow() {
        for (int flow = 20; flow <= 80; flow += 10) {
            double before = 0;
            for (int minimum = 0; minimum <= 100; minimum += 10) {
                double now = wire(ControlLaw.quadratic(DESIGN, Ratio.percent(minimum)), flow);
                assertTrue(now >= before * (1 - 1e-12));
                before = now;
            }
        }
        double before = 0;
        for (int flow = 20; flow <= 80; flow += 5) {
            double now = wire(ControlLaw.linear(DESIGN, Ratio.percent(30)), flow);
            assertTrue(now > before);
            before = now;
        }
    }

    /** Without minimum head the quadratic law is a line of similar points: shaft power goes with the cube of flow. */
    @Test
    void follows_the_affinity_laws_without_minimum_head() {
        ControlLaw law = ControlLaw.quadratic(DESIGN, Ratio.ZERO);
        double design =
                SteadyState.of(law, SET, DESIGN.flow()).point().shaftPower().watts();
        for (int percent = 20; percent <= 100; percent += 10) {
            double f = percent / 100.0;
            SteadyState state = SteadyState.of(law, SET, DESIGN.flow().times(f));
            assertEquals(design * f * f * f, state.point().shaftPower().watts(), 1e-9 * design);
            assertEquals(Math.sqrt(0.9) * f, state.point().speedRatio().value(), 1e-12);
        }
    }

    /** The tested range reaches 120 m³/h at full speed, so 80 m³/h need at least two thirds of it. */
    @Test
    void is_refused_where_the_law_leaves_the_tested_range() {
        Duty flat = new Duty(m3ph(80), Head.metres(1));
        refused(CurveProblem.DUTY_OUT_OF_RANGE, () -> SteadyState.of(ControlLaw.constantHead(flat), SET, m3ph(80)));
        refused(CurveProblem.FLOW_OUT_OF_RANGE, () -> SteadyState.of(ControlLaw.constantSpeed(), SET, m3ph(121)));
    }

    /** The same duty is met at the least speed where that lies above two thirds: 0.49·40 − 16 = 3.6 m at 70 %. */
    @Test
    void is_met_at_the_least_speed_where_that_keeps_the_pump_inside_its_range() {
        Duty flat = new Duty(m3ph(80), Head.metres(1));
        PumpSet brisk = SET.withMinimumSpeed(SPEED.times(0.7));
        SteadyState state = SteadyState.of(ControlLaw.constantHead(flat), brisk, m3ph(80));
        assertEquals(SteadyState.Limit.MINIMUM_SPEED, state.limit());
        assertEquals(3.6, state.point().head().metres(), 1e-11);
    }

    @Test
    void is_refused_for_a_law_that_changes_the_speed_of_a_motor_on_the_mains() {
        refused(
                PumpProblem.DRIVE_MISSING,
                () -> SteadyState.of(ControlLaw.constantHead(DESIGN), SET.onMains(), m3ph(40)));
        refused(
                PumpProblem.DRIVE_MISSING,
                () -> SteadyState.of(ControlLaw.fixedSpeed(DESIGN), SET.onMains(), m3ph(40)));
        assertEquals(
                36,
                SteadyState.of(ControlLaw.constantSpeed(), SET.onMains(), m3ph(40))
                        .point()
                        .head()
                        .metres(),
                1e-11);
    }

    /** A law of one's own needs no more than the interface: 5 m below 20 m³/h, else the quadratic law. */
    @Test
    void follows_a_law_of_the_users_own() {
        ControlLaw day = ControlLaw.quadratic(DESIGN, Ratio.percent(40));
        ControlLaw night = new ControlLaw() {
            @Override
            public String name() {
                return "night";
            }

            @Override
            public String statement() {
                return "5 m below 20 m³/h";
            }

            @Override
            public Set<Observed> observes() {
                return Set.of(Observed.FLOW, Observed.PUMP_HEAD);
            }

            @Override
            public Optional<Duty> design() {
                return Optional.of(DESIGN);
            }

            @Override
            public Demand demand(LoopState state, PumpSet set) {
                return state.flow().compareTo(m3ph(20)) < 0
                        ? new Demand.OfHead(Head.metres(5))
                        : day.demand(state, set);
            }
        };
        assertEquals(5, SteadyState.of(night, SET, m3ph(15)).point().head().metres(), 1e-11);
        assertEquals(11, SteadyState.of(night, SET, m3ph(40)).point().head().metres(), 1e-11);
        assertTrue(night.requiredHead(m3ph(15)).isEmpty());
    }

    @Test
    void is_refused_for_a_law_that_cannot_be() {
        refused(ControlProblem.IMPOSSIBLE_LAW, () -> ControlLaw.linear(DESIGN, Ratio.percent(101)));
        refused(ControlProblem.IMPOSSIBLE_LAW, () -> ControlLaw.quadratic(DESIGN, Ratio.percent(-1)));
        refused(ControlProblem.IMPOSSIBLE_LAW, () -> ControlLaw.constantHead(new Duty(Flow.ZERO, Head.metres(5))));
        refused(
                ControlProblem.IMPOSSIBLE_LOOP_STATE,
                () -> SteadyState.of(ControlLaw.constantHead(DESIGN), SET, m3ph(-1)));
    }

    @Test
    void says_what_each_law_observes() {
        assertEquals(Set.of(), ControlLaw.constantSpeed().observes());
        assertEquals(Set.of(), ControlLaw.fixedSpeed(DESIGN).observes());
        assertEquals(Set.of(Observed.PUMP_HEAD), ControlLaw.constantHead(DESIGN).observes());
        assertEquals(
                Set.of(Observed.PUMP_HEAD, Observed.FLOW),
                ControlLaw.linear(DESIGN, Ratio.percent(50)).observes());
    }

    private static double asked(ControlLaw law, double flow) {
        return law.requiredHead(m3ph(flow)).orElseThrow().metres();
    }

    private static double wire(ControlLaw law, double flow) {
        return SteadyState.of(law, SET, m3ph(flow)).point().wirePower().watts();
    }

    private static String note(SteadyState state, Problem problem) {
        return state.notes().list().stream()
                .filter(each -> each.problem() == problem)
                .findFirst()
                .orElseThrow()
                .text();
    }

    private static void refused(Problem problem, Executable asking) {
        assertEquals(problem, assertThrows(Refusal.class, asking).problem());
    }
}
