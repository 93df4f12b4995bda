package headrace.kernel.install;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

/** Source: documentation of Jupyter, “Common directories and file locations”. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class KernelFolderTest {
    private static final Path HOME = Path.of("/home/engineer");

    private static String on(String system, Map<String, String> environment) {
        return KernelFolder.ofUser(environment, system, HOME).toString();
    }

    @Test
    void on_linux_it_is_below_the_users_data() {
        assertEquals("/home/engineer/.local/share/jupyter/kernels/headrace", on("Linux", Map.of()));
        assertEquals("/data/jupyter/kernels/headrace", on("Linux", Map.of("XDG_DATA_HOME", "/data")));
        assertEquals("/home/engineer/.local/share/jupyter/kernels/headrace", on("Linux", Map.of("XDG_DATA_HOME", "")));
    }

    @Test
    void on_macos_it_is_in_the_library() {
        assertEquals("/home/engineer/Library/Jupyter/kernels/headrace", on("Mac OS X", Map.of()));
    }

    @Test
    void on_windows_it_is_in_the_applications_data() {
        assertEquals("/roaming/jupyter/kernels/headrace", on("Windows 11", Map.of("APPDATA", "/roaming")));
    }

    @Test
    void a_folder_that_the_user_names_for_all_front_ends_comes_first() {
        Map<String, String> named =
                Map.of("JUPYTER_DATA_DIR", "/mine", "XDG_DATA_HOME", "/data", "APPDATA", "/roaming");
        for (String system : new String[] {"Linux", "Mac OS X", "Windows 11"}) {
            assertEquals("/mine/kernels/headrace", on(system, named));
        }
    }

    @Test
    void below_a_prefix_it_is_in_the_shared_data() {
        assertEquals(
                "/opt/env/share/jupyter/kernels/headrace",
                KernelFolder.below(Path.of("/opt/env")).toString());
    }
}
