package headrace.kernel.headless;

import headrace.kernel.notebook.Cell;
import headrace.kernel.notebook.CellOutput;
import headrace.kernel.notebook.Fields;
import headrace.kernel.notebook.Notebook;
import headrace.kernel.session.Fault;
import headrace.kernel.session.Outcome;
import headrace.kernel.session.Session;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;

/** Runs the cells of a notebook in a session, one after the other, and knows at any time how far it has come. */
final class Execution {
    private static final String MAY_FAIL = "raises-exception";

    private final RunInput input;
    private final Session session;
    private final TerminalView terminal;
    private final Recording recording;
    private final HeadlessRun.Choices choices;
    private final List<Ran> ran = new ArrayList<>();
    private volatile boolean stopped;
    private Ending ending = Ending.COMPLETE;
    private String failure;

    /** A cell that was begun. */
    private record Ran(int index, int number, Recording.Pad pad, Instant begun, AtomicReference<Instant> ended) {
        /** Returns the cell as it was left, with its times as notebook programs write them. */
        Cell.Code of(Cell.Code cell, boolean timed) {
            if (!timed) {
                return cell.ran(number, pad.outputs());
            }
            Fields times = Fields.NONE.with("iopub.execute_input", begun.toString());
            Instant end = ended.get();
            times = end == null ? times : times.with("shell.execute_reply", end.toString());
            return cell.ran(number, pad.outputs()).with(cell.metadata().with("execution", times));
        }
    }

    Execution(RunInput input, Session session, TerminalView terminal, HeadlessRun.Choices choices) {
        this.input = input;
        this.session = session;
        this.terminal = terminal;
        this.choices = choices;
        recording = new Recording(terminal);
    }

    /** Runs the cells until one fails or the user stops them. */
    void run() {
        List<Cell> cells = input.notebook().cells();
        try (Limits limits = new Limits(choices.most(), session)) {
            run(cells, limits);
        }
    }

    private void run(List<Cell> cells, Limits limits) {
        for (int i = 0; i < cells.size() && ending == Ending.COMPLETE; i++) {
            Cell cell = cells.get(i);
            if (stopped) {
                end(Ending.STOPPED, null);
            } else if (cell instanceof Cell.Markdown text) {
                firstHeading(text.source()).ifPresent(terminal::heading);
            } else if (RunInput.runs(cell)) {
                run(i, cell, limits);
            }
        }
    }

    private void run(int index, Cell cell, Limits limits) {
        Recording.Pad pad = recording.pad();
        Ran begun = begin(index, pad);
        int number = begun.number();
        terminal.cell(number, cell.source());
        Outcome[] left = new Outcome[1];
        boolean late = limits.passed(() -> left[0] = session.run(input.codeToRun(index), true, pad));
        Outcome outcome = left[0];
        begun.ended().set(Instant.now());
        pad.settle();
        if (choices.timings()) {
            terminal.took(Duration.between(begun.begun(), begun.ended().get()));
        }
        if (outcome instanceof Outcome.Value value) {
            terminal.shown(value.bundle());
            pad.end(new CellOutput.Result(value.bundle(), number));
        } else if (outcome instanceof Outcome.Failed failed) {
            Fault fault = failed.fault();
            terminal.failed(fault);
            pad.end(new CellOutput.Failure(fault.name(), fault.message(), fault.lines()));
            if (stopped) {
                end(Ending.STOPPED, fault.name());
            } else if (late) {
                end(Ending.TIMED_OUT, fault.name());
            } else if (!cell.isTagged(MAY_FAIL)) {
                end(Ending.FAILED, fault.name());
            }
        }
    }

    private synchronized Ran begin(int index, Recording.Pad pad) {
        Ran begun = new Ran(index, ran.size() + 1, pad, Instant.now(), new AtomicReference<>());
        ran.add(begun);
        return begun;
    }

    private synchronized void end(Ending how, String name) {
        ending = how;
        failure = name;
    }

    /** Stops the running cell, and begins no other. */
    void stop() {
        stopped = true;
        session.interrupt();
    }

    /** Returns the notebook as far as it has run. */
    synchronized Executed executed() {
        List<Cell> cells = new ArrayList<>(input.notebook().cells());
        for (Ran each : ran) {
            Cell.Code code = (Cell.Code) cells.get(each.index());
            cells.set(each.index(), each.of(code, choices.timings()));
        }
        Notebook notebook = input.notebook().withCells(cells);
        Ending how = stopped ? Ending.STOPPED : ending;
        int all = (int) cells.stream().filter(RunInput::runs).count();
        return new Executed(notebook, how, ran.size(), all - ran.size(), Optional.ofNullable(failure));
    }

    private static Optional<String> firstHeading(String markdown) {
        return markdown.lines()
                .filter(line -> line.matches("#{1,6} .*"))
                .map(line -> line.replaceFirst("#+ ", "").strip())
                .findFirst();
    }
}
