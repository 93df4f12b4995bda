package headrace.control.duty;

import headrace.control.duty.DutySequence.Edge;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Time;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * Who ran when, to the second.
 *
 * <p>The books close: the run times of all pumps together are the wanted time, less the gaps after faults and the time
 * in which no pump was fit, and once more the time in which two ran.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Whole seconds since the beginning.
 *   <dt>Limits
 *   <dd>The first 2000 events are kept; the times and counts are those of all.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_SPANS}.
 *   <dt>Source
 *   <dd>Own bookkeeping.
 * </dl>
 *
 * @param plan the plan
 * @param length how long the record is
 * @param ran how long each pump ran
 * @param starts how often each pump started
 * @param wanted how long flow was wanted
 * @param gap how long no pump ran between a fault and the start of the next one
 * @param nobody how long flow was wanted and no pump was fit
 * @param overlap how long two pumps ran
 * @param alternations how often the duty passed on in its turn
 * @param leftOut how often it could not, for want of a fit pump or while the next one was only starting
 * @param events what happened, from the beginning
 */
public record DutyRecord(
        DutyPlan plan,
        Time length,
        List<Time> ran,
        List<Long> starts,
        Time wanted,
        Time gap,
        Time nobody,
        Time overlap,
        long alternations,
        long leftOut,
        List<DutyEvent> events)
        implements Traced {
    private static final int KEPT = 2000;

    /** Keeps the lists from changing. */
    public DutyRecord {
        ran = List.copyOf(ran);
        starts = List.copyOf(starts);
        events = List.copyOf(events);
    }

    /** Returns the record of a plan in which flow is always wanted. */
    public static DutyRecord of(DutyPlan plan, Time length, List<Fault> faults) {
        return of(plan, length, List.of(Span.between(Time.ZERO, length)), faults);
    }

    /**
     * Returns the record of a plan.
     *
     * @param plan the plan
     * @param length how long it is followed, in whole seconds
     * @param wanted when flow is wanted, in order
     * @param faults when pumps cannot run, those of one pump in order
     */
    public static DutyRecord of(DutyPlan plan, Time length, List<Span> wanted, List<Fault> faults) {
        long end = Math.round(length.seconds());
        List<Edge> edges = edges(plan, end, wanted, faults);
        DutySequence done = new DutySequence(plan, edges, end, KEPT).through();
        return new DutyRecord(
                plan,
                Time.seconds(end),
                Arrays.stream(done.run).mapToObj(Time::seconds).toList(),
                Arrays.stream(done.starts).boxed().toList(),
                Time.seconds(done.wanted),
                Time.seconds(done.gap),
                Time.seconds(done.nobody),
                Time.seconds(done.both),
                done.alternations,
                done.leftOut,
                done.events);
    }

    private static List<Edge> edges(DutyPlan plan, long end, List<Span> wanted, List<Fault> faults) {
        Span.requireOrder("flow", wanted, end);
        List<Edge> edges = new ArrayList<>();
        for (Span span : Span.joined(wanted)) {
            edges.add(new Edge(span.from(), -1, true));
            edges.add(new Edge(span.to(), -1, false));
        }
        for (int pump = 0; pump < plan.pumps(); pump++) {
            int own = pump;
            List<Span> spans = faults.stream()
                    .filter(fault -> fault.pump() == own)
                    .map(Fault::span)
                    .toList();
            Span.requireOrder("a fault of pump " + (pump + 1), spans, end);
            for (Span span : spans) {
                edges.add(new Edge(span.from(), pump, true));
                edges.add(new Edge(span.to(), pump, false));
            }
        }
        if (faults.stream().anyMatch(fault -> fault.pump() < 0 || fault.pump() >= plan.pumps())) {
            throw new Refusal(
                    DutyProblem.IMPOSSIBLE_SPANS,
                    "Asked for a fault of a pump that the plan does not have",
                    "Its pumps are 1 to " + plan.pumps(),
                    "Name one of these pumps");
        }
        edges.sort(Comparator.comparingLong(Edge::second)
                .thenComparing(edge -> edge.pump() < 0)
                .thenComparing(Edge::begins));
        return edges;
    }

    /** Returns by how much the run times of the pumps differ at most. */
    public Time spread() {
        return ran.stream()
                .max(Comparator.naturalOrder())
                .orElseThrow()
                .minus(ran.stream().min(Comparator.naturalOrder()).orElseThrow());
    }

    /** Returns the time that is left over when the books are closed: 0. */
    public Time unaccounted() {
        Time all = ran.stream().reduce(Time.ZERO, Time::plus);
        return wanted.minus(gap).minus(nobody).plus(overlap).minus(all);
    }

    @Override
    public Notes notes() {
        Notes notes = Notes.NONE;
        if (nobody.seconds() > 0) {
            notes = notes.with(
                    DutyProblem.NO_PUMP_LEFT, "For " + nobody + " flow was wanted and no pump was fit to run");
        }
        if (gap.seconds() > 0) {
            notes = notes.with(
                    DutyProblem.GAP_AFTER_FAULT,
                    "For " + gap + " no pump ran between a fault and the start of the next pump");
        }
        if (leftOut > 0) {
            notes = notes.with(
                    DutyProblem.ALTERNATION_LEFT_OUT,
                    leftOut
                            + " alternations were left out because no other pump was fit, or the next was only starting");
        }
        return notes;
    }

    @Override
    public Basis basis() {
        return Basis.of("duty and standby: " + plan).with("followed over " + length + " in whole seconds");
    }

    @Override
    public String toString() {
        return plan + ": " + ran + " of run time, starts " + starts + ", " + gap + " of gaps";
    }
}
