package headrace.kernel.notebook;

import headrace.problem.Refusal;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;

/** The text of a notebook file: UTF-8, and refused with its line where it is not. */
final class NotebookText {
    private NotebookText() {}

    static String of(byte[] bytes, String file) {
        try {
            CharBuffer text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes));
            return withoutByteOrderMark(text.toString());
        } catch (CharacterCodingException e) {
            throw notUtf8(bytes, file);
        }
    }

    private static String withoutByteOrderMark(String text) {
        return text.startsWith("\uFEFF") ? text.substring(1) : text;
    }

    private static Refusal notUtf8(byte[] bytes, String file) {
        String marked = new String(bytes, StandardCharsets.UTF_8);
        int at = Math.max(0, marked.indexOf('\uFFFD'));
        return new Refusal(
                        NotebookProblem.BROKEN_NOTEBOOK,
                        "Here stand bytes that are no text in UTF-8",
                        "A notebook is a JSON text in UTF-8",
                        "Save the notebook anew with the program that made it, or take the last good copy")
                .at(JsonPlaces.at(marked, at, file));
    }
}
