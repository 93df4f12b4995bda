package headrace.kernel.headless;

import headrace.kernel.notebook.Cell;
import headrace.kernel.notebook.Fields;
import headrace.kernel.notebook.Notebook;
import headrace.kernel.session.Language;
import headrace.kernel.session.source.Token;
import headrace.kernel.session.source.Tokens;
import headrace.problem.Nearest;
import headrace.problem.Place;
import headrace.problem.Refusal;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Values for a run, in the place of those in the cell that is tagged {@code parameters}: they stand in a cell of their
 * own behind it.
 *
 * @param values the value of each name, as it was typed
 */
public record RunParameters(Map<String, String> values) {
    /** The tag of the cell that names the parameters and gives their usual values. */
    static final String TAG = "parameters";

    /** The tag of the cell that is put behind it, as notebook programs know it. */
    static final String INJECTED = "injected-parameters";

    private static final Pattern NAME = Pattern.compile("[A-Za-z_][A-Za-z0-9_]*");
    private static final Pattern PLAIN = Pattern.compile("[-+]?\\d+(?:\\.\\d+)?(?:[eE][-+]?\\d+)?|true|false");
    private static final Pattern REMARK = Pattern.compile("(^|\\s)#.*$");
    private static final Pattern LIST = Pattern.compile("\\[(.*)]");
    private static final Pattern MEASURED = Pattern.compile("[-+]?\\d.*");

    /** Keeps the values from changing. */
    public RunParameters {
        values = Collections.unmodifiableMap(new LinkedHashMap<>(values));
    }

    /**
     * Reads parameters from lines {@code name = value} of a file, then from the command line, where the later counts.
     *
     * @param file the file, or null
     * @param given the parameters of the command line, each {@code name=value}
     */
    public static RunParameters of(Path file, List<String> given) {
        Map<String, String> values = new LinkedHashMap<>();
        if (file != null) {
            int number = 0;
            for (String line : lines(file)) {
                number++;
                String said = REMARK.matcher(line).replaceFirst("");
                if (!said.isBlank()) {
                    take(said, values, new Place(file.toString(), number, 0));
                }
            }
        }
        given.forEach(each -> take(each, values, Place.of("--set " + each)));
        return new RunParameters(values);
    }

    private static List<String> lines(Path file) {
        try {
            return Files.readAllLines(file);
        } catch (IOException e) {
            throw new Refusal(
                            RunProblem.WRONG_PARAMETER,
                            "The file with the parameters cannot be read",
                            "It was looked for at " + file.toAbsolutePath().normalize(),
                            "Check the name, and that it is a text in UTF-8")
                    .at(Place.of(file.toString()));
        }
    }

    private static void take(String text, Map<String, String> values, Place place) {
        int equals = text.indexOf('=');
        String name = equals < 0 ? text.strip() : text.substring(0, equals).strip();
        String value = equals < 0 ? "" : text.substring(equals + 1).strip();
        if (!NAME.matcher(name).matches() || value.isEmpty()) {
            throw new Refusal(
                            RunProblem.WRONG_PARAMETER,
                            "'" + text.strip() + "' was given as a parameter",
                            "A parameter is a name, an equals sign and a value, which may have a unit",
                            "Write it as minimumHead=35 %")
                    .at(place);
        }
        values.put(name, value);
    }

    /** Returns a run whose parameters have these values. */
    public RunInput in(RunInput input) {
        if (values.isEmpty()) {
            return input;
        }
        List<Cell> cells = new ArrayList<>(input.notebook().cells());
        int at = 0;
        while (at < cells.size()
                && !(cells.get(at) instanceof Cell.Code && cells.get(at).isTagged(TAG))) {
            at++;
        }
        if (at == cells.size()) {
            throw new Refusal(
                            RunProblem.WRONG_PARAMETER,
                            "Parameters were given, and no cell says which there are",
                            "They take the place of values in a cell tagged 'parameters'; in a script it begins with"
                                    + " // %% [parameters]",
                            "Tag the cell that gives their usual values")
                    .at(Place.of(input.file().toString()));
        }
        requireKnown(names(cells.get(at).source()), input);
        List<Integer> lines = new ArrayList<>(input.firstLines());
        cells.add(at + 1, cell(input.language()));
        lines.add(at + 1, lines.get(at));
        Notebook notebook = input.notebook().withCells(cells);
        return new RunInput(input.file(), notebook, lines, input.language(), input.sha256());
    }

    private void requireKnown(List<String> names, RunInput input) {
        for (String name : values.keySet()) {
            if (!names.contains(name)) {
                throw new Refusal(
                                RunProblem.WRONG_PARAMETER,
                                "A value was given for the parameter '" + name + "'",
                                "The cell tagged 'parameters' has "
                                        + (names.isEmpty() ? "none" : Nearest.either(names)),
                                Nearest.sentence(Nearest.to(name, names), "Write the name as it stands there"))
                        .at(Place.of(input.file().toString()));
            }
        }
    }

    /** Returns the names to which the lines of a cell assign a value. */
    private static List<String> names(String source) {
        List<Token> tokens = Tokens.of(source);
        List<String> names = new ArrayList<>();
        for (int i = 1; i < tokens.size(); i++) {
            if (tokens.get(i).is("=") && tokens.get(i - 1).kind() == Token.Kind.WORD) {
                names.add(tokens.get(i - 1).text());
            }
        }
        return names;
    }

    /**
     * Returns the cell that gives the values; in Groovy, which takes a value of any type for a variable of Java too.
     */
    private Cell cell(Language usual) {
        String head = usual == Language.GROOVY ? "" : "%%" + Language.GROOVY.word() + "\n";
        String code = values.entrySet().stream()
                .map(each -> each.getKey() + " = " + expression(each.getValue()))
                .collect(Collectors.joining("\n", head + "// Parameters of this run\n", ""));
        return Cell.code(code).with(Fields.NONE.with("tags", List.of(INJECTED)));
    }

    private static String expression(String value) {
        Matcher list = LIST.matcher(value);
        if (list.matches()) {
            return Stream.of(list.group(1).split(","))
                    .map(String::strip)
                    .filter(each -> !each.isEmpty())
                    .map(RunParameters::expression)
                    .collect(Collectors.joining(", ", "[", "]"));
        }
        if (PLAIN.matcher(value).matches()) {
            return value;
        }
        String text = "'" + value.replace("\\", "\\\\").replace("'", "\\'") + "'";
        return MEASURED.matcher(value).matches() ? "quantity(" + text + ")" : text;
    }
}
