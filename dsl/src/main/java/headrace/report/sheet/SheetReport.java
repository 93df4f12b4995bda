package headrace.report.sheet;

import headrace.report.Block;
import headrace.report.Block.TextBlock;
import headrace.report.Composed;
import headrace.report.Shown;
import headrace.report.run.RunReports;
import java.util.ArrayList;
import java.util.List;

/** How a sheet shows itself in a notebook: its parts one after the other. */
public final class SheetReport {
    private SheetReport() {}

    /** Shows a sheet. */
    public static Shown of(Sheet sheet) {
        List<Block> blocks = new ArrayList<>();
        sheet.changes()
                .ifPresent(changes -> blocks.add(new TextBlock(
                        "Changes since " + changes.before().name(),
                        RunReports.of(changes).lines())));
        for (Sheet.Part part : sheet.parts()) {
            blocks.add(new TextBlock(part.heading(), part.lines()));
            blocks.addAll(part.blocks());
        }
        if (!sheet.assumptions().isEmpty()) {
            blocks.add(new TextBlock("Assumptions", sheet.assumptions()));
        }
        Composed foot = Composed.titled(sheet.toString());
        blocks.addAll(foot.shown(sheet, sheet.cautions().toArray(String[]::new)).blocks());
        return new Shown(
                sheet.toString(),
                List.of(sheet.parts().size() + " parts; save(sheet, 'name.html') writes the page."),
                blocks);
    }
}
