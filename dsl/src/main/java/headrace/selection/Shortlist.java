package headrace.selection;

import headrace.curve.PumpTest;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.work.Steps;
import headrace.work.Work;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Pumps for a duty and a load, ranked by what the wire gives in the year; and those that were dropped, each with its
 * reason.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Loads in shares of the flow of the duty.
 *   <dt>Limits
 *   <dd>One pump for the whole duty. Each gets the smallest standard motor that it never overloads at rated speed, and
 *       a drive of the same rating with the losses of the regulation. NPSH and region are judged at the duty.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code NO_CANDIDATES} or {@code IMPOSSIBLE_WISH}. What is wrong with one candidate drops
 *       it and does not stop the others.
 *   <dt>Source
 *   <dd>Each column by the calculation of its own package.
 * </dl>
 *
 * @param wish what is wished
 * @param ranked those that can do it, the least yearly energy first
 * @param dropped those that were dropped, in the order of their names
 */
public record Shortlist(Wish wish, List<Candidate> ranked, List<Dropped> dropped) implements Traced {
    /**
     * A pump that was dropped.
     *
     * @param name its name, or that of its file
     * @param refusal what was wrong
     */
    public record Dropped(String name, Refusal refusal) {
        /** Returns the reason as one who reads a list needs it. */
        public String reason() {
            String message = refusal.getMessage();
            int end = message.lastIndexOf(" [");
            return end < 0 ? message : message.substring(0, end);
        }
    }

    /** Keeps the lists from changing. */
    public Shortlist {
        ranked = List.copyOf(ranked);
        dropped = List.copyOf(dropped);
    }

    /** Returns the shortlist from tests. */
    public static Shortlist of(Wish wish, List<PumpTest> tests) {
        return of(wish, tests, List.of());
    }

    /**
     * Returns the shortlist from tests.
     *
     * @param wish what is wished
     * @param tests the tests of the candidates
     * @param unread those of which not even the test could be read
     */
    public static Shortlist of(Wish wish, List<PumpTest> tests, List<Dropped> unread) {
        if (tests.isEmpty() && unread.isEmpty()) {
            throw new Refusal(
                    SelectionProblem.NO_CANDIDATES,
                    "Asked to choose among no pumps",
                    "There must be at least one",
                    "Name a folder that has pump files in it");
        }
        List<Candidate> ranked = new ArrayList<>();
        List<Dropped> dropped = new ArrayList<>(unread);
        try (Steps steps = Work.steps("choosing among pumps", tests.size())) {
            for (PumpTest test : tests) {
                steps.next();
                try {
                    ranked.add(Candidate.of(test, wish));
                } catch (Refusal reason) {
                    dropped.add(new Dropped(test.name(), reason));
                }
            }
        }
        ranked.sort(Comparator.comparing(Candidate::yearEnergy).thenComparing(Candidate::name));
        dropped.sort(Comparator.comparing(Dropped::name));
        return new Shortlist(wish, ranked, dropped);
    }

    @Override
    public Notes notes() {
        Notes notes = ranked.isEmpty() ? Notes.NONE : ranked.get(0).notes();
        if (ranked.isEmpty()) {
            notes = notes.with(
                    SelectionProblem.NOBODY_LEFT,
                    "All " + dropped.size() + " candidates were dropped; the reasons stand beside their names");
        }
        if (wish.conditions().suction().isEmpty()) {
            return notes.with(
                    SelectionProblem.NPSH_NOT_JUDGED,
                    "Without a suction side the NPSH of the candidates is not judged");
        }
        List<String> unknown = ranked.stream()
                .filter(candidate -> candidate.npsh().isEmpty())
                .map(Candidate::name)
                .toList();
        return unknown.isEmpty()
                ? notes
                : notes.with(
                        SelectionProblem.NPSH_NOT_JUDGED,
                        "The files of " + String.join(", ", unknown) + " state no NPSH, so that it is not judged");
    }

    @Override
    public Basis basis() {
        Basis basis = Basis.of("duty " + wish.duty() + ", law '" + wish.law().name() + "': "
                        + wish.law().statement())
                .and(wish.year().basis())
                .with("load: " + wish.year())
                .with("motors IE" + wish.motors().ieClass()
                        + ", smallest of the standard ratings of EU 2019/1781 that is never"
                        + " overloaded at rated speed; drives of the same rating with its reference losses; losses by '"
                        + wish.motors().model().name() + "'")
                .with("least speed " + wish.motors().leastSpeed() + " of rated speed")
                .with("operating region: " + wish.conditions().region())
                .with("part-load rule: " + wish.conditions().rule());
        for (Candidate candidate : ranked) {
            basis = basis.and(new Basis(candidate.basis().inputs(), List.of()));
        }
        return basis;
    }

    @Override
    public String toString() {
        return ranked.isEmpty()
                ? "none of " + dropped.size() + " candidates"
                : ranked.get(0).name() + " of " + (ranked.size() + dropped.size()) + " candidates, "
                        + ranked.get(0).yearEnergy() + " a year";
    }
}
