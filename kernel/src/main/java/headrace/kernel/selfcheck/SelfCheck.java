package headrace.kernel.selfcheck;

import headrace.kernel.install.Installation;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.regex.Pattern;

/**
 * Ten checks of an installed kernel, each of which says in plain words what is wrong and how to mend it.
 *
 * <p>Three look at what is installed, the others start it as a front end does and use it. A check that needs one which
 * went wrong is not tried.
 */
public final class SelfCheck {
    private static final String KNOWN = "Front ends find the kernel";
    private static final String JAVA = "Its Java is there";
    private static final String FILES = "Its files are there";
    private static final String ANSWERS = "It starts and answers";
    private static final String BEATS = "Its heart beats";
    private static final String PRINTS = "What a cell prints arrives";
    private static final String WORDS = "A cell understands the words of a script";
    private static final String CHART = "A chart is drawn";
    private static final String STOPS = "A running cell can be stopped";
    private static final String ENDS = "It ends when it is told to";

    private static final String INSTALL_AGAIN = "Run: headrace install";
    private static final Pattern NAMED_FILE = Pattern.compile("-XX:\\w+=(.*[/\\\\].*)");
    private static final int LAST_LINES = 5;

    private final Installation installation;
    private final Sample sample;
    private final Consumer<Finding> told;
    private final List<Finding> findings = new ArrayList<>();

    private SelfCheck(Installation installation, String language, Consumer<Finding> told) {
        this.installation = installation;
        this.sample = Sample.of(language);
        this.told = told;
    }

    /**
     * Checks a kernel.
     *
     * @param language the language of its cells: {@code groovy} or {@code java}
     * @param told hears each finding as it is made
     * @return all ten findings
     */
    public static List<Finding> of(Installation installation, String language, Consumer<Finding> told)
            throws IOException, InterruptedException {
        SelfCheck check = new SelfCheck(installation, language, told);
        check.all();
        return List.copyOf(check.findings);
    }

    private void all() throws IOException, InterruptedException {
        List<String> command = installation.known().orElse(List.of());
        boolean there = known(command) && java(command) & files(command);
        if (!there) {
            untried(JAVA, FILES, ANSWERS, BEATS, PRINTS, WORDS, CHART, STOPS, ENDS);
            return;
        }
        try (Visited kernel = Visited.start(command)) {
            used(kernel);
        }
    }

    private boolean known(List<String> command) {
        return found(
                KNOWN,
                !command.isEmpty(),
                "There is no kernel, or no description that can be read, in " + installation.folder() + ".",
                INSTALL_AGAIN + ", with the same --prefix if you gave one.");
    }

    private boolean java(List<String> command) {
        Path java = Path.of(command.get(0));
        return found(
                JAVA,
                Files.isExecutable(java),
                "The kernel was installed with " + java + ", which is no longer there or must not be run.",
                "Point JAVA_HOME at a JDK 17, 21 or 25. " + INSTALL_AGAIN);
    }

    private boolean files(List<String> command) {
        List<String> missing = named(command).stream()
                .filter(file -> !Files.exists(Path.of(file)))
                .toList();
        return found(FILES, missing.isEmpty(), "Missing: " + String.join(", ", missing) + ".", INSTALL_AGAIN + ".");
    }

    /** Returns the jars, and the files that options name. */
    private static List<String> named(List<String> command) {
        List<String> files = new ArrayList<>();
        for (String argument : command) {
            var named = NAMED_FILE.matcher(argument);
            if (named.matches()) {
                files.add(named.group(1));
            }
        }
        int classPath = command.indexOf("-cp") + 1;
        if (classPath > 0 && classPath < command.size()) {
            String separator = Pattern.quote(System.getProperty("path.separator"));
            files.addAll(Arrays.asList(command.get(classPath).split(separator)));
        }
        return files;
    }

    private void used(Visited kernel) throws IOException, InterruptedException {
        try (Visitor visitor = new Visitor(kernel.connection(), kernel::isAlive)) {
            boolean answers = visitor.ask("kernel_info_request", Map.of());
            String end = kernel.isAlive() ? "" : " Its process has ended.";
            found(
                    ANSWERS,
                    answers,
                    "It does not answer." + end + lastWords(kernel),
                    "Read the lines above, if there are any; else see whether another program, such as one that guards"
                            + " the network, keeps programs of this machine from speaking to each other at 127.0.0.1.");
            if (!answers) {
                untried(BEATS, PRINTS, WORDS, CHART, STOPS, ENDS);
                return;
            }
            found(
                    BEATS,
                    visitor.beats(),
                    "It answers, but its heartbeat does not: front ends will think that it has died.",
                    "Stop programs that take up the machine, and check again.");
            cells(visitor);
            stops(visitor);
            visitor.command("shutdown_request");
            found(
                    ENDS,
                    kernel.ends(),
                    "It goes on, or ends with an error, after it was told to end." + lastWords(kernel),
                    "It was ended by force now. Report this with the lines above.");
        }
    }

    private void cells(Visitor visitor) {
        found(
                PRINTS,
                visitor.run(sample.print()).all("stream", "text").equals("checked" + System.lineSeparator()),
                "A cell printed one line, which did not arrive.",
                "Something between kernel and front end holds back messages. Restart the machine and check again.");
        Visitor.Told words = visitor.run(sample.words());
        found(
                WORDS,
                words.all("execute_result", "data").contains("104"),
                "The cell " + sample.words() + " is to give 104 m3/h and gave " + outcome(words) + ".",
                "The jars are damaged or of different versions. " + INSTALL_AGAIN + ".");
        Visitor.Told chart = visitor.run(sample.chart());
        found(
                CHART,
                chart.all("execute_result", "data").contains("<svg"),
                "The cell " + sample.chart() + " is to show a chart and gave " + outcome(chart) + ".",
                "A Java that is called headless has no part for drawing on some systems: install the full one. "
                        + INSTALL_AGAIN + ".");
    }

    private void stops(Visitor visitor) {
        String loop = visitor.begin("execute_request", Map.of("code", sample.loop()));
        boolean begun = visitor.prints(loop);
        boolean told = begun && visitor.command("interrupt_request");
        boolean stopped = told && visitor.told(loop).says("status", "error");
        found(
                STOPS,
                stopped && visitor.run("1 + 1").says("status", "ok"),
                begun ? "A cell that never ends went on after it was told to stop." : "The cell did not begin.",
                "In a front end, restart the kernel instead. Report this.");
    }

    private static String outcome(Visitor.Told told) {
        return told.says("status", "error") ? String.valueOf(told.reply().get("evalue")) : "nothing of the kind";
    }

    private static String lastWords(Visited kernel) throws IOException {
        List<String> lines = kernel.lastLines(LAST_LINES);
        return lines.isEmpty() ? "" : " It said last:\n" + String.join("\n", lines);
    }

    private boolean found(String check, boolean well, String wrong, String mend) {
        tell(well ? Finding.well(check) : Finding.wrong(check, wrong, mend));
        return well;
    }

    private void untried(String... checks) {
        for (String check : checks) {
            if (findings.stream().noneMatch(finding -> finding.check().equals(check))) {
                tell(Finding.untried(check));
            }
        }
    }

    private void tell(Finding finding) {
        findings.add(finding);
        told.accept(finding);
    }
}
