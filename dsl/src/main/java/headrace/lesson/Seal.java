package headrace.lesson;

import headrace.problem.Refusal;
import headrace.units.Kind;
import headrace.units.Quantities;
import headrace.units.Quantity;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.zip.DataFormatException;
import java.util.zip.Deflater;
import java.util.zip.Inflater;

/**
 * The answers, the tolerance and the hints of an exercise as a text that is not readable at a glance. It is not secret:
 * there is no key, and whoever wants to read it can. It begins with a word that says so.
 *
 * <dl>
 *   <dt>Errors
 *   <dd>{@code UNREADABLE_SEAL} if the text is damaged or is no seal
 * </dl>
 *
 * @param answers the answers by seed
 * @param tolerance the tolerance
 * @param hints the hints
 */
public record Seal(Map<Long, Answer> answers, Tolerance tolerance, List<String> hints) {
    /** What every seal begins with. */
    public static final String MARK = "not-secret-1:";

    private static final int LONGEST = 1 << 20;

    /** Keeps the parts from changing. */
    public Seal {
        answers = Map.copyOf(answers);
        hints = List.copyOf(hints);
    }

    /** Returns the seal of an exercise as it stands in a notebook. */
    public static String of(Exercise exercise) {
        StringBuilder lines = new StringBuilder();
        Tolerance tolerance = exercise.tolerance();
        line(lines, "within", tolerance.isShare() ? "share" : "value", tolerance.size(), tolerance.words());
        new TreeMap<>(exercise.answers()).forEach((seed, answer) -> answer(lines, seed, answer));
        exercise.hints().forEach(hint -> line(lines, "hint", hint));
        byte[] packed = packed(lines.toString().getBytes(StandardCharsets.UTF_8));
        return MARK + Base64.getUrlEncoder().withoutPadding().encodeToString(packed);
    }

    /**
     * Reads a seal.
     *
     * @throws Refusal with {@code UNREADABLE_SEAL} if it is damaged or is none
     */
    public static Seal read(String text) {
        if (!text.startsWith(MARK)) {
            throw unreadable("A text that does not begin with " + MARK + " was given as a seal");
        }
        try {
            byte[] packed = Base64.getUrlDecoder().decode(text.substring(MARK.length()));
            return parsed(new String(unpacked(packed), StandardCharsets.UTF_8));
        } catch (DataFormatException | RuntimeException damaged) {
            throw unreadable("A seal was given that is damaged");
        }
    }

    private static void answer(StringBuilder lines, long seed, Answer answer) {
        if (answer instanceof Answer.Measured measured) {
            Kind<?> kind = measured.value().kind();
            line(lines, "measured", seed, measured.value().si(), kind.name());
        } else if (answer instanceof Answer.Plain plain) {
            line(lines, "plain", seed, plain.value());
        } else {
            line(lines, "named", seed, answer);
        }
    }

    private static void line(StringBuilder lines, Object... words) {
        List<String> all = new ArrayList<>();
        for (Object word : words) {
            all.add(String.valueOf(word).replaceAll("[\\t\\n\\r]+", " "));
        }
        lines.append(String.join("\t", all)).append('\n');
    }

    private static Seal parsed(String text) {
        Map<Long, Answer> answers = new LinkedHashMap<>();
        List<String> hints = new ArrayList<>();
        Tolerance tolerance = Tolerance.USUAL;
        for (String line : text.split("\n")) {
            String[] words = line.split("\t", -1);
            switch (words[0]) {
                case "within" ->
                    tolerance = new Tolerance(Double.parseDouble(words[2]), words[1].equals("share"), words[3]);
                case "hint" -> hints.add(words[1]);
                case "measured" -> answers.put(Long.parseLong(words[1]), new Answer.Measured(measured(words)));
                case "plain" -> answers.put(Long.parseLong(words[1]), new Answer.Plain(Double.parseDouble(words[2])));
                case "named" -> answers.put(Long.parseLong(words[1]), new Answer.Named(words[2]));
                default -> throw new IllegalArgumentException(words[0]);
            }
        }
        return new Seal(answers, tolerance, hints);
    }

    private static Quantity<?> measured(String[] words) {
        double si = Double.parseDouble(words[2]);
        return Quantities.KINDS.stream()
                .filter(kind -> kind.name().equals(words[3]))
                .findFirst()
                .orElseThrow()
                .make()
                .apply(si);
    }

    private static byte[] packed(byte[] plain) {
        Deflater deflater = new Deflater(Deflater.BEST_COMPRESSION);
        try {
            deflater.setInput(plain);
            deflater.finish();
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            byte[] piece = new byte[512];
            while (!deflater.finished()) {
                out.write(piece, 0, deflater.deflate(piece));
            }
            return out.toByteArray();
        } finally {
            deflater.end();
        }
    }

    /** Undoes {@link #packed}; the format carries a sum by which damage is found. */
    private static byte[] unpacked(byte[] packed) throws DataFormatException {
        Inflater inflater = new Inflater();
        try {
            inflater.setInput(packed);
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            byte[] piece = new byte[512];
            while (!inflater.finished()) {
                int read = inflater.inflate(piece);
                if (read == 0 && !inflater.finished() || out.size() > LONGEST) {
                    throw new DataFormatException("breaks off");
                }
                out.write(piece, 0, read);
            }
            return out.toByteArray();
        } finally {
            inflater.end();
        }
    }

    private static Refusal unreadable(String asked) {
        return new Refusal(
                LessonProblem.UNREADABLE_SEAL,
                asked,
                "A seal is the text that headrace seal wrote, from its first letter to its last",
                "Copy the exercise once more from your teacher's notebook");
    }
}
