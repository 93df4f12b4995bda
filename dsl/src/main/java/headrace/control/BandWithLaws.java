package headrace.control;

import headrace.circuit.CircuitSolver;
import headrace.circuit.Demands;
import headrace.circuit.band.BandPoint;
import headrace.circuit.band.HeadBand;
import headrace.problem.Notes;
import headrace.pump.PumpSet;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Ratio;
import headrace.work.Steps;
import headrace.work.Work;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The head band of a circuit with the control laws that are to serve it, and where a pump set under each of them runs
 * when all branches ask for the same share.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Heads of the liquid at the pump.
 *   <dt>Limits
 *   <dd>As {@link HeadBand} and {@link LoopOperation}. A law is held against the band where it makes a head of flow
 *       alone.
 *   <dt>Errors
 *   <dd>As {@link LoopOperation}.
 *   <dt>Source
 *   <dd>Own derivation: below the upper edge there is a load pattern that starves a branch.
 * </dl>
 *
 * @param band the band
 * @param laws the laws
 * @param points where each law runs, in the order of the laws, each by rising load
 */
public record BandWithLaws(HeadBand band, List<ControlLaw> laws, List<List<LoopOperation>> points) implements Traced {
    /**
     * Where a law gives less than some pattern needs.
     *
     * @param from the least of the flows of the band at which it does
     * @param to the greatest of them
     * @param worst the flow at which most is missing
     * @param missing how much is missing there
     */
    public record Gap(Flow from, Flow to, BandPoint worst, Head missing) {}

    /** Copies the lists. */
    public BandWithLaws {
        laws = List.copyOf(laws);
        points = points.stream().map(List::copyOf).toList();
    }

    /**
     * Returns a band with laws.
     *
     * @param loads at how many evenly spaced shares of load each law is run
     */
    public static BandWithLaws of(HeadBand band, PumpSet set, List<ControlLaw> laws, int loads) {
        CircuitSolver solver = CircuitSolver.of(band.circuit());
        List<List<LoopOperation>> all = new ArrayList<>();
        try (Steps steps = Work.steps("laws at shares of load", (long) laws.size() * loads)) {
            for (ControlLaw law : laws) {
                List<LoopOperation> runs = new ArrayList<>();
                for (int i = 1; i <= loads; i++) {
                    steps.next();
                    Demands asked = band.demands().times(Ratio.of((double) i / loads));
                    runs.add(LoopOperation.of(law, set, solver, asked));
                }
                all.add(runs);
            }
        }
        return new BandWithLaws(band, laws, all);
    }

    /** Returns where a law gives less than the upper edge; none if it clears it, or makes no head of flow alone. */
    public Optional<Gap> gap(ControlLaw law) {
        List<BandPoint> under = band.points().stream()
                .filter(point ->
                        missing(law, point) > 1e-9 * point.greatest().head().metres())
                .toList();
        if (under.isEmpty()) {
            return Optional.empty();
        }
        BandPoint worst = under.stream()
                .max((one, other) -> Double.compare(missing(law, one), missing(law, other)))
                .orElseThrow();
        return Optional.of(new Gap(
                under.get(0).flow(), under.get(under.size() - 1).flow(), worst, Head.metres(missing(law, worst))));
    }

    private static double missing(ControlLaw law, BandPoint point) {
        return law.requiredHead(point.flow())
                .map(head -> point.greatest().head().minus(head).metres())
                .orElse(0.0);
    }

    @Override
    public Notes notes() {
        Notes all = band.notes();
        for (List<LoopOperation> runs : points) {
            for (LoopOperation run : runs) {
                all = all.and(run.notes());
            }
        }
        return all;
    }

    @Override
    public Basis basis() {
        Basis all = band.basis();
        for (List<LoopOperation> runs : points) {
            for (LoopOperation run : runs) {
                all = all.and(run.basis());
            }
        }
        for (ControlLaw law : laws) {
            all = all.with("law '" + law.name() + "': " + law.statement());
        }
        return all;
    }

    @Override
    public String toString() {
        return band + ", with " + laws.size() + (laws.size() == 1 ? " law" : " laws");
    }
}
