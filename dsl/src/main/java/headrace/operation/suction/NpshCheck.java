package headrace.operation.suction;

import headrace.curve.CurvePoint;
import headrace.curve.NpshCurve;
import headrace.curve.NpshCurve.Required;
import headrace.curve.PumpCurve;
import headrace.liquid.Liquid;
import headrace.problem.Notes;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.AbsolutePressure;
import headrace.units.GaugePressure;
import headrace.units.Head;
import headrace.units.Speed;

/**
 * The NPSH available at a point, held against what the pump requires with its margin.
 *
 * @param point where the pump runs
 * @param available the NPSH available
 * @param required the NPSH required
 * @param needed what must be available by the rule
 * @param suctionPressure the pressure at the suction flange
 * @param notes what falls short and what was assumed
 * @param basis what it rests on
 */
public record NpshCheck(
        CurvePoint point,
        Head available,
        Head required,
        Head needed,
        GaugePressure suctionPressure,
        Notes notes,
        Basis basis)
        implements Traced {
    private static final double ROUNDING = 1e-9;

    /**
     * What a check of NPSH goes by.
     *
     * @param suction from where the pump draws
     * @param curve what it requires
     * @param rule the margin
     * @param liquid what is pumped, at the temperature of the suction side
     */
    public record Terms(SuctionSide suction, NpshCurve curve, NpshRule rule, Liquid liquid) {
        /** Returns these terms with the NPSH required with the impeller and in the liquid of a curve. */
        public Terms movedAs(PumpCurve pump) {
            return new Terms(suction, curve.movedAs(pump), rule, liquid);
        }

        /** Returns the margin of NPSH in m beyond what is needed, at a flow in m³/s. Checks no range. */
        public double marginMetres(double q, double pumpMetres, Speed speed) {
            double required = curve.metres(q, curve.share(speed).value());
            return suction.npshMetres(q, pumpMetres, liquid) - rule.neededMetres(required);
        }
    }

    /**
     * Returns the check of a point. A point does not know its impeller: {@link Terms#movedAs} brings in that of its
     * curve.
     *
     * @throws headrace.problem.Refusal with {@code NPSH_OUT_OF_RANGE} where the NPSH required is not known
     */
    public static NpshCheck of(CurvePoint point, Terms terms) {
        Required required = terms.curve.at(point.flow(), point.speed());
        double available =
                terms.suction.npshMetres(point.flow().si(), point.head().metres(), terms.liquid);
        double needed = terms.rule.neededMetres(required.npsh().metres());
        GaugePressure suction = terms.suction.suctionPressure(point.duty(), terms.liquid);
        Notes notes = point.notes()
                .and(terms.curve.notes())
                .and(required.notes())
                .and(terms.rule.notes())
                .and(terms.suction.notes())
                .and(terms.liquid.notes());
        if (available < needed - ROUNDING * Math.abs(needed)) {
            notes = notes.with(
                    SuctionProblem.NPSH_MARGIN,
                    "At " + point.flow() + " and " + point.speed() + " the NPSH available is " + Head.metres(available)
                            + ", short by " + Head.metres(needed - available) + " of the " + Head.metres(needed)
                            + " that " + required.npsh() + " required and its margin make");
        }
        AbsolutePressure vapour = terms.liquid.vapourPressure();
        if (suction.toAbsolute(terms.suction.air()).compareTo(vapour) < 0) {
            notes = notes.with(
                    SuctionProblem.BELOW_VAPOUR_PRESSURE,
                    "At the suction flange, at " + point.flow() + ", the pressure comes out at "
                            + suction.toAbsolute(terms.suction.air()) + ", below the vapour pressure of " + vapour
                            + ": the liquid boils and none of these figures holds");
        }
        Basis basis = terms.curve
                .basis()
                .and(terms.suction.basis())
                .and(terms.liquid.basis())
                .with("margin of NPSH: " + terms.rule);
        return new NpshCheck(
                point, Head.metres(available), required.npsh(), Head.metres(needed), suction, notes, basis);
    }

    /** Returns what is available beyond what is needed; below 0 it falls short. */
    public Head margin() {
        return available.minus(needed);
    }

    @Override
    public String toString() {
        return "NPSH at " + point.flow() + ": " + available + " available, " + required + " required, " + needed
                + " needed";
    }
}
