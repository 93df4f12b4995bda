package headrace.kernel.display;

import headrace.data.Cell;
import headrace.data.Column;
import headrace.data.Table;
import headrace.report.Block;
import headrace.report.Block.ChartBlock;
import headrace.report.Block.Facts;
import headrace.report.Block.NotesBlock;
import headrace.report.Block.TableBlock;
import headrace.report.Block.TextBlock;
import headrace.report.Shown;
import java.util.List;
import java.util.Locale;

/**
 * Draws what a result shows as a piece of a page that needs nothing from outside.
 *
 * <p>Colours come from the page around it, light or dark; without its style it is still a page in the right order.
 */
final class ShownHtml {
    private static final String STYLE = """
            <style>
            .headrace{font-family:system-ui,sans-serif;line-height:1.4;max-width:64rem}
            .headrace .title{font-weight:600;margin:.2em 0}
            .headrace p{margin:.2em 0}
            .headrace dl{display:grid;grid-template-columns:max-content auto;gap:.1em 1.2em;margin:.6em 0}
            .headrace dt{opacity:.75}
            .headrace dd{margin:0}
            .headrace table{border-collapse:collapse;margin:.6em 0;font-variant-numeric:tabular-nums}
            .headrace caption{text-align:left;font-weight:600;padding:.2em 0}
            .headrace th,.headrace td{padding:.15em .7em;text-align:left;background:none;border:0;\
            border-bottom:1px solid rgba(128,128,128,.35)}
            .headrace th.number,.headrace td.number{text-align:right}
            .headrace td:first-child:not(.number){min-width:7rem}
            .headrace th span{display:block;font-weight:400;opacity:.75}
            .headrace .notes{border-left:3px solid rgba(128,128,128,.6);padding-left:.8em;margin:.6em 0}
            .headrace .notes h4,.headrace section h4{margin:.2em 0;font-size:1em}
            .headrace section{margin:.6em 0}
            .headrace .basis{font-size:.88em;opacity:.8}
            .headrace .wide{overflow-x:auto}
            .headrace ul{margin:.2em 0;padding-left:1.2em}
            .headrace figure{margin:.6em 0}
            .headrace img{max-width:100%;height:auto}
            @media screen and (max-width:36rem){.headrace figure{overflow-x:auto}.headrace img{max-width:none;width:34rem}}
            @media print{.headrace table,.headrace figure,.headrace dl{break-inside:avoid}}
            </style>
            """;

    private final StringBuilder out = new StringBuilder();

    private ShownHtml() {}

    /** Returns one piece for these results, from top to bottom. */
    static String of(List<Shown> all) {
        ShownHtml html = new ShownHtml();
        html.out.append("<div class=\"headrace\">\n").append(STYLE);
        all.forEach(html::shown);
        return html.out.append("</div>").toString();
    }

    private void shown(Shown shown) {
        out.append("<article>\n");
        if (!shown.isTitledByItsTable()) {
            element("p class=\"title\"", shown.title());
        }
        shown.lines().forEach(line -> element("p", line));
        shown.blocks().forEach(this::block);
        out.append("</article>\n");
    }

    private void block(Block block) {
        if (block instanceof Facts facts) {
            out.append("<dl>\n");
            facts.facts().forEach(fact -> {
                element("dt", fact.label());
                element("dd", fact.value());
            });
            out.append("</dl>\n");
        } else if (block instanceof TableBlock table) {
            table(table.table());
        } else if (block instanceof ChartBlock chart) {
            out.append("<figure>")
                    .append(Picture.svg(
                            Display.svg(chart.chart()), chart.chart().altText()))
                    .append("</figure>\n");
        } else if (block instanceof NotesBlock notes) {
            out.append("<aside class=\"notes\">\n");
            listed("Notes", notes.notes().list().stream().map(Object::toString).toList());
            out.append("</aside>\n");
        } else if (block instanceof TextBlock text) {
            String kind = text.heading().toLowerCase(Locale.ROOT).replaceAll("[^a-z]+", "-");
            out.append("<section class=\"").append(kind).append("\">\n");
            listed(text.heading(), text.lines());
            out.append("</section>\n");
        }
    }

    private void table(Table table) {
        out.append("<div class=\"wide\"><table>\n");
        element("caption", table.title());
        out.append("<thead><tr>");
        for (Column column : table.columns()) {
            String unit = column.unit().filter(symbol -> !symbol.equals("1")).orElse("");
            out.append("<th scope=\"col\"").append(numberClass(column)).append('>');
            out.append(Html.escape(column.name()));
            if (!unit.isEmpty()) {
                out.append(" <span>").append(Html.escape(unit)).append("</span>");
            }
            out.append("</th>");
        }
        out.append("</tr></thead>\n<tbody>\n");
        for (List<Cell> row : table.rows()) {
            out.append("<tr>");
            for (int i = 0; i < row.size(); i++) {
                element("td" + numberClass(table.columns().get(i)), row.get(i).print());
            }
            out.append("</tr>\n");
        }
        out.append("</tbody>\n</table></div>\n");
    }

    private static String numberClass(Column column) {
        return column.numeric() ? " class=\"number\"" : "";
    }

    private void listed(String heading, List<String> lines) {
        element("h4", heading);
        out.append("<ul>\n");
        lines.forEach(line -> element("li", line));
        out.append("</ul>\n");
    }

    /** Writes an element with text in it. The tag is ours and may hold attributes. */
    private void element(String tag, String text) {
        String name = tag.split(" ", 2)[0];
        out.append('<')
                .append(tag)
                .append('>')
                .append(Html.escape(text))
                .append("</")
                .append(name)
                .append(">\n");
    }
}
