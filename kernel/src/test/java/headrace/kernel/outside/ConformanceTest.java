package headrace.kernel.outside;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@DisplayNameGeneration(ReplaceUnderscores.class)
class ConformanceTest {
    @TempDir
    Path folder;

    @Test
    void the_kernel_passes_the_public_suite_without_a_skip() {
        Outside.needsModule("python3-jupyter-kernel-test", "jupyter_kernel_test");
        InstalledKernel kernel = InstalledKernel.below(folder);
        Outside.Ended ended = Outside.run(
                        folder,
                        kernel.environment(),
                        Outside.PYTHON.toString(),
                        Outside.script("conformance.py"),
                        "--verbose")
                .well();
        assertTrue(ended.printed().contains("Ran 12 tests"), ended.printed());
        assertTrue(ended.printed().strip().endsWith("OK"), ended.printed());
    }
}
