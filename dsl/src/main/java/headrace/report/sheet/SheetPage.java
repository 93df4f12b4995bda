package headrace.report.sheet;

import headrace.data.Cell;
import headrace.data.Column;
import headrace.data.Table;
import headrace.data.TableFile;
import headrace.problem.Note;
import headrace.record.Input;
import headrace.report.Block;
import headrace.report.Block.ChartBlock;
import headrace.report.Block.Facts;
import headrace.report.Block.NotesBlock;
import headrace.report.Block.TableBlock;
import headrace.report.Block.TextBlock;
import headrace.report.run.RunReports;
import java.util.List;

/**
 * Writes a sheet as a page of its own, which prints on A4 and on Letter alike: what it shows is as wide as the narrower
 * of the two inside its margins, nothing is cut at the foot of a page that could stand on the next, and the heads of
 * tables come again. Everything is in the one file, also the record from which a later revision tells what changed.
 */
public final class SheetPage {
    /** How a page begins, by which an earlier one is known. */
    public static final String START = "<!DOCTYPE html>\n<!-- sheet -->\n";

    static final String RECORD = "<script type=\"text/csv\" id=\"record\">\n";
    static final String RECORD_END = "\n</script>";

    /** Stands for {@code <} in the record, so that no text in it can end or begin an element. */
    static final String LESS = "\\u003c";

    private static final int CHART_PIXELS = 680;
    private static final String STYLE = """
            <style>
            @page{margin:16mm 18mm}
            body{font:10.5pt/1.4 system-ui,sans-serif;color:#1f2328;max-width:174mm;margin:1.5rem auto;padding:0 1rem}
            header{border-bottom:2px solid #1f2328;margin-bottom:1rem}
            h1{font-size:1.5em;margin:.1em 0}
            h2{font-size:1.15em;margin:1.2em 0 .3em;border-bottom:1px solid #c4c9d0;break-after:avoid}
            p{margin:.25em 0}
            dl{display:grid;grid-template-columns:minmax(30%,max-content) auto;gap:.1em 1.2em;margin:.5em 0}
            dt{color:#57606a}
            dd{margin:0}
            table{border-collapse:collapse;margin:.6em 0;width:100%;font-size:.88em;font-variant-numeric:tabular-nums}
            caption{text-align:left;font-weight:600;padding:.2em 0;break-after:avoid}
            th,td{padding:.15em .5em;text-align:left;border-bottom:1px solid #d5d9de;vertical-align:top;overflow-wrap:break-word}
            th{font-weight:600;vertical-align:bottom}
            th span{display:block;font-weight:400;color:#57606a}
            .number{text-align:right}
            thead{display:table-header-group}
            tr,dl,figure,.signed{break-inside:avoid}
            figure{margin:.6em 0}
            svg{max-width:100%;max-height:105mm;width:auto;height:auto;display:block}
            ul,ol{margin:.2em 0;padding-left:1.3em}
            li{overflow-wrap:anywhere}
            .small{font-size:.85em;color:#444c56}
            .signed{display:grid;grid-template-columns:1fr 1fr 1fr;gap:2em;margin-top:2.5em}
            .signed div{border-top:1px solid #1f2328;padding-top:.2em}
            @media print{body{margin:0;padding:0;max-width:none}}
            </style>
            """;

    private final StringBuilder out = new StringBuilder();
    private final Sheet sheet;

    private SheetPage(Sheet sheet) {
        this.sheet = sheet;
    }

    /**
     * Returns the page.
     *
     * @param language the version of the script language that made it, for its record
     */
    public static String of(Sheet sheet, int language) {
        SheetPage page = new SheetPage(sheet);
        page.head();
        sheet.changes()
                .ifPresent(changes -> page.part(
                        "Changes since " + changes.before().name(),
                        RunReports.of(changes).lines(),
                        RunReports.of(changes).blocks()));
        sheet.parts().forEach(part -> page.part(part.heading(), part.lines(), part.blocks()));
        page.foot();
        page.out
                .append(RECORD)
                .append(TableFile.text(sheet.record(language).toTable()).replace("<", LESS))
                .append(RECORD_END)
                .append("\n</body>\n</html>\n");
        return page.out.toString();
    }

    private void head() {
        SheetHead head = sheet.head();
        out.append(START)
                .append("<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<title>")
                .append(escaped(sheet.toString()))
                .append("</title>\n")
                .append(STYLE)
                .append("</head>\n<body>\n<header>\n");
        element("h1", head.title());
        out.append("<dl>\n");
        fact("project", head.project());
        fact("revision", head.revision());
        fact("date", head.date().isBlank() ? "____________" : head.date());
        fact("made by", head.by().isBlank() ? "____________" : head.by());
        out.append("</dl>\n</header>\n");
    }

    private void part(String heading, List<String> lines, List<Block> blocks) {
        element("h2", heading);
        lines.forEach(line -> element("p", line));
        blocks.forEach(this::block);
    }

    private void block(Block block) {
        if (block instanceof Facts facts) {
            out.append("<dl>\n");
            facts.facts().forEach(fact -> fact(fact.label(), fact.value()));
            out.append("</dl>\n");
        } else if (block instanceof TableBlock table) {
            table(table.table());
        } else if (block instanceof ChartBlock chart) {
            out.append("<figure>").append(chart.chart().toSvg(CHART_PIXELS)).append("</figure>\n");
        } else if (block instanceof TextBlock text) {
            element("p", text.heading());
            list(text.lines());
        } else if (block instanceof NotesBlock notes) {
            list(notes.notes().list().stream().map(Note::toString).toList());
        }
    }

    private void table(Table table) {
        out.append("<table>\n");
        element("caption", table.title());
        out.append("<thead><tr>");
        for (Column column : table.columns()) {
            out.append(column.numeric() ? "<th class=\"number\">" : "<th>").append(escaped(column.name()));
            String heading = column.heading();
            if (!heading.equals(column.name())) {
                out.append("<span>")
                        .append(escaped(
                                heading.substring(column.name().length()).strip()))
                        .append("</span>");
            }
            out.append("</th>");
        }
        out.append("</tr></thead>\n<tbody>\n");
        for (List<Cell> row : table.rows()) {
            out.append("<tr>");
            for (int i = 0; i < row.size(); i++) {
                out.append(table.columns().get(i).numeric() ? "<td class=\"number\">" : "<td>")
                        .append(escaped(row.get(i).print()))
                        .append("</td>");
            }
            out.append("</tr>\n");
        }
        out.append("</tbody>\n</table>\n");
    }

    private void foot() {
        if (!sheet.assumptions().isEmpty() || !sheet.notes().isEmpty()) {
            element("h2", "Assumptions and limits touched");
            list(sheet.assumptions());
            list(sheet.notes().list().stream().map(note -> note.text() + ".").toList());
        }
        element("h2", "Cautions");
        list(sheet.cautions());
        element("p", "Where law asks for it a licensed professional signs.");
        element("h2", "Inputs and sources");
        out.append("<div class=\"small\">\n");
        list(sheet.basis().inputs().stream().map(SheetPage::input).toList());
        list(sheet.basis().choices());
        out.append("</div>\n<div class=\"signed\"><div>made</div><div>checked</div><div>date</div></div>\n");
    }

    private static String input(Input input) {
        return input.name() + ": " + input.source() + " (SHA-256 " + input.sha256() + ")";
    }

    private void list(List<String> lines) {
        if (lines.isEmpty()) {
            return;
        }
        out.append("<ul>\n");
        lines.forEach(line -> element("li", line));
        out.append("</ul>\n");
    }

    private void fact(String label, String value) {
        element("dt", label);
        element("dd", value);
    }

    private void element(String name, String text) {
        out.append('<')
                .append(name)
                .append('>')
                .append(escaped(text))
                .append("</")
                .append(name)
                .append(">\n");
    }

    /** Returns the text with nothing in it that a browser could take for markup. */
    static String escaped(String text) {
        StringBuilder safe = new StringBuilder(text.length() + 16);
        text.codePoints().forEach(each -> {
            switch (each) {
                case '&' -> safe.append("&amp;");
                case '<' -> safe.append("&lt;");
                case '>' -> safe.append("&gt;");
                case '"' -> safe.append("&quot;");
                default -> safe.appendCodePoint(each < ' ' && each != '\n' && each != '\t' ? 0xFFFD : each);
            }
        });
        return safe.toString();
    }
}
