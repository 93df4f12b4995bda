package headrace.report.sheet;

import headrace.data.TableFile;
import headrace.problem.Place;
import headrace.problem.Refusal;
import headrace.report.run.RunRecord;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Reads the record of an earlier revision back from its page. */
public final class EarlierSheet {
    private EarlierSheet() {}

    /**
     * Returns the record of a saved sheet.
     *
     * @throws Refusal with {@code NO_EARLIER_SHEET} if the file is none
     */
    public static RunRecord read(Path path) {
        try {
            String page = Files.readString(path);
            int from = page.indexOf(SheetPage.RECORD);
            int to = page.indexOf(SheetPage.RECORD_END, Math.max(0, from));
            if (!page.startsWith(SheetPage.START) || from < 0 || to < 0) {
                throw none(path);
            }
            Path table = Files.createTempFile("record", ".csv");
            try {
                Files.writeString(
                        table,
                        page.substring(from + SheetPage.RECORD.length(), to).replace(SheetPage.LESS, "<"));
                return RunRecord.of(TableFile.read(table));
            } finally {
                Files.delete(table);
            }
        } catch (IOException e) {
            throw none(path);
        }
    }

    private static Refusal none(Path path) {
        return new Refusal(
                        SheetProblem.NO_EARLIER_SHEET,
                        "Asked for what changed since '" + path.getFileName() + "'",
                        "That must be a sheet as it was saved, with the record of its numbers in it",
                        "Name the page of the earlier revision, not a print of it")
                .at(Place.of(path.toString()));
    }
}
