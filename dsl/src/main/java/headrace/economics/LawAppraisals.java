package headrace.economics;

import headrace.problem.Notes;
import headrace.record.Basis;
import headrace.record.Traced;
import java.util.List;

/**
 * What several laws are worth on the same terms, each against both baselines.
 *
 * @param all the laws, in the order of their comparison
 */
public record LawAppraisals(List<StrategyAppraisal> all) implements Traced {
    /** Keeps the laws from changing. */
    public LawAppraisals {
        all = List.copyOf(all);
    }

    /** Returns every appraisal, both of each law. */
    public List<Appraisal> each() {
        return all.stream().flatMap(law -> law.both().stream()).toList();
    }

    @Override
    public Notes notes() {
        return all.stream().map(StrategyAppraisal::notes).reduce(Notes.NONE, Notes::and);
    }

    @Override
    public Basis basis() {
        return all.stream().map(StrategyAppraisal::basis).reduce(Basis.NONE, Basis::and);
    }

    @Override
    public String toString() {
        return String.join("\n", all.stream().map(StrategyAppraisal::toString).toList());
    }
}
