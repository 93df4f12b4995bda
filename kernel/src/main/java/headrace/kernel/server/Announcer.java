package headrace.kernel.server;

import headrace.kernel.handler.Publisher;
import headrace.kernel.message.Event;
import headrace.kernel.message.Question;
import headrace.kernel.message.Request;
import headrace.kernel.wire.Author;
import headrace.kernel.wire.Incoming;
import java.util.Optional;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;

/**
 * Publishes what one request causes, also long after its reply: a thread that the cell left behind still prints under
 * the cell.
 *
 * <p>Printed text is gathered into few messages, because a front end chokes on one for each line. Everything else is
 * published at once, behind what was printed before it.
 */
final class Announcer implements Publisher {
    /** What travels with the announcers of all requests. */
    record Means(Courier courier, Author author, Questions questions, ScheduledExecutorService clock) {}

    private static final long GATHERED_MILLISECONDS = 50;
    private static final int GATHERED_CHARACTERS = 1 << 16;

    /** Beyond this a front end becomes unusable, and with it the notebook that keeps the output. */
    private static final int MOST_CHARACTERS = 8_000_000;

    private static final String TOO_MUCH =
            "\nThis cell has printed 8,000,000 characters; what it prints from here on is"
                    + " dropped. Write long output to a file, as in new File('out.txt').withWriter { it.println(1) }.\n";

    private final Incoming request;
    private final Means means;
    private final StringBuilder gathered = new StringBuilder();
    private String stream = "stdout";
    private int printed;
    private boolean due;
    private volatile boolean ended;

    Announcer(Incoming request, Means means) {
        this.request = request;
        this.means = means;
    }

    @Override
    public void print(String text) {
        gather("stdout", text);
    }

    @Override
    public void printError(String text) {
        gather("stderr", text);
    }

    @Override
    public synchronized void publish(Event event) {
        flush();
        means.courier().send(Channel.IOPUB, means.author().event(request.header(), event));
    }

    @Override
    public Optional<String> ask(String prompt, boolean secret) {
        boolean allowed = request.request() instanceof Request.Execute execute && execute.allowStdin();
        if (!allowed || ended) {
            return Optional.empty();
        }
        flush();
        return Optional.of(means.questions().ask(request, new Question(prompt, secret)));
    }

    /** Publishes the text that was gathered. */
    synchronized void flush() {
        int length = gathered.length();
        if (length > 0 && Character.isHighSurrogate(gathered.charAt(length - 1))) {
            length--; // its other half is still to come
        }
        if (length > 0) {
            Event text = new Event.Stream(stream, gathered.substring(0, length));
            gathered.delete(0, length);
            means.courier().send(Channel.IOPUB, means.author().event(request.header(), text));
        }
    }

    /** Hears that the request has its reply: from now on nobody can be asked. */
    void end() {
        ended = true;
    }

    private synchronized void gather(String name, String text) {
        if (printed >= MOST_CHARACTERS || text.isEmpty()) {
            return;
        }
        if (!name.equals(stream)) {
            flush();
            stream = name;
        }
        int room = MOST_CHARACTERS - printed;
        printed += Math.min(room, text.length());
        gathered.append(text, 0, Math.min(room, text.length()));
        if (printed == MOST_CHARACTERS) {
            publish(new Event.Stream("stderr", TOO_MUCH));
        } else if (gathered.length() >= GATHERED_CHARACTERS) {
            flush();
        } else if (!due) {
            due = true;
            means.clock().schedule(this::flushDue, GATHERED_MILLISECONDS, TimeUnit.MILLISECONDS);
        }
    }

    private synchronized void flushDue() {
        due = false;
        flush();
    }
}
