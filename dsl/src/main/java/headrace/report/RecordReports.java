package headrace.report;

import headrace.data.Column;
import headrace.data.Table;
import headrace.problem.Notes;
import headrace.record.Basis;
import headrace.units.Numbers;
import headrace.units.Quantity;
import java.lang.reflect.Array;
import java.lang.reflect.Modifier;
import java.lang.reflect.RecordComponent;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * How a record of ours shows itself that has neither a report nor a text of its own: each part by its name.
 *
 * <p>Such are the rows within results, such as the state of one branch. What a script makes by a word has a report.
 */
final class RecordReports {
    private static final int MOST_LISTED = 6;

    private RecordReports() {}

    /** Returns the parts of such a record as facts, or nothing for any other object. */
    static Optional<Shown> of(Object object) {
        if (!isBare(object)) {
            return Optional.empty();
        }
        Composed shown =
                Composed.titled(PlainReports.capital(words(object.getClass().getSimpleName())));
        Notes notes = Notes.NONE;
        Basis basis = Basis.NONE;
        for (RecordComponent part : object.getClass().getRecordComponents()) {
            Object value = value(part, object);
            if (value instanceof Notes more) {
                notes = notes.and(more);
            } else if (value instanceof Basis more) {
                basis = basis.and(more);
            } else {
                shown.fact(words(part.getName()), text(value));
            }
        }
        return Optional.of(shown.shown(notes, basis));
    }

    /** Returns several such records of one kind as a table, or nothing. */
    static Optional<Shown> of(Collection<?> several) {
        Object first = several.iterator().next();
        if (!isBare(first) || !several.stream().allMatch(each -> each != null && each.getClass() == first.getClass())) {
            return Optional.empty();
        }
        List<RecordComponent> parts = Arrays.stream(first.getClass().getRecordComponents())
                .filter(part -> part.getType() != Notes.class && part.getType() != Basis.class)
                .toList();
        String title = PlainReports.capital(words(first.getClass().getSimpleName())) + ", " + several.size()
                + (several.size() == 1 ? " row" : " rows");
        Table table = Table.of(
                        title, parts.stream().map(part -> column(part, several)).toArray(Column[]::new))
                .rows(several.stream()
                        .map(each -> parts.stream()
                                .map(part -> cell(value(part, each)))
                                .toArray())
                        .toList());
        return Optional.of(Composed.titled(title).table(table).shown());
    }

    /** Quantities of one kind stand in their unit, everything else as text. */
    private static Column column(RecordComponent part, Collection<?> several) {
        String name = words(part.getName());
        return several.stream()
                .map(each -> opened(value(part, each)))
                .filter(Quantity.class::isInstance)
                .findFirst()
                .filter(any -> part.getType() == any.getClass() || part.getType() == Optional.class)
                .map(any -> of(name, (Quantity<?>) any))
                .orElseGet(() -> Column.text(name));
    }

    private static <Q extends Quantity<Q>> Column of(String name, Quantity<Q> any) {
        return Column.of(name, any.kind());
    }

    private static Object cell(Object value) {
        boolean quantity = opened(value) instanceof Quantity<?>;
        boolean absent = value instanceof Optional<?> optional && optional.isEmpty();
        return absent ? null : quantity ? opened(value) : text(value);
    }

    private static Object opened(Object value) {
        return value instanceof Optional<?> optional ? optional.orElse(null) : value;
    }

    /** A record that prints as the language makes it: its name and its parts in brackets. */
    private static boolean isBare(Object object) {
        return object instanceof Record
                && object.getClass().getPackageName().startsWith("headrace.")
                && Modifier.isPublic(object.getClass().getModifiers())
                && object.toString().startsWith(object.getClass().getSimpleName() + "[");
    }

    private static Object value(RecordComponent part, Object object) {
        try {
            return part.getAccessor().invoke(object);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException("A part of a public record can be read", e);
        }
    }

    private static String text(Object value) {
        if (value instanceof Optional<?> optional) {
            return optional.map(RecordReports::text).orElse("none");
        }
        if (value instanceof Double || value instanceof Float) {
            return Numbers.print(((Number) value).doubleValue());
        }
        if (value instanceof Enum<?> constant && constant.toString().equals(constant.name())) {
            return constant.name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }
        if (value instanceof Boolean yes) {
            return yes ? "yes" : "no";
        }
        if (value instanceof Map<?, ?> map) {
            return map.entrySet().stream()
                    .map(entry -> text(entry.getKey()) + " " + text(entry.getValue()))
                    .collect(Collectors.joining(", "));
        }
        if (value instanceof Collection<?> several) {
            return several.size() > MOST_LISTED
                    ? several.size() + " values"
                    : several.stream().map(RecordReports::text).collect(Collectors.joining("; "));
        }
        if (value != null && value.getClass().isArray()) {
            return Array.getLength(value) + " values";
        }
        return isBare(value) ? inALine(value) : String.valueOf(value);
    }

    /** What has a name is told by it. */
    private static String inALine(Object record) {
        List<RecordComponent> parts = Arrays.asList(record.getClass().getRecordComponents());
        return parts.stream()
                .filter(part -> part.getName().equals("name"))
                .findFirst()
                .map(part -> text(value(part, record)))
                .orElseGet(() -> parts.stream()
                        .map(part -> words(part.getName()) + " " + text(value(part, record)))
                        .collect(Collectors.joining(", ")));
    }

    /** Returns a name of the code as it is spoken: {@code missingHead} is missing head. */
    private static String words(String name) {
        return name.replaceAll("(?<=\\p{Lower})(?=\\p{Upper})", " ").toLowerCase(Locale.ROOT);
    }
}
