package headrace.script;

import static headrace.script.Scripts.refused;
import static headrace.script.Scripts.run;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.units.Quantities;
import headrace.units.UnitSystem;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class VocabularyTest {
    private static final Vocabulary ALL = Vocabulary.all();

    @AfterEach
    void metric() {
        UnitSystem.METRIC.choose();
    }

    @Test
    void each_word_says_what_it_does_and_how_it_is_used() {
        assertTrue(ALL.words().size() >= 4);
        for (Vocabulary.Entry word : ALL.words()) {
            assertTrue(word.help().endsWith("."), word.name());
            assertTrue(word.example().contains(word.name()), word.name());
            assertTrue(word.choices().stream().allMatch(choice -> choice.matches("\\w+: .+")), word.name());
        }
    }

    @Test
    void each_public_static_method_of_a_class_of_words_is_a_word() {
        for (Class<?> words : ALL.classes()) {
            List<String> unmarked = Arrays.stream(words.getDeclaredMethods())
                    .filter(method ->
                            Modifier.isPublic(method.getModifiers()) && Modifier.isStatic(method.getModifiers()))
                    .filter(method -> !method.isAnnotationPresent(Word.class))
                    .map(Method::getName)
                    .toList();
            assertEquals(List.of(), unmarked, words.getName());
        }
    }

    @Test
    void a_word_with_choices_takes_them_first_and_lists_them() {
        for (Vocabulary.Entry word : ALL.words()) {
            boolean takes = word.methods().stream()
                    .anyMatch(method -> method.getParameterCount() > 0 && method.getParameterTypes()[0] == Map.class);
            assertEquals(takes, !word.choices().isEmpty(), word.name());
        }
    }

    @Test
    void no_two_subjects_share_a_word_and_no_word_is_a_unit() {
        List<String> names = ALL.words().stream().map(Vocabulary.Entry::name).toList();
        assertEquals(names.stream().distinct().toList(), names);
        assertTrue(names.stream().noneMatch(NumberUnits.words()::contains));
    }

    @Test
    void gathers_the_ways_to_call_a_word() {
        Vocabulary.Entry help = ALL.word("help").orElseThrow();
        assertEquals("Help", help.subject());
        assertEquals(List.of("help()", "help(name)"), help.signatures());
        assertTrue(ALL.words("Help").contains(help));
        assertTrue(ALL.subjects().containsAll(List.of("Help", "Quantities")));
        assertFalse(ALL.word("hlep").isPresent());
        assertEquals(List.of("help"), ALL.nearest("hlep"));
    }

    @Test
    void writes_a_word_with_choices_as_it_is_called() throws NoSuchMethodException {
        Method law = Sample.class.getMethod("law", Map.class, Object.class, Object[].class);
        Vocabulary.Entry word = Vocabulary.Entry.of("Sample", law);
        assertEquals(List.of("law(design, others…, choices…)"), word.signatures());
        assertEquals(List.of("minimumHead"), word.choiceNames());
        assertEquals(
                "law(design, others…, choices…)\n    Makes a law.\n    minimumHead: the head at no flow\n"
                        + "    Example: law(design, minimumHead: 40.percent)",
                word.text());
    }

    @Test
    void lists_each_unit_with_its_kind() {
        int units =
                Quantities.KINDS.stream().mapToInt(kind -> kind.units().size()).sum();
        assertEquals(units, ALL.unitWords().size());
        assertTrue(ALL.unitWords().stream()
                .anyMatch(word ->
                        word.unit().symbol().equals("gpm") && word.kind().name().equals("flow")));
    }

    @Test
    void help_lists_every_word_under_its_subject() {
        String text = (String) run("help()");
        for (Vocabulary.Entry word : ALL.words()) {
            assertTrue(text.indexOf(word.signatures().get(0)) > text.indexOf(word.subject()), word.name());
        }
        assertEquals(text, run("help"));
    }

    @Test
    void help_explains_a_word_a_subject_and_a_unit() {
        assertEquals(ALL.word("money").orElseThrow().text(), run("help('money')"));
        assertTrue(((String) run("help('Quantities')")).contains("quantity(text)"));
        assertEquals("12.m3ph is 12 m³/h, a unit of flow", run("help('m3ph')"));
        String units = (String) run("help('units')");
        ALL.unitWords()
                .forEach(word -> assertTrue(units.contains("12." + word.unit().word() + " is ")));
        assertTrue(units.contains("EUR"));
        assertTrue(refused(ScriptProblem.UNKNOWN_WORD, "help('mony')").contains("The nearest is money"));
        refused(ScriptProblem.UNKNOWN_WORD, "help('xyzzyx')");
    }

    @Test
    void a_script_chooses_the_units_of_its_results() {
        assertEquals(UnitSystem.US_CUSTOMARY, run("printedUnits('US')"));
        assertEquals("228.9 gpm", run("52.m3ph").toString());
        assertEquals("US units: gpm, ft, hp", run("printedUnits").toString());
        run("printedUnits('Metric')");
        assertEquals("52 m³/h", run("52.m3ph").toString());
        assertEquals(UnitSystem.IMPERIAL, run("printedUnits('imperial')"));
        assertTrue(refused(ScriptProblem.UNKNOWN_WORD, "printedUnits('metrc')").contains("The nearest is metric"));
        refused(ScriptProblem.UNKNOWN_WORD, "printedUnits('furlongs')");
    }

    @Test
    void a_script_reads_quantities_and_money_from_texts() {
        assertEquals(run("230.gpm"), run("quantity('230 gpm')"));
        assertEquals("120.00 NOK", run("money(120, 'NOK')").toString());
        assertTrue(refused(headrace.units.UnitProblem.UNKNOWN_CURRENCY, "money(120, 'NKO')")
                .contains("NOK"));
    }

    @Test
    void a_script_may_define_methods_variables_and_classes_beside_the_words() {
        assertEquals("mine", run("def money(x) { 'mine' }; money(3)"));
        assertEquals(5, run("quantity = 5; quantity"));
        assertEquals(
                "12.00 EUR",
                run("class A { def b() { money(12, 'EUR') } }; new A().b()").toString());
        assertEquals(4, run("twice = { it * 2 }; twice(2)"));
    }

    /** A word as its author writes it. */
    static final class Sample {
        private Sample() {}

        @Word(
                help = "Makes a law.",
                example = "law(design, minimumHead: 40.percent)",
                choices = "minimumHead: the head at no flow")
        public static String law(Map<String, ?> choices, Object design, Object... others) {
            return "";
        }
    }

    /** A helper of the words is none of the script's business, whatever it is called. */
    @Test
    void a_block_of_the_script_is_never_hidden_by_a_helper_of_the_words() {
        int tried = 0;
        for (Class<?> words : Vocabulary.all().classes()) {
            for (Method method : words.getDeclaredMethods()) {
                String name = method.getName();
                boolean helper = Modifier.isPrivate(method.getModifiers()) && !method.isSynthetic();
                if (helper
                        && method.getParameterCount() == 1
                        && Vocabulary.all().word(name).isEmpty()) {
                    tried++;
                    assertEquals(7, run(name + " = { x -> 7 }\n" + name + "('3 m')"), name);
                }
            }
        }
        assertTrue(tried > 10, tried + " helpers");
    }
}
