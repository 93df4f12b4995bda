package headrace.data.inquiry;

import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Kind;
import headrace.units.MassFlow;
import headrace.units.Power;
import headrace.units.Pressure;
import headrace.units.Quantity;
import headrace.units.Temperature;
import headrace.units.TemperatureDifference;
import headrace.units.Unit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** The units that an inquiry may use, however they are capitalised. */
final class InquiryUnits {
    private static final List<Kind<?>> KINDS = List.of(
            Flow.KIND,
            MassFlow.KIND,
            Head.KIND,
            Pressure.KIND,
            Power.KIND,
            TemperatureDifference.KIND,
            Temperature.KIND);

    /** The longest first, so that {@code ft head} is not read as {@code ft}. */
    private static final List<Spelling> SPELLINGS = spellings();

    private record Spelling(String exact, String folded, Kind<?> kind, Unit unit) {}

    private InquiryUnits() {}

    /** Returns the quantity that a number makes with the unit that stands next, and steps over that. */
    static Optional<Quantity<?>> next(Scan scan, double number) {
        return SPELLINGS.stream()
                .filter(spelling -> scan.has(spelling.folded))
                .min(Comparator.comparing((Spelling spelling) -> -spelling.folded.length())
                        .thenComparing(spelling -> !scan.hasExactly(spelling.exact)))
                .map(spelling -> {
                    scan.stepOver(spelling.folded);
                    return spelling.kind.of(number, spelling.unit.word());
                });
    }

    private static List<Spelling> spellings() {
        List<Spelling> all = new ArrayList<>();
        for (Kind<?> kind : KINDS) {
            for (Unit unit : kind.units()) {
                Stream.concat(Stream.of(unit.word(), unit.symbol()), unit.spellings().stream())
                        .filter(text -> !text.isEmpty())
                        .forEach(text -> all.add(new Spelling(text, Scan.folded(text), kind, unit)));
            }
        }
        return List.copyOf(all);
    }
}
