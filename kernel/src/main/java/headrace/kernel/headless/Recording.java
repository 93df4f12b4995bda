package headrace.kernel.headless;

import headrace.kernel.display.HowFar;
import headrace.kernel.display.MimeBundle;
import headrace.kernel.notebook.CellOutput;
import headrace.kernel.session.Output;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Keeps what the cells of a run print and show, as a notebook keeps it, and tells the terminal at once.
 *
 * <p>Something shown anew under a name replaces what any cell showed under that name. Safe for use by the threads that
 * a cell starts.
 */
final class Recording {
    /** How much of what one cell prints is kept, so that a runaway loop fills neither memory nor page. */
    static final int KEPT_CHARACTERS = 1_000_000;

    private final Map<String, List<Entry>> named = new HashMap<>();
    private final TerminalView terminal;

    Recording(TerminalView terminal) {
        this.terminal = terminal;
    }

    /** Returns a place for the outputs of the next cell. */
    Pad pad() {
        return new Pad();
    }

    /** Something a cell left; what it is can change while it keeps its place. */
    private static final class Entry {
        private CellOutput output;
        private PrintedText printed;

        /** A place that was emptied is no output any more. */
        boolean isEmptied() {
            return output instanceof CellOutput.Shown shown
                    && shown.bundle().forms().values().stream().allMatch(String::isBlank);
        }

        CellOutput kept() {
            return printed == null
                    ? output
                    : new CellOutput.Stream(((CellOutput.Stream) output).name(), printed.kept());
        }
    }

    /** The outputs of one cell. */
    final class Pad implements Output {
        private final List<Entry> entries = new ArrayList<>();
        private final Set<Entry> drawnAnew = new LinkedHashSet<>();
        private boolean clearing;

        @Override
        public void print(String text) {
            print("stdout", text);
        }

        @Override
        public void printError(String text) {
            print("stderr", text);
        }

        private void print(String stream, String text) {
            synchronized (Recording.this) {
                terminal.printed(text, stream.equals("stderr"));
                clearIfDue();
                Entry last = entries.isEmpty() ? null : entries.get(entries.size() - 1);
                if (last == null
                        || !(last.output instanceof CellOutput.Stream open
                                && open.name().equals(stream))) {
                    last = added(new CellOutput.Stream(stream, ""));
                    last.printed = new PrintedText(KEPT_CHARACTERS);
                }
                last.printed.append(text);
            }
        }

        @Override
        public void show(MimeBundle bundle, Optional<String> id) {
            synchronized (Recording.this) {
                clearIfDue();
                Entry entry = added(new CellOutput.Shown(bundle));
                if (id.isPresent()) {
                    named.computeIfAbsent(id.get(), any -> new ArrayList<>()).add(entry);
                    drawnAnew.add(entry);
                    terminal.passing(bundle);
                } else {
                    terminal.shown(bundle);
                }
            }
        }

        @Override
        public void update(MimeBundle bundle, String id) {
            synchronized (Recording.this) {
                List<Entry> places = named.getOrDefault(id, List.of());
                places.forEach(entry -> entry.output = new CellOutput.Shown(bundle));
                drawnAnew.addAll(places);
                terminal.passing(bundle);
            }
        }

        @Override
        public void clear(boolean wait) {
            synchronized (Recording.this) {
                clearing = true;
                if (!wait) {
                    clearIfDue();
                }
            }
        }

        /** How far a calculation has come is no output that a notebook keeps. */
        @Override
        public void progress(HowFar far) {
            synchronized (Recording.this) {
                terminal.progress(far);
            }
        }

        @Override
        public void progressEnded() {
            synchronized (Recording.this) {
                terminal.progressEnded();
            }
        }

        @Override
        public Optional<String> ask(String prompt, boolean secret) {
            return Optional.empty();
        }

        /** Tells the terminal how the things that the cell drew anew look in the end. */
        void settle() {
            synchronized (Recording.this) {
                drawnAnew.stream()
                        .filter(entry -> !entry.isEmptied())
                        .forEach(entry -> terminal.shown(((CellOutput.Shown) entry.output).bundle()));
                drawnAnew.clear();
            }
        }

        /** Adds the value or the failure that ended the cell. */
        void end(CellOutput output) {
            synchronized (Recording.this) {
                clearIfDue();
                added(output);
            }
        }

        /** Returns what the cell has left so far. */
        List<CellOutput> outputs() {
            synchronized (Recording.this) {
                return entries.stream()
                        .filter(entry -> !entry.isEmptied())
                        .map(Entry::kept)
                        .toList();
            }
        }

        private Entry added(CellOutput output) {
            Entry entry = new Entry();
            entry.output = output;
            entries.add(entry);
            return entry;
        }

        private void clearIfDue() {
            if (clearing) {
                entries.clear();
                clearing = false;
            }
        }
    }
}
