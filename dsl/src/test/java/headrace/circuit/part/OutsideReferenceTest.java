package headrace.circuit.part;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import headrace.circuit.part.fitting.FittingLoss;
import headrace.circuit.part.pipe.Friction;
import headrace.circuit.part.valve.Orifice;
import headrace.units.FlowCoefficient;
import headrace.units.Length;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

/** Holds friction, fittings and flow coefficients against an open library of other people: Debian's python3-fluids. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class OutsideReferenceTest {
    private static final Path PYTHON = Path.of("/usr/bin/python3");
    private static final Path FLUIDS = Path.of("/usr/lib/python3/dist-packages/fluids");
    private static final int HANGING_SECONDS = 240;
    private static final long SEED = 20261125;

    /** That library rounds the factor between K and Kv to 1.6e9; by hand it is 2·10²·3600²·(π/4)². */
    private static final double ROUNDED = 1.6e9 / (200 * 3600.0 * 3600.0 * Math.PI * Math.PI / 16);

    /** A case for the library, with our answer. */
    private record Case(String asked, double ours, double relative) {}

    @BeforeAll
    static void needs_the_library() {
        if (Files.exists(FLUIDS) && Files.exists(PYTHON)) {
            return;
        }
        if ("true".equals(System.getenv("CI"))) {
            fail("This test needs Debian's package python3-fluids, and CI is true");
        }
        Assumptions.abort("This test needs Debian's package python3-fluids");
    }

    @Test
    void a_thousand_random_cases_of_friction_and_fittings_agree() throws IOException, InterruptedException {
        SplittableRandom random = new SplittableRandom(SEED);
        List<Case> cases = new ArrayList<>();
        for (int i = 0; i < 1000; i++) {
            cases.add(drawn(i % 10, random));
        }
        List<String> theirs = answers(cases);
        assertEquals(cases.size(), theirs.size());
        for (int i = 0; i < cases.size(); i++) {
            Case one = cases.get(i);
            double reference = Double.parseDouble(theirs.get(i));
            assertEquals(reference, one.ours(), one.relative() * Math.abs(reference), one.asked());
        }
    }

    private static Case drawn(int kind, SplittableRandom random) {
        return switch (kind) {
            case 0, 1 -> twoK(random);
            case 2, 3 -> threeK(random);
            case 4 -> coefficient(random);
            case 5 -> velocityHeads(random);
            default -> friction(random);
        };
    }

    private static double logarithmic(SplittableRandom random, double low, double high) {
        return low * Math.pow(high / low, random.nextDouble());
    }

    private static Case friction(SplittableRandom random) {
        double reynolds = logarithmic(random, 4000, 1e9);
        double roughness = random.nextInt(8) == 0 ? 0 : logarithmic(random, 1e-7, 0.05);
        return new Case(
                "colebrook " + reynolds + " " + roughness,
                Friction.of(roughness).factor(reynolds),
                1e-9);
    }

    private static Case twoK(SplittableRandom random) {
        double inches = logarithmic(random, 0.25, 40);
        double reynolds = logarithmic(random, 10, 1e7);
        double k1 = 3000 * random.nextDouble();
        double k = 10 * random.nextDouble();
        return new Case(
                String.join(" ", "two", "" + inches, "" + reynolds, "" + k1, "" + k),
                total(FittingLoss.twoK(k1, k), inches, reynolds),
                1e-12);
    }

    private static Case threeK(SplittableRandom random) {
        double inches = logarithmic(random, 0.25, 40);
        double reynolds = logarithmic(random, 10, 1e7);
        double k1 = 3000 * random.nextDouble();
        double ki = 3 * random.nextDouble();
        double kd = 3 + 2 * random.nextDouble();
        return new Case(
                String.join(" ", "three", "" + inches, "" + reynolds, "" + k1, "" + ki, "" + kd),
                total(FittingLoss.threeK(k1, ki, kd), inches, reynolds),
                1e-12);
    }

    private static double total(FittingLoss loss, double inches, double reynolds) {
        return loss.constantAt(Length.inches(inches)) + loss.overReynolds() / reynolds;
    }

    private static Case coefficient(SplittableRandom random) {
        double value = logarithmic(random, 0.01, 10_000);
        return random.nextBoolean()
                ? new Case("kv " + value, FlowCoefficient.kv(value).toCv(), 1e-9)
                : new Case("cv " + value, FlowCoefficient.cv(value).kv(), 1e-9);
    }

    private static Case velocityHeads(SplittableRandom random) {
        double metres = logarithmic(random, 0.01, 1);
        double value = logarithmic(random, 0.1, 1000);
        return random.nextBoolean()
                ? new Case(
                        "k " + value + " " + metres,
                        ROUNDED * Orifice.kOf(FlowCoefficient.kv(value), Length.metres(metres)),
                        1e-9)
                : new Case(
                        "kofk " + value + " " + metres,
                        Math.sqrt(ROUNDED)
                                * Orifice.ofK(value, Length.metres(metres)).kv(),
                        1e-9);
    }

    private static List<String> answers(List<Case> cases) throws IOException, InterruptedException {
        Path script =
                Path.of("src", "test", "python", "friction_and_fittings.py").toAbsolutePath();
        Path asked = Files.createTempFile("asked", ".txt");
        Path answered = Files.createTempFile("answered", ".txt");
        Files.write(asked, cases.stream().map(Case::asked).toList());
        Process process = new ProcessBuilder(PYTHON.toString(), script.toString())
                .redirectErrorStream(true)
                .redirectInput(asked.toFile())
                .redirectOutput(answered.toFile())
                .start();
        boolean ended = process.waitFor(HANGING_SECONDS, TimeUnit.SECONDS);
        process.destroyForcibly();
        String printed = Files.readString(answered, StandardCharsets.UTF_8);
        Files.delete(asked);
        Files.delete(answered);
        assertTrue(ended && process.exitValue() == 0, () -> "The library did not answer; it said:\n" + printed);
        return printed.lines().toList();
    }
}
