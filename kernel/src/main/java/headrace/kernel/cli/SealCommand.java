package headrace.kernel.cli;

import headrace.kernel.headless.RunInput;
import headrace.kernel.headless.RunProblem;
import headrace.kernel.headless.classroom.Rounds;
import headrace.kernel.headless.classroom.Sealing;
import headrace.kernel.headless.classroom.Sealing.Sealed;
import headrace.lesson.Seal;
import headrace.problem.Place;
import headrace.problem.Refusal;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code headrace seal}: turns a teacher's notebook into the students'. */
@Command(
        name = "seal",
        mixinStandardHelpOptions = true,
        versionProvider = Versions.class,
        description = "Runs a teacher's notebook and writes the students': with the answers and hints of its exercises"
                + " sealed, without cells tagged 'solution', and with checks that wait for an answer.",
        footerHeading = "%n",
        footer = {
            "Sealed means not readable at a glance. It is not secret: there is no key, and whoever wants to read a seal"
                    + " can.",
            "",
            "Ends with 0 if the notebook was written, 3 if the teacher's cannot be read, run or sealed, 4 if the"
                    + " students' cannot be written."
        })
final class SealCommand implements Callable<Integer> {
    private static final String ENDING = "-students.ipynb";

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "FILE", description = "The teacher's notebook (.ipynb), with answers in the clear.")
    private Path file;

    @Option(
            names = {"-o", "--output"},
            paramLabel = "FILE",
            description = "The students' notebook. Default: the name of the teacher's with -students, beside it.")
    private Path output;

    @Option(
            names = "--seeds",
            paramLabel = "N",
            defaultValue = "0",
            description = "How many students get numbers of their own: answers are sealed for the seeds 1 to N of the"
                    + " parameter 'seed'. Default: the same numbers for all.")
    private int seeds;

    @Override
    public Integer call() {
        if (seeds < 0) {
            throw new ParameterException(spec.commandLine(), "The number of seeds is 0 or more");
        }
        RunInput input = Sealing.read(file);
        Path target = output == null ? file.resolveSibling(input.name() + ENDING) : output;
        requireFree(target);
        PrintWriter out = spec.commandLine().getOut();
        Rounds rounds = new Rounds(StandardOutput.view(), "seed", seeds);
        Sealed sealed;
        try {
            sealed = Sealing.of(input, seeds, ExerciseSessions::of, rounds::begin);
        } finally {
            rounds.end();
        }
        write(target, sealed.toJson());
        out.println("Sealed: " + String.join(", ", sealed.names())
                + (seeds == 0 ? "." : ", for the seeds 1 to " + seeds + "."));
        out.println("Sealed means not readable at a glance; it is not secret.");
        out.println("For the students: " + target);
        return ExitCode.DONE;
    }

    /** Refuses to write over the teacher's notebook, or over anything that holds no seal. */
    private void requireFree(Path target) {
        try {
            if (!Files.exists(target)
                    || !Files.isSameFile(target, file)
                            && Files.readString(target).contains(Seal.MARK)) {
                return;
            }
        } catch (IOException unreadable) {
            throw taken(target);
        }
        throw taken(target);
    }

    private static Refusal taken(Path target) {
        return new Refusal(
                        RunProblem.WOULD_OVERWRITE,
                        "This file stands where the students' notebook goes, and is none that was sealed earlier",
                        "Only a notebook with seals is written over",
                        "Name another file with --output")
                .at(Place.of(target.toString()));
    }

    private static void write(Path target, String text) {
        try {
            Files.write(target, text.getBytes(StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new Refusal(
                            RunProblem.RESULTS_NOT_WRITTEN,
                            "The students' notebook could not be written",
                            "It needs a folder that you may write to, with room on its disk",
                            "Name another file with --output, or make room")
                    .at(Place.of(target.toString()));
        }
    }
}
