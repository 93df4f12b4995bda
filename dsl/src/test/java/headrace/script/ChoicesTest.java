package headrace.script;

import static headrace.script.ScriptProblem.MISSING_CHOICE;
import static headrace.script.ScriptProblem.NUMBER_WITHOUT_UNIT;
import static headrace.script.ScriptProblem.PRESSURE_FOR_HEAD;
import static headrace.script.ScriptProblem.UNKNOWN_CHOICE;
import static headrace.script.ScriptProblem.WRONG_VALUE;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.problem.Problem;
import headrace.problem.Refusal;
import headrace.units.AbsolutePressure;
import headrace.units.EnergyPrice;
import headrace.units.Flow;
import headrace.units.GaugePressure;
import headrace.units.Head;
import headrace.units.Length;
import headrace.units.Money;
import headrace.units.Power;
import headrace.units.Pressure;
import headrace.units.Ratio;
import headrace.units.Speed;
import headrace.units.Temperature;
import headrace.units.UnitProblem;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

@DisplayNameGeneration(ReplaceUnderscores.class)
class ChoicesTest {
    private static final String[] KNOWN = {
        "minimumHead", "speed", "price", "poles", "exponent", "name", "marked", "flow", "power"
    };

    private static Choices choices(Map<String, ?> given) {
        return Choices.of("law", given, KNOWN);
    }

    private static Choices choice(String name, Object value) {
        return choices(Map.of(name, value));
    }

    @Test
    void reads_each_choice_as_its_type() {
        assertEquals(Ratio.percent(40), choice("minimumHead", Ratio.percent(40)).ratio("minimumHead"));
        assertEquals(Head.metres(5), choice("minimumHead", Head.metres(5)).head("minimumHead"));
        assertEquals(
                Flow.cubicMetresPerHour(5),
                choice("flow", Flow.cubicMetresPerHour(5)).quantity("flow", Flow.KIND));
        assertEquals(
                new EnergyPrice(new Money(0.18, "")),
                choice("price", new EnergyPrice(new Money(0.18, ""))).price("price"));
        assertEquals(4, choice("poles", 4).whole("poles"));
        assertEquals(2.5, choice("exponent", 2.5).number("exponent"));
        assertEquals("night", choice("name", "night").text("name"));
        assertTrue(choice("marked", true).yes("marked", false));
        assertEquals(List.of(1), choice("name", List.of(1)).object("name", List.class));
    }

    @Test
    void reads_a_text_with_a_unit_as_the_quantity() {
        assertEquals(Ratio.percent(40), choice("minimumHead", "40 %").ratio("minimumHead"));
        assertEquals(Head.metres(16), choice("minimumHead", "16 m").head("minimumHead"));
        assertEquals(
                EnergyPrice.parse("0.18 EUR/kWh"),
                choice("price", "0.18 EUR/kWh").price("price"));
    }

    @Test
    void answers_the_default_where_the_choice_was_not_made() {
        Choices none = choices(Map.of());
        assertFalse(none.has("poles"));
        assertEquals(Ratio.percent(30), none.ratio("minimumHead", Ratio.percent(30)));
        assertEquals(Head.metres(3), none.head("minimumHead", Head.metres(3)));
        assertEquals(Flow.ZERO, none.quantity("flow", Flow.KIND, Flow.ZERO));
        assertEquals(new EnergyPrice(new Money(1, "")), none.price("price", new EnergyPrice(new Money(1, ""))));
        assertEquals(2, none.whole("poles", 2));
        assertEquals(1.5, none.number("exponent", 1.5));
        assertEquals("day", none.text("name", "day"));
        assertTrue(none.yes("marked", true));
        assertEquals(7L, none.object("name", Long.class, 7L));
    }

    @Test
    void prefers_what_was_chosen_to_the_default() {
        assertEquals(Ratio.percent(40), choice("minimumHead", "40 %").ratio("minimumHead", Ratio.percent(30)));
        assertEquals(Head.metres(16), choice("minimumHead", "16 m").head("minimumHead", Head.metres(3)));
        assertEquals(4, choice("poles", 4).whole("poles", 2));
        assertEquals(2.5, choice("exponent", 2.5).number("exponent", 1));
        assertEquals("night", choice("name", "night").text("name", "day"));
        assertFalse(choice("marked", false).yes("marked", true));
    }

    @Test
    void takes_a_choice_of_nothing_as_not_made() {
        Map<String, Object> given = new HashMap<>();
        given.put("poles", null);
        assertEquals(2, choices(given).whole("poles", 2));
    }

    @Test
    void refuses_a_choice_that_the_word_does_not_offer_and_names_the_nearest() {
        String said = refused(UNKNOWN_CHOICE, () -> choice("minimumHaed", 1));
        assertTrue(said.contains("The word law was given the choice 'minimumHaed:'"), said);
        assertTrue(said.contains("Its choices are minimumHead, speed, price"), said);
        assertTrue(said.contains("The nearest is minimumHead:"), said);
        assertTrue(refused(UNKNOWN_CHOICE, () -> choice("colour", 1)).contains("leave it out"));
    }

    @Test
    void refuses_to_go_without_a_choice_that_is_needed() {
        String said = refused(MISSING_CHOICE, () -> choices(Map.of()).head("minimumHead"));
        assertTrue(said.contains("The word law was used without the choice minimumHead:"), said);
        assertTrue(said.contains("help('law')"), said);
    }

    @Test
    void refuses_another_type_and_names_both() {
        String said = refused(
                WRONG_VALUE,
                () -> choice("minimumHead", Flow.cubicMetresPerHour(5)).ratio("minimumHead"));
        assertTrue(said.contains("5 m³/h (a flow) was given for the choice minimumHead: of law"), said);
        assertTrue(said.contains("It must be a ratio"), said);
        refused(WRONG_VALUE, () -> choice("name", 3).text("name"));
        refused(WRONG_VALUE, () -> choice("marked", "yes").yes("marked", false));
        refused(WRONG_VALUE, () -> choice("poles", 2.5).whole("poles"));
        refused(WRONG_VALUE, () -> choice("poles", 1e12).whole("poles"));
        refused(WRONG_VALUE, () -> choice("exponent", Double.NaN).number("exponent"));
        refused(WRONG_VALUE, () -> choice("exponent", Ratio.of(2)).number("exponent"));
        refused(WRONG_VALUE, () -> choice("price", Money.of(1, "EUR")).price("price"));
    }

    @Test
    void refuses_a_bare_number_and_says_how_to_give_it_its_unit() {
        String ratio =
                refused(NUMBER_WITHOUT_UNIT, () -> choice("minimumHead", 0.4).ratio("minimumHead"));
        assertTrue(ratio.contains("40.percent or 0.4.ratio"), ratio);
        String head = refused(NUMBER_WITHOUT_UNIT, () -> Wanted.head(16, "the head of a duty"));
        assertTrue(head.contains("The bare number 16 was given for the head of a duty"), head);
        assertTrue(head.contains("16.m"), head);
        assertTrue(
                refused(NUMBER_WITHOUT_UNIT, () -> Wanted.flow(52, "the flow")).contains("52.m3ph"));
        assertTrue(
                refused(NUMBER_WITHOUT_UNIT, () -> Wanted.price(0.18, "price:")).contains("0.18.perKWh"));
    }

    @Test
    void takes_a_length_for_a_head_and_nothing_for_anything_else() {
        assertEquals(Head.metres(16), Wanted.head(Length.metres(16), "the head"));
        assertEquals(Head.feet(10), Wanted.head(Length.feet(10), "the head"));
        refused(WRONG_VALUE, () -> Wanted.quantity(Length.KIND, Head.metres(16), "the pipe"));
        refused(WRONG_VALUE, () -> Wanted.flow(Length.metres(16), "the flow"));
    }

    @Test
    void answers_a_pressure_for_a_head_like_a_colleague() {
        for (Object pressure : List.of(Pressure.kilopascals(30), GaugePressure.bars(2), AbsolutePressure.bars(2))) {
            String said = refused(PRESSURE_FOR_HEAD, () -> Wanted.head(pressure, "the head of a duty"));
            assertTrue(said.contains("A pressure becomes a head only in a liquid"), said);
            assertTrue(said.contains("30.kPa.headOf(liquid)"), said);
        }
        refused(UnitProblem.UNKNOWN_UNIT, () -> Wanted.head("30 kPa", "the head of a duty"));
    }

    @Test
    void takes_quantities_and_texts_for_each_kind() {
        assertEquals(Flow.usGallonsPerMinute(230), Wanted.flow("230 gpm", "the flow"));
        assertEquals(Power.kilowatts(5.5), Wanted.power(Power.kilowatts(5.5), "the motor"));
        assertEquals(Speed.revolutionsPerMinute(1450), Wanted.speed("1450 rpm", "the speed"));
        assertEquals(Ratio.percent(40), Wanted.ratio("40 %", "the share"));
        assertEquals(Temperature.celsius(-5), Wanted.quantity(Temperature.KIND, "-5 °C", "the supply"));
        assertEquals(3.0, Wanted.number(3, "the exponent"));
    }

    @Test
    void names_what_was_given_in_words_of_the_trade() {
        assertTrue(refused(WRONG_VALUE, () -> Wanted.flow(null, "the flow")).startsWith("Nothing (null) was given"));
        assertTrue(
                refused(WRONG_VALUE, () -> Wanted.flow(List.of(), "the flow")).startsWith("A list was given"));
        assertTrue(refused(WRONG_VALUE, () -> Wanted.flow(Map.of(), "the flow")).startsWith("A map was given"));
        assertTrue(refused(WRONG_VALUE, () -> Wanted.object(EnergyPrice.class, "x", "price:"))
                .contains("The text 'x' was given for price:. It must be an energy price"));
    }

    private static String refused(Problem problem, Executable asked) {
        Refusal refusal = assertThrows(Refusal.class, asked);
        assertEquals(problem, refusal.problem(), refusal.getMessage());
        return refusal.getMessage();
    }
}
