package headrace.data.log;

import headrace.data.DataProblem;
import headrace.problem.Notes;
import headrace.problem.Place;
import headrace.problem.Refusal;
import headrace.pump.PumpSet;
import headrace.record.Basis;
import headrace.record.Input;
import headrace.trend.Change;
import headrace.trend.Channel;
import headrace.trend.TrendLog;
import headrace.trend.TrendProblem;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.EnumMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;

/**
 * Reads the trend log of a building system: a CSV file with a column of times and columns of readings.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Found in the heads of the columns, or from the values where these fit one unit alone; held against what the
 *       pump set can give, and told for each column.
 *   <dt>Limits
 *   <dd>Read as a stream: a row at a time, in memory as numbers only, 8 bytes for each. Up to a hundredth of the rows
 *       may not fit, and are listed; up to half of the cells of a column may be texts. Lines that start with # and
 *       stand before the head are left out.
 *   <dt>Errors
 *   <dd>{@link Refusal} with file, line and column; then nothing of the file was taken.
 *   <dt>Source
 *   <dd>RFC 4180 for the quoting, ISO 8601 for the times.
 * </dl>
 */
public final class LogFile {
    private static final String SEPARATORS = "\t;,";
    private static final double MOST_MISFITS = 0.01;
    private static final double MOST_TEXT = 0.5;

    private final String file;
    private final LogOptions options;
    private final PumpSet set;
    private final Change.Listing listing = new Change.Listing(List.of());

    private LogFile(String file, LogOptions options, PumpSet set) {
        this.file = file;
        this.options = options;
        this.set = set;
    }

    /** Reads the log of a pump set, of which nothing else is said. */
    public static TrendLog read(Path path, PumpSet set) {
        return read(path, set, LogOptions.NONE);
    }

    /** Reads the log of a pump set. */
    public static TrendLog read(Path path, PumpSet set, LogOptions options) {
        Place place = Place.of(path.toString());
        if (!Files.isRegularFile(path)) {
            throw new Refusal(
                            Files.exists(path) ? DataProblem.FILE_NOT_READABLE : DataProblem.FILE_NOT_FOUND,
                            "Asked to read a log from what is no file",
                            "It was looked for at " + path.toAbsolutePath().normalize(),
                            "Check the name and the folder")
                    .at(place);
        }
        try (InputStream in = Files.newInputStream(path)) {
            return new LogFile(path.getFileName().toString(), options, set).read(in, Files.size(path));
        } catch (Refusal refusal) {
            throw refusal.at(refusal.place()
                    .map(where -> new Place(path.toString(), where.line(), where.column()))
                    .orElse(place));
        } catch (IOException e) {
            throw new Refusal(
                            DataProblem.FILE_NOT_READABLE,
                            "Asked to read a log that the system does not hand out",
                            "Only a file that may be read, and stays where it is, can be used",
                            "See to its permissions, or copy it to this machine")
                    .at(place);
        }
    }

    private TrendLog read(InputStream in, long size) throws IOException {
        MessageDigest digest = sha256();
        LogBuffer buffer = new LogBuffer(file, in, digest, size);
        skipRemarks(buffer);
        char separator = separator(buffer);
        Place place = new Place(file, buffer.line, 1);
        List<LogColumn> columns = LogHead.of(new LogCells(buffer, separator).row(), options, place);
        List<LogColumn> used =
                columns.stream().filter(c -> c.channel().isPresent()).toList();
        LogRows rows = new LogRows(used.size(), expected(buffer, size));
        LogScan scan = new LogScan(buffer, separator, new LogScan.Layout(columns, options, listing), rows);
        scan.all();
        requireRows(rows, place);
        requireFit(scan, rows, used);
        LogUnits units = new LogUnits(options, set);
        units.confirm(used, rows);
        Basis basis = new Basis(
                List.of(new Input(
                        file, "a log of a building system", HexFormat.of().formatHex(digest.digest()))),
                units.taken());
        return TrendLog.read(file, si(used, rows, units.found()), listing.list(), basis)
                .with(units.notes().and(unused(columns)));
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new AssertionError("Every JDK has SHA-256", e);
        }
    }

    private static void skipRemarks(LogBuffer buffer) throws IOException {
        while (buffer.row() && (buffer.bytes[buffer.at] == '#' || LogBuffer.ends(buffer.bytes[buffer.at]))) {
            while (!LogBuffer.ends(buffer.bytes[buffer.at])) {
                buffer.at++;
            }
            buffer.endRow();
        }
    }

    /** Returns what stands between the cells of the head: the first of tab, semicolon and comma that is in it. */
    private char separator(LogBuffer buffer) {
        if (buffer.at >= buffer.end) {
            throw new Refusal(
                            DataProblem.FILE_EMPTY,
                            "Asked to read a log that holds nothing",
                            "A log has a row of column heads and the rows under it",
                            "See whether it was saved, or name another file")
                    .at(Place.of(file));
        }
        int end = buffer.at;
        while (!LogBuffer.ends(buffer.bytes[end])) {
            end++;
        }
        String head = buffer.text(buffer.at, end);
        if (head.indexOf('\0') >= 0 || head.indexOf('\uFFFD') >= 0) {
            throw new Refusal(
                            DataProblem.FILE_NOT_UTF8,
                            "Asked to read a log whose head is not text in UTF-8",
                            "A log is a text in UTF-8",
                            "Save it as UTF-8; in a spreadsheet choose 'CSV UTF-8'")
                    .at(new Place(file, buffer.line, 1));
        }
        return SEPARATORS
                .chars()
                .mapToObj(c -> (char) c)
                .filter(c -> head.indexOf(c) >= 0)
                .findFirst()
                .orElse(options.style().separator());
    }

    /** Returns how many rows there may be, going by the first rows in sight. */
    private static long expected(LogBuffer buffer, long size) {
        int seen = 0;
        int until = Math.min(buffer.end, buffer.at + (1 << 16));
        for (int i = buffer.at; i < until; i++) {
            seen += buffer.bytes[i] == '\n' ? 1 : 0;
        }
        int bytes = Math.max(1, until - buffer.at);
        return (long) ((double) size / bytes * Math.max(1, seen) * 1.02) + 16;
    }

    private void requireRows(LogRows rows, Place place) {
        if (rows.count < 2) {
            throw new Refusal(
                            TrendProblem.TOO_SHORT_LOG,
                            "Asked to read a log with " + rows.count + " rows that can be read",
                            "A log has at least 2",
                            "See whether it was saved whole, and how its times are written")
                    .at(place);
        }
    }

    private void requireFit(LogScan scan, LogRows rows, List<LogColumn> used) {
        if (scan.misfits() > Math.max(1, MOST_MISFITS * rows.count)) {
            throw new Refusal(
                            LogProblem.TOO_MANY_MISFITS,
                            "Asked to read a log of which " + scan.misfits() + " of " + (rows.count + scan.misfits())
                                    + " rows do not fit; this is the first",
                            "Up to a hundredth of the rows may have another number of cells than the head, or a time"
                                    + " that cannot be read",
                            "See what parts the cells, whether decimal commas must be told, and how times are written")
                    .at(scan.firstMisfit());
        }
        for (int i = 0; i < used.size(); i++) {
            if (scan.texts(i) > MOST_TEXT * rows.count) {
                String channel = used.get(i).channel().orElseThrow().words();
                Place first = listing.list().stream()
                        .filter(change -> change.kind() == Change.Kind.TEXT_FOR_NUMBER
                                && change.about().startsWith(channel + " '"))
                        .findFirst()
                        .orElseThrow()
                        .from();
                throw new Refusal(
                                LogProblem.COLUMN_OF_TEXT,
                                "Asked to read the column '" + used.get(i).head() + "', of whose " + rows.count
                                        + " cells " + scan.texts(i) + " are no numbers; this is the first",
                                "Numbers are written like " + (options.style().decimal() == ',' ? "12,5" : "12.5")
                                        + "; up to half of a column may be texts",
                                "Say decimalComma: true if the file has decimal commas, or name another column")
                        .at(first);
            }
        }
    }

    private Notes unused(List<LogColumn> columns) {
        List<String> heads = columns.stream()
                .filter(column -> !column.used())
                .map(column -> "'" + column.head() + "'")
                .toList();
        return heads.isEmpty()
                ? Notes.NONE
                : Notes.NONE.with(
                        LogProblem.COLUMNS_NOT_USED, "Nothing is made of the columns " + String.join(", ", heads));
    }

    private TrendLog.Rows si(List<LogColumn> used, LogRows rows, Map<Channel, Scale> scales) {
        Map<Channel, double[]> values = new EnumMap<>(Channel.class);
        for (int i = 0; i < used.size(); i++) {
            Channel channel = used.get(i).channel().orElseThrow();
            Scale scale = scales.get(channel);
            double[] column = rows.values[i];
            for (int j = 0; j < rows.count; j++) {
                column[j] = column[j] * scale.factor() + scale.offset();
            }
            values.put(channel, column);
        }
        ZoneId zone = options.zone().orElse(ZoneOffset.UTC);
        return new TrendLog.Rows(rows.seconds, rows.lines, values, rows.count, zone);
    }
}
