package headrace.kernel.outside;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@DisplayNameGeneration(ReplaceUnderscores.class)
class ReferenceClientTest {
    @TempDir
    Path folder;

    @Test
    void what_front_ends_rely_on_holds_through_the_reference_client() {
        Outside.needsModule("python3-jupyter-client", "jupyter_client");
        InstalledKernel kernel = InstalledKernel.below(folder);
        Outside.Ended ended = Outside.run(
                        folder,
                        kernel.environment(),
                        Outside.PYTHON.toString(),
                        Outside.script("client.py"),
                        "--verbose")
                .well();
        assertTrue(ended.printed().strip().endsWith("OK"), ended.printed());
    }
}
