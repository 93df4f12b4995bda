package headrace.kernel.session.groovy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.kernel.session.Fault;
import headrace.kernel.session.Outcome;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
@Timeout(60)
class InterruptTest extends CellTest {
    private static final String STOPPED = "cell-stopped";
    private static final String LEFT_BEHIND = "cell-left-behind";

    @ParameterizedTest
    @ValueSource(
            strings = {
                "begun(); while (true) {}",
                "begun(); for (;;) { x = 1 }",
                "begun(); int i = 0; do { i++ } while (i != -1 || true)",
                "begun(); def f = { -> while (true) { [1].each { it } } }; f()",
                "begun(); (1..Long.MAX_VALUE).each { a -> (1..10).collect { it * a } }",
                "begun(); Integer.MAX_VALUE.times { a -> Integer.MAX_VALUE.times { b -> a + b } }",
                "def fib(n) { n < 2 ? n : fib(n - 1) + fib(n - 2) }\nbegun(); fib(90)",
                "@groovy.transform.CompileStatic long fib(int n) { n < 2 ? n : fib(n - 1) + fib(n - 2) }\nbegun(); fib(90)",
                "begun(); Thread.sleep(1_000_000)",
                "begun(); sleep(1_000_000)",
                "begun(); sleep(1_000_000) { false }",
                "begun(); new Object().with { o -> synchronized (o) { o.wait() } }",
                "begun(); new java.util.concurrent.LinkedBlockingQueue().take()",
                "begun(); new java.util.concurrent.CountDownLatch(1).await()",
                "begun(); new java.util.concurrent.Semaphore(0).acquire()",
                "begun(); while (true) { try { Thread.sleep(10) } catch (Throwable t) { } }",
                "begun(); while (true) { try { while (true) { } } catch (Throwable t) { } finally { y = 1 } }",
                "begun(); try { while (true) { } } finally { while (true) { } }",
                "begun(); while (true) { try { Thread.sleep(10) } catch (InterruptedException e) { } }",
                "begun(); java.util.stream.Stream.iterate(1) { it + 1 }.filter { it < 0 }.findFirst()",
                "begun(); java.util.stream.IntStream.range(0, 1 << 30).parallel().map { i -> i * 2 }.sum()",
                "class Turn { void go() { for (;;) { } } }\nbegun(); new Turn().go()",
                "begun(); new Iterator() { boolean hasNext() { true }\nObject next() { 1 } }.each { }",
                "begun(); [3, 1, 2].sort { a, b -> while (true) { }; 0 }",
                "begun(); headrace.kernel.session.groovy.LongWork.polling()",
                "begun(); Eval.me('while (true) { }')",
                "begun(); new GroovyShell().evaluate('def f() { for (;;) { } }; f()')",
                "begun(); new GroovyClassLoader().parseClass('class A { def go() { while (true) { } } }').newInstance().go()",
                "begun(); println System.in.newReader().readLine()"
            })
    void stops(String code) throws InterruptedException {
        assertEquals(STOPPED, interrupted(code).name());
        leadsTo("3", "1 + 2");
    }

    @Test
    void a_thread_of_the_cell_stops_with_it() throws InterruptedException {
        interrupted("t = Thread.start { while (true) { } }; begun(); t.join()");
        leadsTo("false", "t.join(); t.alive");
    }

    @Test
    void a_thread_of_an_earlier_cell_goes_on() throws InterruptedException {
        value("go = true; t = Thread.start { while (go) { Thread.sleep(1) } }");
        interrupted("begun(); while (true) { }");
        leadsTo("true", "t.alive");
        leadsTo("false", "go = false; t.join(); t.alive");
    }

    @Test
    void code_that_hears_nothing_is_left_behind_and_the_session_goes_on() throws InterruptedException {
        value("lock = new java.util.concurrent.locks.ReentrantLock(); kept = 5");
        value("Thread.start { lock.lock() }.join()");
        Fault fault = interrupted("begun(); lock.lock()");
        assertEquals(LEFT_BEHIND, fault.name());
        assertTrue(fault.message().contains("ReentrantLock.lock"), fault.lines()::toString);
        leadsTo("5", "kept");
        leadsTo("30", "java.util.stream.IntStream.range(0, 10).parallel().map { 3 }.sum()");
        assertEquals(STOPPED, interrupted("begun(); while (true) {}").name());
    }

    @Test
    void an_endless_library_call_is_left_behind_too() throws InterruptedException {
        Fault fault = interrupted("begun(); headrace.kernel.session.groovy.LongWork.deaf()");
        LongWork.deaf = false;
        assertEquals(LEFT_BEHIND, fault.name());
        assertTrue(fault.message().contains("LongWork.deaf"), fault::message);
        assertTrue(fault.lines().contains("Cell 1, line 1:"), fault.lines()::toString);
        leadsTo("1", "1");
    }

    @Test
    void says_in_which_line_the_cell_was() throws InterruptedException {
        Fault fault = interrupted("x = 1\nbegun()\nwhile (true) { x++ }\n");
        assertTrue(fault.lines().contains("Cell 1, line 3:"), fault.lines()::toString);
        assertTrue(fault.lines().contains("    while (true) { x++ }"), fault.lines()::toString);
    }

    @Test
    void what_was_assigned_before_the_stop_stays() throws InterruptedException {
        interrupted("x = 42; begun(); while (true) { }");
        leadsTo("42", "x");
    }

    @Test
    void a_cell_that_swallows_the_stop_and_ends_counts_as_stopped() throws InterruptedException {
        assertEquals(
                STOPPED,
                interrupted("begun(); try { while (true) { } } catch (Throwable t) { }\n7")
                        .name());
    }

    @Test
    void no_flag_is_left_on_the_thread_of_the_next_cell() throws InterruptedException {
        interrupted("begun(); while (true) { }");
        leadsTo("false", "Thread.currentThread().interrupted");
    }

    @Test
    void an_interrupt_of_an_idle_session_does_nothing() {
        session.interrupt();
        leadsTo("2", "Thread.sleep(1); 2");
        session.interrupt();
        leadsTo("3", "Thread.sleep(1); 3");
        assertFalse(Thread.currentThread().isInterrupted());
    }

    /** Runs a cell, interrupts it after it has said that it begun, and returns how it failed. */
    private Fault interrupted(String code) throws InterruptedException {
        CountDownLatch begun = new CountDownLatch(1);
        Recorded heard = new Recorded() {
            @Override
            public void print(String text) {
                begun.countDown();
            }

            @Override
            public Optional<String> ask(String prompt, boolean secret) {
                try {
                    Thread.sleep(1_000_000);
                } catch (InterruptedException e) {
                    throw new IllegalStateException(e);
                }
                return Optional.empty();
            }
        };
        CompletableFuture<Outcome> outcome = CompletableFuture.supplyAsync(
                () -> session.run(code.replace("begun()", "print('begun')"), true, heard));
        begun.await();
        Thread.sleep(20);
        session.interrupt();
        return ((Outcome.Failed) outcome.join()).fault();
    }
}
