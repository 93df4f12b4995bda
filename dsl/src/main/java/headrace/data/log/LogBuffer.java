package headrace.data.log;

import headrace.data.DataProblem;
import headrace.problem.Place;
import headrace.problem.Refusal;
import headrace.work.Work;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;

/**
 * A window on the bytes of a file that always holds the row at hand as a whole, closed by a line feed.
 *
 * <p>The fields are open to the scanner beside it: a call for each byte would cost more than the reading.
 */
final class LogBuffer {
    private static final int SIZE = 1 << 20;

    /** The longest time in its usual layout may be looked at past the end. */
    private static final int SLACK = 32;

    /** No row of a log is longer; one that is has lost a quotation mark. */
    private static final int LONGEST_ROW = 1 << 16;

    final byte[] bytes = new byte[SIZE + SLACK];
    int at;
    int end;
    int line = 1;

    private final String file;
    private final InputStream in;
    private final MessageDigest digest;
    private final long size;
    private long read;
    private boolean over;

    LogBuffer(String file, InputStream in, MessageDigest digest, long size) throws IOException {
        this.file = file;
        this.in = in;
        this.digest = digest;
        this.size = size;
        fill();
        boolean marked = end >= 3 && bytes[0] == (byte) 0xEF && bytes[1] == (byte) 0xBB && bytes[2] == (byte) 0xBF;
        at = marked ? 3 : 0;
    }

    /** Makes sure that the row at hand is whole, and returns whether there is one. */
    boolean row() throws IOException {
        if (end - at < LONGEST_ROW && !over) {
            fill();
        }
        return at < end;
    }

    /** Moves what is left to the front and fills up behind it; adds the line feed that a last line may lack. */
    private void fill() throws IOException {
        System.arraycopy(bytes, at, bytes, 0, end - at);
        end -= at;
        at = 0;
        while (end < SIZE && !over) {
            int more = in.read(bytes, end, SIZE - end);
            if (more < 0) {
                over = true;
            } else {
                digest.update(bytes, end, more);
                end += more;
                read += more;
            }
        }
        bytes[end] = '\n';
        if (size > 0) {
            Work.progress("reading " + file, Math.min(read, size), size);
        }
    }

    /** Ends the row at its line end, and refuses one that has none in sight. */
    void endRow() {
        if (at >= end && !over) {
            throw endless(line);
        }
        if (at < end && bytes[at] == '\r') {
            at++;
        }
        if (at >= end || bytes[at] == '\n') {
            at++;
        }
        line++;
    }

    Refusal endless(int where) {
        return new Refusal(
                        DataProblem.MALFORMED_LINE,
                        "Asked to read a row that does not come to an end",
                        "A row has at most " + LONGEST_ROW + " bytes, and quotation marks in pairs",
                        "Look for a lost quotation mark there")
                .at(new Place(file, where, 1));
    }

    String file() {
        return file;
    }

    /** Returns the text between two places of the window. */
    String text(int from, int to) {
        return new String(bytes, from, to - from, StandardCharsets.UTF_8);
    }

    /** Returns the place of a byte on the line that starts at another. */
    Place place(int startOfLine, int where) {
        return new Place(file, line, text(startOfLine, where).length() + 1);
    }

    static boolean ends(byte b) {
        return b == '\n' || b == '\r';
    }
}
