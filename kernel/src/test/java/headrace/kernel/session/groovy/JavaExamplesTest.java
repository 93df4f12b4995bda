package headrace.kernel.session.groovy;

import static org.junit.jupiter.api.Assertions.assertEquals;

import headrace.kernel.session.Fault;
import headrace.kernel.session.Language;
import headrace.kernel.session.Outcome;
import headrace.kernel.session.source.JavaForm;
import headrace.script.Vocabulary;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The examples of the words, which are written in Groovy, as Java cells say them. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class JavaExamplesTest {
    private static final Pattern UNKNOWN = Pattern.compile("The cell says '(\\w+)'\\. No word and no variable");

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "duty(52.m3ph, 16.m) | duty(m3ph(52), m(16))",
                "motor(5.5.kW, ie: 3, poles: 4) | motor(kW(5.5), ie(3), poles(4))",
                "f(a: 1, b) | f(b, a(1))",
                "x = fit('a.csv') | var x = fit(\"a.csv\")",
                "judge(set, law, partLoadRule) | judge(set, law, partLoadRule())",
                "compare(set, price: 0.18.EUR.perKWh, laws: [a, b]) | compare(set, price(perKWh(EUR(0.18))), laws(a, b))",
                "laws(laws: [a]) | laws(laws(List.of(a)))",
                "save(x, 'a', table: 'b') | save(x, \"a\", choice(\"table\", \"b\"))",
                "openSuction(-1.5.m) | openSuction(m(-1.5))",
                "f([a: 1, b: [2, 3]]) | f(Map.of(\"a\", 1, \"b\", List.of(2, 3)))",
                "f([3.kW] * 24) | f(Collections.nCopies(24, kW(3)))",
                "[1].each { it } | [1].each { it } (in Groovy)"
            })
    void a_line_of_groovy_is_said_in_java(String groovy, String java) {
        assertEquals(java, JavaForm.of(groovy));
    }

    @Test
    void every_example_of_a_word_compiles_in_java_unless_it_has_a_block() {
        List<String> wrong = new ArrayList<>();
        try (GroovySession session = new GroovySession(Language.JAVA)) {
            for (Vocabulary.Entry word : Vocabulary.all().words()) {
                String java = JavaForm.of(word.example());
                if (!java.endsWith("(in Groovy)")) {
                    mistake(session, java).ifPresent(mistake -> wrong.add(java + ": " + mistake));
                }
            }
        }
        assertEquals(List.of(), wrong);
    }

    /** Defines the variables that an example stands on as it goes; what fails as it runs has compiled. */
    private static Optional<String> mistake(GroovySession session, String java) {
        for (int i = 0; i < 10; i++) {
            // a method around it, which is compiled and not called
            Outcome outcome = session.run("void example() { " + java + "; }", true, new Recorded());
            if (!(outcome instanceof Outcome.Failed failed)) {
                return Optional.empty();
            }
            Fault fault = failed.fault();
            Matcher unknown = UNKNOWN.matcher(fault.message());
            if (!unknown.find()) {
                return Optional.of(fault.lines().toString());
            }
            session.run("Object " + unknown.group(1) + ";", true, new Recorded());
        }
        return Optional.of("it names more than ten variables");
    }
}
