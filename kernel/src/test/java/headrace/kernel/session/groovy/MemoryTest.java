package headrace.kernel.session.groovy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.ref.WeakReference;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class MemoryTest extends CellTest {
    private static final List<WeakReference<Class<?>>> SEEN = new ArrayList<>();

    /** Called by cells with their own class. */
    public static void seen(Class<?> cell) {
        SEEN.add(new WeakReference<>(cell));
    }

    @Test
    void the_classes_of_cells_that_left_nothing_behind_are_collected() throws InterruptedException {
        SEEN.clear();
        for (int i = 0; i < 20; i++) {
            value("x = [1, 2].collect { it + 1 }; headrace.kernel.session.groovy.MemoryTest.seen(this.class); x.sum()");
        }
        assertEquals(20, SEEN.size());
        for (int i = 0; i < 50 && living() > 1; i++) {
            System.gc();
            Thread.sleep(20);
        }
        assertTrue(living() <= 1, () -> living() + " of 20 are still there");
    }

    @Test
    void what_lives_on_of_a_cell_works_after_its_class_was_forgotten() {
        value(
                "base = 10; add = { a, b = 1 -> a + b + base }; def twice(x) { 2 * add(x) }\nclass Pt { int x; def plus(Pt o) { new Pt(x: x + o.x) } }\np = new Pt(x: 1)");
        for (int i = 0; i < 5; i++) {
            value("y = { it * 2 }(3)");
            System.gc();
        }
        leadsTo("[13, 26, 3]", "[add(2), twice(2), (p + new Pt(x: 2)).x]");
        leadsTo("4", "def twice(x) { x + 2 }", "twice(2)");
    }

    @Test
    void getting_ready_leaves_nothing_behind() {
        session.warmUp();
        leadsTo("[]", "binding.variables.keySet() as List");
        assertEquals(1, session.count());
    }

    private static long living() {
        return SEEN.stream().filter(each -> each.get() != null).count();
    }
}
