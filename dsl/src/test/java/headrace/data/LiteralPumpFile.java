package headrace.data;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What a pump file says, read word by word: the other opinion against which the reader is held. It shares no code with
 * it and accepts a little more than it should; where the reader gives values, they must be these.
 */
final class LiteralPumpFile {
    private static final Pattern CELL = Pattern.compile("\\s*(?:\"((?:[^\"]|\"\")*)\"|([^,]*?))\\s*(?:,|$)");
    private static final String BLANKS = "[\\s\\u00A0\\u2028]";
    private static final Map<String, Double> SI = new HashMap<>();

    static {
        put(1 / 3600.0, "m3/h", "m³/h", "m3ph", "M3/H");
        put(1e-3, "L/s", "l/s", "lps");
        put(1e-3 / 60, "L/min", "l/min", "lpm");
        put(6.30901964e-5, "gpm", "US gpm", "usgpm");
        put(7.57681667e-5, "imp gpm", "igpm", "impGpm");
        put(1, "m3/s", "m³/s", "m", "W", "mHead", "m3ps");
        put(0.3048, "ft", "ftHead", "foot", "feet");
        put(1e-3, "mm");
        put(1e-2, "cm", "%");
        put(0.0254, "in", "inch", "inches");
        put(1e3, "kW", "km");
        put(1e6, "MW");
        put(745.69987, "hp");
        put(0.293071070, "Btu/h", "BTU/h", "btu/h", "btuph");
        put(3516.852842, "ton", "TR", "tonR");
        put(Math.PI / 30, "rpm", "r/min", "1/min", "min-1");
        put(2 * Math.PI, "r/s", "1/s", "rps");
        put(1, "rad/s", "radps");
    }

    final Map<String, String> head = new HashMap<>();
    final List<double[]> points = new ArrayList<>();
    final List<double[]> npsh = new ArrayList<>();
    final List<String> columns = new ArrayList<>();

    /** Reads the bytes; the points are flow, head, power and, where there is such a column, speed, all in SI. */
    LiteralPumpFile(byte[] bytes) {
        String text = new String(bytes, StandardCharsets.UTF_8);
        List<Double> factors = new ArrayList<>();
        for (String line : text.replaceFirst("^\uFEFF", "").split("\r\n|\r|\n")) {
            List<String> cells = cells(line);
            String first = cells.isEmpty() ? "" : cells.get(0);
            if (first.startsWith("#")) {
                String whole = line.strip().startsWith("\"") ? first : line.strip();
                String[] parts = whole.substring(1).split(":", 2);
                if (!first.startsWith("##") && parts.length == 2) {
                    head.put(
                            plain(parts[0]),
                            parts[1].replaceFirst("[,\\s]+$", "").strip());
                }
            } else if (!String.join("", cells).isEmpty()) {
                readRow(cells, factors);
            }
        }
        points.sort(Comparator.comparingDouble(point -> point[0]));
        npsh.sort(Comparator.comparingDouble(point -> point[0]));
    }

    private void readRow(List<String> cells, List<Double> factors) {
        if (columns.isEmpty()) {
            for (String cell : cells) {
                if (!cell.isEmpty()) {
                    columns.add(plain(cell.replaceFirst("(?s)\\[.*", "")));
                    factors.add(factor(cell.replaceFirst("[^\\[]*\\[", "")
                            .replace("]", "")
                            .replace('\u00A0', ' ')
                            .strip()));
                }
            }
            return;
        }
        Map<String, Double> values = new TreeMap<>();
        for (int i = 0; i < columns.size(); i++) {
            if (columns.get(i).equals("npsh")
                    && (i >= cells.size() || cells.get(i).isEmpty())) {
                continue;
            }
            values.put(columns.get(i), new BigDecimal(cells.get(i)).doubleValue() * factors.get(i));
        }
        points.add(new double[] {
            values.get("flow"), values.get("head"), values.get("shaft power"), values.getOrDefault("speed", 0.0)
        });
        if (values.containsKey("npsh")) {
            npsh.add(new double[] {values.get("flow"), values.get("npsh")});
        }
    }

    /** Returns a head line's number in SI, such as 0.24 for {@code 240 mm}. */
    double number(String key) {
        String[] parts = head.get(key).split("\\s+", 2);
        return new BigDecimal(parts[0]).doubleValue() * factor(parts[1]);
    }

    private static List<String> cells(String line) {
        List<String> cells = new ArrayList<>();
        Matcher matcher = CELL.matcher(line);
        int at = 0;
        while (at < line.length() && matcher.find(at) && matcher.start() == at) {
            cells.add(
                    matcher.group(1) == null
                            ? matcher.group(2).strip()
                            : matcher.group(1).replace("\"\"", "\"").strip());
            at = matcher.end();
        }
        return cells;
    }

    /** Blanks mean nothing in a unit. */
    private static Double factor(String unit) {
        return SI.get(unit.replaceAll(BLANKS, ""));
    }

    private static String plain(String name) {
        return name.strip().toLowerCase(java.util.Locale.ROOT).replaceAll("\\s+", " ");
    }

    private static void put(double factor, String... units) {
        for (String unit : units) {
            SI.put(unit.replaceAll(BLANKS, ""), factor);
        }
    }
}
