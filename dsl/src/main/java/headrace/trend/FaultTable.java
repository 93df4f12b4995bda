package headrace.trend;

import headrace.numeric.Evidence;
import headrace.numeric.Evidence.Prior;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.trend.Condition.Pattern;
import headrace.units.Ratio;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Set;

/**
 * What the residuals after the reference say about the pump, its plant and its meters: each condition with its
 * likelihood and its size.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Sizes and likelihoods as shares.
 *   <dt>Limits
 *   <dd>None, one or two conditions at once are compared. Each is taken to have its one size over all hours; one that
 *       grows shows its mean. Conditions that leave the same pattern in the readings at hand share the likelihood. What
 *       leaves no pattern is not seen: a closed valve, a bypass that is open.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code TOO_SHORT_LOG}.
 *   <dt>Source
 *   <dd>Bayes' rule over {@link Evidence}; before any reading each condition has a chance of 3 %, two of them that of
 *       both, our own guess.
 * </dl>
 */
public final class FaultTable implements Traced {
    /** A condition at least this likely is told as a finding. */
    public static final Ratio FINDING = Ratio.percent(50);

    private static final double BEFORE = 0.03;
    private static final double ODD_POWER = 0.2;
    private static final int LEAST_HOURS = 24;
    private static final double CONFIDENCE = 2;

    private final MapCheck check;
    private final int hours;
    private final List<Row> rows;
    private final double nothing;

    /**
     * A condition.
     *
     * @param condition the condition
     * @param likelihood how likely it is, alone or with another
     * @param size its size if it is there alone
     * @param uncertainty of that size, k = 2
     * @param logEvidence the natural logarithm of how much better it alone explains the residuals than nothing does
     */
    public record Row(Condition condition, Ratio likelihood, Ratio size, Ratio uncertainty, double logEvidence) {
        /** Returns whether it is told as a finding. */
        public boolean isFinding() {
            return likelihood.compareTo(FINDING) >= 0;
        }
    }

    private record Hypothesis(Set<Condition> conditions, Evidence evidence, double logWeight) {}

    private FaultTable(MapCheck check, Signatures signatures) {
        this.check = check;
        this.hours = signatures.hours();
        List<Hypothesis> all = hypotheses(signatures);
        double most = all.stream().mapToDouble(Hypothesis::logWeight).max().orElseThrow();
        double sum = all.stream()
                .mapToDouble(each -> Math.exp(each.logWeight - most))
                .sum();
        this.nothing = Math.exp(all.get(0).logWeight - most) / sum;
        double base = all.get(0).evidence.logarithm();
        this.rows = all.stream()
                .filter(each -> each.conditions.size() == 1)
                .map(each -> row(each, all, most, sum, base))
                .sorted(Comparator.comparing(Row::likelihood).reversed())
                .toList();
    }

    /** Returns what the hours after the reference say. */
    public static FaultTable of(MapCheck check) {
        Signatures signatures = Signatures.of(check);
        if (signatures.hours() < LEAST_HOURS) {
            throw new Refusal(
                    TrendProblem.TOO_SHORT_LOG,
                    "Asked what " + signatures.hours() + " hours after the reference say about faults",
                    "It takes " + LEAST_HOURS + " hours or more of which half the rows are there",
                    "Let the reference end earlier, with until:, or take a longer log");
        }
        return new FaultTable(check, signatures);
    }

    private static List<Hypothesis> hypotheses(Signatures signatures) {
        List<Condition> seen = Arrays.stream(Condition.values())
                .filter(condition -> signatures.sees(condition.pattern()))
                .toList();
        List<Hypothesis> all = new ArrayList<>(List.of(hypothesis(signatures, Set.of())));
        for (int i = 0; i < seen.size(); i++) {
            all.add(hypothesis(signatures, Set.of(seen.get(i))));
            for (int j = 0; j < i; j++) {
                if (seen.get(i).pattern() != seen.get(j).pattern()) {
                    all.add(hypothesis(signatures, Set.of(seen.get(i), seen.get(j))));
                }
            }
        }
        return all;
    }

    private static Hypothesis hypothesis(Signatures signatures, Set<Condition> conditions) {
        Prior[] priors = Arrays.stream(Pattern.values())
                .map(pattern -> prior(pattern, conditions))
                .toArray(Prior[]::new);
        Evidence evidence = Evidence.of(signatures.products(), signatures.observed(), priors);
        return new Hypothesis(
                conditions, evidence, evidence.logarithm() + conditions.size() * Math.log(BEFORE / (1 - BEFORE)));
    }

    private static Prior prior(Pattern pattern, Set<Condition> conditions) {
        boolean odd = pattern == Pattern.POWER && conditions.contains(Condition.WRONG_ROTATION);
        double usual = odd ? ODD_POWER : pattern.usual();
        return conditions.stream()
                .filter(condition -> condition.pattern() == pattern)
                .findFirst()
                .map(condition ->
                        new Prior(condition.mean(), Math.hypot(usual, condition.spread()), condition.positive()))
                .orElse(new Prior(0, usual, false));
    }

    private static Row row(Hypothesis single, List<Hypothesis> all, double most, double sum, double base) {
        Condition condition = single.conditions.iterator().next();
        double likelihood = all.stream()
                        .filter(each -> each.conditions.contains(condition))
                        .mapToDouble(each -> Math.exp(each.logWeight - most))
                        .sum()
                / sum;
        Hypothesis best = all.stream()
                .filter(each -> each.conditions.contains(condition))
                .max(Comparator.comparingDouble(Hypothesis::logWeight))
                .orElseThrow();
        int at = condition.pattern().ordinal();
        return new Row(
                condition,
                Ratio.of(likelihood),
                Ratio.of(best.evidence.size(at)),
                Ratio.of(CONFIDENCE * best.evidence.error(at)),
                single.evidence.logarithm() - base);
    }

    /** Returns the check whose residuals it speaks of. */
    public MapCheck check() {
        return check;
    }

    /** Returns the conditions that the readings can tell of, the likeliest first. */
    public List<Row> rows() {
        return rows;
    }

    /** Returns the conditions that are told as findings, the likeliest first. */
    public List<Row> findings() {
        return rows.stream().filter(Row::isFinding).toList();
    }

    /** Returns how likely it is that none of them is there. */
    public Ratio nothing() {
        return Ratio.of(nothing);
    }

    /** Returns from how many hours it was found. */
    public int hours() {
        return hours;
    }

    @Override
    public Notes notes() {
        Notes notes = check.notes();
        for (Condition condition : Condition.values()) {
            if (!check.log().has(condition.pattern().needed())) {
                notes = notes.with(
                        TrendProblem.CONDITION_NOT_SEEN,
                        "Without the " + condition.pattern().needed().words() + " nothing can be said of '"
                                + condition.words() + "'");
            }
        }
        return notes;
    }

    @Override
    public Basis basis() {
        return check.basis()
                .with("likelihoods by Bayes' rule from " + hours + " hours after the reference; before any reading "
                        + Ratio.of(BEFORE) + " for each condition; sizes k = 2");
    }

    @Override
    public String toString() {
        List<Row> found = findings();
        return found.isEmpty()
                ? "no finding, " + nothing() + " likely that nothing is wrong"
                : String.join(
                        "; ",
                        found.stream()
                                .map(row -> row.condition().words() + ", " + row.likelihood() + " likely, "
                                        + row.size() + " ± " + row.uncertainty() + " "
                                        + row.condition().sizeOf())
                                .toList());
    }
}
