package headrace.trend;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * Makes {@code demo-data/logs/otterbank-week.csv}: a week of an invented building, in the middle of which its strainer
 * clogs, with the blemishes that such exports have. A test holds the file to it.
 */
final class WeekLog {
    static final Path FILE = Path.of("..", "demo-data", "logs", "otterbank-week.csv");

    private static final InventedLog WEEK = new InventedLog(26, 7, 10, 4.5, Map.of(Condition.CLOGGED, 0.35));
    private static final int GAP = 300;
    private static final int STUCK = 500;
    private static final int TWICE = 640;
    private static final int OFFLINE = 760;
    private static final int EMPTY = 820;
    private static final int SPIKE = 905;

    private WeekLog() {}

    static String text() {
        List<String> lines = new ArrayList<>(List.of(
                "# Otterbank Library is an invented building. Chilled water, the pump Heron 65, one week every ten minutes.",
                "# Columns: time in UTC; wire power; speed in % of rated; flow; head of the pump; head across the strainer;",
                "# outdoor temperature. Made by InventedLog.java from seed 26; the strainer clogs by 35 % at noon of the",
                "# fifth day. Put in by hand: a gap, a stuck flow meter, a row twice, a text, an empty cell, a spike.",
                "time,power [kW],speed [%],flow [m3/h],head [m],strainer head [m],outdoor temperature [degC]"));
        List<InventedLog.Row> rows = WEEK.rows();
        String stuck = "";
        for (int i = 0; i < rows.size(); i++) {
            String[] cells = InventedLog.text(rows.get(i)).split(",");
            stuck = i == STUCK ? cells[3] : stuck;
            cells[3] = i >= STUCK && i < STUCK + 24 ? stuck : cells[3];
            cells[1] = i >= OFFLINE && i < OFFLINE + 3 ? "offline" : cells[1];
            cells[4] = i == EMPTY ? "" : cells[4];
            cells[4] = i == SPIKE ? "99.99" : cells[4];
            String line = String.join(",", cells);
            if (i < GAP || i >= GAP + 12) {
                lines.add(line);
            }
            if (i == TWICE) {
                lines.add(line);
            }
        }
        return String.join("\n", lines) + "\n";
    }

    /** Writes the file anew. */
    public static void main(String[] arguments) throws IOException {
        Files.writeString(FILE, text());
    }
}
