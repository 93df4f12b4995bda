package headrace.circuit;

import headrace.circuit.solve.HeaderPump;
import headrace.circuit.solve.NetworkSolution;
import headrace.circuit.solve.Scan;
import headrace.problem.Refusal;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Numbers;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/** What is said when a circuit was not solved. */
record CircuitRefusals(Circuit circuit) {
    Refusal notSolved(CircuitSolution best) {
        NetworkSolution.Residuals off = best.residuals();
        List<String> starved = best.starvedBranches();
        return new Refusal(
                CircuitProblem.CIRCUIT_NOT_SOLVED,
                "Asked for the flows of a " + circuit,
                "The best that was found in " + best.iterations() + " steps, at " + best.flow() + " and " + best.head()
                        + ", is off by " + Numbers.print(off.energyMetres()) + " m at '" + best.worstBranch()
                        + "' and by " + Numbers.print(Math.abs(off.closingMetres())) + " m at the pump"
                        + (starved.isEmpty() ? "" : ", with too little at '" + starved.get(0) + "'"),
                "Look at '" + best.worstBranch() + "' and at the law of the pump; try a head that is given first");
    }

    Refusal alike(CircuitSolution at) {
        return new Refusal(
                CircuitProblem.LAW_MISSES_CIRCUIT,
                "Asked for the operating point of a " + circuit + " under a law that runs along it",
                "At " + at.flow() + " and " + at.head()
                        + " the law rises exactly as steeply as the circuit with its valves where they stand, so that any flow"
                        + " near it is as right",
                "Give the law a minimum head above 0");
    }

    Refusal noMeeting(Scan scan, List<String> starved) {
        if (!scan.jumps().isEmpty()) {
            return new Refusal(
                    CircuitProblem.LAW_MISSES_CIRCUIT,
                    "Asked for the operating point of a " + circuit + " under a law that jumps",
                    "Where " + Head.metres(scan.jumps().get(0))
                            + " stand at the pump the law asks for more on one side and"
                            + " for less on the other, so that no head meets it and a pump would hunt there",
                    "Let the law change gradually, as in 5.mHead - now.head('attic') instead of a step");
        }
        double off = scan.offAtLast();
        String side = off < 0 ? "more than stands at the pump" : "less than stands at the pump";
        return new Refusal(
                CircuitProblem.LAW_MISSES_CIRCUIT,
                "Asked for the operating point of a " + circuit + " under a law that does not meet it",
                "At each of " + scan.looked() + " heads from 0 to " + Head.metres(scan.to()) + " the law asks for "
                        + side
                        + ", by " + Head.metres(Math.abs(scan.offAtFirst())) + " at the first and "
                        + Head.metres(Math.abs(off)) + " at the last"
                        + (starved.isEmpty() ? "" : ", where '" + starved.get(0) + "' still gets too little"),
                off < 0
                        ? "Let the law rise less steeply than the circuit, or ask for what the circuit can be given"
                        : "Let the law ask for more head");
    }

    Refusal noCrossing(List<HeaderPump> pumps, DoubleUnaryOperator flowAt) {
        double shutOff =
                pumps.stream().mapToDouble(p -> p.head().metresAt(0)).max().orElse(0);
        double most = pumps.stream().mapToDouble(HeaderPump::most).sum();
        Flow taken = Flow.cubicMetresPerSecond(flowAt.applyAsDouble(shutOff));
        return new Refusal(
                CircuitProblem.LAW_MISSES_CIRCUIT,
                "Asked for the operating points of " + pumps.size() + (pumps.size() == 1 ? " pump" : " pumps")
                        + " in a " + circuit,
                "The curves end at " + Flow.cubicMetresPerSecond(most) + " in all; at their head at no flow, "
                        + Head.metres(shutOff) + ", the circuit would take " + taken,
                "Take a curve that was tested further, or a smaller or larger pump");
    }
}
