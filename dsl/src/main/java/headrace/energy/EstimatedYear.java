package headrace.energy;

import headrace.control.ControlLaw;
import headrace.control.EstimatedLaw;
import headrace.control.SteadyState;
import headrace.curve.Duty;
import headrace.estimate.Cause;
import headrace.estimate.ErrorBudget;
import headrace.estimate.PowerMap;
import headrace.estimate.ThroughLosses;
import headrace.numeric.Quantiles;
import headrace.numeric.RandomStreams;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.pump.PumpSet;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Energy;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Ratio;
import headrace.units.Time;
import headrace.work.Steps;
import headrace.work.Work;
import java.util.ArrayList;
import java.util.List;

/**
 * A year under a law that runs on estimates, beside the same law with sensors: what the error of the estimate does to
 * heads and energy, for the pump as it is said to be and for pumps that differ from their map as its errors allow.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Bands hold 95 % of the drawn pumps.
 *   <dt>Limits
 *   <dd>The flow of each bin is given, as in {@link StrategyComparison}: a head that falls short would in truth give
 *       less flow. Noise is taken for filtered; only what is systematic is drawn. Short is a head more than 2 % of the
 *       design head below what the law asks for: our own choice.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code DESIGN_MISSING}, and as {@link SteadyState#of}.
 *   <dt>Source
 *   <dd>Propagation of distributions, JCGM 101:2008.
 * </dl>
 */
public final class EstimatedYear implements Traced {
    /** A head below the law's by more than this share of the design head is short. */
    public static final double SHORT = 0.02;

    private static final double LOW = 0.025;

    private final PumpSet set;
    private final EstimatedLaw law;
    private final LoadProfile profile;
    private final List<Row> rows;
    private final Band energy;
    private final Band hoursShort;
    private final double sensorJoules;
    private final int draws;
    private final long seed;

    /**
     * A result with the band of the drawn pumps, in SI.
     *
     * @param value for the pump as it is said to be
     * @param low the lower end
     * @param high the upper end
     */
    public record Band(double value, double low, double high) {}

    /**
     * A bin of the year.
     *
     * @param fraction the flow as a share of design flow
     * @param hours how long
     * @param asked the head that the law asks for
     * @param excess by how many metres the real head lies above it, below 0 where it falls short
     */
    public record Row(Ratio fraction, Time hours, Head asked, Band excess) {}

    private EstimatedYear(PumpSet set, EstimatedLaw law, LoadProfile profile, Run run) {
        this.set = set;
        this.law = law;
        this.profile = profile;
        this.rows = run.rows();
        this.energy = run.energy;
        this.hoursShort = run.hoursShort;
        this.sensorJoules = run.sensorJoules;
        this.draws = run.draws;
        this.seed = run.seed;
    }

    /**
     * Returns the year of a pump set.
     *
     * @param set the pump set, as it is said to be
     * @param law the law on estimates
     * @param profile the year, in shares of the design flow of the law
     * @param draws how many pumps are drawn, from 100
     * @param seed the seed
     */
    public static EstimatedYear of(PumpSet set, EstimatedLaw law, LoadProfile profile, int draws, long seed) {
        if (draws < 100) {
            throw new IllegalArgumentException("fewer than 100 draws say nothing");
        }
        Duty design = law.design()
                .orElseThrow(() -> new Refusal(
                        EnergyProblem.DESIGN_MISSING,
                        "Asked for a year under the law '" + law.name() + "'",
                        "A load profile is in shares of a design flow, and this law is made for none",
                        "Give the law a design point"));
        return new EstimatedYear(set, law, profile, new Run(set, law, profile, design, draws, seed));
    }

    /** The pumps that are drawn, each over all bins. */
    private static final class Run {
        private final EstimatedLaw law;
        private final PowerMap truth;
        private final double least;
        private final double most;
        private final List<LoadBin> bins;
        private final Duty design;
        private final int draws;
        private final long seed;
        private final double[][] excess;
        private final double[] asked;
        private final double[] nominal;
        private final Band energy;
        private final Band hoursShort;
        private final double sensorJoules;

        Run(PumpSet set, EstimatedLaw law, LoadProfile profile, Duty design, int draws, long seed) {
            this.law = law;
            this.design = design;
            this.draws = draws;
            this.seed = seed;
            truth = ThroughLosses.of(set);
            least = set.minimumSpeed().over(set.curve().speed()).value();
            most = set.maximumSpeed().over(set.curve().speed()).value();
            bins = profile.bins().stream()
                    .filter(bin -> bin.flowFraction().value() > 0 && bin.hours().seconds() > 0)
                    .toList();
            excess = new double[bins.size()][draws];
            asked = new double[bins.size()];
            nominal = new double[bins.size()];
            double sensors = 0;
            for (int i = 0; i < bins.size(); i++) {
                SteadyState state = SteadyState.of(law.measured(), set, flow(i));
                sensors +=
                        state.point().wirePower().watts() * bins.get(i).hours().seconds();
                asked[i] = law.measured().headAt(flow(i)).metres();
            }
            sensorJoules = sensors;
            double[] own = year(1, 1, 1, 1, nominal);
            double[] joules = new double[draws];
            double[] shortHours = new double[draws];
            double[] heads = new double[bins.size()];
            ErrorBudget budget = law.estimator().budget();
            RandomStreams streams = RandomStreams.of(seed);
            try (Steps steps = Work.steps("drawing pumps under a law on estimates", draws)) {
                for (int d = 0; d < draws; d++) {
                    steps.next();
                    double pump =
                            drawn(budget, Cause.POWER_MAP, streams, 0, d) * drawn(budget, Cause.DENSITY, streams, 1, d);
                    double losses = drawn(budget, Cause.LOSSES, streams, 2, d);
                    double head = drawn(budget, Cause.HEAD_MAP, streams, 3, d);
                    double meter = drawn(budget, Cause.METER_SCALE, streams, 4, d);
                    double[] each = year(pump, losses, head, meter, heads);
                    joules[d] = each[0];
                    shortHours[d] = each[1];
                    for (int i = 0; i < heads.length; i++) {
                        excess[i][d] = heads[i];
                    }
                }
            }
            energy = band(own[0], joules);
            hoursShort = band(own[1], shortHours);
        }

        private Flow flow(int bin) {
            return design.flow().times(bins.get(bin).flowFraction());
        }

        private static double drawn(ErrorBudget budget, Cause cause, RandomStreams streams, int stream, int draw) {
            return 1 + budget.of(cause).relative() * (2 * streams.uniform(stream, draw) - 1);
        }

        /** Returns energy in J and seconds short of one pump, and fills by how much its heads lie above the law. */
        private double[] year(double pump, double losses, double head, double meter, double[] heads) {
            double joules = 0;
            double seconds = 0;
            for (int i = 0; i < heads.length; i++) {
                double q = flow(i).si();
                double s = law.speedShare(
                        share -> meter * truth.wireWatts(q, share, pump, losses), truth.speed(), least, most);
                heads[i] = head * truth.headMetres(q, s) - asked[i];
                double time = bins.get(i).hours().seconds();
                joules += time * truth.wireWatts(q, s, pump, losses);
                seconds += heads[i] < -SHORT * design.head().metres() ? time : 0;
            }
            return new double[] {joules, seconds};
        }

        private static Band band(double value, double[] drawn) {
            Quantiles quantiles = Quantiles.of(drawn);
            return new Band(value, quantiles.at(LOW), quantiles.at(1 - LOW));
        }

        List<Row> rows() {
            List<Row> rows = new ArrayList<>();
            for (int i = 0; i < asked.length; i++) {
                LoadBin bin = bins.get(i);
                rows.add(new Row(bin.flowFraction(), bin.hours(), Head.metres(asked[i]), band(nominal[i], excess[i])));
            }
            return rows;
        }
    }

    /** Returns the pump set. */
    public PumpSet set() {
        return set;
    }

    /** Returns the law. */
    public ControlLaw law() {
        return law;
    }

    /** Returns the year. */
    public LoadProfile profile() {
        return profile;
    }

    /** Returns the bins in which the pump runs. */
    public List<Row> rows() {
        return rows;
    }

    /** Returns the energy with sensors. */
    public Energy energyWithSensors() {
        return Energy.joules(sensorJoules);
    }

    /** Returns the energy on estimates, in J. */
    public Band joules() {
        return energy;
    }

    /** Returns the energy on estimates for the pump as it is said to be. */
    public Energy energy() {
        return Energy.joules(energy.value);
    }

    /** Returns the time at which the head is short, in s. */
    public Band secondsShort() {
        return hoursShort;
    }

    @Override
    public Notes notes() {
        return set.notes().and(law.notes()).and(profile.notes());
    }

    @Override
    public Basis basis() {
        return set.basis()
                .and(law.estimator().basis())
                .and(profile.basis())
                .with("law '" + law.name() + "': " + law.statement())
                .with(draws + " pumps drawn with seed " + seed + ", systematic errors only (noise filtered)");
    }

    @Override
    public String toString() {
        return "'" + law.name() + "': " + energy() + " (" + Energy.joules(energy.low) + " to "
                + Energy.joules(energy.high) + "), with sensors " + energyWithSensors() + "; short "
                + Time.seconds(hoursShort.value) + " (" + Time.seconds(hoursShort.low) + " to "
                + Time.seconds(hoursShort.high) + ")";
    }
}
