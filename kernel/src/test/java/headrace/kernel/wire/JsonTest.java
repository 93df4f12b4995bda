package headrace.kernel.wire;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class JsonTest {
    @ParameterizedTest
    @ValueSource(
            strings = {
                "{\"whole\":7,\"part\":7.5,\"list\":[1,null,true,\"x\"],\"empty\":{}}",
                "[12345678901234567890,-9223372036854775808,0,-1]",
                "\"𝜂 and \\u0001 and \\\"quotes\\\"\""
            })
    void what_is_read_is_written_the_same(String text) throws IOException {
        assertEquals(text, Json.text(Json.parse(text)));
    }

    @Test
    void whole_numbers_stay_whole_however_long() throws IOException {
        assertEquals(
                List.of(7L, 7.0, new BigInteger("12345678901234567890")), Json.parse("[7, 7.0, 12345678901234567890]"));
    }

    @Test
    void what_json_cannot_say_is_written_as_null() {
        List<Object> numbers =
                new ArrayList<>(Arrays.asList(Double.NaN, Double.POSITIVE_INFINITY, Float.NEGATIVE_INFINITY, null));
        assertEquals("[null,null,null,null]", Json.text(numbers));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "{", "{} {}", "{'a': 1}", "{a: 1}", "NaN", "{\"a\": NaN}", "// x\n{}", "[1,]", "tru"})
    void what_is_not_strictly_json_is_refused(String text) {
        assertThrows(IOException.class, () -> Json.parse(text));
    }

    @ParameterizedTest
    @ValueSource(strings = {"[]", "1", "null", "\"x\""})
    void a_part_of_a_message_is_to_be_an_object(String text) {
        assertThrows(IOException.class, () -> Json.object(text.getBytes(StandardCharsets.UTF_8)));
    }

    @Test
    void bytes_that_are_no_text_are_refused() {
        byte[] broken = {'{', '"', (byte) 0xff, '"', ':', '1', '}'};
        assertThrows(IOException.class, () -> Json.object(broken));
    }

    @Test
    void a_nest_without_end_is_refused_without_harm() {
        assertThrows(IOException.class, () -> Json.parse("[".repeat(1_000_000)));
    }

    @Test
    void a_field_of_another_kind_is_named() {
        Fields fields = new Fields(Map.of("code", 7L));
        IllegalArgumentException wrong = assertThrows(IllegalArgumentException.class, () -> fields.text("code"));
        assertEquals("The field code of the content is to be a text", wrong.getMessage());
    }
}
