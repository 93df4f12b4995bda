package headrace.data.inquiry;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import headrace.problem.Refusal;
import headrace.report.Reports;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** A thousand mutations of good inquiries, ten thousand with {@code -Dheadrace.soak=true}. */
@Tag("soak")
@DisplayNameGeneration(ReplaceUnderscores.class)
class InquiryFuzzTest {
    private static final int ROUNDS = Boolean.getBoolean("headrace.soak") ? 10_000 : 1_000;
    private static final long SEED = 20260211;
    private static final List<String> GOOD = List.of(
            "480 gpm @ 62 ft, 30 % PG, 3 duty",
            "500 kW, 7/12 °C, 30 L/s at 16 m, duty/standby",
            "flow: 52 m³/h; head 185 kPa; 25 % ethylene glycol, -5 °C, 3 x 400 V, 50 Hz",
            "120 tons, dT = 10 °F, 60 ft, 2 duty + 1 standby, 460/3/60",
            "20 L/s each, 2 pumps, 18 m, water, 60 °C, 6 K");
    private static final String STRANGE = "0123456789.,;@%+-/ \t\n°³²ΔxXkKgGpPmMfFtTvV~'\"€\uD83D\uDE00\u0000İß";

    @Test
    void every_mutation_is_read_or_refused_with_its_place() {
        int read = 0;
        for (int round = 0; round < ROUNDS; round++) {
            Random random = new Random(SEED + round);
            String text = GOOD.get(random.nextInt(GOOD.size()));
            for (int i = random.nextInt(4); i >= 0; i--) {
                text = mutated(text, random);
            }
            if (isRead(text)) {
                read++;
            }
        }
        assertTrue(read > ROUNDS / 10 && read < ROUNDS * 9 / 10, read + " were read");
    }

    private static boolean isRead(String text) {
        try {
            Inquiry inquiry = Inquiry.read(text);
            assertTrue(inquiry.flow().map(flow -> flow.si() > 0).orElse(true), text);
            assertTrue(inquiry.head().map(head -> head.si() > 0).orElse(true), text);
            assertTrue(inquiry.pumps().duty() > 0 && inquiry.pumps().standby() >= 0, text);
            assertTrue(Reports.of(inquiry).orElseThrow().toText().length() > 10, text);
            return true;
        } catch (Refusal refusal) {
            assertTrue(
                    refusal.place().map(place -> place.column() > 0).orElse(false),
                    () -> refusal.getMessage() + " in " + text);
            return false;
        } catch (RuntimeException e) {
            return fail(text, e);
        }
    }

    private static String mutated(String text, Random random) {
        int at = random.nextInt(text.length() + 1);
        int end = Math.min(text.length(), at + 1 + random.nextInt(3));
        char strange = STRANGE.charAt(random.nextInt(STRANGE.length()));
        return switch (random.nextInt(8)) {
            case 0 -> text.substring(0, at) + text.substring(end);
            case 1 -> text.substring(0, at) + strange + text.substring(at);
            case 2 -> text.substring(0, at) + text.substring(at, end) + text.substring(at);
            case 3 -> text.substring(0, at) + strange + text.substring(end);
            case 4 -> text.substring(at) + ", " + text.substring(0, at);
            case 5 -> text.toUpperCase(Locale.ROOT);
            case 6 -> text.replace(", ", random.nextBoolean() ? "\n" : " ; ");
            default -> text.substring(0, at) + "9".repeat(random.nextInt(400)) + text.substring(at);
        };
    }
}
