package headrace.kernel.session.groovy;

import headrace.kernel.session.Output;
import headrace.problem.Refusal;
import headrace.work.Stopped;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;

/** The three standard streams of one cell, between bytes and its {@link Output}. */
final class CellStreams {
    private final Surroundings surroundings;
    private final Utf8 printed = new Utf8();
    private final Utf8 printedErrors = new Utf8();
    private ByteBuffer line = ByteBuffer.allocate(0);

    CellStreams(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    Surroundings surroundings() {
        return surroundings;
    }

    /** Prints bytes; a character whose bytes come in two writes is printed with the second. */
    void write(byte[] bytes, int from, int length, boolean error) {
        String text = (error ? printedErrors : printed).decode(bytes, from, length);
        if (!text.isEmpty() && error) {
            surroundings.output().printError(text);
        } else if (!text.isEmpty()) {
            surroundings.output().print(text);
        }
    }

    /** Tells what ended a thread that the cell started. That it was stopped with its cell is no news. */
    void uncaught(Thread thread, Throwable thrown) {
        if (!(thrown instanceof Stopped)) {
            List<String> lines = surroundings.faults().of(thrown).lines();
            surroundings
                    .output()
                    .printError("A thread of this cell, " + thread.getName() + ", ended with\n"
                            + String.join("\n", lines) + "\n");
        }
    }

    /** Reads what is left of the line given last, or asks for another. */
    synchronized int read(byte[] into, int from, int length) {
        if (length == 0) {
            return 0;
        }
        if (!line.hasRemaining()) {
            line = ByteBuffer.wrap((ask(Optional.of(surroundings), "", false) + "\n").getBytes(Console.inputCharset()));
        }
        int count = Math.min(length, line.remaining());
        line.get(into, from, count);
        return count;
    }

    synchronized int available() {
        return line.remaining();
    }

    /**
     * Asks the user for a line.
     *
     * @throws Refusal with {@code NOBODY_TO_ASK} where nobody can be asked
     */
    static String ask(Optional<Surroundings> cell, String prompt, boolean secret) {
        return cell.flatMap(known -> known.output().ask(prompt, secret))
                .orElseThrow(() -> new Refusal(
                        SessionProblem.NOBODY_TO_ASK,
                        "The cell asked for a line of input" + (prompt.isBlank() ? "" : ": " + prompt.strip()),
                        "A notebook or terminal with a person before it can answer; a run without one cannot",
                        "Write the value into the cell, or hand it over as a parameter of the run"));
    }

    /** Decodes UTF-8 that arrives in pieces. */
    private static final class Utf8 {
        private final CharsetDecoder decoder = StandardCharsets.UTF_8
                .newDecoder()
                .onMalformedInput(CodingErrorAction.REPLACE)
                .onUnmappableCharacter(CodingErrorAction.REPLACE);
        private ByteBuffer rest = ByteBuffer.allocate(0);

        synchronized String decode(byte[] bytes, int from, int length) {
            ByteBuffer all = ByteBuffer.allocate(rest.remaining() + length);
            all.put(rest).put(bytes, from, length).flip();
            CharBuffer text = CharBuffer.allocate(all.remaining() + 1);
            decoder.decode(all, text, false);
            rest = all.slice();
            return text.flip().toString();
        }
    }
}
