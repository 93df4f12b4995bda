package headrace.kernel.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** A long session: what a cell leaves behind is small, and no thread stays. */
@Tag("soak")
@DisplayNameGeneration(ReplaceUnderscores.class)
class ManyCellsTest {
    private static final int CELLS = Boolean.getBoolean("headrace.soak") ? 10_000 : 1_000;
    private static final int FIRST = 1_000;
    private static final int BYTES_A_CELL = 2_048;

    private static final List<String> SMALL = List.of(
            "1 + 1",
            "x = 52.m3ph * 2",
            "[1, 2, 3].collect { it * 2 }.sum()",
            "println 'line'",
            "\"${x}\"",
            "y = 3; y > 2 ? 'more' : 'less'",
            "def half(a) { a / 2 }\nhalf(7)",
            "throw new IllegalStateException('small')",
            "no such thing",
            "for (i in 1..3) { z = i }; z");

    @Test
    void ten_thousand_small_cells_keep_less_than_two_kilobytes_each_and_no_thread() throws InterruptedException {
        try (Served served = Served.groovy()) {
            FrontEnd frontEnd = served.frontEnd();
            run(frontEnd, FIRST);
            long before = kept();
            int threads = ManagementFactory.getThreadMXBean().getThreadCount();
            run(frontEnd, CELLS);
            assertTrue(ManagementFactory.getThreadMXBean().getThreadCount() <= threads, "threads stay");
            long each = (kept() - before) / CELLS;
            assertTrue(each < BYTES_A_CELL, () -> each + " bytes a cell");
        }
    }

    private static void run(FrontEnd frontEnd, int cells) {
        for (int i = 0; i < cells; i++) {
            String code = SMALL.get(i % SMALL.size());
            String id = frontEnd.ask("execute_request", Map.of("code", code, "stop_on_error", false));
            boolean fails = code.startsWith("throw") || code.startsWith("no such");
            assertEquals(fails ? "error" : "ok", frontEnd.reply(id).text("status"));
            frontEnd.eventsOf(id);
            frontEnd.forget();
        }
    }

    /** Returns what is in use when all that can be collected is: objects, and what classes take beside them. */
    private static long kept() throws InterruptedException {
        clearSoftReferences();
        long least = Long.MAX_VALUE;
        for (int i = 0; i < 8; i++) {
            System.gc();
            Thread.sleep(50); // classes are unloaded, and references cleared, by other threads
            Runtime runtime = Runtime.getRuntime();
            least = Math.min(least, runtime.totalMemory() - runtime.freeMemory() + classes());
        }
        return least;
    }

    /** Groovy remembers classes softly: until memory is short. What cannot be had makes it short. */
    private static void clearSoftReferences() {
        List<long[]> most = new ArrayList<>();
        try {
            while (true) {
                most.add(new long[Integer.MAX_VALUE - 8]);
            }
        } catch (OutOfMemoryError wanted) {
            most.clear();
        }
    }

    private static long classes() {
        return ManagementFactory.getMemoryPoolMXBeans().stream()
                .filter(pool -> pool.getType() == MemoryType.NON_HEAP)
                .filter(pool -> pool.getName().contains("Metaspace"))
                .map(MemoryPoolMXBean::getUsage)
                .mapToLong(usage -> usage.getUsed())
                .sum();
    }
}
