package headrace.kernel.session.groovy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.fail;

import headrace.kernel.session.Fault;
import headrace.kernel.session.Outcome;
import org.junit.jupiter.api.AfterEach;

/** Runs cells in a fresh session for each test. */
abstract class CellTest {
    final GroovySession session = new GroovySession();
    final Recorded output = new Recorded();

    @AfterEach
    void end() {
        session.close();
    }

    /** Runs a cell that must not fail and returns its value as text, or "" if it has none. */
    final String value(String code) {
        Outcome outcome = session.run(code, true, output);
        if (outcome instanceof Outcome.Failed failed) {
            return fail("The cell failed: " + failed.fault().lines());
        }
        return outcome instanceof Outcome.Value value ? value.bundle().text() : "";
    }

    /** Runs cells that must not fail and returns the value of the last. */
    final String values(String... cells) {
        String last = "";
        for (String cell : cells) {
            last = value(cell);
        }
        return last;
    }

    /** Runs a cell that must fail. */
    final Fault fault(String code) {
        Outcome outcome = session.run(code, true, output);
        if (outcome instanceof Outcome.Failed failed) {
            return failed.fault();
        }
        return fail("The cell did not fail but ended with " + outcome);
    }

    /** Says that the last of these cells has this value. */
    final void leadsTo(String expected, String... cells) {
        assertEquals(expected, values(cells));
    }
}
