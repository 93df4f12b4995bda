package headrace.script;

import static headrace.script.ScriptProblem.UNKNOWN_WORD;
import static headrace.script.ScriptProblem.WRONG_ARGUMENTS;
import static headrace.script.Scripts.refused;
import static headrace.units.UnitProblem.UNKNOWN_UNIT;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.problem.Refusal;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class MisspellingTest {
    @ParameterizedTest(name = "{0} was meant to be {1}")
    @CsvSource({
        "hlep(), help",
        "helo('fit'), help",
        "printedUnit('US'), printedUnits",
        "mony(12; 'EUR'), money",
        "x = quantty('3 m'), quantity",
        "hepl, help"
    })
    void a_misspelt_word_is_answered_with_the_nearest(String script, String near) {
        assertTrue(refused(UNKNOWN_WORD, script.replace(';', ',')).contains("The nearest is " + near));
    }

    @Test
    void a_misspelt_variable_is_answered_with_the_nearest_of_those_that_exist_by_now() {
        String said = refused(UNKNOWN_WORD, "println desing", "design", "curve");
        assertTrue(said.contains("The script says 'desing'"), said);
        assertTrue(said.contains("The nearest is design."), said);
    }

    @Test
    void a_misspelt_method_that_groovy_adds_is_answered_with_the_nearest() {
        assertTrue(refused(UNKNOWN_WORD, "[1, 2].colect { it }").contains("The nearest is collect"));
        assertTrue(refused(WRONG_ARGUMENTS, "[1, 2].collate('x', 'y', 'z')").contains("It takes an int"));
    }

    @Test
    void a_class_of_the_users_keeps_its_name() {
        assertTrue(
                refused(UNKNOWN_WORD, "class Pt { int depth }\nnew Pt().deph()").startsWith("Asked a Pt for 'deph'"));
    }

    @Test
    void a_word_that_is_like_nothing_is_answered_with_where_to_look() {
        assertTrue(refused(UNKNOWN_WORD, "xyzzyx(3)").contains("help() lists the words"));
    }

    @ParameterizedTest(name = "12.{0} was meant to be 12.{1}")
    @CsvSource({"gpn, gpm", "m3hp, m3ph", "kw, kW", "percnt, percent", "EUUR, EUR", "perKwh, perKWh", "deggC, degC"})
    void a_misspelt_unit_is_answered_with_the_nearest(String written, String near) {
        String said = refused(UNKNOWN_UNIT, "12." + written);
        assertTrue(said.contains("The number 12 was followed by '" + written + "'"), said);
        assertTrue(said.substring(said.indexOf("The nearest ")).contains(near), said);
        assertEquals(said.replace("12", "-12.5"), refused(UNKNOWN_UNIT, "-12.5." + written));
    }

    @Test
    void a_unit_that_is_like_nothing_is_answered_with_where_to_look() {
        assertTrue(refused(UNKNOWN_UNIT, "12.furlongs").contains("help('units') lists them all"));
    }

    @Test
    void a_unit_with_parentheses_is_told_that_it_takes_none() {
        assertTrue(refused(UNKNOWN_UNIT, "12.gpm()").contains("Write it as 12.gpm"));
    }

    @Test
    void a_word_with_other_arguments_is_shown_how_it_is_used() {
        String said = refused(WRONG_ARGUMENTS, "money('a lot', 5.m)");
        assertTrue(said.contains("The word money was given a text, a length"), said);
        assertTrue(said.contains("It is used as money(amount, currency)"), said);
        assertTrue(said.contains("An example: money(120, 'NOK')"), said);
        assertTrue(refused(WRONG_ARGUMENTS, "money()").contains("was given nothing"));
        assertTrue(refused(WRONG_ARGUMENTS, "money(null, 3)").contains("nothing (null), a number"));
    }

    @Test
    void a_value_that_is_asked_for_what_it_cannot_tell_names_the_nearest_that_it_can() {
        assertTrue(refused(UNKNOWN_WORD, "16.m.metre").contains("Asked a length for 'metre'"));
        assertTrue(refused(UNKNOWN_WORD, "16.m.metre").contains("The nearest is metres"));
        assertTrue(refused(UNKNOWN_WORD, "16.m.overr(2)").contains("The nearest is over"));
        assertTrue(refused(UNKNOWN_WORD, "16.m.colour").contains("Look it up in the guide"));
    }

    @Test
    void a_value_that_is_given_other_arguments_says_what_it_takes() {
        String said = refused(WRONG_ARGUMENTS, "16.m.pressureOf('water')");
        assertTrue(said.contains("Asked a length for 'pressureOf' with other arguments than it takes"), said);
        assertTrue(said.contains("It takes a liquid"), said);
    }

    @Test
    void the_name_is_found_inside_of_what_wraps_it() {
        Exception wrapped =
                new IllegalStateException(new groovy.lang.MissingPropertyException("hlep", HeadraceScript.class));
        assertEquals(
                Optional.of(UNKNOWN_WORD),
                Misspelling.explain(wrapped, List.of()).map(Refusal::problem));
    }

    @Test
    void what_is_no_misspelling_is_left_alone() {
        Refusal refusal = new Refusal(UNKNOWN_UNIT, "a", "b", "c");
        assertEquals(Optional.empty(), Misspelling.explain(refusal, List.of()));
        assertEquals(Optional.empty(), Misspelling.explain(new IllegalStateException(refusal), List.of()));
        assertEquals(Optional.empty(), Misspelling.explain(new ArithmeticException(), List.of()));
    }
}
