package headrace.data;

import headrace.problem.Refusal;
import java.util.List;

/**
 * A line {@code # key: value} above the columns of a file.
 *
 * <p>A spreadsheet that saved the file may have put it in quotation marks or added empty cells behind it.
 *
 * @param key the key
 * @param value the value, which may be empty
 */
record HeadLine(Entry key, Entry value) {
    static HeadLine of(TextFile file, int number, NumberStyle style) {
        String line = file.lines().get(number - 1);
        String text = line.stripLeading().startsWith("\"") ? onlyCell(file, number, style) : line;
        int hash = text.indexOf('#');
        int colon = text.indexOf(':', hash);
        Entry key = new Entry(
                text.substring(hash + 1, colon < 0 ? text.length() : colon).strip(), file.place(number, hash + 1));
        if (colon < 0) {
            throw key.refused(
                    DataProblem.WRONG_HEAD_LINE,
                    "Asked to read a head line '" + key.text() + "' without a colon",
                    "A head line is '# key: value'",
                    "Write it so, or start a remark with ##");
        }
        String value = text.substring(colon + 1);
        int end = value.length();
        while (end > 0
                && (value.charAt(end - 1) == style.separator() || Character.isWhitespace(value.charAt(end - 1)))) {
            end--;
        }
        String kept = value.substring(0, end).strip();
        int column = colon + 2 + value.substring(0, end).indexOf(kept);
        return new HeadLine(key, new Entry(kept, file.place(number, column)));
    }

    private static String onlyCell(TextFile file, int number, NumberStyle style) {
        List<Entry> cells = Csv.split(file, number, style.separator());
        if (cells.stream().skip(1).anyMatch(cell -> !cell.empty())) {
            throw new Refusal(
                            DataProblem.MALFORMED_LINE,
                            "Asked to read a head line with more than one cell",
                            "A head line in quotation marks stands in one cell",
                            "Put its whole text between the marks, or take them away")
                    .at(cells.get(1).place());
        }
        return cells.get(0).text();
    }
}
