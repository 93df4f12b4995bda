package headrace.numeric;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class FixedPowerTest {
    @ParameterizedTest
    @ValueSource(doubles = {-4, -1, -0.1, 0, 0.1, 0.5, 1, 1.6, 2, 2.5, 3, 4})
    void is_right_to_a_few_units_of_the_last_digit(double exponent) {
        FixedPower power = FixedPower.of(exponent);
        Random random = new Random(1);
        for (int i = 0; i < 20_000; i++) {
            double x = (0.5 + random.nextDouble()) * Math.pow(2, random.nextInt(40) - 20);
            assertEquals(1, power.at(x) / Math.pow(x, exponent), 2e-15);
        }
    }

    @Test
    void is_right_at_the_ends_of_its_parts_and_of_its_tables() {
        FixedPower root = FixedPower.of(0.5);
        for (int i = 0; i <= 128; i++) {
            double x = 1 + i / 128.0;
            assertEquals(Math.sqrt(x), root.at(x), 1e-15);
            assertEquals(Math.sqrt(x), root.at(Math.nextDown(x)), 1e-15);
        }
        for (double x : new double[] {0x1p-64, 0x1p-65, 0x1p63, 0x1p64, 0x1p65, 1e-300, 1e300}) {
            assertEquals(Math.sqrt(x), root.at(x), 1e-15 * Math.sqrt(x));
        }
    }

    @Test
    void takes_what_is_no_positive_number_as_the_language_does() {
        FixedPower power = FixedPower.of(-0.1);
        assertEquals(Double.POSITIVE_INFINITY, power.at(0));
        assertEquals(Double.NaN, power.at(-1));
        assertEquals(Double.NaN, power.at(Double.NaN));
        assertEquals(0, power.at(Double.POSITIVE_INFINITY));
    }
}
