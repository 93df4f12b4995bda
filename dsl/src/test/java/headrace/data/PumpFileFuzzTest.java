package headrace.data;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import headrace.curve.PumpTest;
import headrace.curve.TestPoint;
import headrace.problem.Refusal;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A thousand mutations of good files, ten thousand with {@code -Dheadrace.soak=true}. */
@Tag("soak")
@DisplayNameGeneration(ReplaceUnderscores.class)
class PumpFileFuzzTest {
    private static final int ROUNDS = Boolean.getBoolean("headrace.soak") ? 10_000 : 1_000;
    private static final long SEED = 20260117;

    /** The oracle's factors are given to eight digits. */
    private static final double FACTORS = 1e-7;

    @TempDir
    Path folder;

    @Test
    void every_mutation_is_read_as_it_stands_or_refused_with_its_place() throws IOException {
        int read = 0;
        for (int round = 0; round < ROUNDS; round++) {
            Random random = new Random(SEED + round);
            List<Mutation> mutations = mutations(random);
            byte[] bytes = original(random);
            for (Mutation mutation : mutations) {
                bytes = mutation.apply(bytes, random);
            }
            Path file = Files.write(folder.resolve("pump.csv"), bytes);
            String what = "round " + round + " " + mutations + "\n" + new String(bytes, StandardCharsets.UTF_8);
            if (isReadRightly(file, bytes, what)) {
                read++;
            } else {
                assertTrue(mutations.stream().anyMatch(mutation -> !mutation.keepsValues), "refused: " + what);
            }
        }
        assertTrue(read > ROUNDS / 3 && read < ROUNDS, read + " files were read");
    }

    private static List<Mutation> mutations(Random random) {
        List<Mutation> mutations = new ArrayList<>();
        for (int i = random.nextInt(3); i >= 0; i--) {
            mutations.add(Mutation.values()[random.nextInt(Mutation.values().length)]);
        }
        return mutations;
    }

    private static byte[] original(Random random) {
        List<InventedPump> pumps = InventedPump.all();
        return pumps.get(random.nextInt(pumps.size())).file().getBytes(StandardCharsets.UTF_8);
    }

    private static boolean isReadRightly(Path file, byte[] bytes, String what) {
        PumpTest test;
        try {
            test = PumpFile.read(file);
        } catch (Refusal refusal) {
            assertTrue(refusal.place().isPresent(), () -> refusal.getMessage() + " in " + what);
            assertTrue(
                    refusal.place().orElseThrow().line() > 0
                            || new String(bytes, StandardCharsets.UTF_8)
                                    .replace("\uFEFF", "")
                                    .isBlank(),
                    () -> refusal.getMessage() + " in " + what);
            return false;
        } catch (RuntimeException e) {
            return fail(what, e);
        }
        try {
            compare(new LiteralPumpFile(bytes), test);
        } catch (RuntimeException e) {
            fail("read, though it does not say it: " + what, e);
        }
        return true;
    }

    private static void compare(LiteralPumpFile said, PumpTest test) {
        assertEquals(said.head.get("name"), test.name());
        test.impellerDiameter()
                .ifPresent(diameter -> assertNear(said.number("impeller diameter"), diameter.metres(), "diameter"));
        test.poles().ifPresent(poles -> assertEquals(said.head.get("poles"), String.valueOf(poles)));
        test.date().ifPresent(date -> assertEquals(said.head.get("date"), date.toString()));
        assertEquals(said.head.containsKey("poles"), test.poles().isPresent());
        assertEquals(
                said.head.containsKey("impeller diameter"),
                test.impellerDiameter().isPresent());
        double speed = said.head.containsKey("speed")
                ? said.number("speed")
                : said.points.stream().mapToDouble(point -> point[3]).average().orElseThrow();
        assertNear(speed, test.speed().si(), "speed");
        assertEquals(said.points.size(), test.points().size());
        for (int i = 0; i < test.points().size(); i++) {
            TestPoint point = test.points().get(i);
            assertNear(said.points.get(i)[0], point.flow().si(), "flow " + i);
            assertNear(said.points.get(i)[1], point.head().si(), "head " + i);
            assertNear(said.points.get(i)[2], point.shaftPower().si(), "power " + i);
            assertNear(
                    said.columns.contains("speed") ? said.points.get(i)[3] : speed,
                    point.speed().si(),
                    "speed " + i);
        }
        assertEquals(said.npsh.size(), test.npsh().size());
        for (int i = 0; i < test.npsh().size(); i++) {
            assertNear(said.npsh.get(i)[0], test.npsh().get(i).flow().si(), "flow of NPSH " + i);
            assertNear(said.npsh.get(i)[1], test.npsh().get(i).required().si(), "NPSH " + i);
        }
    }

    private static void assertNear(double expected, double actual, String what) {
        assertEquals(expected, actual, FACTORS * Math.abs(expected), what);
    }
}
