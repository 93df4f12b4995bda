package headrace.report.sheet;

import headrace.control.ControlLaw;
import headrace.control.SteadyState;
import headrace.control.duty.DutyPlan;
import headrace.control.staging.Staging;
import headrace.control.staging.StagingTimes;
import headrace.control.staging.Switch;
import headrace.data.Column;
import headrace.data.Table;
import headrace.energy.StrategyComparison;
import headrace.operation.OperatingPoint;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.pump.PumpSet;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.report.Composed;
import headrace.report.Shown;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Numbers;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Speed;
import headrace.units.Time;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/** The sheet for a control strategy: the sequence of operation with its numbers, the control curve, and the year. */
public final class StrategySheet {
    private static final int ROWS = 10;

    private StrategySheet() {}

    /**
     * What belongs to the sequence beside the law.
     *
     * @param staging how many pumps run, if there are several
     * @param turns duty and standby, if there are
     * @param onFailure what the drive does when control fails; blank if it was not stated
     */
    public record Sequence(Optional<Staging> staging, Optional<DutyPlan> turns, String onFailure) {}

    /** Returns the sheet as a draft, to which more can be added. */
    public static Sheet.Draft of(SheetHead head, StrategyComparison comparison, ControlLaw law, Sequence sequence) {
        requireIn(comparison, law);
        PumpSet set = comparison.set();
        Sheet.Draft draft = Sheet.titled(head)
                .part("Sequence of operation", steps(set, law, sequence))
                .part("Control curve", new Curve(set, law, comparison.design().flow()).shown())
                .part("The year by strategy", comparison);
        sequence.staging().ifPresent(staging -> draft.part("Number of pumps", staging));
        sequence.turns().ifPresent(turns -> draft.part("Duty and standby", turns));
        if (sequence.onFailure().isBlank()) {
            draft.note(SheetProblem.NOT_STATED, "What the drive does when control fails was not stated");
        }
        return draft;
    }

    private static void requireIn(StrategyComparison comparison, ControlLaw law) {
        List<String> names =
                comparison.laws().stream().map(year -> year.law().name()).toList();
        if (!names.contains(law.name())) {
            throw new Refusal(
                    SheetProblem.INCOMPLETE_SHEET,
                    "Asked for the sheet of '" + law.name() + "' from a comparison without it",
                    "The year stands on the sheet beside the sequence; its laws are " + String.join("; ", names),
                    "Add the law to the comparison, or take one of these");
        }
    }

    private static Shown steps(PumpSet set, ControlLaw law, Sequence sequence) {
        List<String> steps = new ArrayList<>();
        steps.add("On a call for flow the pump that has the duty starts");
        steps.add("Speed follows the law '" + law.name() + "': " + law.statement());
        steps.add("The law observes " + observed(law));
        steps.add("The drive keeps the speed from " + set.minimumSpeed() + " to " + set.maximumSpeed()
                + (set.minimumSpeedStated() ? "" : " (the least speed is assumed)"));
        sequence.staging().ifPresent(staging -> staging(staging, steps));
        sequence.turns().ifPresent(turns -> steps.add("Turns: " + turns));
        steps.add(
                sequence.onFailure().isBlank()
                        ? "On failure of control: to be stated before this sheet is used"
                        : "On failure of control: " + sequence.onFailure());
        Composed shown = Composed.titled("In this order");
        for (int i = 0; i < steps.size(); i++) {
            shown.fact("step " + (i + 1), steps.get(i));
        }
        return shown.shown();
    }

    private static String observed(ControlLaw law) {
        return law.observes().isEmpty()
                ? "nothing"
                : law.observes().stream()
                        .map(each -> each.name().toLowerCase(Locale.ROOT).replace('_', ' '))
                        .sorted()
                        .collect(Collectors.joining(" and "));
    }

    private static void staging(Staging staging, List<String> steps) {
        StagingTimes times = StagingTimes.COMMON;
        String hold = minutes(times.hold());
        double half = 0.5
                * times.hysteresis().value()
                * staging.plant().design().flow().si();
        for (Switch each : staging.switches()) {
            steps.add("Above " + Flow.cubicMetresPerSecond(each.flow().si() + half) + " for " + hold + " "
                    + each.above() + " pumps run; below "
                    + Flow.cubicMetresPerSecond(each.flow().si() - half) + " for "
                    + hold + ", and after a least run of " + minutes(times.minimumRun()) + ", " + each.below() + " ("
                    + each.reason() + ")");
        }
    }

    private static String minutes(Time time) {
        return Numbers.print(time.toMinutes()) + " min";
    }

    /** The control curve in steps, with the notes of its points. */
    private record Curve(PumpSet set, ControlLaw law, Flow design) {
        Shown shown() {
            Notes notes = Notes.NONE;
            Basis basis = Basis.NONE;
            Table table = Table.of(
                    "Along the control curve",
                    Column.of("share of design flow", Ratio.KIND),
                    Column.of("flow", Flow.KIND),
                    Column.of("head", Head.KIND),
                    Column.of("speed", Speed.KIND),
                    Column.of("shaft power", Power.KIND),
                    Column.of("wire power", Power.KIND));
            for (int i = 0; i <= ROWS; i++) {
                Ratio share = Ratio.of((double) i / ROWS);
                Flow flow = design.times(share);
                Optional<SteadyState> state = state(flow);
                Optional<OperatingPoint> point = state.map(SteadyState::point);
                notes = notes.and(state.map(Traced::notes).orElse(Notes.NONE));
                basis = basis.and(state.map(Traced::basis).orElse(Basis.NONE));
                table = table.row(
                        share,
                        flow,
                        point.map(OperatingPoint::head).orElse(null),
                        point.map(OperatingPoint::speed).orElse(null),
                        point.map(OperatingPoint::shaftPower).orElse(null),
                        point.map(OperatingPoint::wirePower).orElse(null));
            }
            return Composed.titled("One pump under '" + law.name() + "'")
                    .table(table)
                    .shown(notes, basis);
        }

        /** Nothing where the test of the pump does not reach. */
        private Optional<SteadyState> state(Flow flow) {
            try {
                return Optional.of(SteadyState.of(law, set, flow));
            } catch (Refusal beyondTest) {
                return Optional.empty();
            }
        }
    }
}
