package headrace.curve;

import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.units.Flow;
import headrace.units.Length;
import headrace.units.Numbers;
import headrace.units.Ratio;
import java.util.Optional;

/**
 * How the NPSH required changes with the impeller and with the liquid, when a curve of the same pump has been moved.
 *
 * <p>A trim leaves the inlet of the impeller as it was, and with it the NPSH at a flow. A viscous liquid asks for more
 * by the formula of ANSI/HI 9.6.7 with the factor of a side inlet, the larger of its two: {@code 1 + 0.5·(1/C_H −
 * 1)·274000·NPSH_bep/(Q_bep^0.667·n^1.33)} with m, m³/h and rpm in water, from memory. Its US constant, 225000 with ft
 * and gpm, agrees with it to a third of a per cent. The careful end is taken elsewhere too: flows move with the share
 * of flow that is left, and hot liquids get no credit.
 *
 * @param viscous what the liquid does to the pump, if it is another than that of the test
 * @param ratio the speed of the NPSH readings as a share of that of the pump's test
 * @param bestFlow the flow of best efficiency in water at that speed, in m³/s
 * @param rpm that speed
 * @param notes what was assumed
 */
record NpshMove(Optional<ViscousMap> viscous, double ratio, double bestFlow, double rpm, Notes notes) {
    static final NpshMove NONE = new NpshMove(Optional.empty(), 1, 0, 1, Notes.NONE);

    private static final double SIDE_INLET = 0.5;
    private static final double METRIC = 274_000;

    /** Trims of up to so much are commonly held to leave the NPSH alone: an assumption of our own. */
    private static final double MODERATE = 0.05;

    private static final double SAME = 1e-6;

    static NpshMove as(PumpCurve curve, NpshCurve npsh) {
        double ratio = npsh.testedSpeed().over(curve.testedSpeed()).value();
        Optional<ViscousMap> viscous =
                curve.map() instanceof ViscousMap map && map.parameter() > 0 ? Optional.of(map) : Optional.empty();
        double best = curve.map().similarity().bestFlow() * ratio;
        Notes notes = trim(curve, npsh.impellerDiameter());
        return new NpshMove(viscous, ratio, best, npsh.testedSpeed().toRevolutionsPerMinute(), notes);
    }

    private static Notes trim(PumpCurve curve, Optional<Length> read) {
        Optional<Length> now = curve.impellerDiameter();
        if (read.isEmpty() || now.isEmpty()) {
            return Notes.NONE;
        }
        double off = 1 - now.get().over(read.get()).value();
        if (Math.abs(off) <= SAME) {
            return Notes.NONE;
        }
        return Notes.NONE.with(
                CurveProblem.NPSH_IMPELLER_ASSUMED,
                "The NPSH required by " + curve.name() + " was read with an impeller of " + read.get() + "; with "
                        + now.get() + " it is taken to be the same at the same flow"
                        + (Math.abs(off) > MODERATE
                                ? ", which " + Ratio.of(Math.abs(off)) + " of difference is too much for: beyond "
                                        + Ratio.of(MODERATE) + " it may be higher"
                                : ", as the inlet is the same"));
    }

    /** Returns the share of the flow that is left at a share of the speed of the readings. */
    double flowShare(double s) {
        return viscous.isEmpty() ? 1 : viscous.get().flowLeft(s * ratio);
    }

    /** Returns by how much the NPSH grows, given that at best efficiency in water at the same speed. */
    double times(double s, double metresAtBest) {
        double left = flowShare(s);
        if (left == 1) {
            return 1;
        }
        double flow = Flow.cubicMetresPerSecond(bestFlow * s).toCubicMetresPerHour();
        return 1
                + SIDE_INLET
                        * (1 / left - 1)
                        * METRIC
                        * metresAtBest
                        / (Math.pow(flow, 0.667) * Math.pow(rpm * s, 1.33));
    }

    /** Refuses where the correction asks for the NPSH at a best-efficiency flow that was not reached. */
    NpshMove requireKnown(NpshCurve npsh, double highest) {
        if (viscous.isPresent() && bestFlow > highest * (1 + SAME)) {
            throw new Refusal(
                    CurveProblem.NPSH_OUT_OF_RANGE,
                    "Asked for the NPSH that " + npsh.name() + " requires in a viscous liquid",
                    "Its correction goes by the NPSH at best efficiency, at " + Flow.cubicMetresPerSecond(bestFlow)
                            + ", and the readings end at " + Flow.cubicMetresPerSecond(highest),
                    "Extend them by choice to that flow, or read the NPSH further");
        }
        return this;
    }

    /** Returns what there is to say at a share of the speed of the readings. */
    Notes notesAt(double s, double metresAtBest) {
        double left = flowShare(s);
        return left == 1
                ? notes
                : notes.with(
                        CurveProblem.NPSH_VISCOSITY_CORRECTED,
                        "The NPSH required was read in a liquid like water; B = "
                                + Numbers.print(viscous.orElseThrow().parameterAt(s * ratio)) + " makes it "
                                + Numbers.print(times(s, metresAtBest)) + " times as much, at "
                                + Numbers.print(left) + " times the flow");
    }
}
