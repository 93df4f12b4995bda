package headrace.kernel.headless;

import headrace.kernel.headless.page.Edition;
import headrace.kernel.headless.page.Page;
import headrace.kernel.headless.page.PageFacts;
import headrace.kernel.notebook.Fields;
import headrace.kernel.session.Language;
import headrace.kernel.session.Session;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/** One run of a notebook or a script, from its first cell to the files in the result folder. */
public final class HeadlessRun {
    private static final long ASK_AGAIN_MILLISECONDS = 100;

    private final RunInput input;
    private final ResultFolder folder;
    private final TerminalView terminal;
    private final Edition edition;
    private final Execution execution;
    private final CountDownLatch finished = new CountDownLatch(1);
    private Executed written;

    /**
     * Makes a run ready.
     *
     * @param input what is run
     * @param folder where the results go
     * @param terminal hears what happens
     * @param edition what the run is made with
     * @param session runs the cells; left open
     */
    public HeadlessRun(RunInput input, ResultFolder folder, TerminalView terminal, Edition edition, Session session) {
        this(input, folder, terminal, edition, session, Choices.NONE);
    }

    /**
     * Makes a run ready.
     *
     * @param input what is run
     * @param folder where the results go
     * @param terminal hears what happens
     * @param edition what the run is made with
     * @param session runs the cells; left open
     * @param choices its parameters, and how long a cell may take
     */
    public HeadlessRun(
            RunInput input,
            ResultFolder folder,
            TerminalView terminal,
            Edition edition,
            Session session,
            Choices choices) {
        this.input = choices.parameters().in(input);
        this.folder = folder;
        this.terminal = terminal;
        this.edition = edition;
        execution = new Execution(this.input, session, terminal, choices);
    }

    /**
     * What is chosen for a run.
     *
     * @param parameters values for its parameters
     * @param most how long a cell may take
     * @param timings whether it says how long each cell took; else the same run writes the same files
     */
    public record Choices(RunParameters parameters, Optional<Duration> most, boolean timings) {
        /** Nothing chosen. */
        public static final Choices NONE = new Choices(new RunParameters(Map.of()), Optional.empty(), false);
    }

    /**
     * Runs the cells, writes the results and says where they are.
     *
     * @throws headrace.problem.Refusal if the results cannot be written
     */
    public Ending run() {
        try {
            execution.run();
            return write();
        } finally {
            finished.countDown();
        }
    }

    /**
     * Stops the run from another thread and returns once the results are written, by this thread if the running cell
     * does not end in time.
     */
    public void stop(Duration patience) {
        long end = System.nanoTime() + patience.toNanos();
        try {
            do {
                execution.stop();
            } while (!finished.await(ASK_AGAIN_MILLISECONDS, TimeUnit.MILLISECONDS) && System.nanoTime() < end);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        write();
    }

    private synchronized Ending write() {
        if (written == null) {
            written = stamped(execution.executed());
            folder.writeNotebook(written.notebook());
            folder.writePage(page(written));
            conclude(written);
        }
        return written.ending();
    }

    /** Says in the notebook which language and which kernel it is for, as notebook programs expect. */
    private Executed stamped(Executed executed) {
        Fields metadata = executed.notebook().metadata();
        if (metadata.fields("kernelspec").isEmpty()) {
            metadata = metadata.with(
                    "kernelspec",
                    Fields.NONE
                            .with(
                                    "display_name",
                                    "Headrace (" + input.language().title() + ")")
                            .with("language", input.language().word())
                            .with("name", input.language().kernel()));
        }
        Language cells = input.language();
        Fields language = Fields.NONE
                .with("file_extension", cells.ending())
                .with("mimetype", cells.mediaType())
                .with("name", cells.word())
                .with("version", cells == Language.JAVA ? edition.jdk() : edition.groovy());
        return executed.with(executed.notebook().withMetadata(metadata.with("language_info", language)));
    }

    private String page(Executed executed) {
        Optional<String> incomplete =
                executed.ending() == Ending.COMPLETE ? Optional.empty() : Optional.of(executed.verdict());
        String file = String.valueOf(input.file().getFileName());
        return Page.of(executed.notebook(), new PageFacts(file, input.sha256(), incomplete, edition));
    }

    private void conclude(Executed executed) {
        terminal.say("");
        terminal.say(executed.verdict());
        terminal.say("Notebook: " + folder.notebook());
        terminal.say("Page:     " + folder.page());
    }
}
