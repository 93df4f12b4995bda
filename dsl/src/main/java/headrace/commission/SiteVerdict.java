package headrace.commission;

import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Numbers;
import headrace.units.Ratio;
import headrace.units.Speed;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * What readings on site say, beside what was expected: the likely causes, each with its share.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Shares add up to 1 over the causes that are known here.
 *   <dt>Limits
 *   <dd>One cause at a time, of those that can show in what was read; every cause is as likely as another before
 *       anything is read. With few readings several causes stay: a single speed does not tell a gauge height from
 *       another impeller.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code NOTHING_ENTERED}.
 *   <dt>Source
 *   <dd>Bayes' rule over patterns of our own; see {@link Cause#sign()}.
 * </dl>
 */
public final class SiteVerdict implements Traced {
    /** Misfit so many times the number of readings is beyond chance. */
    private static final double UNEXPLAINED = 4;

    private static final double UNDECIDED = 0.10;

    private final CommissioningSheet sheet;
    private final List<Line> lines;
    private final List<Likely> causes;
    private final boolean explained;

    private SiteVerdict(CommissioningSheet sheet, List<Line> lines, List<Likely> causes, boolean explained) {
        this.sheet = sheet;
        this.lines = List.copyOf(lines);
        this.causes = List.copyOf(causes);
        this.explained = explained;
    }

    /**
     * A reading beside what was expected.
     *
     * @param speed the speed
     * @param what what was read
     * @param read the reading
     * @param expected what was expected with its tolerance
     * @param inside whether the reading lies inside it
     */
    public record Line(Speed speed, String what, String read, String expected, boolean inside) {}

    /**
     * A cause and how likely the readings make it.
     *
     * @param cause the cause
     * @param share its share among all that are known here
     * @param size the size that fits best: a factor, or metres of a gauge height
     */
    public record Likely(Cause cause, Ratio share, double size) {
        /** Returns the size in words, nothing where the cause has none. */
        public String sized() {
            return switch (cause) {
                case AS_EXPECTED, VALVE_CLOSED -> "";
                case GAUGE_OFFSET -> Numbers.print(size) + " m";
                case OTHER_IMPELLER -> Ratio.of(size) + " of the diameter";
                case METER_SCALE -> Ratio.of(size) + " of the power";
                case TURNS_BACKWARDS, WORN_RING -> Ratio.of(size) + " of the head";
            };
        }
    }

    static SiteVerdict of(CommissioningSheet sheet, List<SiteReading> readings) {
        if (readings.isEmpty()) {
            throw new Refusal(
                    CommissionProblem.NOTHING_ENTERED,
                    "Asked for a verdict without readings",
                    "Readings at one speed at least must be there",
                    "Enter the speed and what was read at it");
        }
        Evidence evidence = Evidence.of(sheet, readings);
        List<double[]> found = new ArrayList<>();
        double least = Double.POSITIVE_INFINITY;
        double misfit = Double.POSITIVE_INFINITY;
        List<Pattern> patterns = Pattern.all().stream()
                .filter(pattern -> pattern.showsIn(evidence.items()))
                .toList();
        for (Pattern pattern : patterns) {
            double[] best = best(evidence, pattern);
            found.add(best);
            least = Math.min(least, best[0]);
            misfit = Math.min(misfit, best[2]);
        }
        List<Likely> causes = shares(patterns, found, least);
        boolean explained = misfit <= UNEXPLAINED * evidence.items().size() + UNEXPLAINED;
        return new SiteVerdict(
                sheet, evidence.items().stream().map(Evidence.Item::line).toList(), causes, explained);
    }

    /** Returns twice the negative logarithm of the mean likelihood over all sizes, the best size, and its misfit. */
    private static double[] best(Evidence evidence, Pattern pattern) {
        double[] all = new double[pattern.sizes().length];
        double[] best = {Double.POSITIVE_INFINITY, 0, 0};
        for (int i = 0; i < all.length; i++) {
            double size = pattern.sizes()[i];
            double[] means = evidence.items().stream()
                    .mapToDouble(item -> pattern.mean(item, size))
                    .toArray();
            double[] misfit = evidence.misfit(means, pattern.loosePower());
            all[i] = misfit[0];
            if (misfit[0] < best[0]) {
                best = new double[] {misfit[0], size, misfit[1]};
            }
        }
        double sum = 0;
        for (double each : all) {
            sum += Math.exp(-0.5 * (each - best[0]));
        }
        best[0] -= 2 * Math.log(sum / all.length);
        return best;
    }

    private static List<Likely> shares(List<Pattern> patterns, List<double[]> found, double least) {
        double sum = 0;
        for (double[] each : found) {
            sum += Math.exp(-0.5 * (each[0] - least));
        }
        List<Likely> causes = new ArrayList<>();
        for (int i = 0; i < found.size(); i++) {
            double share = Math.exp(-0.5 * (found.get(i)[0] - least)) / sum;
            causes.add(new Likely(patterns.get(i).cause(), Ratio.of(share), found.get(i)[1]));
        }
        causes.sort(Comparator.comparing(Likely::share).reversed());
        return causes;
    }

    /** Returns the sheet that the readings are held against. */
    public CommissioningSheet sheet() {
        return sheet;
    }

    /** Returns each reading beside what was expected. */
    public List<Line> lines() {
        return lines;
    }

    /** Returns the causes, the likeliest first. */
    public List<Likely> causes() {
        return causes;
    }

    /** Returns the likeliest cause. */
    public Cause likeliest() {
        return causes.get(0).cause();
    }

    /** Returns whether any of the causes explains the readings. */
    public boolean explained() {
        return explained;
    }

    @Override
    public Notes notes() {
        Notes notes = sheet.notes();
        if (!explained) {
            return notes.with(
                    CommissionProblem.UNEXPLAINED_READINGS,
                    "None of the causes that are known here explains these readings; two may be at work, or a reading is"
                            + " wrong");
        }
        return causes.get(1).share().value() < UNDECIDED
                ? notes
                : notes.with(
                        CommissionProblem.CAUSE_UNDECIDED,
                        "The readings leave " + causes.get(0).cause() + " ("
                                + causes.get(0).share() + ") and "
                                + causes.get(1).cause() + " (" + causes.get(1).share()
                                + "): readings at more speeds and of both heads and powers tell them apart");
    }

    @Override
    public Basis basis() {
        return sheet.basis()
                .with(causes.size()
                        + " causes that can show in these readings, each as likely before anything was read");
    }

    @Override
    public String toString() {
        Likely first = causes.get(0);
        String size = first.sized().isEmpty() ? "" : ", " + first.sized();
        return (explained ? "" : "not explained; nearest: ") + first.cause() + size + " (" + first.share()
                + " of the causes known here)";
    }
}
