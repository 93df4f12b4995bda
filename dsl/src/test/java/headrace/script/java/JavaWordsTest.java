package headrace.script.java;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.control.ControlLaw;
import headrace.curve.Duty;
import headrace.drive.Motor;
import headrace.problem.Refusal;
import headrace.report.whatif.WhatIf;
import headrace.script.ScriptProblem;
import headrace.script.Vocabulary;
import headrace.script.Word;
import headrace.units.EnergyPrice;
import headrace.units.Money;
import headrace.units.Quantity;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class JavaWordsTest {
    private static final Class<?> WORDS = new Loader().words();

    /** Loads the class as a front door does. */
    private static final class Loader extends ClassLoader {
        Loader() {
            super(JavaWordsTest.class.getClassLoader());
        }

        Class<?> words() {
            byte[] bytecode = JavaWords.bytecode();
            return defineClass(JavaWords.NAME, bytecode, 0, bytecode.length);
        }
    }

    @Test
    void every_word_of_a_script_is_a_static_method_of_the_same_name() {
        for (Vocabulary.Entry word : Vocabulary.all().words()) {
            for (Method method : word.methods()) {
                Class<?>[] types = method.getParameterTypes();
                boolean choices = types.length > 0 && types[0] == Map.class;
                int arguments = types.length + (choices ? word.choices().size() - 1 : 0);
                assertTrue(
                        methods(word.name()).stream()
                                .anyMatch(twin -> twin.getParameterCount() == arguments
                                        && twin.getReturnType() == method.getReturnType()
                                        && twin.getGenericReturnType()
                                                .getTypeName()
                                                .equals(method.getGenericReturnType()
                                                        .getTypeName())
                                        && twin.isVarArgs() == (method.isVarArgs() && !choices)),
                        () -> word.name() + " " + method);
            }
        }
    }

    @Test
    void every_method_is_public_and_static() {
        for (Method method : WORDS.getDeclaredMethods()) {
            assertTrue(Modifier.isPublic(method.getModifiers()) && Modifier.isStatic(method.getModifiers()));
        }
    }

    @Test
    void every_unit_is_a_method_that_makes_so_many_of_it() {
        for (Vocabulary.UnitWord unit : Vocabulary.all().unitWords()) {
            Quantity<?> made = (Quantity<?>) call(unit.unit().word(), 12.5);
            assertEquals(unit.kind().type(), made.getClass(), unit.unit().word());
            assertEquals(unit.kind().of(12.5, unit.unit().word()), made);
        }
        assertEquals(new Money(120, "EUR"), call("EUR", 120.0));
        assertEquals(new EnergyPrice(new Money(0.18, "")), call("perKWh", 0.18));
        assertEquals(new EnergyPrice(new Money(0.18, "EUR")), call("perKWh", new Money(0.18, "EUR")));
    }

    @Test
    void every_choice_is_a_method_unless_a_word_or_unit_has_its_name() {
        Set<String> missing = new TreeSet<>();
        for (Vocabulary.Entry word : Vocabulary.all().words()) {
            for (String choice : word.choiceNames()) {
                if (choice.equals(Word.ANY_NAME)) {
                    continue;
                }
                boolean there = methods(choice).stream().anyMatch(method -> method.getReturnType() == Choice.class);
                if (!there) {
                    missing.add(choice);
                    boolean taken = Vocabulary.all().word(choice).isPresent()
                            || Vocabulary.all().unitWords().stream()
                                    .anyMatch(each -> each.unit().word().equals(choice));
                    assertTrue(taken, choice);
                }
            }
        }
        assertEquals(missing, JavaWords.unnamedChoices());
        assertEquals(new Choice("table", "Part loads"), call("choice", "table", "Part loads"));
    }

    @Test
    void choices_stand_behind_the_arguments() {
        Object design = call("duty", call("m3ph", 52.0), call("m", 16.0));
        assertEquals(Duty.class, design.getClass());
        Object share = call("minimumHead", call("percent", 35.0));
        ControlLaw law = (ControlLaw) call("quadratic", design, share);
        assertEquals("quadratic, 35 % minimum head", law.name());
        Motor motor = (Motor) call("motor", call("kW", 5.5), call("ie", 3), call("poles", 4));
        assertEquals(5.5, motor.rated().toKilowatts(), 1e-12);
        assertEquals(new Choice("laws", List.of(1, 2, 3)), call("laws", 1, 2, new Object[] {3}));
    }

    @Test
    void a_word_takes_many_choices_where_their_names_are_the_script_s() {
        Function<Object, Object> shown = String::valueOf;
        Choice load = new Choice("load", List.of("low", "high"));
        Choice pump = new Choice("pump", List.of("a", "b"));
        WhatIf one = (WhatIf) call("whatIf", shown, load);
        assertEquals("high", one.at(List.of(1)).parts().get(0).text(100));
        WhatIf two =
                (WhatIf) call("whatIf", shown, load, pump, new Choice("best", call("preset", new Choice("pump", "b"))));
        assertEquals("[high, a]", two.at(List.of(1, 0)).parts().get(0).text(100));
        assertEquals(List.of(1, 1), two.presets().get(0).from(List.of(1, 0)));
    }

    @Test
    void a_choice_made_twice_is_refused() {
        Object kilowatts = call("kW", 5.5);
        Refusal refusal = assertThrows(Refusal.class, () -> call("motor", kilowatts, call("ie", 3), call("ie", 2)));
        assertEquals(ScriptProblem.WRONG_ARGUMENTS, refusal.problem());
    }

    @Test
    void the_names_are_those_that_the_class_has() {
        Set<String> there = new TreeSet<>();
        Arrays.stream(WORDS.getDeclaredMethods()).map(Method::getName).forEach(there::add);
        assertEquals(there, new TreeSet<>(JavaWords.names()));
    }

    private static List<Method> methods(String name) {
        return Arrays.stream(WORDS.getDeclaredMethods())
                .filter(method -> method.getName().equals(name))
                .toList();
    }

    /** Calls the method that takes these arguments most exactly. */
    private static Object call(String name, Object... arguments) {
        Method best = methods(name).stream()
                .filter(method -> method.getParameterCount() == arguments.length)
                .filter(method -> takes(method, arguments))
                .max(java.util.Comparator.comparing(method -> Arrays.stream(method.getParameterTypes())
                        .filter(type -> type != Object.class)
                        .count()))
                .orElseThrow(() -> new AssertionError("no " + name + " takes " + Arrays.toString(arguments)));
        try {
            return best.invoke(null, arguments);
        } catch (InvocationTargetException e) {
            if (e.getCause() instanceof RuntimeException cause) {
                throw cause;
            }
            throw new AssertionError(e);
        } catch (IllegalAccessException e) {
            throw new AssertionError(e);
        }
    }

    private static boolean takes(Method method, Object... arguments) {
        for (int i = 0; i < arguments.length; i++) {
            Class<?> type = method.getParameterTypes()[i];
            boolean number = type == double.class && arguments[i] instanceof Double;
            if (!number && !type.isInstance(arguments[i])) {
                return false;
            }
        }
        return true;
    }
}
