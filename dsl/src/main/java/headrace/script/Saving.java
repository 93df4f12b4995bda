package headrace.script;

import headrace.chart.Chart;
import headrace.data.DataProblem;
import headrace.data.Table;
import headrace.data.TableFile;
import headrace.problem.Place;
import headrace.problem.Refusal;
import headrace.report.Shown;
import headrace.report.sheet.Sheet;
import headrace.report.sheet.SheetPage;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/** Saves what a result shows, and keeps its hands off files that are none of its own. */
final class Saving {
    private static final int WIDTH = 800;

    private final Choices choices;
    private final Object result;

    /** The kinds of file, each with how one that was saved before begins. */
    private enum Ending {
        CSV("\uFEFF\"# title: ", "\uFEFF# title: "),
        SVG("<svg", "<?xml"),
        PNG("\u0089PNG"),
        HTML("<!DOCTYPE html>\n<!-- sheet"),
        TXT();

        private final String[] starts;

        Ending(String... starts) {
            this.starts = starts;
        }

        boolean begins(byte[] start) {
            String text = new String(start, this == PNG ? StandardCharsets.ISO_8859_1 : StandardCharsets.UTF_8);
            for (String one : starts) {
                if (text.startsWith(one)) {
                    return true;
                }
            }
            return false;
        }
    }

    Saving(Choices choices, Object result) {
        this.choices = choices;
        this.result = result;
    }

    String to(String name) {
        Ending ending = ending(name);
        Path target = ScriptFolder.current().target(name);
        requireFree(name, target, ending);
        try {
            return "Saved " + write(ending, target) + " to " + shortest(target);
        } catch (IOException e) {
            throw new Refusal(
                            DataProblem.FILE_NOT_WRITTEN,
                            "Asked to save where the system does not let a file be written",
                            "The folder must exist and allow it: " + target.getParent(),
                            "Make the folder, name another one, or close the file where it is open")
                    .at(Place.of(name));
        }
    }

    /** Returns the path as it is shortest: from the current folder if it lies there. */
    private static Path shortest(Path target) {
        Path here = Path.of("").toAbsolutePath();
        return target.startsWith(here) ? here.relativize(target) : target;
    }

    private String write(Ending ending, Path target) throws IOException {
        int width = choices.whole("width", WIDTH);
        switch (ending) {
            case CSV -> {
                Table table = Parts.table(result, choices.text("table", ""));
                TableFile.write(table, target);
                return "the table '" + table.title() + "'";
            }
            case SVG -> {
                Chart chart = Parts.chart(result, choices.text("chart", ""));
                Files.writeString(target, chart.toSvg(width));
                return "the chart '" + chart.title() + "'";
            }
            case PNG -> {
                Chart chart = Parts.chart(result, choices.text("chart", ""));
                Files.write(target, chart.toPng(width));
                return "the chart '" + chart.title() + "'";
            }
            case HTML -> {
                Sheet sheet = sheet();
                Files.writeString(target, SheetPage.of(sheet, ScriptLanguage.VERSION));
                return "the sheet '" + sheet + "'";
            }
            default -> {
                Shown shown = Parts.shown(result);
                Files.writeString(target, shown.toText() + "\n");
                return "'" + shown.title() + "'";
            }
        }
    }

    private Sheet sheet() {
        if (result instanceof Sheet sheet) {
            return sheet;
        }
        throw new Refusal(
                DataProblem.NOTHING_TO_SHOW,
                "Asked to save " + Described.value(result) + " as a page",
                "A page is made of a sheet",
                "Make a sheet of it first, as help('sheet') shows");
    }

    private static Ending ending(String name) {
        String last = name.substring(name.lastIndexOf('.') + 1).toUpperCase(Locale.ROOT);
        for (Ending ending : Ending.values()) {
            if (ending.name().equals(last)) {
                return ending;
            }
        }
        throw new Refusal(
                        DataProblem.UNKNOWN_FILE_KIND,
                        "Asked to save '" + name + "'",
                        "A table is saved as .csv, a chart as .svg or .png, a sheet as .html, and all of a result as .txt",
                        "Use one of these endings")
                .at(Place.of(name));
    }

    private void requireFree(String name, Path target, Ending ending) {
        if (!Files.exists(target)) {
            return;
        }
        boolean input = ScriptFolder.current().hasRead(target);
        if (input || !(choices.yes("over", false) || savedBefore(target, ending))) {
            throw new Refusal(
                            DataProblem.FILE_IN_THE_WAY,
                            "Asked to save over a file that " + (input ? "the script has read" : "save did not write"),
                            input
                                    ? "What a script rests on is never written over"
                                    : "Only what save has written gives way without a word",
                            input ? "Use another name" : "Use another name, or say over: true")
                    .at(Place.of(name));
        }
    }

    private static boolean savedBefore(Path target, Ending ending) {
        if (!Files.isRegularFile(target)) {
            return false;
        }
        try (var in = Files.newInputStream(target)) {
            return ending.begins(in.readNBytes(32));
        } catch (IOException e) {
            return false;
        }
    }
}
