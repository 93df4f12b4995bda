package headrace.benchmark;

import headrace.economics.study.Driver;
import headrace.economics.study.Outcomes;
import headrace.economics.study.PaybackModel;
import headrace.economics.study.PaybackModel.PartReplacement;
import headrace.economics.study.PaybackRange;
import headrace.economics.study.PaybackStudy;
import headrace.economics.study.Spread;
import headrace.units.Ratio;
import headrace.units.Time;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;

/** W8: a hundred thousand paybacks with present value and internal rate, against two baselines, and their summary. */
final class Paybacks implements Workload {
    private static final int DRAWS = 100_000;

    private final PaybackStudy study;
    private final double[][] uniforms = new double[Driver.values().length][DRAWS];
    private final boolean own;
    private Map<String, Object> out;

    Paybacks(boolean own) {
        this.own = own;
        Map<Driver, Spread> spreads = new EnumMap<>(Driver.class);
        spreads.put(Driver.PRICE, Spread.logNormal(0.16, 0.12));
        spreads.put(Driver.ESCALATION, Spread.normal(0.025, 0.012));
        spreads.put(Driver.HOURS, Spread.triangular(4000, 5200, 6500));
        spreads.put(Driver.POWER, Spread.triangular(9.2, 10, 11));
        spreads.put(Driver.SAVED, Spread.triangular(0.45, 0.60, 0.72));
        spreads.put(Driver.FIXED_SPEED, Spread.triangular(0.72, 0.80, 0.88));
        spreads.put(Driver.REALISATION, Spread.triangular(0.40, 0.75, 1.00));
        spreads.put(Driver.FIRST_COST, Spread.triangular(3200, 4200, 6000));
        spreads.put(Driver.UPKEEP, Spread.uniform(40, 120));
        spreads.put(Driver.DISCOUNT, Spread.triangular(0.04, 0.06, 0.09));
        PartReplacement part = new PartReplacement(11, Ratio.percent(45), Ratio.percent(1.5));
        study = PaybackStudy.of("", spreads, new PaybackModel(15, Ratio.percent(2), 0.4, part));
        for (int row = 0; row < uniforms.length; row++) {
            for (int i = 0; i < DRAWS; i++) {
                uniforms[row][i] = Inputs.uniform(801 + row, i);
            }
        }
    }

    @Override
    public String name() {
        return own ? "W8r own generator" : "W8 supplied uniforms";
    }

    /** The summary belongs to the work, so that it is timed too. */
    @Override
    public void call() {
        PaybackRange range = own ? study.draw(6789, DRAWS) : study.over(uniforms);
        out = new LinkedHashMap<>();
        summarise(range.againstConstantSpeed(), "full speed.");
        summarise(range.againstFixedSpeed(), "design speed.");
    }

    private void summarise(Outcomes all, String tag) {
        out.put(tag + "sp_mean", all.meanSimplePayback().orElseThrow().toYears());
        for (int percent : new int[] {5, 50, 95}) {
            Ratio share = Ratio.percent(percent);
            out.put(tag + "sp_p" + percent, all.simplePayback(share).orElseThrow().toYears());
            out.put(tag + "npv_p" + percent, all.netPresentValue(share).amount());
            out.put(tag + "irr_p" + percent, all.internalRate(share).orElseThrow().value());
        }
        out.put(tag + "dp_finite", count(all.paidBack()));
        out.put(tag + "dp_mean_finite", all.meanDiscountedPayback().toYears());
        out.put(tag + "npv_mean", all.meanNetPresentValue().amount());
        out.put(tag + "npv_std", all.deviationOfNetPresentValue().amount());
        out.put(tag + "P(sp<2)", count(all.probabilityOfPaybackBelow(Time.years(2))));
        out.put(tag + "P(npv>0)", count(all.probabilityOfGain()));
    }

    private static int count(Ratio share) {
        return (int) Math.round(share.value() * DRAWS);
    }

    /** Own random numbers are compared by two figures, within 2 %. */
    @Override
    public Map<String, Object> outputs() {
        if (own) {
            out.keySet().retainAll(Set.of("full speed.sp_p50", "design speed.npv_mean"));
        }
        return out;
    }
}
