package headrace.circuit.part.pipe;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class FrictionTest {
    /** Computed with 40 decimal digits and by two open libraries that agree to 13 digits. */
    @ParameterizedTest
    @CsvSource({
        "4e3, 0,    0.0399070140556",
        "1e4, 0,    0.0308829503535",
        "1e5, 0,    0.0179897730843",
        "1e6, 0,    0.0116450409980",
        "1e4, 1e-4, 0.0310372122010",
        "1e5, 1e-4, 0.0185138660775",
        "1e5, 1e-2, 0.0385035435273",
        "1e6, 1e-4, 0.0134414376925",
        "1e6, 0.05, 0.0715737538599",
        "1e7, 1e-5, 0.0089957117448"
    })
    void turbulent_friction_is_that_of_the_published_table(double reynolds, double roughness, double factor) {
        assertEquals(factor, Friction.of(roughness).factor(reynolds), 2e-13);
    }

    @Test
    void turbulent_friction_solves_its_equation_everywhere_to_rounding() {
        SplittableRandom random = new SplittableRandom(51);
        for (int i = 0; i < 100_000; i++) {
            double reynolds = 4000 * Math.pow(10, 6 * random.nextDouble());
            double roughness = random.nextInt(10) == 0 ? 0 : 0.05 * Math.pow(10, -6 * random.nextDouble());
            double factor = Friction.of(roughness).factor(reynolds);
            double left = 1 / Math.sqrt(factor);
            double right = -2 * Math.log10(roughness / 3.7 + 2.51 * left / reynolds);
            assertEquals(left, right, 1e-13 * left);
        }
    }

    @Test
    void laminar_friction_is_64_over_the_reynolds_number() {
        assertEquals(0.064, Friction.of(1e-3).factor(1000), 1e-15);
        assertEquals(0.032, Friction.of(1e-3).factor(2000), 1e-15);
    }

    /** By hand from the ends: 0.032 with −1.6e-5 at 2000, the cubic half-way is (f₁+f₂)/2 + 2000·(f₁′−f₂′)/8. */
    @Test
    void between_laminar_and_turbulent_a_cubic_joins_both_with_their_slopes() {
        Friction friction = Friction.of(0);
        double end = 0.0399070140556;
        // f = x⁻² of Colebrook's equation: df/dRe by hand is −2·f·b/(Re·(1+b)) with b = (2/ln 10)·√f.
        double bend = 2 / Math.log(10) * Math.sqrt(end);
        double slope = -2 * end * bend / (4000 * (1 + bend));
        assertEquals((0.032 + end) / 2 + 2000.0 / 8 * (-1.6e-5 - slope), friction.factor(3000), 1e-12);
        assertEquals(-1.6e-5, friction.slope(2000.0001, friction.factor(2000.0001)), 1e-10);
        assertEquals(slope, friction.slope(4000, end), 1e-12);
        assertEquals(0.032, friction.factor(2000.0001), 1e-8);
        assertEquals(end, friction.factor(3999.9999), 1e-8);
    }

    @Test
    void its_slope_is_the_derivative_of_the_factor_in_every_region() {
        for (double roughness : new double[] {0, 1e-4, 0.02}) {
            Friction friction = Friction.of(roughness);
            for (double reynolds : new double[] {500, 2100, 3100, 3900, 4100, 1e5, 1e7}) {
                double step = reynolds * 1e-5;
                double difference = (friction.factor(reynolds + step) - friction.factor(reynolds - step)) / (2 * step);
                assertEquals(
                        difference,
                        friction.slope(reynolds, friction.factor(reynolds)),
                        1e-6 * Math.abs(difference) + 1e-13);
            }
        }
    }

    @Test
    void the_head_of_a_pipe_rises_through_the_transition() {
        Friction friction = Friction.of(1e-4);
        double before = 0;
        for (double reynolds = 1500; reynolds < 5000; reynolds += 5) {
            double head = friction.factor(reynolds) * reynolds * reynolds;
            assertTrue(head > before, "at " + reynolds);
            before = head;
        }
    }
}
