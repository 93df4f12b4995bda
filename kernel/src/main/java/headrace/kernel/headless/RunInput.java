package headrace.kernel.headless;

import headrace.kernel.headless.ScriptCells.ScriptCell;
import headrace.kernel.notebook.Cell;
import headrace.kernel.notebook.Fields;
import headrace.kernel.notebook.Notebook;
import headrace.kernel.session.Language;
import headrace.problem.Place;
import headrace.problem.Refusal;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A notebook or a script, read and not yet run.
 *
 * @param file the file as the user named it
 * @param notebook its cells
 * @param firstLines for each cell the line of the file where its code begins; 1 where the file has no lines of its own
 * @param language the language of its cells, unless they say theirs
 * @param sha256 the SHA-256 of the file's bytes in hexadecimal
 */
public record RunInput(Path file, Notebook notebook, List<Integer> firstLines, Language language, String sha256) {
    private static final String NOTEBOOK = ".ipynb";

    private static final String SCRIPT = ".groovy";

    /** Keeps the lines from changing. */
    public RunInput {
        firstLines = List.copyOf(firstLines);
    }

    /**
     * Reads a file whose name ends in {@code .ipynb} or {@code .groovy}.
     *
     * @throws Refusal if it is absent, unreadable, neither of the two, or a notebook in another language
     */
    public static RunInput read(Path file) {
        String name = String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT);
        boolean script = name.endsWith(SCRIPT);
        if (!script && !name.endsWith(NOTEBOOK)) {
            throw new Refusal(
                            RunProblem.NOT_A_SCRIPT,
                            "The name of this file ends neither in .ipynb nor in .groovy",
                            "Headrace runs notebooks (.ipynb) and scripts (.groovy)",
                            "Name such a file; if this is one, give its name the right ending")
                    .at(Place.of(file.toString()));
        }
        byte[] bytes = bytesOf(file);
        return script ? ofScript(file, bytes) : ofNotebook(file, bytes);
    }

    /** Returns the file's name without its ending. */
    public String name() {
        String name = String.valueOf(file.getFileName());
        return name.substring(0, name.lastIndexOf('.'));
    }

    private static byte[] bytesOf(Path file) {
        try {
            return Files.readAllBytes(file);
        } catch (IOException e) {
            String asked = Files.isDirectory(file)
                    ? "This is a folder, not a file"
                    : Files.exists(file) ? "This file cannot be read" : "There is no file of this name";
            throw new Refusal(
                            RunProblem.NOTHING_TO_RUN,
                            asked,
                            "It was looked for at " + file.toAbsolutePath().normalize(),
                            "Check the name, the folder you are in, and that you may read the file")
                    .at(Place.of(file.toString()));
        }
    }

    private static RunInput ofScript(Path file, byte[] bytes) {
        List<ScriptCell> cells = ScriptCells.of(text(file, bytes));
        Notebook notebook =
                new Notebook(Fields.NONE, cells.stream().map(ScriptCell::cell).toList());
        List<Integer> lines = cells.stream().map(ScriptCell::firstLine).toList();
        return new RunInput(file, notebook, lines, Language.GROOVY, sha256(bytes));
    }

    private static String text(Path file, byte[] bytes) {
        String text = new String(bytes, StandardCharsets.UTF_8);
        int fault = text.indexOf('\uFFFD');
        if (fault >= 0 && !Arrays.equals(text.getBytes(StandardCharsets.UTF_8), bytes)) {
            int line = (int) text.substring(0, fault).lines().count();
            throw new Refusal(
                            RunProblem.SCRIPT_NOT_UTF_8,
                            "This line holds bytes that are no text in UTF-8",
                            "A script is a text in UTF-8",
                            "Save it in your editor with the encoding UTF-8")
                    .at(new Place(file.toString(), Math.max(1, line), 0));
        }
        return text.startsWith("\uFEFF") ? text.substring(1) : text;
    }

    private static RunInput ofNotebook(Path file, byte[] bytes) {
        Notebook notebook = Notebook.of(bytes, file.toString());
        List<Integer> ones = notebook.cells().stream().map(cell -> 1).toList();
        return new RunInput(file, notebook, ones, language(notebook, file), sha256(bytes));
    }

    private static Language language(Notebook notebook, Path file) {
        Optional<String> named = notebook.metadata()
                .fields("language_info")
                .text("name")
                .or(() -> notebook.metadata().fields("kernelspec").text("language"));
        if (named.isEmpty()) {
            return Language.GROOVY;
        }
        return Language.of(named.get())
                .orElseThrow(() -> new Refusal(
                                RunProblem.NOTEBOOK_IN_ANOTHER_LANGUAGE,
                                "The notebook says that it is written in " + named.get(),
                                "Headrace runs notebooks written in groovy or java",
                                "Run it with the program it was written for, or choose Headrace as its kernel")
                        .at(Place.of(file.toString())));
    }

    private static String sha256(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new AssertionError("Every JDK has SHA-256", e);
        }
    }

    /** Returns the code of a cell so that a line of it has the same number as in the file. */
    public String codeToRun(int cell) {
        return "\n".repeat(firstLines.get(cell) - 1)
                + notebook.cells().get(cell).source();
    }

    /** Returns whether the cell is code that has something to run. */
    public static boolean runs(Cell cell) {
        return cell instanceof Cell.Code && !cell.source().isBlank() && !cell.isTagged("skip-execution");
    }
}
