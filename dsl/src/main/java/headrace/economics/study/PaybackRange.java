package headrace.economics.study;

import headrace.economics.EconomicsProblem;
import headrace.numeric.Sample;
import headrace.problem.Notes;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Money;
import headrace.work.Steps;
import headrace.work.Work;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Paybacks as distributions, against both baselines, and what drives them.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Paybacks in years, present values in the currency of the study.
 *   <dt>Limits
 *   <dd>A probability of 100,000 draws is good to about 0.3 points (two standard errors at one half).
 *   <dt>Source
 *   <dd>JCGM 101:2008.
 * </dl>
 */
public final class PaybackRange implements Traced {
    private final PaybackStudy study;
    private final int draws;
    private final Uniforms uniforms;
    private final String drawn;
    private final double[][] values = new double[2][];
    private final Outcomes[] outcomes = new Outcomes[2];

    PaybackRange(PaybackStudy study, int draws, Uniforms uniforms, String drawn) {
        this.study = study;
        this.draws = draws;
        this.uniforms = uniforms;
        this.drawn = drawn;
        double[][][] results = study.followed(draws, uniforms);
        for (int baseline = 0; baseline < 2; baseline++) {
            outcomes[baseline] = new Outcomes(PaybackStudy.words(baseline), study.currency(), results[baseline]);
            values[baseline] = results[baseline][2];
        }
    }

    /** Returns the study. */
    public PaybackStudy study() {
        return study;
    }

    /** Returns how it was drawn, in words: the seed and the number of draws. */
    public String drawn() {
        return drawn;
    }

    /** Returns what comes of it against throttling at constant speed. */
    public Outcomes againstConstantSpeed() {
        return outcomes[0];
    }

    /** Returns what comes of it against fixed design speed. */
    public Outcomes againstFixedSpeed() {
        return outcomes[1];
    }

    /** Returns what comes of it against both baselines. */
    public List<Outcomes> both() {
        return List.of(outcomes);
    }

    /**
     * Returns what each driver that spreads does to the present value, the strongest first.
     *
     * @param against one of {@link #both}
     */
    public List<DriverRank> drivers(Outcomes against) {
        double[] present = values[against == outcomes[0] ? 0 : 1];
        List<DriverRank> ranks = new ArrayList<>();
        try (Steps steps = Work.steps("what drives the paybacks", Driver.values().length)) {
            for (Driver driver : Driver.values()) {
                steps.next();
                double[] all = study.drawn(driver, draws, uniforms);
                Sample sample = new Sample(all);
                double low = sample.quantile(0.1);
                double high = sample.quantile(0.9);
                if (low < high) {
                    ranks.add(new DriverRank(
                            driver, low, high, mean(present, all, low, false), mean(present, all, high, true)));
                }
            }
        }
        ranks.sort(Comparator.comparing(DriverRank::swing).reversed());
        return ranks;
    }

    private Money mean(double[] present, double[] driver, double limit, boolean above) {
        double sum = 0;
        int count = 0;
        for (int i = 0; i < draws; i++) {
            if (above ? driver[i] >= limit : driver[i] <= limit) {
                sum += present[i];
                count++;
            }
        }
        return new Money(sum / count, study.currency());
    }

    @Override
    public Notes notes() {
        Notes notes = study.notes();
        for (Outcomes each : outcomes) {
            if (each.withoutRate() > 0) {
                notes = notes.with(
                        EconomicsProblem.DRAWS_WITHOUT_RATE,
                        "Against " + each.baseline() + " " + each.withoutRate() + " of " + each.draws()
                                + " draws have no internal rate above -50 %; they count as lower than any other");
            }
        }
        return notes;
    }

    @Override
    public Basis basis() {
        return study.basis().with(drawn);
    }

    @Override
    public String toString() {
        return drawn + "\n" + outcomes[0] + "\n" + outcomes[1];
    }
}
