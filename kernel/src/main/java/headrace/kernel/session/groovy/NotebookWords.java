package headrace.kernel.session.groovy;

import headrace.kernel.display.Display;
import headrace.kernel.display.MimeBundle;
import headrace.problem.Refusal;
import headrace.script.Choices;
import headrace.script.Word;
import headrace.script.Words;
import java.util.Map;
import java.util.Optional;

/** Words about the cell itself: what it shows on the way, and what it asks. */
public final class NotebookWords implements Words {
    @Override
    public String subject() {
        return "Cells";
    }

    /** Shows a value here and now, as a cell shows its last one. */
    @Word(help = "Shows a value here and now, as a cell shows its last one.", example = "show(curve)")
    public static void show(Object value) {
        show(Map.of(), value);
    }

    /** Shows a value in a place of a name, in which it can be shown anew. */
    @Word(
            help = "With a place: shows it there, and anew in the same place when shown there again.",
            example = "show(curve, place: 'curve')",
            choices = "place: the name of a place to show it in; none shows it beneath what is there")
    public static void show(Map<String, ?> given, Object value) {
        String place = Choices.of("show", given, "place").text("place", "");
        Optional<Surroundings> cell = Console.surroundings();
        MimeBundle bundle =
                cell.map(known -> CellValue.shown(value, known.variables())).orElseGet(() -> Display.of(value));
        if (cell.isEmpty()) {
            System.out.println(bundle.text());
        } else if (place.isEmpty()) {
            cell.get().output().show(bundle, Optional.empty());
        } else if (cell.get().places().add(place)) {
            cell.get().output().show(bundle, Optional.of(place));
        } else {
            cell.get().output().update(bundle, place);
        }
    }

    /** Takes away what the cell has shown so far. */
    @Word(help = "Takes away what the cell has shown so far, as soon as it shows something new.", example = "clear()")
    public static void clear() {
        Console.surroundings().ifPresent(cell -> cell.output().clear(true));
    }

    /**
     * Asks the user for a line.
     *
     * @throws Refusal with {@code NOBODY_TO_ASK} where nobody can be asked
     */
    @Word(help = "Asks the user for a line of text.", example = "input('Flow in m³/h: ')")
    public static String input(String prompt) {
        return CellStreams.ask(Console.surroundings(), prompt, false);
    }

    /**
     * Asks the user for a line that is hidden while typed.
     *
     * @throws Refusal with {@code NOBODY_TO_ASK} where nobody can be asked
     */
    @Word(help = "Asks the user for a line of text that is hidden while typed.", example = "hiddenInput('Password: ')")
    public static String hiddenInput(String prompt) {
        return CellStreams.ask(Console.surroundings(), prompt, true);
    }

    /** Returns all that is known of the last failure. */
    @Word(
            help = "All that is known of the last failure, with every call that led to it; for a report of a fault.",
            example = "lastTrace()")
    public static String lastTrace() {
        return Console.surroundings().map(cell -> cell.faults().lastTrace()).orElse("");
    }
}
