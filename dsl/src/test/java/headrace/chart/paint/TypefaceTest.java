package headrace.chart.paint;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.awt.geom.Area;
import java.awt.geom.Rectangle2D;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class TypefaceTest {
    @Test
    void has_the_letters_of_the_trade() {
        String letters = "ABCXYZabcxyz0123456789 .,;:!?()[]{}<>/\\|+-=*%&#@'\"_~^"
                + "ÄÖÜäöüßéèêàçñøåÅŁłčšž–—−·×÷±≈≤≥≠√∞°′″µΔΣΩηρφψλτνπ¹²³⁰⁴⁵⁶⁷⁸⁹⁻₁₂€£$¥‰…“”‘’„«»\u2009\u00a0";
        letters.codePoints()
                .forEach(letter -> assertTrue(Typeface.REGULAR.has(letter), new String(Character.toChars(letter))));
    }

    /** The figures of the typeface are 497 thousandths of the size wide, as its advance table says. */
    @ParameterizedTest
    @ValueSource(doubles = {11, 13, 40})
    void sets_letters_as_wide_as_its_file_says(double size) {
        assertEquals(0.497 * size, Typeface.REGULAR.width("0", size), 1e-9);
        assertEquals(3 * Typeface.REGULAR.width("0", size), Typeface.REGULAR.width("000", size), 1e-9);
        assertEquals(0, Typeface.REGULAR.width("", size));
    }

    @Test
    void draws_a_ring_for_an_o_and_nothing_for_a_space() {
        Area letter = new Area(Typeface.REGULAR.outline("o", 100, 0, 0));
        Rectangle2D bounds = letter.getBounds2D();
        assertTrue(!letter.contains(bounds.getCenterX(), bounds.getCenterY()));
        assertTrue(letter.contains(bounds.getX() + 4, bounds.getCenterY()));
        assertTrue(bounds.getMaxY() < 3 && bounds.getMinY() > -60);
        assertTrue(new Area(Typeface.REGULAR.outline(" ", 100, 0, 0)).isEmpty());
    }

    /** The typeface's o and 0 are drawn alike to the left and to the right; a curve read wrongly would lean. */
    @ParameterizedTest
    @ValueSource(strings = {"o", "0", "O"})
    void draws_round_letters_round(String text) {
        Area letter = new Area(Typeface.REGULAR.outline(text, 1000, 0, 0));
        Rectangle2D bounds = letter.getBounds2D();
        int points = 0;
        int alike = 0;
        for (double x = bounds.getX() + 3; x < bounds.getCenterX(); x += 7) {
            for (double y = bounds.getY() + 3; y < bounds.getMaxY(); y += 7) {
                points++;
                alike += letter.contains(x, y) == letter.contains(2 * bounds.getCenterX() - x, y) ? 1 : 0;
            }
        }
        assertTrue(alike > 0.98 * points, alike + " of " + points);
    }

    /** A letter made of others: the accent stands above the letter, neither is lost. */
    @Test
    void puts_accents_on_their_letters() {
        Rectangle2D plain = Typeface.REGULAR.outline("E", 100, 0, 0).getBounds2D();
        Area accented = new Area(Typeface.REGULAR.outline("É", 100, 0, 0));
        assertTrue(accented.getBounds2D().getMinY() < plain.getMinY() - 10);
        assertEquals(plain.getMaxY(), accented.getBounds2D().getMaxY(), 1);
        assertTrue(accented.contains(plain.getX() + 4, plain.getCenterY() - 10));
    }

    @Test
    void shows_an_empty_box_for_a_letter_that_it_lacks() {
        assertTrue(!Typeface.REGULAR.has(0x1F600));
        assertTrue(Typeface.REGULAR.width("\uD83D\uDE00", 10) > 0);
    }

    @ParameterizedTest
    @ValueSource(strings = {"Ågj", "ÉÊẤ", "f", "jjj", "W|y", "10⁻⁶ m³/h", "Q̂"})
    void keeps_every_stroke_inside_the_box_that_labels_reserve(String text) {
        Lettering lettering = new Lettering(text, Typeface.REGULAR, 13, 0, 50, 80);
        Rectangle2D strokes = lettering.outline().getBounds2D();
        Box box = lettering.box();
        assertTrue(box.grown(1e-9)
                .holds(new Box(strokes.getX(), strokes.getY(), strokes.getWidth(), strokes.getHeight())));
    }

    @Test
    void needs_no_font_of_the_machine() {
        noClasses()
                .should()
                .dependOnClassesThat()
                .haveFullyQualifiedName("java.awt.Font")
                .orShould()
                .dependOnClassesThat()
                .resideInAPackage("java.awt.font..")
                .orShould()
                .dependOnClassesThat()
                .haveFullyQualifiedName("java.awt.FontMetrics")
                .because("a machine with nothing but a JDK may have no fonts, and the JDK fails without them")
                .check(new ClassFileImporter()
                        .withImportOption(new ImportOption.DoNotIncludeTests())
                        .importPackages("headrace.chart"));
    }
}
