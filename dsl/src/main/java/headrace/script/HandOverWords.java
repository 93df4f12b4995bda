package headrace.script;

import headrace.control.ControlLaw;
import headrace.control.duty.DutyPlan;
import headrace.data.Table;
import headrace.problem.Refusal;
import headrace.report.sheet.HandOver;
import headrace.units.Ratio;
import headrace.units.Time;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** Words about what the building system is handed. */
public final class HandOverWords implements Words {
    @Override
    public String subject() {
        return "Hand-over to the building system";
    }

    /** Makes the points list. */
    @Word(
            help =
                    "The points of a pump that the building system reads and writes: name, unit, range and scaling. Saved as CSV"
                            + " it reads back with readTable.",
            example =
                    "save(pointsList(set, quadratic(design, minimumHead: 25.percent), prefix: 'CHW-P1'), 'points.csv')",
            choices = {
                "prefix: what the names begin with; 'P1' unless chosen",
                "signal: the ends of an analogue signal; ['4 mA', '20 mA'] unless chosen"
            })
    public static Table pointsList(Map<String, ?> given, Object set, Object law) {
        Choices choices = Choices.of("pointsList", given, "prefix", "signal");
        Object[] ends = Rows.of(
                choices.object("signal", List.class, List.of("4 mA", "20 mA")),
                2,
                "the choice signal: of pointsList",
                "the two ends of a signal");
        return HandOver.points(
                ControlWords.set(set, "pointsList"),
                Wanted.object(ControlLaw.class, law, "the law of pointsList"),
                choices.text("prefix", "P1"),
                List.of(String.valueOf(ends[0]), String.valueOf(ends[1])));
    }

    /** Makes the points list with usual names. */
    @Word(
            help = "The points of a pump that the building system reads and writes, named P1-….",
            example = "pointsList(set, quadratic(design, minimumHead: 25.percent))")
    public static Table pointsList(Object set, Object law) {
        return pointsList(Map.of(), set, law);
    }

    /** Makes the set-up table. */
    @Word(
            help =
                    "What is set at the drive: limits of speed, the control curve in steps, turns. Saved as CSV it reads back"
                            + " with readTable.",
            example = "setupTable(set, quadratic(design, minimumHead: 25.percent), turns: dutyPlan(every: 168.h))",
            choices = "turns: a dutyPlan; none unless chosen")
    public static Table setupTable(Map<String, ?> given, Object set, Object law) {
        Choices choices = Choices.of("setupTable", given, "turns");
        return HandOver.setUp(
                ControlWords.set(set, "setupTable"),
                Wanted.object(ControlLaw.class, law, "the law of setupTable"),
                choices.has("turns") ? Optional.of(choices.object("turns", DutyPlan.class)) : Optional.empty());
    }

    /** Makes the set-up table without turns. */
    @Word(
            help = "What is set at the drive: limits of speed and the control curve in steps.",
            example = "setupTable(set, quadratic(design, minimumHead: 25.percent))")
    public static Table setupTable(Object set, Object law) {
        return setupTable(Map.of(), set, law);
    }

    /** Simulates a day. */
    @Word(
            help =
                    "A day under a law with time stamps, in steady state from step to step, from a block that gives the share of"
                            + " design flow at the minute of the day at which a step begins.",
            example =
                    "dayTrace(set, quadratic(design, minimumHead: 25.percent), date: '2026-03-02', step: 15.minute) { minute"
                            + " -> minute < 420 ? 0.percent : 60.percent }",
            choices = {"date: such as '2026-03-02'; always needed", "step: 15 min unless chosen"})
    public static Table dayTrace(Map<String, ?> given, Object set, Object law, Function<Integer, ?> share) {
        Choices choices = Choices.of("dayTrace", given, "date", "step");
        Time step = choices.quantity("step", Time.KIND, Time.minutes(15));
        return HandOver.day(
                ControlWords.set(set, "dayTrace"),
                Wanted.object(ControlLaw.class, law, "the law of dayTrace"),
                date(choices.text("date")),
                (int) Math.round(step.toMinutes()),
                minute -> shareOfStep(share.apply(minute)));
    }

    private static Ratio shareOfStep(Object given) {
        return Wanted.ratio(given, "the share of a step of dayTrace");
    }

    private static LocalDate date(String text) {
        try {
            return LocalDate.parse(text);
        } catch (DateTimeParseException e) {
            throw new Refusal(
                    ScriptProblem.WRONG_VALUE,
                    "'" + text + "' was given for the choice date: of dayTrace",
                    "A date is a year, a month and a day",
                    "Write it as '2026-03-02'");
        }
    }
}
