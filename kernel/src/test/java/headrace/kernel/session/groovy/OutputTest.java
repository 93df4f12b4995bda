package headrace.kernel.session.groovy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.kernel.session.Fault;
import headrace.kernel.session.groovy.Recorded.Event;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class OutputTest extends CellTest {
    @Test
    void every_way_to_print_reaches_the_cell() {
        value(
                "print 1; println 2; println(); printf('%d|', 3); System.out.print('4'); out = 5\nSystem.out.println(out)");
        assertEquals("12\n\n3|45\n", output.out().replace("\r\n", "\n"));
    }

    @Test
    void printing_from_methods_closures_and_classes_reaches_the_cell() {
        value(
                "def m() { println 'm' }\nclass K { def go() { println 'k' } }\nm(); new K().go(); [1].each { println 'c' }");
        assertEquals("m\nk\nc\n", output.out());
    }

    @Test
    void output_and_errors_keep_their_order() {
        value("print 'a'; System.err.print 'b'; print 'c'; System.err.print 'd'");
        assertEquals(
                List.of(new Event("out", "a"), new Event("err", "b"), new Event("out", "c"), new Event("err", "d")),
                output.events);
    }

    @Test
    void a_character_whose_bytes_come_one_by_one_arrives_whole() {
        value("'η = 76 % 🙂'.getBytes('UTF-8').each { System.out.write(it as int) }; System.out.flush()");
        assertEquals("η = 76 % 🙂", output.out());
    }

    @Test
    void bytes_that_are_no_text_are_shown_as_replacement_characters() {
        value("System.out.write([0x41, 0xFF, 0x42] as byte[]); System.out.flush()");
        assertEquals("A\uFFFDB", output.out());
    }

    @Test
    void a_cell_that_closes_its_output_does_not_close_that_of_the_next() {
        values("System.out.withWriter { it << 'first' }; System.err.close(); System.in.close()", "print 'second'");
        assertEquals("firstsecond", output.out());
    }

    @Test
    void a_background_thread_prints_to_the_cell_that_started_it() {
        Recorded first = new Recorded();
        Recorded second = new Recorded();
        session.run(
                "gate = new java.util.concurrent.CountDownLatch(1); t = Thread.start { gate.await(); println 'late' }",
                true,
                first);
        session.run("println 'second'; gate.countDown(); t.join()", true, second);
        assertEquals("late\n", first.out());
        assertEquals("second\n", second.out());
    }

    @Test
    void a_thread_of_the_common_pool_prints_to_the_latest_cell() {
        value(
                "java.util.stream.IntStream.range(0, 64).parallel().forEach { i -> synchronized (Object) { print 'x' } }");
        Recorded second = new Recorded();
        session.run(
                "java.util.stream.IntStream.range(0, 64).parallel().forEach { i -> synchronized (Object) { print 'y' } }",
                true,
                second);
        assertEquals("x".repeat(64), output.out());
        assertEquals("y".repeat(64), second.out());
    }

    @Test
    void what_the_program_itself_prints_goes_where_it_always_went() {
        value("print 'cell'");
        PrintStream led = System.out;
        ByteArrayOutputStream program = new ByteArrayOutputStream();
        System.setOut(new PrintStream(program, true));
        try {
            System.out.print("program");
        } finally {
            System.setOut(led);
        }
        assertEquals("program", program.toString());
        System.err.print("");
        assertEquals("cell", output.out());
    }

    @Test
    void a_failure_on_a_background_thread_is_told_in_its_cell_and_the_session_lives() {
        value(
                "def broken() {\n  throw new IllegalStateException('no such log')\n}\nThread.start('reader') { broken() }.join()");
        assertTrue(output.err().contains("A thread of this cell, reader, ended with"), output::err);
        assertTrue(output.err().contains("IllegalStateException: no such log"), output::err);
        assertTrue(output.err().contains("Cell 1, line 2:"), output::err);
        leadsTo("2", "1 + 1");
    }

    @Test
    void input_asks_with_its_prompt_and_returns_the_answer() {
        output.answers.add("52");
        leadsTo("104", "2 * (input('Flow: ') as int)");
        assertTrue(output.events.contains(new Event("ask", "Flow: ")));
    }

    @Test
    void standard_input_asks_for_one_line_at_a_time() {
        output.answers.add("first");
        output.answers.add("second");
        leadsTo("[first, second]", "r = System.in.newReader(); [r.readLine(), r.readLine()]");
        output.answers.add("7");
        output.answers.add("Zürich");
        leadsTo("[7, Zürich]", "s = new Scanner(System.in); [s.nextLine(), s.nextLine()]");
        assertEquals(4, output.events.size());
    }

    @Test
    void input_where_nobody_can_be_asked_is_refused() {
        Fault fault = fault("x = 1\ninput('Flow: ')");
        assertEquals("nobody-to-ask", fault.name());
        assertTrue(fault.message().contains("Flow:"));
        assertTrue(fault.lines().contains("Cell 1, line 2:"), fault.lines()::toString);
        assertEquals("nobody-to-ask", fault("System.in.newReader().readLine()").name());
    }

    @Test
    void show_shows_on_the_way_and_anew_in_its_place() {
        value("show(1); show('two', place: 'p'); print 'x'; show('three', place: 'p'); clear()");
        assertEquals(
                List.of(
                        new Event("show", "1"),
                        new Event("show", "two"),
                        new Event("out", "x"),
                        new Event("update", "three"),
                        new Event("clear", "")),
                output.events);
    }

    @Test
    void a_place_shown_by_an_earlier_cell_is_drawn_anew_by_a_later_one() {
        values("show(1, place: 'p')", "show(2, place: 'p')");
        assertEquals(List.of(new Event("show", "1"), new Event("update", "2")), output.events);
    }

    @Test
    void a_long_calculation_shows_how_far_it_is_and_clears_it_at_the_end() {
        value("headrace.kernel.session.groovy.LongWork.progressing(20, 60)");
        List<String> kinds = output.events.stream().map(Event::kind).toList();
        assertEquals("progress ended", kinds.get(kinds.size() - 1));
        assertTrue(kinds.stream().limit(kinds.size() - 1).allMatch("progress"::equals));
        assertTrue(kinds.size() > 2 && kinds.size() < 10, kinds::toString);
        assertTrue(output.events.get(0).text().startsWith("weighing <tests>: "));
    }

    @Test
    void a_short_calculation_shows_nothing_on_its_way() {
        value("headrace.kernel.session.groovy.LongWork.progressing(20, 0)");
        assertEquals(List.of(), output.events);
    }
}
