package headrace.kernel.display;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class SharedLinesTest {
    @Test
    void each_line_is_kept_once_and_a_text_is_the_numbers_of_its_lines() throws IOException {
        SharedLines lines = new SharedLines();
        assertEquals("0-2", lines.keep("a\nb\nc"));
        assertEquals("0 3 2", lines.keep("a\nx\nc"));
        assertEquals("4-5", lines.keep("d\n"));
        assertEquals("5", lines.keep(""));
        assertEquals("0 0-1", lines.keep("a\na\nb"));
        byte[] packed = Base64.getDecoder().decode(lines.packed());
        try (GZIPInputStream zip = new GZIPInputStream(new ByteArrayInputStream(packed))) {
            assertEquals("a\nb\nc\nx\nd\n", new String(zip.readAllBytes(), StandardCharsets.UTF_8));
        }
    }
}
