package headrace.kernel.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Properties;

/**
 * What was written down when this program was built.
 *
 * @param headrace the version of this project
 * @param groovy the version of Groovy that it was built with
 */
record Built(String headrace, String groovy) {
    static Built read() {
        Properties built = new Properties();
        try (InputStream in = Built.class.getResourceAsStream("versions.properties")) {
            built.load(in);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return new Built(built.getProperty("headrace"), built.getProperty("groovy"));
    }
}
