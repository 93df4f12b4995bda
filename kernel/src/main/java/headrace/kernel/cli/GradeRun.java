package headrace.kernel.cli;

import headrace.data.Table;
import headrace.data.TableFile;
import headrace.kernel.headless.RunInput;
import headrace.kernel.headless.RunParameters;
import headrace.kernel.headless.RunProblem;
import headrace.kernel.headless.TerminalView;
import headrace.kernel.headless.classroom.Grading;
import headrace.kernel.headless.classroom.Rounds;
import headrace.problem.Place;
import headrace.problem.Refusal;
import headrace.report.Block;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;

/** {@code headrace run --grade}: what is right, wrong and not answered in notebooks that were handed in. */
final class GradeRun {
    private static final Path FOLDER = Path.of("headrace-out");
    private static final String NAME = "grades.csv";
    private static final int COLUMNS = 118;

    private final TerminalView out;
    private final PrintWriter err;

    GradeRun(TerminalView out, PrintWriter err) {
        this.out = out;
        this.err = err;
    }

    /**
     * Grades notebooks one after the other; a bad file does not keep the others from being graded.
     *
     * @param folder where the table goes, or null for the usual folder
     * @return 0, or 3 if a file could not be read
     */
    int run(List<Path> files, RunParameters parameters, Duration most, Path folder) {
        List<Grading> all = new ArrayList<>();
        int bad = 0;
        Rounds rounds = new Rounds(out, "notebook", files.size());
        for (int i = 0; i < files.size(); i++) {
            rounds.begin(i + 1);
            try {
                Grading grading = Grading.of(RunInput.read(files.get(i)), parameters, most, ExerciseSessions::of);
                all.add(grading);
                out.say(grading.summary());
            } catch (Refusal refusal) {
                bad++;
                out.freshLine();
                err.println(refusal.getMessage());
                err.flush();
            }
        }
        rounds.end();
        if (!all.isEmpty()) {
            tell(Grading.table(all), folder == null ? FOLDER : folder);
        }
        return bad == 0 ? ExitCode.DONE : ExitCode.BAD_FILE;
    }

    private void tell(Table table, Path folder) {
        out.say("");
        out.say(new Block.TableBlock(table).toText(COLUMNS));
        Path file = folder.resolve(NAME);
        try {
            Files.createDirectories(folder);
        } catch (IOException e) {
            throw new Refusal(
                            RunProblem.RESULTS_NOT_WRITTEN,
                            "This folder for the table of answers cannot be made",
                            "It needs a place that you may write to",
                            "Name another folder with --output")
                    .at(Place.of(folder.toString()));
        }
        TableFile.write(table, file);
        out.say("");
        out.say("Table: " + file);
    }
}
