package headrace.rule.index;

import headrace.units.Flow;
import headrace.units.Power;
import headrace.units.Ratio;
import java.util.ArrayList;
import java.util.List;

/**
 * The minimally compliant pump of the US procedure: the pump of the same duties that just meets the standard.
 *
 * <p>{@code η = −0.85·ln²Q − 0.38·ln N_s·ln Q − 11.48·ln²N_s + 17.80·ln Q + 179.80·ln N_s − (C + 555.60)} in per cent,
 * at best efficiency; at 75 % flow 0.947 of it, at 110 % flow 0.985. Its shaft power is the hydraulic power,
 * {@code Q·H/3956} in hp, over that efficiency.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Q in gpm, H in ft, {@code N_s = n·√Q/(H/i)^0.75} with n in rpm and i stages.
 *   <dt>Limits
 *   <dd>Those of {@link PumpEnergyIndex}.
 *   <dt>Errors
 *   <dd>None of its own.
 *   <dt>Source
 *   <dd>10 CFR 431 Subpart Y, Appendix A, 2016 procedure; from memory, agreeing with the formula of EU 547/2012 when
 *       units and speed are changed.
 * </dl>
 *
 * @param specificSpeed N_s
 * @param efficiency its efficiency at best flow
 */
public record StandardPump(double specificSpeed, Ratio efficiency) {
    /** The flows at constant load, as shares of best flow. */
    static final List<Double> FLOWS = List.of(0.75, 1.0, 1.1);

    private static final double[] SHARES = {0.947, 1, 0.985};
    private static final double WATER_HORSEPOWER = 3956;

    static StandardPump of(PumpEnergyIndex.Measured measured, ClearWaterPumpType type) {
        PumpEnergyIndex.Point best = measured.points().get(1);
        double revolutions = measured.speed().toRevolutionsPerMinute();
        double gallons = best.flow().toUsGallonsPerMinute();
        double specific =
                revolutions * Math.sqrt(gallons) / Math.pow(best.head().toFeet() / measured.stages(), 0.75);
        double q = Math.log(gallons);
        double n = Math.log(specific);
        double percent = -0.85 * q * q
                - 0.38 * n * q
                - 11.48 * n * n
                + 17.80 * q
                + 179.80 * n
                - (type.constant(revolutions) + 555.60);
        return new StandardPump(specific, Ratio.percent(percent));
    }

    /** Returns its shaft powers at the duties of a pump at 75, 100 and 110 % of best flow. */
    List<Power> shaftPowers(List<PumpEnergyIndex.Point> points) {
        List<Power> powers = new ArrayList<>();
        for (int i = 0; i < SHARES.length; i++) {
            Flow flow = points.get(i).flow();
            double hydraulic =
                    flow.toUsGallonsPerMinute() * points.get(i).head().toFeet() / WATER_HORSEPOWER;
            powers.add(Power.horsepower(hydraulic / (SHARES[i] * efficiency.value())));
        }
        return List.copyOf(powers);
    }
}
