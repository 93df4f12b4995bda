package headrace.operation.limit;

import headrace.curve.CurvePoint;
import headrace.curve.PumpCurve;
import headrace.liquid.Liquid;
import headrace.numeric.RootScan;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Flow;
import headrace.units.Numbers;
import headrace.units.Ratio;
import headrace.units.Speed;
import headrace.units.TemperatureDifference;
import java.util.Optional;

/**
 * The least flows at which a pump may run for long: the stable one, and the one that carries off its heat.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Flows at the speed of the curve that was given.
 *   <dt>Limits
 *   <dd>The least stable flow is the maker's to state; else 30 % of best-efficiency flow is assumed (25 to 35 % are
 *       common) and noted. The temperature rise is 2 K unless stated, at most 8 K; the rise of one passage counts, so a
 *       loop through a bypass that heats up is not in it.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_MINIMUM_FLOW} or {@code NO_THERMAL_FLOW}.
 *   <dt>Source
 *   <dd>Energy balance of the pump, {@code (P − ρ·g·Q·H)/(ρ·Q·c_p)}; the assumed values are common practice, no source.
 * </dl>
 *
 * @param speed the speed
 * @param stable the least stable flow
 * @param thermal the least flow at which the temperature rise keeps to its limit
 * @param limit the limit of the temperature rise
 * @param notes what was assumed or lies below the test
 * @param basis what it rests on
 */
public record MinimumFlow(Speed speed, Flow stable, Flow thermal, TemperatureDifference limit, Notes notes, Basis basis)
        implements Traced {
    /** The assumed share of best-efficiency flow. */
    public static final Ratio ASSUMED_SHARE = Ratio.of(0.3);

    /** The assumed limit of the temperature rise in one passage. */
    public static final TemperatureDifference ASSUMED_RISE = TemperatureDifference.kelvins(2);

    private static final double MOST_KELVINS = 8;
    private static final double ROUNDING = 1e-9;

    /** Returns the least flows with both limits assumed. */
    public static MinimumFlow of(PumpCurve curve) {
        return of(curve, Optional.empty(), Optional.empty());
    }

    /**
     * Returns the least flows at the speed of a curve.
     *
     * @param share the maker's least stable flow as a share of best-efficiency flow, if stated
     * @param rise the limit of the temperature rise, if stated
     */
    public static MinimumFlow of(PumpCurve curve, Optional<Ratio> share, Optional<TemperatureDifference> rise) {
        Ratio stableShare = share.orElse(ASSUMED_SHARE);
        TemperatureDifference limit = rise.orElse(ASSUMED_RISE);
        boolean possible = stableShare.value() > 0
                && stableShare.value() <= 1
                && limit.kelvins() > 0
                && limit.kelvins() <= MOST_KELVINS;
        if (!possible) {
            throw new Refusal(
                    LimitProblem.IMPOSSIBLE_MINIMUM_FLOW,
                    "Asked for least flows at " + stableShare + " of best-efficiency flow and a rise of " + limit,
                    "The share lies above 0 and up to 100 %, the rise above 0 and up to " + Numbers.print(MOST_KELVINS)
                            + " K",
                    "Common are 25 to 35 %, and 1 to 3 K in closed loops");
        }
        CurvePoint best = curve.bestEfficiencyPoint();
        Flow stable = best.flow().times(stableShare);
        Notes notes = best.notes().and(assumed(share, rise));
        Flow thermal = thermal(curve, limit);
        Flow lowest = curve.extendedLowestFlow();
        if (Math.min(stable.si(), thermal.si()) <= lowest.si() * (1 + ROUNDING) && lowest.si() > 0) {
            notes = notes.with(
                    LimitProblem.MINIMUM_FLOW_BELOW_TEST,
                    "The curve begins at " + lowest + "; a least flow below that is not known from it, and " + lowest
                            + " stands in for the thermal one");
        }
        Basis basis = curve.basis()
                .with("least stable flow: " + stableShare + " of best-efficiency flow"
                        + (share.isPresent() ? ", as stated" : ", assumed"))
                .with("least thermal flow: " + limit + " rise in one passage"
                        + (rise.isPresent() ? ", as stated" : ", assumed"));
        return new MinimumFlow(curve.speed(), stable, thermal, limit, notes, basis);
    }

    private static Notes assumed(Optional<Ratio> share, Optional<TemperatureDifference> rise) {
        Notes notes = Notes.NONE;
        if (share.isEmpty()) {
            notes = notes.with(
                    LimitProblem.MINIMUM_FLOW_ASSUMED,
                    "No least stable flow was stated; " + ASSUMED_SHARE + " of best-efficiency flow is assumed, of the"
                            + " 25 to 35 % that are common");
        }
        if (rise.isEmpty()) {
            notes = notes.with(
                    LimitProblem.MINIMUM_FLOW_ASSUMED,
                    "No limit of the temperature rise was stated; " + ASSUMED_RISE + " in one passage is assumed");
        }
        return notes;
    }

    /** The flow from which on the heat fits: P − ρ·g·Q·H = ρ·Q·c_p·ΔT, which has no pole at no flow. */
    private static Flow thermal(PumpCurve curve, TemperatureDifference limit) {
        Liquid liquid = curve.liquid();
        double rho = liquid.density().kilogramsPerCubicMetre();
        double carried = rho * liquid.heatCapacity().joulesPerKilogramKelvin() * limit.kelvins();
        double low = curve.extendedLowestFlow().si();
        double high = curve.extendedHighestFlow().si();
        double[] flows = RootScan.between(
                q -> curve.shaftWatts(q, 1) - q * (rho * Liquid.STANDARD_GRAVITY * curve.headMetres(q, 1) + carried),
                low,
                high);
        if (HeatRise.kelvins(high, curve.shaftWatts(high, 1), curve.headMetres(high, 1), liquid)
                > limit.kelvins() * (1 + ROUNDING)) {
            throw new Refusal(
                    LimitProblem.NO_THERMAL_FLOW,
                    "Asked for the least flow at which " + curve.name() + " heats its liquid by " + limit,
                    "At " + curve.extendedHighestFlow() + " and " + curve.speed() + " it still heats it by more",
                    "Allow a greater rise");
        }
        return Flow.cubicMetresPerSecond(flows.length == 0 ? low : flows[flows.length - 1]);
    }

    /** Returns the greater of both. */
    public Flow flow() {
        return stable.compareTo(thermal) > 0 ? stable : thermal;
    }

    @Override
    public String toString() {
        return "least stable flow " + stable + ", least thermal flow " + thermal + " at " + speed;
    }
}
