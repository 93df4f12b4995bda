package headrace.kernel.session.assist;

import headrace.kernel.session.Completion.Candidate;
import headrace.kernel.session.assist.Cursor.Call;
import headrace.kernel.session.source.Token;
import headrace.script.Vocabulary;
import headrace.script.java.JavaWords;
import headrace.units.Money;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** The names that Java cells write otherwise: units and choices are calls, and so is all that an object tells. */
final class JavaNames {
    static final List<String> KEYWORDS = List.of(
            "boolean",
            "break",
            "case",
            "catch",
            "class",
            "continue",
            "default",
            "do",
            "double",
            "else",
            "enum",
            "extends",
            "false",
            "final",
            "finally",
            "for",
            "if",
            "implements",
            "import",
            "instanceof",
            "int",
            "interface",
            "long",
            "new",
            "null",
            "record",
            "return",
            "static",
            "switch",
            "throw",
            "true",
            "try",
            "var",
            "void",
            "while");

    private static final String UNIT = "unit";

    private JavaNames() {}

    /** Returns the words; one that needs nothing has its parentheses. */
    static Stream<Candidate> words() {
        return Vocabulary.all().words().stream()
                .map(word -> new Candidate(
                        word.name() + (takesNothing(word) ? "()" : ""),
                        "word",
                        word.signatures().get(0)));
    }

    private static boolean takesNothing(Vocabulary.Entry word) {
        return word.methods().stream().allMatch(method -> method.getParameterCount() == 0);
    }

    /** Returns the units and currencies. */
    static Stream<Candidate> units() {
        Stream<Candidate> units = Vocabulary.all().unitWords().stream().map(JavaNames::unit);
        Stream<Candidate> money = Stream.concat(
                Money.CURRENCIES.stream().sorted().map(each -> new Candidate(each + "(", UNIT, "money")),
                Stream.of(new Candidate("perKWh(", UNIT, "price of energy, for each kWh")));
        return Stream.concat(units, money);
    }

    private static Candidate unit(Vocabulary.UnitWord word) {
        return new Candidate(
                word.unit().word() + "(",
                UNIT,
                word.kind().name() + ", " + word.unit().symbol());
    }

    /** Returns what an argument of a word may begin with: its choices, and the units that fit in this place. */
    static Stream<Candidate> arguments(Cursor cursor) {
        Optional<Call> call = cursor.call().filter(Call::atArgument);
        Set<String> unnamed = JavaWords.unnamedChoices();
        Stream<Candidate> choices = call.stream()
                .flatMap(each -> Vocabulary.all().word(each.name()).stream())
                .flatMap(word -> word.choices().stream())
                .filter(choice -> !made(call.get(), nameOf(choice)))
                .map(choice -> new Candidate(
                        unnamed.contains(nameOf(choice)) ? "choice(\"" + nameOf(choice) + "\", " : nameOf(choice) + "(",
                        "choice",
                        choice.substring(choice.indexOf(':') + 1).strip()));
        Set<String> kinds = call.map(UnitNames::likelyKinds).orElse(Set.of());
        Stream<Candidate> units = Vocabulary.all().unitWords().stream()
                .filter(word -> kinds.contains(word.kind().name()))
                .map(JavaNames::unit);
        return Stream.concat(units, choices);
    }

    private static String nameOf(String choice) {
        return choice.split(":", 2)[0].strip();
    }

    private static boolean made(Call call, String choice) {
        return call.arguments().stream()
                .anyMatch(argument -> argument.size() > 1
                        && argument.get(0).is(choice)
                        && argument.get(1).is("("));
    }

    /** Returns the members of what stands before the dot, as far as its type can be told. */
    static Stream<Candidate> members(Scope scope, Cursor cursor) {
        List<Token> owner = cursor.before().subList(0, cursor.before().size() - 1);
        return new Typing(scope)
                .of(owner).stream()
                        .filter(known -> !Number.class.equals(known.type()))
                        .flatMap(known -> Members.inJava(known.type(), known.named()).stream());
    }
}
