package headrace.script;

import headrace.data.Table;
import headrace.report.Shown;
import headrace.report.run.RunDifference;
import headrace.report.run.RunRecord;
import headrace.report.run.RunReports;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;

/** Words that keep what a run rested on, and compare two runs. */
public final class RunWords implements Words {
    @Override
    public String subject() {
        return "Keeping and comparing runs";
    }

    /** Records a run. */
    @Word(
            help =
                    "What a run rested on and what came out: versions, inputs with their hash, choices, and every number that"
                            + " the results show. It is saved as a table.",
            example = "save(table(runRecord('revision A', curve, steadyState(set, law, 26.m3ph))), 'revision-a.csv')")
    public static RunRecord runRecord(Object name, Object... results) {
        List<Object> all = new ArrayList<>();
        for (Object result : results) {
            if (result instanceof Collection<?> several) {
                all.addAll(several);
            } else {
                all.add(result);
            }
        }
        return RunRecord.of(
                Wanted.object(CharSequence.class, name, "the name of a run").toString(), ScriptLanguage.VERSION, all);
    }

    /** Compares two runs. */
    @Word(
            help = "What changed from one run to another, and what it moved: two records, or tables saved from them.",
            example = "whatChanged(readTable('revision-a.csv'), runRecord('revision B', curve))")
    public static Shown whatChanged(Object before, Object after) {
        return RunReports.of(RunDifference.between(record(before), record(after)));
    }

    /** Says what has changed in the language since a script was written. */
    @Word(
            help = "States the version of the script language that a script was written for; another version says what"
                    + " differs.",
            example = "writtenFor(1)")
    public static String writtenFor(Object version) {
        return LanguageChanges.own().since(Wanted.whole(version, "the version of writtenFor"));
    }

    private static RunRecord record(Object given) {
        return given instanceof Table table
                ? RunRecord.of(table)
                : Wanted.object(RunRecord.class, given, "a run of whatChanged");
    }
}
