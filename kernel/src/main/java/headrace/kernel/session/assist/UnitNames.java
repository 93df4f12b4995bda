package headrace.kernel.session.assist;

import headrace.kernel.session.Completion.Candidate;
import headrace.kernel.session.assist.Cursor.Call;
import headrace.kernel.session.source.Token;
import headrace.kernel.session.source.Token.Kind;
import headrace.kernel.session.source.Tokens;
import headrace.script.Vocabulary;
import headrace.script.Vocabulary.UnitWord;
import headrace.units.Money;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** The units that may follow a number. */
final class UnitNames {
    private static final String UNIT = "unit";
    private static final Candidate PRICE = new Candidate("perKWh", UNIT, "price of energy, for each kWh");

    private UnitNames() {}

    /** Returns all units; inside of a word's call first those of the kind that its example has in that place. */
    static Stream<Candidate> at(Optional<Call> call) {
        Set<String> likely = call.map(UnitNames::likely).orElse(Set.of());
        Set<String> kinds = kindsOf(likely);
        Stream<Candidate> units = Vocabulary.all().unitWords().stream()
                .sorted(Comparator.comparing(word -> kinds.contains(word.kind().name()) ? 0 : 1))
                .map(UnitNames::candidate);
        Stream<Candidate> money = Stream.concat(
                Money.CURRENCIES.stream().sorted().map(each -> new Candidate(each, UNIT, "money")), Stream.of(PRICE));
        boolean price = likely.contains(PRICE.text());
        return price ? Stream.concat(money, units) : Stream.concat(units, money);
    }

    /** Returns the kinds of quantity that a word wants in the place that is being written, as its example tells. */
    static Set<String> likelyKinds(Call call) {
        return kindsOf(likely(call));
    }

    private static Set<String> kindsOf(Set<String> units) {
        return Vocabulary.all().unitWords().stream()
                .filter(word -> units.contains(word.unit().word()))
                .map(word -> word.kind().name())
                .collect(Collectors.toSet());
    }

    private static Candidate candidate(UnitWord word) {
        return new Candidate(
                word.unit().word(),
                UNIT,
                word.kind().name() + ", " + word.unit().symbol());
    }

    /** Returns the words behind a number that the example of a word has in the place that is being written. */
    private static Set<String> likely(Call call) {
        return Vocabulary.all().word(call.name()).stream()
                .map(word -> Tokens.of(word.example()))
                .flatMap(example -> Cursor.calls(example, call.name()).stream())
                .flatMap(example -> argument(example, call).stream())
                .flatMap(UnitNames::unitsIn)
                .collect(Collectors.toSet());
    }

    private static Optional<List<Token>> argument(Call example, Call written) {
        if (written.choice().isPresent()) {
            return example.valueOf(written.choice().get());
        }
        return example.unnamed().stream().skip(written.position()).findFirst();
    }

    private static Stream<String> unitsIn(List<Token> argument) {
        return IntStream.range(2, argument.size())
                .filter(i -> argument.get(i - 2).kind() == Kind.NUMBER
                        && argument.get(i - 1).is("."))
                .mapToObj(i -> argument.get(i).text());
    }
}
