package headrace.kernel.selfcheck;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.kernel.outside.InstalledKernel;
import headrace.kernel.session.Outcome;
import headrace.kernel.session.Output;
import headrace.kernel.session.Session;
import headrace.kernel.session.groovy.GroovySession;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class RehearsalTest {
    @Test
    void every_cell_of_it_runs_but_the_mistake_and_one_draws_a_chart() {
        List<Outcome> outcomes = new ArrayList<>();
        try (Session session = new GroovySession()) {
            for (String cell : Rehearsal.cells()) {
                Outcome outcome = session.run(cell, true, Output.UNHEARD);
                assertTrue(outcome instanceof Outcome.Failed == cell.equals(Rehearsal.MISTAKE), cell + ": " + outcome);
                outcomes.add(outcome);
            }
        }
        assertTrue(outcomes.stream()
                .anyMatch(outcome -> outcome instanceof Outcome.Value value
                        && value.bundle().forms().containsKey("image/svg+xml")));
    }

    @Test
    void a_kernel_that_serves_goes_through_it() throws Exception {
        assertTrue(Rehearsal.play(
                InstalledKernel.command("kernel", "--connection", "{connection_file}"), Rehearsal.cells()));
    }

    @Test
    void a_program_that_is_no_kernel_is_not_waited_for() throws Exception {
        assertFalse(Rehearsal.play(InstalledKernel.command("no-such-command", "{connection_file}"), Rehearsal.cells()));
    }
}
