package headrace.script;

import headrace.problem.Refusal;
import headrace.trend.Drift;
import headrace.trend.FaultTable;
import headrace.trend.HourSeries;
import headrace.trend.MapCheck;
import headrace.trend.MapPower;
import headrace.trend.MeasuredSaving;
import headrace.trend.PowerBaseline;
import headrace.trend.SavingOption;
import headrace.trend.TrendLog;
import headrace.trend.TrendProblem;
import headrace.units.Ratio;
import java.util.Arrays;
import java.util.Locale;
import java.util.Map;

/** Words that tell from a trend log what was saved, what drifts and what is wrong. */
public final class VerificationWords implements Words {
    private static final String CHECK =
            "Holds a cleaned log against the pump map: what the rows until a time say of head and power is the reference,"
                    + " the residuals tell what changed.";
    private static final String DRIFT =
            "Whether a residual of a mapCheck drifts: two cumulative sums, with a stated rate of false alarms.";
    private static final String BASELINE =
            "The power as a function of what drives it, fitted to the hours of a cleaned log, with CV(RMSE) and NMBE as ASHRAE"
                    + " Guideline 14 has them.";
    private static final String SAVING =
            "The energy saved in a later log against a baseline, with its uncertainty and the option of measurement named.";

    @Override
    public String subject() {
        return "Measurement and verification";
    }

    /** Holds a log against the pump map. */
    @Word(
            help = CHECK,
            example = "check = mapCheck(clean, set, until: '2026-06-04 12:00')",
            choices = {
                "until: where the reference ends, in the clock of the log; always needed",
                "power: 'wire' for the wire power of the map, 'shaft' where the losses are unknown; 'wire' unless chosen"
            })
    public static MapCheck mapCheck(Map<String, ?> given, Object log, Object set) {
        Choices choices = Choices.of("mapCheck", given, "until", "power");
        TrendLog trend = TrendWords.log(log, "mapCheck");
        return MapCheck.of(
                trend,
                ControlWords.set(set, "mapCheck"),
                power(choices),
                TrendWords.time(trend, choices.text("until")));
    }

    private static MapPower power(Choices choices) {
        String said = choices.text("power", "wire");
        return Arrays.stream(MapPower.values())
                .filter(of -> of.name().toLowerCase(Locale.ROOT).equals(said))
                .findFirst()
                .orElseThrow(() -> TrendWords.wrong("'" + said + "'", "power", "'wire' or 'shaft'"));
    }

    private static MapCheck check(Object given, String word) {
        return Wanted.object(MapCheck.class, given, "the check of " + word);
    }

    /** Watches a residual. */
    @Word(
            help = DRIFT,
            example = "drift(check, of: 'head')",
            choices = {
                "of: 'power', 'head' or 'plantHead'; always needed",
                "falseAlarms: how many false alarms in a year of hours at most; 0.2 unless chosen"
            })
    public static Drift drift(Map<String, ?> given, Object check) {
        Choices choices = Choices.of("drift", given, "of", "falseAlarms");
        MapCheck held = check(check, "drift");
        HourSeries series = held.residual(TrendWords.channel(choices.text("of")))
                .orElseThrow(() -> new Refusal(
                        TrendProblem.CHANNEL_MISSING,
                        "Asked for the drift of '" + choices.text("of") + "' in "
                                + held.log().name(),
                        "It has residuals of "
                                + String.join(
                                        ", ",
                                        held.residuals().stream()
                                                .map(each -> each.channel().words())
                                                .toList()),
                        "Use one of these, or log the reading too"));
        return Drift.withFalseAlarms(series, choices.number("falseAlarms", 0.2));
    }

    /** Tells faults. */
    @Word(
            help =
                    "What the residuals after the reference of a mapCheck say about pump, plant and meters: each condition with"
                            + " its likelihood and size.",
            example = "faults(check)")
    public static FaultTable faults(Object check) {
        return FaultTable.of(check(check, "faults"));
    }

    /** Fits a baseline. */
    @Word(
            help = BASELINE,
            example = "before = powerBaseline(clean, by: 'flow')",
            choices = {
                "by: 'flow', 'outdoor' or 'map'; always needed",
                "set: the pump set, needed by: 'map'",
                "power: 'wire' or 'shaft' power of the map; 'wire' unless chosen"
            })
    public static PowerBaseline powerBaseline(Map<String, ?> given, Object log) {
        Choices choices = Choices.of("powerBaseline", given, "by", "set", "power");
        TrendLog trend = TrendWords.log(log, "powerBaseline");
        String by = choices.text("by");
        return switch (by) {
            case "flow" -> PowerBaseline.byFlow(trend);
            case "outdoor" -> PowerBaseline.byOutdoor(trend);
            case "map" ->
                PowerBaseline.byMap(
                        trend, ControlWords.set(choices.object("set", Object.class), "powerBaseline"), power(choices));
            default -> throw TrendWords.wrong("'" + by + "'", "by", "'flow', 'outdoor' or 'map'");
        };
    }

    /** Counts a saving. */
    @Word(
            help = SAVING,
            example = "measuredSaving(before, after, option: 'B')",
            choices = {
                "option: 'A', 'B', 'C' or 'D' of the measurement and verification protocol (IPMVP); always needed",
                "confidence: how surely the saving lies within its uncertainty; 95 % unless chosen"
            })
    public static MeasuredSaving measuredSaving(Map<String, ?> given, Object baseline, Object after) {
        Choices choices = Choices.of("measuredSaving", given, "option", "confidence");
        String said = choices.text("option");
        SavingOption option = Arrays.stream(SavingOption.values())
                .filter(each -> each.name().equals(said.strip().toUpperCase(Locale.ROOT)))
                .findFirst()
                .orElseThrow(() -> TrendWords.wrong("'" + said + "'", "option", "'A', 'B', 'C' or 'D'"));
        return Wanted.object(PowerBaseline.class, baseline, "the baseline of measuredSaving")
                .savingIn(
                        TrendWords.log(after, "measuredSaving"),
                        option,
                        choices.ratio("confidence", Ratio.percent(95)).value());
    }
}
