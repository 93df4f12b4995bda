package headrace.script;

import headrace.control.ControlLaw;
import headrace.control.duty.DutyPlan;
import headrace.control.staging.Staging;
import headrace.data.Table;
import headrace.energy.StrategyComparison;
import headrace.energy.year.CircuitYear;
import headrace.operation.limit.PumpLimits;
import headrace.operation.suction.NpshCheck;
import headrace.pump.PumpSet;
import headrace.report.run.RunRecord;
import headrace.report.sheet.EarlierSheet;
import headrace.report.sheet.SelectionSheet;
import headrace.report.sheet.SensorSheet;
import headrace.report.sheet.SensorSheet.Removal;
import headrace.report.sheet.Sheet;
import headrace.report.sheet.SheetHead;
import headrace.report.sheet.StrategySheet;
import headrace.report.sheet.StrategySheet.Sequence;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Words about sheets that one hands over. */
public final class SheetWords implements Words {
    private static final String PROJECT = "project: building and system; always needed";
    private static final String REVISION = "revision: such as 'B'; 'A' unless chosen";
    private static final String DATE = "date: as written; left to be filled in unless chosen";
    private static final String BY = "by: who made it; left to be filled in unless chosen";
    private static final String ASSUMPTIONS = "assumptions: a list of sentences; none unless chosen";
    private static final String SINCE =
            "since: the earlier revision, as a sheet, a saved page such as 'selection-a.html', or a run record";
    private static final String MORE = "more: a map of headings and results that stand on it too";
    private static final String[] HEAD = {"project", "revision", "date", "by", "assumptions", "since", "more"};

    @Override
    public String subject() {
        return "Sheets to hand over";
    }

    /** Makes a selection sheet. */
    @Word(
            help =
                    "The sheet for a chosen pump: duty and liquid, curve with duty and band, motor, limits, region, NPSH. It is"
                            + " saved as a page that prints: save(sheet, 'selection-a.html').",
            example = "selectionSheet(set, duty(52.m3ph, 16.m), project: 'Otterbank Library, chilled water')",
            choices = {
                PROJECT,
                REVISION,
                DATE,
                BY,
                ASSUMPTIONS,
                SINCE,
                MORE,
                "limits: limits of the pump set; the assumed ones unless chosen",
                "npsh: a check of NPSH; not judged, and that noted, unless chosen"
            })
    public static Sheet selectionSheet(Map<String, ?> given, Object set, Object duty) {
        Choices choices = Choices.of("selectionSheet", given, with("limits", "npsh"));
        PumpSet pump = ControlWords.set(set, "selectionSheet");
        PumpLimits limits =
                choices.has("limits") ? choices.object("limits", PumpLimits.class) : LimitWords.limits(pump);
        Optional<NpshCheck> npsh =
                choices.has("npsh") ? Optional.of(choices.object("npsh", NpshCheck.class)) : Optional.empty();
        return finished(
                choices,
                SelectionSheet.of(
                        head("Pump selection", choices),
                        pump,
                        ControlWords.point(duty, "selectionSheet"),
                        limits,
                        npsh));
    }

    /** Makes a strategy sheet. */
    @Word(
            help =
                    "The sheet for a control strategy: the sequence of operation with its numbers, the control curve, the"
                            + " year by strategy, staging and turns.",
            example =
                    "strategySheet(comparison, quadratic(design, minimumHead: 25.percent), project: 'Otterbank Library,"
                            + " chilled water', onFailure: 'keep 70 % speed and raise an alarm')",
            choices = {
                PROJECT,
                REVISION,
                DATE,
                BY,
                ASSUMPTIONS,
                SINCE,
                MORE,
                "staging: a staging of several pumps; none unless chosen",
                "turns: a dutyPlan; none unless chosen",
                "onFailure: what the drive does when control fails; noted as missing unless chosen"
            })
    public static Sheet strategySheet(Map<String, ?> given, Object comparison, Object law) {
        Choices choices = Choices.of("strategySheet", given, with("staging", "turns", "onFailure"));
        Sequence sequence = new Sequence(
                choices.has("staging") ? Optional.of(choices.object("staging", Staging.class)) : Optional.empty(),
                choices.has("turns") ? Optional.of(choices.object("turns", DutyPlan.class)) : Optional.empty(),
                choices.text("onFailure", ""));
        return finished(
                choices,
                StrategySheet.of(
                        head("Control strategy", choices),
                        Wanted.object(StrategyComparison.class, comparison, "the comparison of strategySheet"),
                        Wanted.object(ControlLaw.class, law, "the law of strategySheet"),
                        sequence));
    }

    /** Makes a sensor sheet. */
    @Word(
            help =
                    "The sheet for the removal of a remote sensor: energy, cost, unmet branch-hours and worst shortfall of a"
                            + " year with it and without it, and what replaces its alarm.",
            example =
                    "sensorSheet(compare(set, loop, year, price: 0.18.EUR.perKWh, laws: [remote, local]), with:"
                            + " remote.name(), without: local.name(), project: 'Otterbank Library', alarm: 'low flow at the pump')",
            choices = {
                PROJECT,
                REVISION,
                DATE,
                BY,
                ASSUMPTIONS,
                SINCE,
                MORE,
                "with: name of the law with the sensor; always needed",
                "without: name of the law without it; always needed",
                "alarm: what replaces the alarm of the sensor; noted as missing unless chosen"
            })
    public static Sheet sensorSheet(Map<String, ?> given, Object year) {
        Choices choices = Choices.of("sensorSheet", given, with("with", "without", "alarm"));
        return finished(
                choices,
                SensorSheet.of(
                        head("Removal of a remote sensor", choices),
                        Wanted.object(CircuitYear.class, year, "the year of sensorSheet"),
                        new Removal(choices.text("with"), choices.text("without"), choices.text("alarm", ""))));
    }

    /** Makes a sheet of one's own. */
    @Word(
            help = "A sheet of one's own: headings and the results that stand beneath them.",
            example = "sheet('Payback', [Paybacks: payback(comparison, firstCost: 4200.EUR, years: 15, discount:"
                    + " 6.percent)], project: 'Otterbank Library')",
            choices = {PROJECT, REVISION, DATE, BY, ASSUMPTIONS, SINCE, MORE})
    public static Sheet sheet(Map<String, ?> given, String title, Map<String, ?> parts) {
        Choices choices = Choices.of("sheet", given, with());
        Sheet.Draft draft = Sheet.titled(head(title, choices));
        parts.forEach((heading, result) -> draft.part(String.valueOf(heading), result));
        return finished(choices, draft);
    }

    private static String[] with(String... more) {
        List<String> all = new ArrayList<>(List.of(HEAD));
        all.addAll(List.of(more));
        return all.toArray(String[]::new);
    }

    private static SheetHead head(String title, Choices choices) {
        return new SheetHead(
                title,
                choices.text("project"),
                choices.text("revision", "A"),
                choices.text("date", ""),
                choices.text("by", ""));
    }

    private static Sheet finished(Choices choices, Sheet.Draft draft) {
        Map<?, ?> more = choices.object("more", Map.class, Map.of());
        more.forEach((heading, result) -> draft.part(String.valueOf(heading), result));
        for (Object sentence : choices.object("assumptions", List.class, List.of())) {
            draft.assume(Wanted.object(CharSequence.class, sentence, "an assumption of a sheet")
                    .toString());
        }
        Sheet sheet = draft.sheet();
        return choices.has("since")
                ? sheet.since(earlier(choices.object("since", Object.class)), ScriptLanguage.VERSION)
                : sheet;
    }

    private static RunRecord earlier(Object given) {
        if (given instanceof Sheet sheet) {
            return sheet.record(ScriptLanguage.VERSION);
        }
        if (given instanceof Table table) {
            return RunRecord.of(table);
        }
        if (given instanceof CharSequence name) {
            return EarlierSheet.read(ScriptFolder.current().found(name.toString()));
        }
        return Wanted.object(RunRecord.class, given, "the earlier revision of a sheet");
    }
}
