package headrace.kernel.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.kernel.server.FrontEnd.Exchange;
import headrace.kernel.server.FrontEnd.Message;
import headrace.kernel.session.Outcome;
import java.io.IOException;
import java.net.Socket;
import java.net.SocketException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.BiFunction;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Whatever arrives, nothing of it runs, and the next honest request is answered. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class HostileFramesTest {
    private static final int FRAMES = Boolean.getBoolean("headrace.soak") ? 10_000 : 1_000;
    private static final long SEED = 20260101;

    private static Served served;
    private static FrontEnd frontEnd;

    @BeforeAll
    static void serve() {
        served = Served.session(() -> new ScriptedSession((code, output) -> {
            output.print("ran " + code);
            return new Outcome.Done();
        }));
        frontEnd = served.frontEnd();
    }

    @AfterAll
    static void end() {
        served.close();
    }

    private static List<byte[]> honest() {
        return frontEnd.frames("execute_request", Map.of("code", "hostile"), "{}");
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static List<byte[]> signed(String... parts) {
        List<byte[]> four = Arrays.stream(parts).map(HostileFramesTest::bytes).toList();
        List<byte[]> frames = new ArrayList<>(List.of(bytes("<IDS|MSG>"), frontEnd.sign(four)));
        frames.addAll(four);
        return frames;
    }

    /** Sends what must be dropped, and checks that it was and that the kernel is well. */
    private static void dropped(List<byte[]> frames) {
        frontEnd.sendRaw(frames);
        well();
    }

    private static void well() {
        Exchange exchange = frontEnd.run("honest");
        assertEquals("ok", exchange.reply().text("status"));
        assertEquals("ran honest", exchange.printed("stdout"));
        List<Message> all = frontEnd.heard();
        assertFalse(
                all.stream().anyMatch(event -> event.content().toString().contains("ran hostile")),
                "nothing of it ran");
    }

    @Test
    void an_unsigned_message_is_dropped() {
        List<byte[]> frames = honest();
        frames.set(1, new byte[0]);
        dropped(frames);
        assertTrue(served.log().contains("it is not signed"), served.log());
    }

    @Test
    void a_message_signed_with_another_secret_is_dropped() {
        List<byte[]> frames = honest();
        frames.set(1, bytes("0123456789abcdef".repeat(4)));
        dropped(frames);
        assertTrue(served.log().contains("its signature is wrong"), served.log());
    }

    @Test
    void a_message_whose_content_was_changed_is_dropped() {
        List<byte[]> frames = honest();
        frames.set(5, bytes("{\"code\":\"hostile\" }"));
        dropped(frames);
    }

    @Test
    void a_message_that_was_overheard_and_is_sent_again_is_dropped() {
        List<byte[]> frames = frontEnd.frames("execute_request", Map.of("code", "honest"), "{}");
        int before = ran();
        frontEnd.sendRaw(frames);
        frontEnd.sendRaw(frames);
        frontEnd.sendRaw(frames);
        well();
        assertEquals(before + 2, ran(), "once, and once to see that the kernel is well");
        assertTrue(served.log().contains("it was received before"), served.log());
    }

    private static int ran() {
        return frontEnd.exchange("history_request", Map.of("hist_access_type", "tail", "n", 1_000_000))
                .reply()
                .content()
                .getAsJsonArray("history")
                .size();
    }

    @Test
    void a_message_without_its_delimiter_or_with_too_few_frames_is_dropped() {
        dropped(List.of(bytes("hello")));
        dropped(List.of(new byte[0]));
        for (int length = 1; length < 6; length++) {
            dropped(honest().subList(0, length));
        }
        assertTrue(served.log().contains("it has too few frames"), served.log());
    }

    @Test
    void a_signed_message_that_is_no_json_is_dropped() {
        dropped(signed("{}", "{}", "{}", "{}"));
        dropped(signed("no json", "{}", "{}", "{}"));
        dropped(signed("[1]", "{}", "{}", "{}"));
        dropped(signed("{\"msg_id\":\"1\",\"msg_type\":\"execute_request\"}", "{}", "{}", "{'code': 'hostile'}"));
        dropped(signed("{\"msg_id\":\"2\",\"msg_type\":\"execute_request\"}", "{}", "{}", "[".repeat(200_000)));
        assertTrue(served.log().contains("it cannot be read"), served.log());
    }

    @Test
    void the_log_tells_nothing_of_what_a_dropped_message_holds() {
        List<byte[]> frames = frontEnd.frames("execute_request", Map.of("code", "hostile and secret"), "{}");
        frames.set(1, bytes("f".repeat(64)));
        dropped(frames);
        assertFalse(served.log().contains("secret"));
    }

    @Tag("soak")
    @Test
    void whatever_is_done_to_a_message_the_next_honest_one_is_answered() {
        Random random = new Random(SEED);
        List<BiFunction<List<byte[]>, Random, List<byte[]>>> misdeeds = List.of(
                HostileFramesTest::flipped,
                HostileFramesTest::truncated,
                HostileFramesTest::shuffled,
                HostileFramesTest::oversized,
                HostileFramesTest::noise);
        for (int i = 0; i < FRAMES; i++) {
            List<byte[]> frames = misdeeds.get(random.nextInt(misdeeds.size())).apply(honest(), random);
            frontEnd.sendRaw(frames);
            if (random.nextInt(10) == 0) {
                frontEnd.sendRaw(frames);
            }
            if (i % 20 == 0) {
                String id = frontEnd.ask("comm_info_request", Map.of());
                assertEquals("ok", frontEnd.reply(id).text("status"));
            }
        }
        well();
        assertTrue(served.log().lines().count() < 200, "the log stays short");
    }

    @Test
    void bytes_that_are_not_even_the_transport_do_no_harm() throws IOException {
        Random random = new Random(SEED);
        byte[] noise = new byte[4096];
        for (int port : served.ports()) {
            for (String start : List.of("GET / HTTP/1.1\r\n\r\n", "\u00ff\0\0\0\0\0\0\0\1\u007f\3", "")) {
                random.nextBytes(noise);
                try (Socket socket = new Socket("127.0.0.1", port)) {
                    socket.getOutputStream().write(start.getBytes(StandardCharsets.ISO_8859_1));
                    socket.getOutputStream().write(noise);
                } catch (SocketException hungUp) {
                    continue; // as it should
                }
            }
        }
        well();
        assertEquals(1, frontEnd.beat(new byte[] {1}).length);
    }

    /** Changes one bit. One in the signature's or the delimiter's frame counts as well. */
    private static List<byte[]> flipped(List<byte[]> frames, Random random) {
        byte[] frame = frames.get(random.nextInt(frames.size()));
        frame[random.nextInt(frame.length)] ^= (byte) (1 << random.nextInt(8));
        return frames;
    }

    private static List<byte[]> truncated(List<byte[]> frames, Random random) {
        int last = random.nextInt(frames.size());
        List<byte[]> shorter = new ArrayList<>(frames.subList(0, last + 1));
        byte[] frame = shorter.get(last);
        shorter.set(last, Arrays.copyOf(frame, random.nextInt(frame.length)));
        return shorter;
    }

    private static List<byte[]> shuffled(List<byte[]> frames, Random random) {
        Object[] original = frames.toArray();
        while (Arrays.deepEquals(frames.toArray(), original)) {
            Collections.shuffle(frames, random);
        }
        return frames;
    }

    private static List<byte[]> oversized(List<byte[]> frames, Random random) {
        byte[] big = new byte[random.nextInt(1 << 20)];
        random.nextBytes(big);
        frames.set(2 + random.nextInt(4), big);
        return frames;
    }

    private static List<byte[]> noise(List<byte[]> frames, Random random) {
        List<byte[]> noise = new ArrayList<>();
        int count = 1 + random.nextInt(12);
        for (int i = 0; i < count; i++) {
            byte[] frame = new byte[random.nextInt(300)];
            random.nextBytes(frame);
            noise.add(random.nextBoolean() ? frames.get(random.nextInt(frames.size())) : frame);
        }
        return noise;
    }
}
