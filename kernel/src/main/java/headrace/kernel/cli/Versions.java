package headrace.kernel.cli;

import headrace.kernel.headless.page.Edition;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.util.Properties;
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
        Properties built = new Properties();
        try (InputStream in = Versions.class.getResourceAsStream("versions.properties")) {
            built.load(in);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return new Edition(
                built.getProperty("headrace"),
                System.getProperty("java.version"),
                built.getProperty("groovy"),
                LocalDate.now());
    }
}
