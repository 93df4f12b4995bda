package headrace.kernel.session.groovy;

import headrace.kernel.session.Output;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.HashSet;
import java.util.Optional;
import java.util.concurrent.ForkJoinWorkerThread;
import java.util.function.Supplier;

/**
 * The process's standard streams, led to the cell that the printing thread belongs to.
 *
 * <p>Laid once and never taken back: swapping the streams for each cell would send the output of background threads to
 * the wrong one. A thread belongs to the cell that started it; a thread of the common pool, which serves all, to the
 * latest cell; any other thread prints to the process's own streams as before.
 */
final class Console {
    private static final InheritableThreadLocal<CellStreams> OF_THREAD = new InheritableThreadLocal<>();
    private static volatile CellStreams latest;
    private static boolean laid;

    private Console() {}

    /**
     * Leads this thread's streams, and those of the threads that it starts from now on, to a cell. What such a thread
     * throws and nobody catches is told there too.
     */
    static void lead(Surroundings cell) {
        lay();
        CellStreams streams = new CellStreams(cell);
        OF_THREAD.set(streams);
        latest = streams;
    }

    /** Leads this thread's streams back to the process. */
    static void release() {
        OF_THREAD.remove();
    }

    /** Does something on this thread of which the cell hears nothing, neither prints nor what it shows. */
    static <T> T unheard(Supplier<T> work) {
        CellStreams heard = OF_THREAD.get();
        if (heard == null) {
            return work.get();
        }
        Surroundings cell = heard.surroundings();
        OF_THREAD.set(new CellStreams(
                new Surroundings(Output.UNHEARD, cell.faults(), cell.variables(), new HashSet<>(cell.places()))));
        try {
            return work.get();
        } finally {
            OF_THREAD.set(heard);
        }
    }

    /** Returns what the cell of this thread can reach, if it belongs to one. */
    static Optional<Surroundings> surroundings() {
        return Optional.ofNullable(current()).map(CellStreams::surroundings);
    }

    private static CellStreams current() {
        CellStreams own = OF_THREAD.get();
        return own == null && Thread.currentThread() instanceof ForkJoinWorkerThread ? latest : own;
    }

    private static synchronized void lay() {
        if (!laid) {
            laid = true;
            System.setOut(stream(System.out, false));
            System.setErr(stream(System.err, true));
            System.setIn(new Lines(System.in));
            Thread.UncaughtExceptionHandler own = Thread.getDefaultUncaughtExceptionHandler();
            Thread.setDefaultUncaughtExceptionHandler((thread, thrown) -> uncaught(thread, thrown, own));
        }
    }

    private static void uncaught(Thread thread, Throwable thrown, Thread.UncaughtExceptionHandler own) {
        CellStreams cell = current();
        if (cell != null) {
            cell.uncaught(thread, thrown);
        } else if (own != null) {
            own.uncaughtException(thread, thrown);
        } else {
            thrown.printStackTrace();
        }
    }

    private static PrintStream stream(PrintStream own, boolean error) {
        return new PrintStream(new Led(own, error), true, StandardCharsets.UTF_8) {
            /** A script that closes its output must not close that of all cells to come. */
            @Override
            public void close() {
                flush();
            }
        };
    }

    /** Bytes go to the cell of the thread that writes them. */
    private static final class Led extends OutputStream {
        private final PrintStream own;
        private final boolean error;

        Led(PrintStream own, boolean error) {
            this.own = own;
            this.error = error;
        }

        @Override
        public void write(int one) {
            write(new byte[] {(byte) one}, 0, 1);
        }

        @Override
        public void write(byte[] bytes, int from, int length) {
            CellStreams cell = current();
            if (cell == null) {
                own.write(bytes, from, length);
            } else {
                cell.write(bytes, from, length, error);
            }
        }

        @Override
        public void flush() {
            if (current() == null) {
                own.flush();
            }
        }
    }

    /** Asks for one line at a time, so that no reader takes more than it was given. */
    private static final class Lines extends InputStream {
        private final InputStream own;

        Lines(InputStream own) {
            this.own = own;
        }

        @Override
        public int read() throws IOException {
            byte[] one = new byte[1];
            return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
        }

        @Override
        public int read(byte[] into, int from, int length) throws IOException {
            CellStreams cell = current();
            return cell == null ? own.read(into, from, length) : cell.read(into, from, length);
        }

        @Override
        public int available() throws IOException {
            CellStreams cell = current();
            return cell == null ? own.available() : cell.available();
        }
    }

    /** Returns the charset in which a program expects its standard input. */
    static Charset inputCharset() {
        return Charset.defaultCharset();
    }
}
