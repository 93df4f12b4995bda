package headrace.script;

import headrace.circuit.Circuit;
import headrace.curve.PumpTest;
import headrace.data.CircuitFile;
import headrace.data.LoadFile;
import headrace.data.NumberStyle;
import headrace.data.PumpFile;
import headrace.data.Table;
import headrace.data.TableFile;
import headrace.energy.LoadProfile;
import headrace.liquid.Liquid;
import headrace.problem.Place;
import headrace.problem.Refusal;
import java.nio.file.Path;
import java.util.Map;
import java.util.function.Function;

/** Words that read and save files. */
public final class FileWords implements Words {
    private static final String COMMA =
            "decimalComma: true for a file with decimal commas and semicolons between its cells; false unless chosen";

    private static final String SAVE =
            "Saves what a result shows, by the ending of the file: .csv a table, .svg or .png a chart, .txt all of"
                    + " it as text. Says where. It never takes the place of a file that the script has read, nor of one"
                    + " that is not of the kind that save writes, unless over: true.";

    @Override
    public String subject() {
        return "Files";
    }

    /** Reads a pump file. */
    @Word(
            help =
                    "Reads a pump file: who was tested how, and points of flow, head and shaft power with their units. It"
                            + " is looked for in the script's folder, the folders above it and the current folder.",
            example = "test = readPumpTest('demo-data/pumps/heron-65.csv')")
    public static PumpTest readPumpTest(Object file) {
        return readPumpTest(Map.of(), file);
    }

    /** Reads a pump file. */
    @Word(
            help = "With decimalComma: true, one with decimal commas.",
            example = "test = readPumpTest('demo-data/pumps/heron-65.csv')",
            choices = COMMA)
    public static PumpTest readPumpTest(Map<String, ?> given, Object file) {
        NumberStyle style = style("readPumpTest", given);
        return read("readPumpTest", file, path -> PumpFile.read(path, style));
    }

    /** Reads a load profile. */
    @Word(
            help =
                    "Reads a load profile: how many hours of the year the circuit asks for which share of its design flow.",
            example = "year = readLoadProfile('demo-data/loads/otterbank.csv')")
    public static LoadProfile readLoadProfile(Object file) {
        return readLoadProfile(Map.of(), file);
    }

    /** Reads a load profile. */
    @Word(
            help = "With decimalComma: true, one with decimal commas.",
            example = "year = readLoadProfile('demo-data/loads/otterbank.csv')",
            choices = COMMA)
    public static LoadProfile readLoadProfile(Map<String, ?> given, Object file) {
        NumberStyle style = style("readLoadProfile", given);
        return read("readLoadProfile", file, path -> LoadFile.read(path, style));
    }

    /** Reads a circuit. */
    @Word(
            help =
                    "Reads a circuit from a table: a row for each branch with its junctions and its parts. The liquid is that"
                            + " of the script.",
            example = "loop = readCircuit('demo-data/circuits/otterbank-wings.csv', water(12.degC))")
    public static Circuit readCircuit(Object file, Object liquid) {
        return readCircuit(Map.of(), file, liquid);
    }

    /** Reads a circuit. */
    @Word(
            help = "With decimalComma: true, one with decimal commas.",
            example = "loop = readCircuit('demo-data/circuits/otterbank-wings.csv', water(12.degC))",
            choices = COMMA)
    public static Circuit readCircuit(Map<String, ?> given, Object file, Object liquid) {
        NumberStyle style = style("readCircuit", given);
        Liquid filled = Wanted.object(Liquid.class, liquid, "the liquid of readCircuit");
        return read("readCircuit", file, path -> CircuitFile.read(path, filled, style));
    }

    /** Reads a table that save has written. */
    @Word(help = "Reads a table that save has written, to the same values.", example = "readTable('part-loads.csv')")
    public static Table readTable(Object file) {
        return read("readTable", file, TableFile::read);
    }

    /** Saves a table, a chart or what a result shows. */
    @Word(help = SAVE, example = "save(comparison, 'part-loads.csv', table: 'Part loads')")
    public static String save(Object result, Object file) {
        return save(Map.of(), result, file);
    }

    /** Saves a table, a chart or what a result shows. */
    @Word(
            help = SAVE,
            example = "save(comparison, 'part-loads.csv', table: 'Part loads')",
            choices = {
                "table: a part of the title of the table to save, if the result shows several",
                "chart: a part of the title of the chart to save, if the result shows several",
                "width: the width of a chart in pixels, 400 to 1600; 800 unless chosen",
                "over: true to take the place of any file of that name; false unless chosen"
            })
    public static String save(Map<String, ?> given, Object result, Object file) {
        Choices choices = Choices.of("save", given, "table", "chart", "width", "over");
        return new Saving(choices, result).to(name("save", file));
    }

    static NumberStyle style(String word, Map<String, ?> given) {
        return Choices.of(word, given, "decimalComma").yes("decimalComma", false)
                ? NumberStyle.DECIMAL_COMMA
                : NumberStyle.DECIMAL_POINT;
    }

    /** Reads a file, and lets what is wrong with it name the file as the script does. */
    static <T> T read(String word, Object file, Function<Path, T> reader) {
        String name = name(word, file);
        Path path = ScriptFolder.current().found(name);
        try {
            return reader.apply(path);
        } catch (Refusal refusal) {
            throw refusal.place()
                    .map(place -> refusal.at(new Place(name, place.line(), place.column())))
                    .orElse(refusal);
        }
    }

    private static String name(String word, Object file) {
        return file instanceof Path path
                ? path.toString()
                : Wanted.object(CharSequence.class, file, "the file of " + word).toString();
    }
}
