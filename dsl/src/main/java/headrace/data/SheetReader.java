package headrace.data;

import headrace.data.Form.Field;
import headrace.data.Sheet.Heading;
import headrace.problem.Refusal;
import headrace.work.Work;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Takes a file apart, line by line, and refuses the first thing that its form does not allow. */
final class SheetReader {
    private static final String REMARK = "##";

    private final TextFile file;
    private final Form form;
    private final NumberStyle style;
    private final Map<String, Entry> head = new LinkedHashMap<>();
    private final List<Heading> headings = new ArrayList<>();
    private final List<List<Entry>> rows = new ArrayList<>();

    SheetReader(TextFile file, Form form, NumberStyle style) {
        this.file = file;
        this.form = form;
        this.style = style;
    }

    Sheet sheet() {
        for (int number = 1; number <= file.lines().size(); number++) {
            read(number);
        }
        if (headings.isEmpty()) {
            throw missingColumns(form.columnNames(), file.lines().size());
        }
        return new Sheet(form, style, file, head, headings, rows);
    }

    private void read(int number) {
        Work.poll();
        String line = file.lines().get(number - 1);
        String start = line.stripLeading().replaceFirst("^\"", "");
        if (start.startsWith("#")) {
            if (!start.startsWith(REMARK)) {
                readHeadLine(number, HeadLine.of(file, number, style));
            }
            return;
        }
        if (line.chars().allMatch(c -> c == style.separator() || c == '"' || Character.isWhitespace(c))) {
            return;
        }
        if (headings.isEmpty()) {
            requireSeparator(number, line);
            readHeadings(withoutEmptyEnd(Csv.split(file, number, style.separator()), 0), number);
        } else {
            rows.add(row(number, line));
        }
    }

    private void readHeadLine(int number, HeadLine line) {
        Entry key = line.key();
        String name = Form.normal(key.text());
        if (!headings.isEmpty()) {
            throw headLineRefused(key, "below the columns", "Head lines stand above the columns", "Move it up");
        }
        if (!form.keys().contains(name)) {
            throw headLineRefused(
                    key,
                    "of another name",
                    "A " + form.name() + " can have " + String.join(", ", form.keys()),
                    "Use one of these names, or start a remark with " + REMARK);
        }
        if (line.value().empty()) {
            throw headLineRefused(
                    key, "that says nothing", "A head line is '# key: value'", "Say it, or delete the line");
        }
        if (head.putIfAbsent(name, line.value()) != null) {
            throw headLineRefused(key, "for the second time", "Each can stand once", "Keep the right one of them");
        }
    }

    private static Refusal headLineRefused(Entry key, String how, String possible, String next) {
        return key.refused(
                DataProblem.WRONG_HEAD_LINE, "Asked to read a head line '" + key.text() + "' " + how, possible, next);
    }

    private void requireSeparator(int number, String line) {
        String others = style == NumberStyle.DECIMAL_POINT ? ";" : ",";
        if (line.indexOf(style.separator()) < 0) {
            others += "\t";
        }
        for (int i = 0; i < line.length(); i++) {
            if (others.indexOf(line.charAt(i)) >= 0) {
                throw wrongSeparator(number, i + 1);
            }
        }
    }

    private Refusal wrongSeparator(int number, int column) {
        boolean points = style == NumberStyle.DECIMAL_POINT;
        return new Refusal(
                        DataProblem.WRONG_SEPARATOR,
                        "Asked to read a " + form.name() + " whose cells are not parted by "
                                + (points ? "commas" : "semicolons"),
                        points
                                ? "Cells parted by semicolons, with decimal commas, are read when you say so"
                                : "With decimalComma: true the cells are parted by semicolons",
                        points
                                ? "Say decimalComma: true behind the file's name, or save the file with commas between"
                                        + " the cells"
                                : "Leave decimalComma out, or save the file with semicolons between the cells")
                .at(file.place(number, column));
    }

    private void readHeadings(List<Entry> cells, int number) {
        for (Entry cell : cells) {
            Heading heading = HeadingText.read(cell, form);
            for (Heading other : headings) {
                if (other.field() == heading.field()) {
                    throw cell.refused(
                            DataProblem.WRONG_COLUMN,
                            "Asked to read a second column '" + heading.field().column() + "'",
                            "Each column can stand once",
                            "Keep the right one of them");
                }
            }
            headings.add(heading);
        }
        String missing = form.fields().stream()
                .filter(Field::required)
                .filter(field -> headings.stream().noneMatch(heading -> heading.field() == field))
                .map(Field::column)
                .collect(Collectors.joining(", "));
        if (!missing.isEmpty()) {
            throw missingColumns(missing, number);
        }
    }

    private Refusal missingColumns(String missing, int number) {
        return new Refusal(
                        DataProblem.MISSING_COLUMN,
                        "Asked to read a " + form.name() + " without the column " + missing,
                        "Its columns are " + form.columnNames(),
                        "Add the missing one, as in: " + form.example())
                .at(file.place(number, 0));
    }

    private List<Entry> row(int number, String line) {
        List<Entry> cells = withoutEmptyEnd(Csv.split(file, number, style.separator()), headings.size());
        if (cells.size() != headings.size()) {
            if (style == NumberStyle.DECIMAL_POINT && line.indexOf(';') >= 0) {
                throw wrongSeparator(number, line.indexOf(';') + 1);
            }
            throw cells.get(0)
                    .refused(
                            DataProblem.ROW_DOES_NOT_FIT,
                            "Asked to read a row of " + cells.size() + " cells",
                            "There are " + headings.size() + " columns",
                            "Give each column its number; a decimal comma parts a number in two");
        }
        return cells;
    }

    /** Leaves out the empty cells that a spreadsheet adds at the end of a line. */
    private static List<Entry> withoutEmptyEnd(List<Entry> cells, int least) {
        int size = cells.size();
        while (size > least && cells.get(size - 1).empty()) {
            size--;
        }
        return cells.subList(0, size);
    }
}
