package headrace.data;

import headrace.data.Form.Field;
import headrace.problem.Place;
import headrace.units.Quantity;
import headrace.units.Unit;

/** Reads a quantity with its unit from a head line, {@code 1450 rpm}. */
final class HeadQuantity {
    private HeadQuantity() {}

    static <Q extends Quantity<Q>> Q of(Entry entry, Field<Q> field, NumberStyle style) {
        String[] parts = entry.text().split("\\s+", 2);
        Place place = entry.place();
        if (parts.length < 2) {
            throw entry.refused(
                    DataProblem.MISSING_UNIT,
                    "Asked to read '" + entry.text() + "' as a " + field.column(),
                    "A number and its unit are parted by a blank",
                    "Write for example " + style.example() + " "
                            + field.kind().unit(field.kind().metric()).symbol());
        }
        Unit unit = HeadingText.unit(entry, field, parts[1]);
        return field.quantity(new Entry(parts[0], place), unit.word(), style);
    }
}
