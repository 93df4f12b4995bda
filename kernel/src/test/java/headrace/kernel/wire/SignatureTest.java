package headrace.kernel.wire;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import headrace.problem.Refusal;
import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class SignatureTest {
    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static String signed(String scheme, String key, String... parts) {
        return new String(
                Signature.of(scheme, key)
                        .of(List.of(parts).stream().map(SignatureTest::bytes).toList()),
                StandardCharsets.US_ASCII);
    }

    /** RFC 4231, test case 2: key “Jefe”, data “what do ya want for nothing?”. */
    @Test
    void it_is_the_published_code_whichever_way_the_bytes_are_cut() {
        String published = "5bdcc146bf60754e6a042426089575c75a003f089d2739839dec58b964ec3843";
        assertEquals(published, signed("hmac-sha256", "Jefe", "what do ya want for nothing?"));
        assertEquals(published, signed("hmac-sha256", "Jefe", "what do ya", " want", "", " for nothing?"));
    }

    /** RFC 4231, test case 2, for SHA-384. */
    @Test
    void other_published_codes_serve_too() {
        assertEquals(
                "af45d2e376484031617f78d2b58a6b1b9c7ef464f5a01b47e42ec3736322445e8e2240ca5e69e2c78b3239ecfab21649",
                signed("hmac-sha384", "Jefe", "what do ya want for nothing?"));
    }

    @Test
    void a_secret_of_any_length_signs_as_the_library_does() throws Exception {
        for (int length : new int[] {1, 63, 64, 65, 127, 128, 129, 1000}) {
            for (String hash : new String[] {"SHA1", "SHA224", "SHA256", "SHA384", "SHA512"}) {
                String key = "k".repeat(length);
                Mac library = Mac.getInstance("Hmac" + hash);
                library.init(new SecretKeySpec(bytes(key), library.getAlgorithm()));
                assertEquals(
                        HexFormat.of().formatHex(library.doFinal(bytes("flow and head"))),
                        signed("hmac-" + hash.toLowerCase(Locale.ROOT), key, "flow", " and ", "head"));
            }
        }
    }

    @Test
    void only_its_own_code_fits() {
        Signature signature = Signature.of("hmac-sha256", "k");
        List<byte[]> parts = List.of(bytes("a"), bytes("b"));
        byte[] right = signature.of(parts);
        assertTrue(signature.fits(right, parts));
        right[10] ^= 1;
        assertFalse(signature.fits(right, parts));
        assertFalse(signature.fits(new byte[0], parts));
        assertFalse(signature.fits(signature.of(parts), List.of(bytes("a"), bytes("c"))));
    }

    @Test
    void without_a_secret_nothing_is_signed_and_everything_fits() {
        Signature none = Signature.of("hmac-sha256", "");
        assertArrayEquals(new byte[0], none.of(List.of(bytes("a"))));
        assertTrue(none.fits(bytes("anything"), List.of(bytes("a"))));
    }

    @Test
    void a_scheme_that_does_not_exist_is_refused() {
        for (String scheme : List.of("sha256", "hmac-", "hmac-sealing-wax", "")) {
            Refusal refusal = assertThrows(Refusal.class, () -> Signature.of(scheme, "k"));
            assertEquals(WireProblem.UNSUPPORTED_SIGNATURE, refusal.problem());
        }
    }

    @Test
    void the_guard_admits_each_signature_once_and_forgets_the_oldest_first() {
        ReplayGuard guard = new ReplayGuard(100);
        for (int i = 0; i < 101; i++) {
            assertTrue(guard.admits(signature(i)));
        }
        assertFalse(guard.admits(signature(100)));
        assertFalse(guard.admits(signature(10)));
        assertTrue(guard.admits(signature(9)), "forgotten with the oldest tenth");
    }

    /** Returns a signature in which two numbers differ in the first half as well as in the second. */
    private static byte[] signature(int number) {
        return bytes(String.format("%064x", BigInteger.valueOf(number).shiftLeft(200)));
    }

    @Test
    void signatures_that_differ_in_one_of_their_first_bits_only_are_two() {
        ReplayGuard guard = new ReplayGuard(1_000);
        for (int bit = 128; bit < 256; bit++) {
            assertTrue(guard.admits(bytes(String.format("%064x", BigInteger.ONE.shiftLeft(bit)))), "bit " + bit);
        }
    }
}
