package headrace.kernel.outside;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class ConformanceTest {
    @TempDir
    Path folder;

    @ParameterizedTest
    @ValueSource(strings = {"conformance.py", "conformance_java.py"})
    void the_kernels_of_both_languages_pass_the_public_suite_without_a_skip(String suite) {
        Outside.needsModule("python3-jupyter-kernel-test", "jupyter_kernel_test");
        InstalledKernel kernel = InstalledKernel.below(folder);
        Outside.Ended ended = Outside.run(
                        folder, kernel.environment(), Outside.PYTHON.toString(), Outside.script(suite), "--verbose")
                .well();
        assertTrue(ended.printed().contains("Ran 12 tests"), ended.printed());
        assertTrue(ended.printed().strip().endsWith("OK"), ended.printed());
    }
}
