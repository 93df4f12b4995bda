package headrace.kernel.session.groovy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.kernel.display.MimeBundle;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class InspectionTest extends CellTest {
    @ParameterizedTest
    @ValueSource(
            strings = {
                "quan|tity('230 gpm')",
                "|quantity",
                "quantity|",
                "quantity(|",
                "x = quantity('230| gpm')",
                "quantity('230 gpm'|)"
            })
    void a_word_is_explained_at_and_inside_of_its_call(String code) {
        String text = text(code, 0);
        assertTrue(text.startsWith("quantity(text)"), text);
        assertTrue(text.contains("Example: quantity('230 gpm')"), text);
    }

    @Test
    void a_choice_is_explained_by_its_own_line() {
        assertTrue(text("show(1, pla|ce: 'x')", 0).startsWith("place: the name of a place"));
    }

    @Test
    void a_variable_tells_its_type_and_value() {
        value("flow = 52.m3ph; list = [1, 2]; nothing = null");
        assertEquals("flow: Flow = 52 m³/h", text("flo|w", 0));
        assertEquals("list: ArrayList = [1, 2]", text("list|", 0));
        assertEquals("nothing = null", text("nothing|", 0));
    }

    @Test
    void a_variable_is_told_in_the_units_that_the_cells_print_in() {
        value("flow = 230.gpm; printedUnits('US')");
        assertEquals("flow: Flow = 230 gpm", text("flow|", 0));
    }

    @Test
    void a_variable_hides_a_word_of_its_name() {
        value("quantity = 3");
        assertEquals("quantity: Integer = 3", text("quantity|", 0));
    }

    @Test
    void a_value_of_a_class_of_the_users_is_not_asked_for_its_text() {
        value("class Book { String toString() { throw new Error('ran') } }\nbook = new Book(); books = [book]");
        assertEquals("book: Book = (shown when a cell shows it)", text("book|", 1));
        assertEquals("books: ArrayList = (shown when a cell shows it)", text("books|", 1));
    }

    @Test
    void members_units_methods_and_classes_are_explained() {
        value("flow = 52.m3ph; def area(double d) { 3 * d }");
        assertTrue(text("flow.pl|us", 0).contains("plus("));
        assertEquals("1.m3ph is a flow of 1 m³/h", text("52.m3|ph", 0));
        assertTrue(text("ar|ea(2)", 0).startsWith("area(double d)"));
        assertTrue(
                text("new java.util.concurrent.CountDownLatch(1); Fl|ow", 0).startsWith("class headrace.units.Flow"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"unheardOf|", "// quantity|", "'quantity|'", "|", "x = 1 +| 2", "unheardOf.quantity|"})
    void nothing_is_said_of_what_is_not_known(String code) {
        assertTrue(at(code, 0).isEmpty());
    }

    @Test
    void text_of_a_value_is_escaped_in_html() {
        value("x = '<script>alert(1)</script>'");
        assertFalse(at("x|", 1).orElseThrow().forms().get("text/html").contains("<script>"));
    }

    private String text(String code, int detail) {
        return at(code, detail).map(MimeBundle::text).orElse("nothing");
    }

    private java.util.Optional<MimeBundle> at(String code, int detail) {
        return session.inspect(code.replace("|", ""), code.indexOf('|'), detail);
    }
}
