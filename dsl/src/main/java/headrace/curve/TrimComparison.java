package headrace.curve;

import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Head;
import headrace.units.Length;
import headrace.units.Ratio;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One trim by several rules side by side, since they disagree.
 *
 * @param diameter the diameter after the trim
 * @param results the curve by each rule, and between tested diameters if there are any
 */
public record TrimComparison(Length diameter, List<Result> results) implements Traced {
    /**
     * The curve by one rule.
     *
     * @param rule the rule in words
     * @param curve the curve
     */
    public record Result(String rule, PumpCurve curve) {}

    /**
     * Compares the rules: radial similarity, powers of 2 and 3, ISO 9906 if the inlet is known, and interpolation if
     * the diameter lies between tested ones.
     *
     * @throws Refusal as {@link PumpCurve#trimmed} does
     */
    public static TrimComparison of(
            PumpCurve full, Length diameter, Optional<Length> inlet, Optional<TestedDiameters> tested) {
        List<TrimRule> rules = new ArrayList<>(List.of(TrimRule.radial(), TrimRule.exponent(2), TrimRule.exponent(3)));
        inlet.map(TrimRule::inlet).ifPresent(rules::add);
        List<Result> results = new ArrayList<>();
        rules.forEach(rule -> results.add(new Result(rule.name(), full.trimmed(Trim.to(diameter, rule)))));
        tested.ifPresent(
                family -> results.add(new Result("between tested diameters, in proportion", family.at(diameter))));
        return new TrimComparison(diameter, List.copyOf(results));
    }

    /**
     * Returns by how much the heads differ at the flow of best efficiency of the first curve: the greatest less the
     * least, as a share of the greatest.
     */
    public Ratio disagreement() {
        double q = results.get(0).curve().bestEfficiencyPoint().flow().si();
        double least = Double.POSITIVE_INFINITY;
        double greatest = 0;
        for (Result result : results) {
            if (result.curve().covers(q, 1)) {
                least = Math.min(least, result.curve().headMetres(q, 1));
                greatest = Math.max(greatest, result.curve().headMetres(q, 1));
            }
        }
        return Head.metres(greatest - least).over(Head.metres(greatest));
    }

    @Override
    public Notes notes() {
        Notes notes = Notes.NONE;
        for (Result result : results) {
            notes = notes.and(result.curve().notes());
        }
        return notes;
    }

    @Override
    public Basis basis() {
        Basis basis = Basis.NONE;
        for (Result result : results) {
            basis = basis.and(result.curve().basis());
        }
        return basis;
    }
}
