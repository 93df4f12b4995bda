package headrace.kernel.cli;

import headrace.kernel.install.Installation;
import headrace.kernel.selfcheck.Finding;
import headrace.kernel.selfcheck.SelfCheck;
import headrace.kernel.session.Language;
import java.io.IOException;
import java.io.PrintWriter;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code headrace check}: says whether the installed kernel works, what is wrong and how to mend it. */
@Command(
        name = "check",
        mixinStandardHelpOptions = true,
        versionProvider = Versions.class,
        description = "Starts the installed kernel, tries it ten ways, and says what is wrong and how to mend it.",
        footerHeading = "%n",
        footer = "Ends with 0 if all ten are well, 7 if not.")
final class CheckCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Mixin
    private WhereInstalled where;

    @Option(
            names = "--language",
            paramLabel = "NAME",
            defaultValue = "groovy",
            description = "The kernel to check: groovy or java. Default: ${DEFAULT-VALUE}.")
    private String language;

    @Override
    public Integer call() throws IOException, InterruptedException {
        Language chosen = Language.of(language)
                .orElseThrow(() ->
                        new ParameterException(spec.commandLine(), "Cells are groovy or java, not '" + language + "'"));
        Installation groovy = new Installation(where.folder());
        Installation installation = chosen == Language.GROOVY ? groovy : groovy.beside(chosen.kernel());
        PrintWriter out = spec.commandLine().getOut();
        out.println("Checking the kernel " + chosen.kernel() + " in " + installation.folder() + " ...");
        List<Finding> findings = SelfCheck.of(installation, chosen.word(), finding -> tell(finding, out));
        long wrong = findings.stream()
                .filter(finding -> finding.state() == Finding.State.WRONG)
                .count();
        out.println(wrong == 0 ? "All ten are well." : wrong == 1 ? "One is wrong." : wrong + " are wrong.");
        return wrong == 0 ? ExitCode.DONE : ExitCode.NOT_WELL;
    }

    private static void tell(Finding finding, PrintWriter out) {
        out.println("  " + word(finding.state()) + "  " + finding.check() + ".");
        for (String text : List.of(finding.wrong(), finding.mend())) {
            text.lines().forEach(line -> out.println("           " + line));
        }
        out.flush();
    }

    private static String word(Finding.State state) {
        return switch (state) {
            case WELL -> "well     ";
            case WRONG -> "WRONG    ";
            case UNTRIED -> "not tried";
        };
    }
}
