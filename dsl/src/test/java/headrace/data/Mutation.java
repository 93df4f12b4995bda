package headrace.data;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;

/** Ways in which a good file goes bad, or only looks different. */
enum Mutation {
    MARK(true),
    CARRIAGE_RETURNS(true),
    QUOTED_CELLS(true),
    BLANKS(true),
    EMPTY_ENDS(true),
    BLANK_LINES(true),
    REMARK(true),
    SHUFFLED_ROWS(true),
    TURNED_COLUMNS(true),
    TRAILING_ZEROS(true),
    EXPONENTS(true),
    BYTE_FLIPPED(false),
    BYTE_DELETED(false),
    BYTE_INSERTED(false),
    LINE_DELETED(false),
    LINE_DUPLICATED(false),
    LINES_SWAPPED(false),
    CELL_DELETED(false),
    CELL_DUPLICATED(false),
    CELLS_SWAPPED(false),
    SEPARATORS_CHANGED(false),
    TEXT_INSERTED(false),
    TRUNCATED(false),
    UNIT_CHANGED(false),
    FOREIGN_DIGIT(false),
    MINUS_SIGN(false),
    DECIMAL_COMMA(false),
    QUOTES(false),
    NULLS(false);

    private static final String[] TEXTS = {
        "n/a",
        "#",
        "##",
        "# ",
        "-",
        "NaN",
        "Infinity",
        "1e400",
        "0x1",
        "1_000",
        "[",
        "]",
        ":",
        "\t",
        "flow [m3/h]",
        "ω",
        "=1+1",
        "<b>",
        "12",
        ".",
        ",",
        ";",
        "\u00A0",
        "\u2028"
    };
    private static final String[] UNITS = {
        "m3/h", "m³/h", "l/s", "L/s", "gpm", "m", "ft", "kW", "W", "hp", "kPa", "rpm", "Hz", "", "furlong", "%", "M",
        "M3/H"
    };

    /** Whether the file still says the same. */
    final boolean keepsValues;

    Mutation(boolean keepsValues) {
        this.keepsValues = keepsValues;
    }

    byte[] apply(byte[] file, Random random) {
        switch (this) {
            case BYTE_FLIPPED -> {
                byte[] out = file.clone();
                if (out.length > 0) {
                    out[random.nextInt(out.length)] ^= (byte) (1 << random.nextInt(8));
                }
                return out;
            }
            case BYTE_DELETED -> {
                return without(file, file.length == 0 ? 0 : random.nextInt(file.length));
            }
            case TRUNCATED -> {
                return java.util.Arrays.copyOf(file, random.nextInt(file.length + 1));
            }
            default -> {
                String text = new String(file, StandardCharsets.UTF_8);
                return changed(text, random).getBytes(StandardCharsets.UTF_8);
            }
        }
    }

    private static byte[] without(byte[] file, int at) {
        byte[] out = new byte[Math.max(0, file.length - 1)];
        System.arraycopy(file, 0, out, 0, Math.min(at, out.length));
        if (at < out.length) {
            System.arraycopy(file, at + 1, out, at, out.length - at);
        }
        return out;
    }

    private String changed(String text, Random random) {
        List<String> lines = new ArrayList<>(text.lines().toList());
        if (lines.isEmpty()) {
            return text;
        }
        int at = random.nextInt(lines.size());
        int columns = firstRow(lines) - 1;
        switch (this) {
            case MARK -> {
                return text.startsWith("\uFEFF") ? text : "\uFEFF" + text;
            }
            case CARRIAGE_RETURNS -> {
                return String.join("\r\n", lines) + "\r\n";
            }
            case TEXT_INSERTED -> {
                return inserted(text, TEXTS[random.nextInt(TEXTS.length)], random);
            }
            case BYTE_INSERTED -> {
                return inserted(text, String.valueOf((char) (32 + random.nextInt(95))), random);
            }
            case NULLS -> {
                return inserted(text, "\u0000".repeat(1 + random.nextInt(3)), random);
            }
            case QUOTES -> {
                return inserted(text, "\"", random);
            }
            case QUOTED_CELLS ->
                everyCell(
                        lines,
                        columns,
                        cell -> cell.isBlank() || cell.contains("\"") ? cell : "\"" + cell.strip() + "\"");
            case BLANKS -> everyCell(lines, columns, cell -> "  " + cell + " \t");
            case TRAILING_ZEROS ->
                everyCell(lines, columns + 1, cell -> plain(cell) && cell.contains(".") ? cell.strip() + "00" : cell);
            case EXPONENTS -> everyCell(lines, columns + 1, cell -> plain(cell) ? cell.strip() + "e0" : cell);
            case EMPTY_ENDS -> lines.replaceAll(line -> line + ",,");
            case BLANK_LINES -> lines.add(at, random.nextBoolean() ? "" : ",,");
            case REMARK -> lines.add(at, "## 12, 13, \"");
            case SHUFFLED_ROWS -> Collections.shuffle(lines.subList(columns + 1, lines.size()), random);
            case TURNED_COLUMNS -> {
                String headings = lines.get(columns);
                lines.replaceAll(line -> line.contains("#") ? line : turned(line, headings));
            }
            case LINE_DELETED -> lines.remove(at);
            case LINE_DUPLICATED -> lines.add(at, lines.get(at));
            case LINES_SWAPPED -> Collections.swap(lines, at, random.nextInt(lines.size()));
            case SEPARATORS_CHANGED -> change(lines, at, random);
            case UNIT_CHANGED ->
                lines.set(
                        columns,
                        lines.get(columns).replaceFirst("\\[[^]]*]", "[" + UNITS[random.nextInt(UNITS.length)] + "]"));
            default -> lines.set(at, changedLine(lines.get(at), random));
        }
        return String.join("\n", lines) + "\n";
    }

    private String changedLine(String line, Random random) {
        List<String> cells = new ArrayList<>(List.of(line.split(",", -1)));
        int at = random.nextInt(cells.size());
        switch (this) {
            case CELL_DELETED -> cells.remove(at);
            case CELL_DUPLICATED -> cells.add(at, cells.get(at));
            case CELLS_SWAPPED -> Collections.swap(cells, at, random.nextInt(cells.size()));
            case FOREIGN_DIGIT -> cells.set(at, cells.get(at).replaceFirst("[0-9]", "\u0663"));
            case MINUS_SIGN ->
                cells.set(
                        at,
                        (random.nextBoolean() ? "-" : "\u2212") + cells.get(at).strip());
            case DECIMAL_COMMA -> cells.set(at, cells.get(at).replace('.', ','));
            default -> throw new IllegalStateException(name());
        }
        return String.join(",", cells);
    }

    private static void change(List<String> lines, int at, Random random) {
        char other = ";\t|".charAt(random.nextInt(3));
        if (random.nextBoolean()) {
            lines.replaceAll(line -> line.replace(',', other));
        } else {
            lines.set(at, lines.get(at).replace(',', other));
        }
    }

    private static String inserted(String text, String piece, Random random) {
        int at = random.nextInt(text.length() + 1);
        return text.substring(0, at) + piece + text.substring(at);
    }

    /** Returns where the points begin: behind the first line that is no head line. */
    private static int firstRow(List<String> lines) {
        int i = 0;
        while (i < lines.size() - 1
                && (lines.get(i).contains("#") || lines.get(i).replace(",", "").isBlank())) {
            i++;
        }
        return i + 1;
    }

    private static void everyCell(List<String> lines, int from, java.util.function.UnaryOperator<String> change) {
        for (int i = from; i < lines.size(); i++) {
            lines.set(
                    i,
                    String.join(
                            ",",
                            java.util.Arrays.stream(lines.get(i).split(",", -1))
                                    .map(change)
                                    .toList()));
        }
    }

    private static boolean plain(String cell) {
        return cell.strip().matches("[0-9.]+");
    }

    private static String turned(String line, String headings) {
        List<String> cells = new ArrayList<>(List.of(line.split(",", -1)));
        int last = Math.min(headings.replaceFirst("[\\s,]+$", "").split(",").length, cells.size()) - 1;
        cells.add(0, cells.remove(last));
        return String.join(",", cells);
    }
}
