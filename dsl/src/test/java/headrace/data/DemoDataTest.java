package headrace.data;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Holds {@code demo-data} to how it was made. After a change of {@link InventedPump}, run with
 * {@code -Dheadrace.writeDemoData=true} to write the files anew.
 */
@DisplayNameGeneration(ReplaceUnderscores.class)
class DemoDataTest {
    static final Path DEMO = Path.of("..", "demo-data");

    static List<InventedPump> pumps() {
        return InventedPump.all();
    }

    @ParameterizedTest
    @MethodSource("pumps")
    void a_file_stands_as_it_was_made(InventedPump pump) throws IOException {
        Path file = DEMO.resolve("pumps").resolve(pump.fileName());
        if (Boolean.getBoolean("headrace.writeDemoData")) {
            Files.createDirectories(file.getParent());
            Files.writeString(file, pump.file());
        }
        assertEquals(pump.file(), Files.readString(file));
    }

    @Test
    void every_file_of_the_folder_is_one_of_ours() throws IOException {
        List<String> made =
                pumps().stream().map(InventedPump::fileName).sorted().toList();
        try (var files = Files.list(DEMO.resolve("pumps"))) {
            assertEquals(
                    made,
                    files.map(file -> file.getFileName().toString()).sorted().toList());
        }
    }
}
