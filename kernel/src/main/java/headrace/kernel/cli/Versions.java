package headrace.kernel.cli;

import headrace.kernel.headless.page.Edition;
import java.time.LocalDate;
import picocli.CommandLine.IVersionProvider;

/** What this program is made of, written down when it was built. */
final class Versions implements IVersionProvider {
    @Override
    public String[] getVersion() {
        Edition edition = edition();
        return new String[] {
            "Headrace " + edition.headrace(),
            "JDK " + edition.jdk() + " (" + System.getProperty("java.vendor") + ")",
            "Groovy " + edition.groovy()
        };
    }

    static Edition edition() {
        Built built = Built.read();
        return new Edition(built.headrace(), System.getProperty("java.version"), built.groovy(), LocalDate.now());
    }
}
