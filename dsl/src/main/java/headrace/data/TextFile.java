package headrace.data;

import headrace.problem.Notes;
import headrace.problem.Place;
import headrace.problem.Refusal;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;

/**
 * A file as lines of text: UTF-8, of a size that a person could have written, without control characters.
 *
 * @param path the file as the user named it
 * @param bytes what stands in it
 * @param lines its lines
 * @param notes whether it started with a byte-order mark
 */
record TextFile(String path, byte[] bytes, List<String> lines, Notes notes) {
    /** No pump test or load profile comes near it; a file that does is another file. */
    static final int MOST_BYTES = 1 << 20;

    private static final char MARK = '\uFEFF';

    static TextFile read(Path path) {
        return read(path, MOST_BYTES);
    }

    /** Reads a file of at most so many bytes. */
    static TextFile read(Path path, int mostBytes) {
        byte[] bytes = bytesOf(path, mostBytes);
        String text = decoded(path, bytes);
        Notes notes = Notes.NONE;
        if (!text.isEmpty() && text.charAt(0) == MARK) {
            text = text.substring(1);
            notes = notes.with(
                    DataProblem.BYTE_ORDER_MARK, path.getFileName() + " starts with a byte-order mark, left out");
        }
        List<String> lines = text.lines().toList();
        if (text.isBlank()) {
            throw new Refusal(
                            DataProblem.FILE_EMPTY,
                            "Asked to read a file that holds nothing",
                            "A file has at least a row of column heads and the rows under it",
                            "See whether it was saved, or name another file")
                    .at(Place.of(path.toString()));
        }
        requireNoControls(path, lines);
        return new TextFile(path.toString(), bytes, lines, notes);
    }

    Place place(int line, int column) {
        return new Place(path, line, column);
    }

    private static byte[] bytesOf(Path path, int mostBytes) {
        Place place = Place.of(path.toString());
        if (!Files.exists(path)) {
            throw new Refusal(
                            DataProblem.FILE_NOT_FOUND,
                            "Asked to read a file that is not there",
                            "It was looked for at " + path.toAbsolutePath().normalize(),
                            "Check the name and the folder")
                    .at(place);
        }
        try {
            if (!Files.isRegularFile(path)) {
                throw unreadable(place, "Asked to read a folder or a device as a file");
            }
            byte[] bytes;
            try (InputStream in = Files.newInputStream(path)) {
                bytes = in.readNBytes(mostBytes + 1);
            }
            if (bytes.length > mostBytes) {
                throw new Refusal(
                                DataProblem.FILE_TOO_LARGE,
                                "Asked to read a file of " + Files.size(path) + " bytes",
                                "Such a file has at most " + mostBytes + " bytes",
                                "Name the right file, or save only the points that count")
                        .at(place);
            }
            return bytes;
        } catch (IOException e) {
            throw unreadable(place, "Asked to read a file that the system does not hand out");
        }
    }

    private static Refusal unreadable(Place place, String asked) {
        return new Refusal(
                        DataProblem.FILE_NOT_READABLE,
                        asked,
                        "Only a file that may be read can be used",
                        "Name a file, or see to its permissions")
                .at(place);
    }

    private static String decoded(Path path, byte[] bytes) {
        ByteBuffer rest = ByteBuffer.wrap(bytes);
        try {
            return StandardCharsets.UTF_8.newDecoder().decode(rest).toString();
        } catch (CharacterCodingException e) {
            byte[] good = Arrays.copyOf(bytes, rest.position());
            String before = new String(good, StandardCharsets.UTF_8);
            int line = (int) (before + "|").lines().count();
            int lineStart = Math.max(before.lastIndexOf('\n'), before.lastIndexOf('\r')) + 1;
            throw new Refusal(
                            DataProblem.FILE_NOT_UTF8,
                            "Asked to read a file that is not text in UTF-8",
                            "Its first wrong byte is number " + (good.length + 1) + " of the file",
                            "Save it as UTF-8; in a spreadsheet choose 'CSV UTF-8'")
                    .at(new Place(path.toString(), line, before.length() - lineStart + 1));
        }
    }

    private static void requireNoControls(Path path, List<String> lines) {
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i);
            for (int j = 0; j < line.length(); j++) {
                char c = line.charAt(j);
                if (Character.isISOControl(c) && c != '\t' || c == MARK) {
                    throw new Refusal(
                                    DataProblem.MALFORMED_LINE,
                                    String.format("Asked to read a line with the invisible character U+%04X", (int) c),
                                    "Lines hold visible characters only",
                                    "Delete it, or save the file again from a text editor")
                            .at(new Place(path.toString(), i + 1, j + 1));
                }
            }
        }
    }
}
