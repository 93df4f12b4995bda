package headrace.script;

import headrace.control.ControlLaw;
import headrace.control.duty.DutyPlan;
import headrace.control.duty.DutyPlan.Changeover;
import headrace.control.duty.DutyPlan.Counted;
import headrace.control.duty.DutyRecord;
import headrace.control.duty.Fault;
import headrace.control.duty.Span;
import headrace.control.staging.FlowRatioRule;
import headrace.control.staging.PumpPlant;
import headrace.control.staging.StagedRun;
import headrace.control.staging.Staging;
import headrace.control.staging.StagingTimes;
import headrace.problem.Refusal;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Time;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Words about several pumps over flow and time: staging, duty and standby. */
public final class PlantWords implements Words {
    @Override
    public String subject() {
        return "Staging, duty and standby";
    }

    /** Stages pumps. */
    @Word(
            help =
                    "How many of several alike pumps run along a control curve so that the wire gives least, with the flows"
                            + " at which their number changes, and what a fixed flow-ratio rule takes more.",
            example = "staging(set, quadratic(duty(150.m3ph, 16.m), minimumHead: 35.percent), pumps: 3)",
            choices = {
                "pumps: how many are installed, 1 to 8; always needed",
                "branchLoss: head that a pump's own branch takes when all share the design flow; none unless chosen",
                "leastFlow: least stable flow beside another pump, as a share of best-efficiency flow; 30 %, noted, unless"
                        + " chosen",
                "margin: margin of the fixed rule; 3 % unless chosen"
            })
    public static Staging staging(Map<String, ?> given, Object set, Object law) {
        Choices choices = Choices.of("staging", given, "pumps", "branchLoss", "leastFlow", "margin");
        PumpPlant plant = PumpPlant.of(
                ControlWords.set(set, "staging"),
                choices.whole("pumps"),
                Wanted.object(ControlLaw.class, law, "the law of staging"));
        if (choices.has("branchLoss")) {
            plant = plant.withBranchLoss(choices.head("branchLoss"));
        }
        if (choices.has("leastFlow")) {
            plant = plant.withLeastFlow(choices.ratio("leastFlow"));
        }
        Ratio margin = choices.ratio("margin", FlowRatioRule.GUIDELINE.margin());
        return Staging.of(plant, new FlowRatioRule(margin));
    }

    /** Tells what the fixed rule takes more. */
    @Word(
            help =
                    "What the fixed rule of a staging takes more from the wire than the best number of pumps, at a flow.",
            example = "penalty(staging, 60.m3ph)")
    public static Power penalty(Object staging, Object flow) {
        return Wanted.object(Staging.class, staging, "the staging of penalty")
                .penalty(Wanted.flow(flow, "the flow of penalty"))
                .orElseThrow(() -> new Refusal(
                        ScriptProblem.WRONG_VALUE,
                        "The flow " + flow + " was given for the flow of penalty",
                        "The plant must be able to serve it",
                        "Ask for less flow, or for more pumps"));
    }

    /** Follows flows in time. */
    @Word(
            help =
                    "A plant that follows total flows in time, its pumps switched with hysteresis, a hold and a least run.",
            example = "runStaged(staging, [40.m3ph, 70.m3ph, 75.m3ph, 50.m3ph], step: 15.minute)",
            choices = {
                "step: time from one flow to the next; always needed",
                "hysteresis: between start and stop, as a share of design flow; 5 % unless chosen",
                "hold: how long a flow lasts before a pump starts or stops; 10 min unless chosen",
                "leastRun: how long a pump runs at least; 15 min unless chosen"
            })
    public static StagedRun runStaged(Map<String, ?> given, Object staging, List<?> flows) {
        Choices choices = Choices.of("runStaged", given, "step", "hysteresis", "hold", "leastRun");
        StagingTimes common = StagingTimes.COMMON;
        StagingTimes times = new StagingTimes(
                choices.ratio("hysteresis", common.hysteresis()),
                choices.quantity("hold", Time.KIND, common.hold()),
                choices.quantity("leastRun", Time.KIND, common.minimumRun()));
        double[] si = flows.stream()
                .mapToDouble(flow -> Wanted.flow(flow, "a flow of runStaged").si())
                .toArray();
        return StagedRun.of(
                Wanted.object(Staging.class, staging, "the staging of runStaged"),
                times,
                si,
                choices.quantity("step", Time.KIND));
    }

    /** Makes a plan of turns. */
    @Word(
            help = "How pumps take turns at the duty: every 1 min to 7 days, by the clock or by run hours.",
            example = "dutyPlan(every: 24.h, overlap: 20.s, faultDelay: 30.s)",
            choices = {
                "every: the time after which the duty passes on; always needed",
                "pumps: how many; 2 unless chosen",
                "count: 'clock' unless chosen, or 'run hours'",
                "overlap: how long both run at an alternation; none unless chosen",
                "faultDelay: from a fault to the start of the next pump; none unless chosen",
                "anewAfterFault: true if the clock begins anew when a fault has passed the duty on; false unless chosen"
            })
    public static DutyPlan dutyPlan(Map<String, ?> given) {
        Choices choices =
                Choices.of("dutyPlan", given, "every", "pumps", "count", "overlap", "faultDelay", "anewAfterFault");
        String count = choices.text("count", "clock");
        if (!count.equals("clock") && !count.equals("run hours")) {
            throw new Refusal(
                    ScriptProblem.WRONG_VALUE,
                    "'" + count + "' was given for the choice count: of dutyPlan",
                    "It is 'clock' or 'run hours'",
                    "Say what the interval counts");
        }
        return new DutyPlan(
                choices.whole("pumps", 2),
                choices.quantity("every", Time.KIND),
                count.equals("clock") ? Counted.CLOCK : Counted.RUN_HOURS,
                new Changeover(
                        choices.quantity("overlap", Time.KIND, Time.ZERO),
                        choices.quantity("faultDelay", Time.KIND, Time.ZERO),
                        choices.yes("anewAfterFault", false)));
    }

    /** Follows a plan of turns. */
    @Word(
            help = "Who ran when under a plan of turns, to the second: run times, starts, gaps after faults.",
            example = "dutyRecord(dutyPlan(every: 24.h, faultDelay: 30.s), 7.day, faults: [[1, 58.h, 88.h]])",
            choices = {
                "faults: a list of rows, each the number of the pump, from when and to when; or randomFaults",
                "daily: a list of the hours from which to which flow is wanted each day; always unless chosen"
            })
    public static DutyRecord dutyRecord(Map<String, ?> given, Object plan, Object length) {
        Choices choices = Choices.of("dutyRecord", given, "faults", "daily");
        Time time = Wanted.quantity(Time.KIND, length, "the length of dutyRecord");
        List<Span> wanted = List.of(Span.between(Time.ZERO, time));
        if (choices.has("daily")) {
            Object[] hours =
                    Rows.of(choices.object("daily", List.class), 2, "the choice daily:", "two hours of the day");
            int days = (int) Math.ceil(time.toDays() - 1e-9);
            wanted = Span.daily(
                    Wanted.whole(hours[0], "an hour of daily:"), Wanted.whole(hours[1], "an hour of daily:"), days);
        }
        List<Fault> faults = new ArrayList<>();
        for (Object row : choices.object("faults", List.class, List.of())) {
            faults.add(fault(row));
        }
        return DutyRecord.of(Wanted.object(DutyPlan.class, plan, "the plan of dutyRecord"), time, wanted, faults);
    }

    /** Follows a plan of turns without faults. */
    @Word(
            help = "Who ran when under a plan of turns, to the second: run times, starts, gaps after faults.",
            example = "dutyRecord(dutyPlan(every: 168.h), 1.year)")
    public static DutyRecord dutyRecord(Object plan, Object length) {
        return dutyRecord(Map.of(), plan, length);
    }

    private static Fault fault(Object row) {
        if (row instanceof Fault fault) {
            return fault;
        }
        Object[] parts = Rows.of(row, 3, "a fault of dutyRecord", "the number of the pump, from when and to when");
        return new Fault(
                Wanted.whole(parts[0], "the pump of a fault") - 1,
                Span.between(
                        Wanted.quantity(Time.KIND, parts[1], "the beginning of a fault"),
                        Wanted.quantity(Time.KIND, parts[2], "the end of a fault")));
    }

    /** Draws faults. */
    @Word(
            help = "Faults of the pumps of a plan at random from a seed, over a time.",
            example = "randomFaults(dutyPlan(every: 24.h), 1.year, between: 90.day, repair: 24.h, seed: 3)",
            choices = {
                "between: mean time from a repair to the next fault; always needed",
                "repair: mean time of a repair; always needed",
                "seed: a whole number; 1 unless chosen"
            })
    public static List<Fault> randomFaults(Map<String, ?> given, Object plan, Object length) {
        Choices choices = Choices.of("randomFaults", given, "between", "repair", "seed");
        return Fault.drawn(
                choices.whole("seed", 1),
                Wanted.object(DutyPlan.class, plan, "the plan of randomFaults").pumps(),
                Wanted.quantity(Time.KIND, length, "the length of randomFaults"),
                choices.quantity("between", Time.KIND),
                choices.quantity("repair", Time.KIND));
    }
}
