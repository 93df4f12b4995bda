package headrace.chart.mark;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumSet;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class InkTest {
    /** WCAG 2.2: black on white is 21:1 and grey #767676 is the lightest that reaches 4.5:1. */
    @Test
    void is_measured_against_white_as_the_guideline_says() {
        assertEquals(21, Ink.contrastToWhite(0x000000), 1e-9);
        assertEquals(1, Ink.contrastToWhite(0xFFFFFF), 1e-9);
        assertTrue(Ink.contrastToWhite(0x767676) >= 4.5);
        assertTrue(Ink.contrastToWhite(0x777777) < 4.5);
    }

    /** WCAG 2.2, success criterion 1.4.11: 3:1 for what must be seen to understand a picture. */
    @Test
    void is_dark_enough_for_lines() {
        EnumSet<Ink> forAreas = EnumSet.of(Ink.SKY, Ink.ORANGE);
        for (Ink ink : EnumSet.complementOf(forAreas)) {
            assertTrue(Ink.contrastToWhite(ink.rgb()) >= 2.95, ink.name());
        }
    }

    /** WCAG 2.2, success criterion 1.4.3: 4.5:1 for small lettering. */
    @ParameterizedTest
    @EnumSource
    void is_dark_enough_for_lettering(Ink ink) {
        assertTrue(Ink.contrastToWhite(ink.letteringRgb()) >= 4.5);
    }
}
