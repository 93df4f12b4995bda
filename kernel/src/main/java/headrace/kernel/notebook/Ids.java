package headrace.kernel.notebook;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.zip.CRC32;

/**
 * Ids of cells. One that must be made comes from the cell's text and place alone, so that the same file always gets the
 * same ids and its changes can be compared line by line.
 */
final class Ids {
    private static final Pattern WELL_FORMED = Pattern.compile("[a-zA-Z0-9_-]{1,64}");

    private Ids() {}

    static List<Cell> complete(List<Cell> cells) {
        Set<String> taken = new HashSet<>();
        boolean[] kept = new boolean[cells.size()];
        for (int i = 0; i < kept.length; i++) {
            String id = cells.get(i).id();
            kept[i] = WELL_FORMED.matcher(id).matches() && taken.add(id);
        }
        List<Cell> complete = new ArrayList<>(cells.size());
        for (int i = 0; i < kept.length; i++) {
            Cell cell = cells.get(i);
            complete.add(kept[i] ? cell : withId(cell, made(cell, i, taken)));
        }
        return List.copyOf(complete);
    }

    private static String made(Cell cell, int place, Set<String> taken) {
        String id;
        int trial = 0;
        do {
            id = checksum(place + " " + trial++ + " " + cell.source());
        } while (!taken.add(id));
        return id;
    }

    private static String checksum(String text) {
        CRC32 sum = new CRC32();
        sum.update(text.getBytes(StandardCharsets.UTF_8));
        return String.format("%08x", sum.getValue());
    }

    private static Cell withId(Cell cell, String id) {
        if (cell instanceof Cell.Code code) {
            return new Cell.Code(id, code.metadata(), code.source(), code.count(), code.outputs());
        }
        if (cell instanceof Cell.Markdown text) {
            return new Cell.Markdown(id, text.metadata(), text.source(), text.attachments());
        }
        Cell.Raw raw = (Cell.Raw) cell;
        return new Cell.Raw(id, raw.metadata(), raw.source(), raw.attachments());
    }
}
