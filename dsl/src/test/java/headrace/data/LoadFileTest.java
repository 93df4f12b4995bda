package headrace.data;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.energy.EnergyProblem;
import headrace.energy.LoadBin;
import headrace.energy.LoadProfile;
import headrace.problem.Place;
import headrace.problem.Problem;
import headrace.problem.Refusal;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class LoadFileTest {
    private static final String HEAD = "# name: Reed House\nflow [%], time [h]\n";

    @TempDir
    Path folder;

    /** Hours added by hand: 240 + 720 + 1130 + 1220 + 960 + 610 + 360 + 190 + 80 + 30. */
    @Test
    void reads_the_invented_library() {
        LoadProfile profile = LoadFile.read(DemoDataTest.DEMO.resolve("loads/otterbank.csv"));
        assertEquals("Otterbank Library, chilled water", profile.name());
        assertEquals(10, profile.bins().size());
        assertEquals(5540, profile.hours().toHours(), 1e-9);
        assertEquals(0.4, profile.bins().get(3).flowFraction().value(), 1e-12);
        assertEquals(1220, profile.bins().get(3).hours().toHours(), 1e-9);
        assertTrue(profile.notes().isEmpty());
        assertEquals("otterbank.csv", profile.basis().inputs().get(0).name());
    }

    @Test
    void reads_the_invented_baths_that_never_close() {
        assertEquals(
                8760,
                LoadFile.read(DemoDataTest.DEMO.resolve("loads/millrace-baths.csv"))
                        .hours()
                        .toHours(),
                1e-9);
    }

    @Test
    void adds_repeated_flows_with_a_note_and_keeps_the_note_of_a_mark() throws IOException {
        LoadProfile profile = LoadFile.read(write("\uFEFF" + HEAD + "50, 10\n25, 20\n50, 30\n"));
        assertEquals(40, profile.bins().get(1).hours().toHours(), 1e-9);
        assertTrue(profile.notes().has(EnergyProblem.REPEATED_BINS));
        assertTrue(profile.notes().has(DataProblem.BYTE_ORDER_MARK));
    }

    @Test
    void reads_decimal_commas_when_told_so() throws IOException {
        Path file = write("# name: Reed House\nflow [%]; time [h]\n12,5; 100\n");
        assertEquals(
                0.125,
                LoadFile.read(file, NumberStyle.DECIMAL_COMMA)
                        .bins()
                        .get(0)
                        .flowFraction()
                        .value(),
                1e-12);
    }

    @Test
    void mutations_that_change_nothing_are_read_the_same_and_all_others_read_or_refused_with_their_place()
            throws IOException {
        byte[] good = Files.readAllBytes(DemoDataTest.DEMO.resolve("loads/otterbank.csv"));
        Path file = folder.resolve("load.csv");
        List<LoadBin> bins = LoadFile.read(Files.write(file, good)).bins();
        for (int round = 0; round < 500; round++) {
            Random random = new Random(round);
            Mutation mutation = Mutation.values()[random.nextInt(Mutation.values().length)];
            Files.write(file, mutation.apply(good, random));
            try {
                LoadProfile profile = LoadFile.read(file);
                assertTrue(!mutation.keepsValues || bins.equals(profile.bins()), round + " " + mutation);
            } catch (Refusal refusal) {
                assertTrue(refusal.place().isPresent() && !mutation.keepsValues, round + " " + refusal.getMessage());
            }
        }
    }

    static List<Arguments> bad_files() {
        return List.of(
                Arguments.of(HEAD, DataProblem.TOO_FEW_ROWS, 2, 0),
                Arguments.of("flow [%], time [h]\n50, 10\n", DataProblem.MISSING_HEAD_LINE, 2, 0),
                Arguments.of("# name: R\nflow [%]\n50\n", DataProblem.MISSING_COLUMN, 2, 0),
                Arguments.of("# name: R\nflow [%], time\n50, 1\n", DataProblem.MISSING_UNIT, 2, 11),
                Arguments.of("# name: R\nflow [%], time [kWh]\n50, 1\n", DataProblem.WRONG_UNIT, 2, 11),
                Arguments.of(HEAD + "121, 10\n", DataProblem.VALUE_NOT_POSSIBLE, 3, 1),
                Arguments.of(HEAD + "50, -1\n", DataProblem.VALUE_NOT_POSSIBLE, 3, 5),
                Arguments.of(HEAD + "half, 10\n", DataProblem.NOT_A_NUMBER, 3, 1),
                Arguments.of(HEAD + "50, 5000\n60, 5000\n", EnergyProblem.IMPOSSIBLE_PROFILE, 4, 0),
                Arguments.of(HEAD + "0, 5000\n", EnergyProblem.IMPOSSIBLE_PROFILE, 3, 0));
    }

    @ParameterizedTest(name = "{1} at {2}:{3}")
    @MethodSource
    void bad_files(String text, Problem problem, int line, int column) throws IOException {
        Path file = write(text);
        Refusal refusal = assertThrows(Refusal.class, () -> LoadFile.read(file));
        assertEquals(problem, refusal.problem(), refusal.getMessage());
        assertEquals(new Place(file.toString(), line, column), refusal.place().orElseThrow(), refusal.getMessage());
    }

    private Path write(String text) throws IOException {
        return Files.writeString(folder.resolve("load.csv"), text);
    }
}
