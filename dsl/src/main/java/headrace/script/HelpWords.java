package headrace.script;

import headrace.problem.Nearest;
import headrace.problem.Refusal;
import headrace.units.Kind;
import headrace.units.Money;
import headrace.units.Quantities;
import headrace.units.Unit;
import java.util.ArrayList;
import java.util.List;

/** Words about the words. */
public final class HelpWords implements Words {
    private static final String UNITS = "units";

    @Override
    public String subject() {
        return "Help";
    }

    /** Lists the words by subject. */
    @Word(help = "Lists the words by subject.", example = "help()")
    public static String help() {
        StringBuilder text = new StringBuilder();
        for (String subject : Vocabulary.all().subjects()) {
            text.append(subject).append('\n');
            for (Vocabulary.Entry word : Vocabulary.all().words(subject)) {
                text.append("    ").append(String.join("  ", word.signatures())).append('\n');
            }
        }
        return text.append("help('a word') explains one; help('units') lists the units.")
                .toString();
    }

    /**
     * Explains a word, a subject or a unit.
     *
     * @throws Refusal with {@code UNKNOWN_WORD} if it is none of these
     */
    @Word(
            help = "Explains a word, lists the words of a subject, or says what a unit is; 'units' lists all units.",
            example = "help('units')")
    public static String help(String name) {
        if (name.equalsIgnoreCase(UNITS)) {
            return units();
        }
        for (Vocabulary.Entry word : Vocabulary.all().word(name).stream().toList()) {
            return word.text();
        }
        List<String> told = new ArrayList<>();
        Vocabulary.all().words(name).forEach(word -> told.add(word.text()));
        for (Vocabulary.UnitWord unit : Vocabulary.all().unitWords()) {
            if (unit.unit().word().equals(name)) {
                told.add(line(unit.unit()) + ", a unit of " + unit.kind().name());
            }
        }
        if (told.isEmpty()) {
            throw unknown(name);
        }
        return String.join("\n\n", told);
    }

    private static String units() {
        StringBuilder text = new StringBuilder();
        for (Kind<?> kind : Quantities.KINDS) {
            text.append(kind.name()).append('\n');
            kind.units().forEach(unit -> text.append("    ").append(line(unit)).append('\n'));
        }
        return text.append("money\n    ")
                .append(String.join(", ", Money.CURRENCIES))
                .append("; 0.18.perKWh or 0.18.EUR.perKWh is a price of energy")
                .toString();
    }

    private static String line(Unit unit) {
        return "12." + unit.word() + " is " + ("12 " + unit.symbol()).strip();
    }

    private static Refusal unknown(String name) {
        List<String> names = new ArrayList<>(NumberUnits.words());
        names.addAll(Vocabulary.all().subjects());
        Vocabulary.all().words().forEach(word -> names.add(word.name()));
        List<String> near = Nearest.to(name, names);
        return new Refusal(
                ScriptProblem.UNKNOWN_WORD,
                "Asked for help about '" + name + "'",
                "There is no word, subject or unit of that name",
                Nearest.sentence(near, "help() lists them"));
    }
}
