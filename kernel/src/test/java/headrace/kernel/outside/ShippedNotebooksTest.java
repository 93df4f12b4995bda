package headrace.kernel.outside;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class ShippedNotebooksTest {
    private static final Path NOTEBOOKS = Path.of("..", "notebooks");

    @TempDir
    Path folder;

    static List<Path> notebooks() throws IOException {
        try (Stream<Path> all = Files.walk(NOTEBOOKS)) {
            return all.filter(path -> path.toString().endsWith(".ipynb"))
                    .filter(path -> !path.toString().contains(".ipynb_checkpoints"))
                    .sorted()
                    .toList();
        }
    }

    /** nbconvert runs each cell as a front end would, with the notebook's folder as the current one. */
    @ParameterizedTest
    @MethodSource("notebooks")
    void a_shipped_notebook_runs_in_a_front_end_from_the_first_cell_to_the_last(Path notebook) throws IOException {
        Outside.needs("jupyter-nbconvert", Path.of("/usr/bin/jupyter-nbconvert"));
        InstalledKernel kernel = InstalledKernel.below(folder);
        Outside.run(
                        folder,
                        kernel.environment(),
                        "/usr/bin/jupyter-nbconvert",
                        "--execute",
                        "--to=notebook",
                        "--output-dir=" + folder.resolve("out"),
                        notebook.toAbsolutePath().normalize().toString())
                .well();
        int code = 0;
        boolean shown = false;
        for (JsonElement element : cells(folder.resolve("out").resolve(notebook.getFileName()))) {
            JsonObject cell = element.getAsJsonObject();
            if (cell.get("cell_type").getAsString().equals("code")) {
                code++;
                assertEquals(code, cell.get("execution_count").getAsInt(), "each cell ran, once, in order");
                String outputs = cell.getAsJsonArray("outputs").toString();
                assertFalse(outputs.contains("\"output_type\":\"error\""), outputs);
                shown |= outputs.contains("image/svg+xml") || outputs.contains("image/png");
            }
        }
        assertTrue(code > 0, "it has cells of code");
        assertTrue(shown, "it shows a chart");
    }

    private static Iterable<JsonElement> cells(Path notebook) throws IOException {
        return JsonParser.parseString(Files.readString(notebook))
                .getAsJsonObject()
                .getAsJsonArray("cells");
    }
}
