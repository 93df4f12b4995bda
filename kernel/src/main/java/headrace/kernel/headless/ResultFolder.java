package headrace.kernel.headless;

import headrace.kernel.headless.page.Page;
import headrace.kernel.notebook.Fields;
import headrace.kernel.notebook.Notebook;
import headrace.problem.Place;
import headrace.problem.Refusal;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Optional;

/**
 * The folder that takes the executed notebook and the page. Neither is ever written over the input, by whatever name or
 * link the input is reached, nor over a file that is not the result of an earlier run.
 */
public final class ResultFolder {
    private static final Path DEFAULT = Path.of("headrace-out");

    private final Path notebook;
    private final Path page;

    private ResultFolder(Path folder, String name) {
        notebook = folder.resolve(name + ".ipynb");
        page = folder.resolve(name + ".html");
    }

    /**
     * Makes the folder ready.
     *
     * @param asked the folder that the user asked for; {@code headrace-out/} and the input's name if empty
     * @throws Refusal if it cannot be made or written to, or if a file would be overwritten that must not be
     */
    public static ResultFolder of(RunInput input, Optional<Path> asked) {
        Path folder = asked.orElse(defaultFor(input));
        ResultFolder results = new ResultFolder(folder, input.name());
        try {
            Files.createDirectories(folder.toAbsolutePath().normalize());
        } catch (IOException e) {
            throw notWritten(folder, "This folder for the results cannot be made");
        }
        if (!Files.isWritable(folder)) {
            throw notWritten(folder, "This folder for the results cannot be written to");
        }
        results.requireFree(results.notebook, input.file());
        results.requireFree(results.page, input.file());
        return results;
    }

    /** Returns the folder for the results if the user names none. */
    static Path defaultFor(RunInput input) {
        return DEFAULT.resolve(input.name());
    }

    /** Returns where the executed notebook is written. */
    public Path notebook() {
        return notebook;
    }

    /** Returns where the page is written. */
    public Path page() {
        return page;
    }

    private void requireFree(Path target, Path input) {
        try {
            if (!Files.exists(target)) {
                return;
            }
            boolean same = Files.isSameFile(target, input);
            if (same || !Files.readString(target).contains(Page.MARK)) {
                throw wouldOverwrite(target, same);
            }
        } catch (IOException e) {
            throw wouldOverwrite(target, false);
        }
    }

    private static Refusal wouldOverwrite(Path target, boolean input) {
        return new Refusal(
                        RunProblem.WOULD_OVERWRITE,
                        input
                                ? "The executed notebook would be written over the notebook itself"
                                : "This file stands where a result goes, and is not the result of an earlier run",
                        "A run writes over nothing but results of earlier runs",
                        "Name another folder with --output, or leave --output out")
                .at(Place.of(target.toString()));
    }

    private static Refusal notWritten(Path path, String asked) {
        return new Refusal(
                        RunProblem.RESULTS_NOT_WRITTEN,
                        asked,
                        "The results need a folder that you may write to, with room on its disk",
                        "Name another folder with --output, or make room")
                .at(Place.of(path.toString()));
    }

    /** Writes the notebook, at once, so that a run that is cut off leaves no half file. */
    void writeNotebook(Notebook executed) {
        Fields mark = executed.metadata().fields("headrace").with("file", Page.MARK);
        write(
                notebook,
                executed.withMetadata(executed.metadata().with("headrace", mark))
                        .toJson());
    }

    /** Writes the page, at once. */
    void writePage(String html) {
        write(page, html);
    }

    private static void write(Path target, String text) {
        Path fresh = target.resolveSibling(target.getFileName() + ".part");
        try {
            Files.write(fresh, text.getBytes(StandardCharsets.UTF_8));
            Files.move(fresh, target, StandardCopyOption.REPLACE_EXISTING);
        } catch (IOException e) {
            throw notWritten(target, "This result could not be written");
        }
    }
}
