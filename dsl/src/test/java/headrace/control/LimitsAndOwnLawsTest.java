package headrace.control;

import static headrace.pump.KnownPump.DESIGN;
import static headrace.pump.KnownPump.SPEED;
import static headrace.pump.KnownPump.m3ph;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.drive.SeparateLosses;
import headrace.problem.Refusal;
import headrace.pump.KnownPump;
import headrace.pump.PumpSet;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Length;
import headrace.units.Power;
import headrace.units.Pressure;
import headrace.units.Ratio;
import headrace.units.Speed;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class LimitsAndOwnLawsTest {
    private static final PumpSet SET = KnownPump.set(SeparateLosses.ASSUMED).withMinimumSpeed(SPEED.times(0.1));

    /** It answers with a head at every hour but 13 o'clock, where the trial of a day finds it out. */
    @Test
    void a_law_that_observes_the_clock_is_tried_at_every_hour_and_needs_a_time() {
        Refusal refusal = assertThrows(
                Refusal.class, () -> clocked(now -> now.clock().getHour() == 13 ? Power.watts(1) : Head.metres(5)));
        assertEquals(ControlProblem.WRONG_ANSWER_OF_LAW, refusal.problem());
        assertTrue(refusal.getMessage().contains("13:00"), refusal.getMessage());
        ControlLaw law = clocked(now -> Head.metres(now.clock().getHour() < 6 ? 5 : 9));
        PumpSet set = KnownPump.set(SeparateLosses.ASSUMED);
        LocalDateTime early = LocalDateTime.of(2026, 3, 2, 5, 59);
        assertEquals(
                5, SteadyState.of(law.at(early), set, m3ph(20)).point().head().metres(), 1e-9);
        assertEquals(
                9,
                SteadyState.of(law.at(early.plusMinutes(1)), set, m3ph(20))
                        .point()
                        .head()
                        .metres(),
                1e-9);
        refusal = assertThrows(Refusal.class, () -> SteadyState.of(law, set, m3ph(20)));
        assertEquals(ControlProblem.NOTHING_SEEN_OF_CIRCUIT, refusal.problem());
        assertTrue(law.observes().contains(Observed.CLOCK));
    }

    private static ControlLaw clocked(Function<LoopState, ?> rule) {
        return ControlLaw.of("clocked", Optional.of(DESIGN), List.of("clock"), rule);
    }

    @Test
    void a_law_prints_as_its_name() {
        for (ControlLaw law : List.of(
                ControlLaw.constantSpeed(),
                ControlLaw.fixedSpeed(DESIGN),
                ControlLaw.quadratic(DESIGN, Ratio.percent(25)),
                ControlLaw.constantHead(DESIGN))) {
            assertEquals(law.name(), law.toString());
        }
    }

    /** By hand at half flow of 80 m³/h and 20 m, 25 % minimum head: 5 + 15·0.5^1.6 m. */
    @Test
    void a_general_exponent_lies_between_the_line_and_the_square() {
        ControlLaw law = ControlLaw.generalExponent(DESIGN, Ratio.percent(25), 1.6);
        double design = DESIGN.head().metres();
        double half = law.headAt(DESIGN.flow().times(0.5)).metres();
        assertEquals(design * (0.25 + 0.75 * Math.pow(0.5, 1.6)), half, 1e-12);
        assertEquals(
                ControlLaw.linear(DESIGN, Ratio.percent(25)).headAt(m3ph(20)),
                ControlLaw.generalExponent(DESIGN, Ratio.percent(25), 1).headAt(m3ph(20)));
        assertEquals(
                ControlProblem.IMPOSSIBLE_LAW,
                assertThrows(Refusal.class, () -> ControlLaw.generalExponent(DESIGN, Ratio.percent(25), 2.3))
                        .problem());
    }

    @Test
    void a_law_of_speed_has_no_head_of_flow() {
        Refusal refusal =
                assertThrows(Refusal.class, () -> ControlLaw.constantSpeed().headAt(m3ph(20)));
        assertEquals(ControlProblem.NO_HEAD_OF_FLOW, refusal.problem());
    }

    @Test
    void an_own_law_answers_with_a_head_a_length_or_a_speed() {
        ControlLaw head = own(now -> Head.metres(11));
        ControlLaw length = own(now -> Length.metres(11));
        SteadyState state = SteadyState.of(head, SET, m3ph(40));
        assertEquals(Math.sqrt(15 / 40.0), state.point().speedRatio().value(), 1e-12);
        assertEquals(state.point(), SteadyState.of(length, SET, m3ph(40)).point());
        ControlLaw speed = own(now -> SPEED.times(0.75));
        assertEquals(
                40 * 0.5625 - 4,
                SteadyState.of(speed, SET, m3ph(40)).point().head().metres(),
                1e-11);
        assertEquals(Optional.empty(), speed.requiredHead(m3ph(40)));
    }

    @Test
    void an_own_law_is_refused_when_made_where_it_answers_with_nothing_or_another_unit() {
        for (Object wrong : new Object[] {7.0, Pressure.kilopascals(30), Power.watts(3), Head.metres(-1)}) {
            refused(now -> now.flow().compareTo(DESIGN.flow()) > 0 ? wrong : Head.metres(5));
        }
        refused(now -> now.flow().compareTo(DESIGN.flow()) > 0 ? null : Head.metres(5));
        refused(now -> Speed.ZERO);
    }

    @Test
    void an_own_law_whose_head_falls_as_flow_rises_is_noted_with_where() {
        ControlLaw falling = own(now -> Head.metres(now.flow().compareTo(m3ph(20)) < 0 ? 9 : 7));
        assertTrue(falling.notes().has(ControlProblem.LAW_NOT_MONOTONE));
        String text = falling.notes().list().get(0).text();
        assertTrue(text.contains("7 m at 20 m³/h, after 9 m"), text);
        assertTrue(SteadyState.of(falling, SET, m3ph(40)).notes().has(ControlProblem.LAW_NOT_MONOTONE));
        assertTrue(own(now -> Head.metres(9)).notes().isEmpty());
    }

    /** At 40 m³/h constant 20 m needs s² = 24/40; no faster than 0.7 of the speed: 0.49·40 − 4 = 15.6 m. */
    @Test
    void a_limit_of_speed_is_applied_after_the_law() {
        LawLimits slow = new LawLimits(
                Optional.empty(), Optional.of(SPEED.times(0.7)), Optional.empty(), Optional.empty(), Optional.empty());
        SteadyState state = SteadyState.of(constantHead().within(slow), SET, m3ph(40));
        assertEquals(SteadyState.Limit.MAXIMUM_SPEED, state.limit());
        assertEquals(15.6, state.point().head().metres(), 1e-11);
    }

    @Test
    void a_limit_of_power_slows_the_pump_to_that_power_and_no_further() {
        double free = SteadyState.of(constantHead(), SET, m3ph(40))
                .point()
                .wirePower()
                .watts();
        SteadyState state = SteadyState.of(constantHead().within(power(0.9 * free)), SET, m3ph(40));
        assertEquals(SteadyState.Limit.MAXIMUM_POWER, state.limit());
        assertEquals(0.9 * free, state.point().wirePower().watts(), 1e-9 * free);
        assertTrue(state.point().head().metres() < 20);
        assertTrue(state.notes().has(ControlProblem.MAXIMUM_POWER_REACHED));
        assertEquals(
                SteadyState.Limit.NONE,
                SteadyState.of(constantHead().within(power(1.1 * free)), SET, m3ph(40))
                        .limit());
    }

    @Test
    void a_power_that_no_speed_meets_is_refused() {
        Refusal refusal =
                assertThrows(Refusal.class, () -> SteadyState.of(constantHead().within(power(1)), SET, m3ph(40)));
        assertEquals(ControlProblem.IMPOSSIBLE_LAW, refusal.problem());
    }

    @Test
    void limits_of_flow_decide_what_the_pump_moves_and_say_what_a_bypass_takes_or_the_circuit_misses() {
        LawLimits flows = new LawLimits(
                Optional.empty(), Optional.empty(), Optional.empty(), Optional.of(m3ph(20)), Optional.of(m3ph(60)));
        ControlLaw law = constantHead().within(flows);
        SteadyState low = SteadyState.of(law, SET, m3ph(5));
        assertEquals(20, low.point().flow().toCubicMetresPerHour(), 1e-12);
        assertTrue(low.notes().list().get(0).text().endsWith("so a bypass takes 15 m³/h"));
        SteadyState high = SteadyState.of(law, SET, m3ph(64));
        assertEquals(60, high.point().flow().toCubicMetresPerHour(), 1e-12);
        assertTrue(high.notes().list().get(0).text().endsWith("4 m³/h short"));
        SteadyState between = SteadyState.of(law, SET, m3ph(40));
        assertFalse(between.notes().has(ControlProblem.MINIMUM_FLOW_KEPT));
        assertFalse(between.notes().has(ControlProblem.MAXIMUM_FLOW_REACHED));
    }

    @Test
    void limits_that_leave_nothing_are_refused() {
        Optional<Flow> no = Optional.empty();
        assertThrows(
                Refusal.class,
                () -> new LawLimits(Optional.of(SPEED), Optional.of(SPEED.times(0.5)), Optional.empty(), no, no));
        assertThrows(Refusal.class, () -> power(-1));
        LawLimits above = new LawLimits(Optional.of(SPEED.times(2)), Optional.empty(), Optional.empty(), no, no);
        assertThrows(Refusal.class, () -> SteadyState.of(constantHead().within(above), SET, m3ph(40)));
    }

    private static ControlLaw constantHead() {
        return ControlLaw.constantHead(DESIGN);
    }

    private static LawLimits power(double watts) {
        return new LawLimits(
                Optional.empty(),
                Optional.empty(),
                Optional.of(Power.watts(watts)),
                Optional.empty(),
                Optional.empty());
    }

    private static ControlLaw own(Function<LoopState, ?> rule) {
        return ControlLaw.of("own", DESIGN, rule);
    }

    private static void refused(Function<LoopState, ?> rule) {
        Refusal refusal = assertThrows(Refusal.class, () -> own(rule));
        assertEquals(ControlProblem.WRONG_ANSWER_OF_LAW, refusal.problem());
    }
}
