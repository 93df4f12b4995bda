package headrace.data;

import headrace.data.Form.Field;
import headrace.data.Sheet.Heading;
import headrace.units.Kind;
import headrace.units.Quantities;
import headrace.units.Unit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Reads the head of a column, {@code shaft power [kW]}. */
final class HeadingText {
    private static final Pattern HEADING = Pattern.compile("([^\\[\\]]*)\\[([^\\[\\]]*)]");

    private HeadingText() {}

    static Heading read(Entry cell, Form form) {
        Matcher matcher = HEADING.matcher(cell.text());
        boolean matches = matcher.matches();
        String name = Form.normal(matches ? matcher.group(1) : cell.text().replaceFirst("\\s*[\\[(].*", ""));
        Field<?> field = form.field(name)
                .orElseThrow(() -> cell.refused(
                        DataProblem.WRONG_COLUMN,
                        "Asked to read a column " + (cell.empty() ? "without a name" : "'" + cell.text() + "'"),
                        "The columns of a " + form.name() + " are " + form.columnNames(),
                        "Use one of these names, or delete the column"));
        if (field.holdsText()) {
            return text(cell, field);
        }
        String unit = matches ? matcher.group(2).strip() : "";
        if (unit.isEmpty()) {
            throw cell.refused(
                    DataProblem.MISSING_UNIT,
                    "Asked to read the column '" + cell.text() + "', which does not say its unit",
                    "A unit stands in square brackets: " + field.column() + " in " + Form.spellings(field.kind()),
                    "Write for example " + form.example());
        }
        return new Heading(field, unit(cell, field, unit).word(), cell);
    }

    private static Heading text(Entry cell, Field<?> field) {
        if (Form.normal(cell.text()).equals(field.column())) {
            return new Heading(field, "", cell);
        }
        throw cell.refused(
                DataProblem.WRONG_UNIT,
                "Asked to read the column '" + cell.text() + "', which holds texts, in a unit",
                "A text has no unit",
                "Write the head as " + field.column());
    }

    static Unit unit(Entry cell, Field<?> field, String text) {
        return field.kind().find(text).orElseThrow(() -> {
            String others = Quantities.KINDS.stream()
                    .filter(kind -> kind.find(text).isPresent())
                    .map(Kind::name)
                    .collect(Collectors.joining(" or "));
            return cell.refused(
                    DataProblem.WRONG_UNIT,
                    "Asked to read the " + field.column() + " in '" + text + "'"
                            + (others.isEmpty() ? ", which is no unit known here" : ", which is a unit of " + others),
                    "Wanted is a " + field.kind() + ", in " + Form.spellings(field.kind()),
                    others.contains("pressure")
                            ? "Convert it with the density of the liquid first: a pressure becomes a head only in a liquid"
                            : "Use one of these units, and convert the numbers if they are in another");
        });
    }
}
