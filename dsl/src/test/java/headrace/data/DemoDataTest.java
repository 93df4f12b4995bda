package headrace.data;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.curve.CurvePoint;
import headrace.curve.PumpCurve;
import headrace.curve.PumpTest;
import headrace.curve.TestPoint;
import headrace.units.Flow;
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

    /** The ranges are common practice for radial pumps of building services, no source. */
    @ParameterizedTest
    @MethodSource("pumps")
    void a_pump_could_have_been_built(InventedPump pump) {
        PumpTest test = read(pump);
        PumpCurve curve = PumpCurve.fit(test);
        CurvePoint best = curve.bestEfficiencyPoint();
        assertEquals(pump.flow(), best.flow().toCubicMetresPerHour(), 0.08 * pump.flow());
        assertEquals(pump.head(), best.head().metres(), 0.08 * pump.head());
        assertEquals(pump.efficiency(), best.efficiency().value(), 0.008);
        assertTrue(best.efficiency().value() < 0.9);
        for (TestPoint point : test.points()) {
            double hydraulic = test.liquid().pressureOf(point.head()).pascals()
                    * point.flow().si();
            assertTrue(hydraulic / point.shaftPower().watts() < 0.9);
        }
        assertBetween(1.05, 1.4, curve.headAt(Flow.ZERO).over(best.head()).value());
        assertBetween(
                0.25, 0.6, curve.shaftPowerAt(Flow.ZERO).over(best.shaftPower()).value());
        double rpm = test.speed().toRevolutionsPerMinute();
        double specificSpeed =
                rpm * Math.sqrt(best.flow().si()) / Math.pow(best.head().metres(), 0.75);
        assertBetween(12, 50, specificSpeed);
        double tip = Math.PI * test.impellerDiameter().orElseThrow().metres() * rpm / 60;
        assertBetween(0.4, 0.6, 9.80665 * best.head().metres() / (tip * tip));
    }

    @Test
    void only_the_plover_droops() {
        for (InventedPump pump : pumps()) {
            assertEquals(
                    pump.name().equals("Plover 40"),
                    PumpCurve.fit(read(pump)).droop().isPresent(),
                    pump.name());
        }
    }

    private static PumpTest read(InventedPump pump) {
        return PumpFile.read(DEMO.resolve("pumps").resolve(pump.fileName()));
    }

    private static void assertBetween(double least, double most, double actual) {
        assertTrue(least <= actual && actual <= most, actual + " is not within " + least + " and " + most);
    }
}
