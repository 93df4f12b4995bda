package headrace.script;

import headrace.circuit.SystemCurve;
import headrace.curve.Duty;
import headrace.curve.PumpCurve;
import headrace.operation.ParallelOperation;
import headrace.operation.SeriesOperation;
import headrace.pump.ParallelPumps;
import headrace.pump.PumpBranch;
import headrace.pump.SeriesPumps;
import headrace.units.Head;
import java.util.List;
import java.util.Map;

/** Words about several pumps together. */
public final class ParallelWords implements Words {
    private static final String BRANCH =
            "A pump on its own branch behind its own check valve, at the speed of its curve, for inParallel.";

    @Override
    public String subject() {
        return "Several pumps";
    }

    /** Makes a branch. */
    @Word(help = BRANCH, example = "pumpBranch(curve)")
    public static PumpBranch pumpBranch(Object curve) {
        return pumpBranch(Map.of(), curve);
    }

    /** Makes a branch. */
    @Word(
            help = BRANCH,
            example =
                    "pumpBranch(atSpeed(curve, 1300.rpm), name: 'P-2', checkValve: 0.25.m, loss: duty(50.m3ph, 0.6.m))",
            choices = {
                "name: what the pump is called; the name of its curve unless chosen",
                "checkValve: the head that opens the check valve; none unless chosen",
                "loss: a duty, the head that pipes and open valves of the branch take at a flow; none unless chosen",
                "running: false for a pump that stands still"
            })
    public static PumpBranch pumpBranch(Map<String, ?> given, Object curve) {
        Choices choices = Choices.of("pumpBranch", given, "name", "checkValve", "loss", "running");
        PumpBranch branch = PumpBranch.of(CurveWords.curve(curve, "pumpBranch"))
                .withCheckValve(choices.head("checkValve", Head.ZERO));
        PumpBranch named = branch.named(choices.text("name", branch.name()));
        PumpBranch lossy = choices.has("loss") ? named.withLoss(choices.object("loss", Duty.class)) : named;
        return choices.yes("running", true) ? lossy : lossy.stopped();
    }

    /** Runs pumps in parallel. */
    @Word(
            help =
                    "Where pumps in parallel, a list of curves or branches, meet a system: the flow of each, the state of its"
                            + " check valve, and all points where there are several.",
            example = "inParallel([pumpBranch(curve), pumpBranch(atSpeed(curve, 1300.rpm))], systemCurve(design))")
    public static ParallelOperation inParallel(List<?> pumps, Object system) {
        List<PumpBranch> branches = pumps.stream()
                .map(pump -> pump instanceof PumpCurve curve
                        ? PumpBranch.of(curve)
                        : Wanted.object(PumpBranch.class, pump, "a pump of inParallel"))
                .toList();
        return ParallelOperation.of(ParallelPumps.of(branches), system(system, "inParallel"));
    }

    /** Runs pumps in series. */
    @Word(
            help = "Where pumps in series, a list of curves, meet a system: the same flow, their heads added.",
            example = "inSeries([curve, atSpeed(curve, 1300.rpm)], systemCurve(design))")
    public static SeriesOperation inSeries(List<?> curves, Object system) {
        return SeriesOperation.of(
                SeriesPumps.of(curves.stream()
                        .map(curve -> CurveWords.curve(curve, "inSeries"))
                        .toList()),
                system(system, "inSeries"));
    }

    private static SystemCurve system(Object given, String word) {
        return Wanted.object(SystemCurve.class, given, "the system of " + word);
    }
}
