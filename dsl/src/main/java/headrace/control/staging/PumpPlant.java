package headrace.control.staging;

import headrace.control.ControlLaw;
import headrace.control.LoopState;
import headrace.curve.Duty;
import headrace.curve.PumpCurve;
import headrace.operation.limit.MinimumFlow;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.pump.PumpSet;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Speed;
import java.util.Optional;

/**
 * Alike pumps in parallel, each with its own drive, that share the flow under one control law.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Total flows; the law's head between the headers. The loss of a pump's own branch is added to it.
 *   <dt>Limits
 *   <dd>1 to 8 pumps. Those that run turn at one speed and share the flow alike, which is best where efficiency has one
 *       maximum over flow. A pump that runs beside others keeps its least stable flow, 30 % of best-efficiency flow at
 *       its speed unless stated. One that stands still takes the standby power of its drive.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_STAGING} or {@code STAGING_WITHOUT_HEAD_LAW}, or {@code DRIVE_MISSING}.
 *   <dt>Source
 *   <dd>Textbook knowledge; the least stable flow is common practice, no source.
 * </dl>
 */
public final class PumpPlant implements Traced {
    private static final int MOST = 8;
    private static final double ROUNDING = 1e-9;

    private final PumpSet set;
    private final int installed;
    private final ControlLaw law;
    private final Duty design;
    private final Optional<Head> branchLoss;
    private final Optional<Ratio> leastShare;
    private final double bestFlow;
    private final double least;
    private final double most;

    private PumpPlant(
            PumpSet set, int installed, ControlLaw law, Optional<Head> branchLoss, Optional<Ratio> leastShare) {
        this.set = set;
        this.installed = installed;
        this.law = law;
        this.design = law.design().orElseThrow();
        this.branchLoss = branchLoss;
        this.leastShare = leastShare;
        PumpCurve curve = set.curve();
        this.bestFlow = curve.bestEfficiencyPoint().flow().si();
        this.least = set.minimumSpeed().over(curve.speed()).value();
        this.most = set.maximumSpeed().over(curve.speed()).value();
    }

    /**
     * Returns a plant of alike pumps.
     *
     * @param set one of the pumps
     * @param installed how many there are, 1 to 8
     * @param law the control law, made for the total design flow
     */
    public static PumpPlant of(PumpSet set, int installed, ControlLaw law) {
        set.requireDrive("a plant of pumps under the law '" + law.name() + "'");
        if (installed < 1 || installed > MOST) {
            throw new Refusal(
                    StagingProblem.IMPOSSIBLE_STAGING,
                    "Asked for a plant of " + installed + " pumps",
                    "A plant has 1 to " + MOST + " alike pumps",
                    "Give a number in that range");
        }
        if (law.design().isEmpty()
                || law.requiredHead(law.design().get().flow()).isEmpty()) {
            throw new Refusal(
                    StagingProblem.STAGING_WITHOUT_HEAD_LAW,
                    "Asked to stage pumps under the law '" + law.name() + "'",
                    "Pumps are staged along a control curve: a law that is made for a design point and asks for a head at"
                            + " every flow",
                    "Use a quadratic, a linear or a constant head law");
        }
        return new PumpPlant(set, installed, law, Optional.empty(), Optional.empty());
    }

    /** Returns this plant with the loss of each pump's own branch when all pumps share the design flow. */
    public PumpPlant withBranchLoss(Head atDesign) {
        if (atDesign.metres() < 0) {
            throw new Refusal(
                    StagingProblem.IMPOSSIBLE_STAGING,
                    "Asked for a branch loss of " + atDesign,
                    "A branch takes 0 m or more at design flow",
                    "Check the sign");
        }
        return new PumpPlant(set, installed, law, Optional.of(atDesign), leastShare);
    }

    /** Returns this plant with a stated least stable flow of a pump, as a share of its best-efficiency flow. */
    public PumpPlant withLeastFlow(Ratio share) {
        if (share.value() < 0 || share.value() > 1) {
            throw new Refusal(
                    StagingProblem.IMPOSSIBLE_STAGING,
                    "Asked for a least stable flow of " + share + " of best-efficiency flow",
                    "It lies from 0 to 100 %",
                    "Common are 25 to 35 %");
        }
        return new PumpPlant(set, installed, law, branchLoss, Optional.of(share));
    }

    /** Returns one of the pumps. */
    public PumpSet set() {
        return set;
    }

    /** Returns how many pumps there are. */
    public int installed() {
        return installed;
    }

    /** Returns the control law. */
    public ControlLaw law() {
        return law;
    }

    /** Returns the total flow and the head of the design. */
    public Duty design() {
        return design;
    }

    /** Returns the speed of so many pumps at a total flow; nothing where they cannot serve it. */
    public Optional<Speed> speed(int running, Flow total) {
        double s = speedRatio(running, total.si());
        return Double.isNaN(s)
                ? Optional.empty()
                : Optional.of(set.curve().speed().times(s));
    }

    /** Returns the wire power of all installed pumps with so many running; nothing where they cannot serve the flow. */
    public Optional<Power> wirePower(int running, Flow total) {
        double watts = watts(running, new LoopState(total).flow().si());
        return Double.isFinite(watts) ? Optional.of(Power.watts(watts)) : Optional.empty();
    }

    /** Returns the number of running pumps that takes least from the wire; 0 where no number serves the flow. */
    public int best(Flow total) {
        return best(total.si());
    }

    /** Returns the greatest total flow up to a limit that the plant can serve, to a billionth of it. */
    double capacity(double upTo) {
        if (best(upTo) > 0) {
            return upTo;
        }
        double low = 0;
        double high = upTo;
        while (high - low > ROUNDING * upTo) {
            double middle = 0.5 * (low + high);
            if (reaches(middle)) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private boolean reaches(double total) {
        double q = total / installed;
        double s = set.curve().speedRatioFor(q, headMetres(total, q));
        return s <= most * (1 + ROUNDING) && q <= set.curve().highestFlowAt(Math.max(s, least)) * (1 + ROUNDING);
    }

    int best(double total) {
        int best = 0;
        double lowest = Double.POSITIVE_INFINITY;
        for (int running = 1; running <= installed; running++) {
            double watts = watts(running, total);
            if (watts < lowest) {
                lowest = watts;
                best = running;
            }
        }
        return best;
    }

    /** Returns the wire power in W, infinite where so many pumps cannot serve the flow. */
    double watts(int running, double total) {
        double s = speedRatio(running, total);
        if (Double.isNaN(s)) {
            return Double.POSITIVE_INFINITY;
        }
        double standby = set.driveTrain().standby().watts();
        return running * set.wireWatts(total / running, s) + (installed - running) * standby;
    }

    /** Returns why one pump less could not serve the flow, or nothing if it could. */
    Optional<String> obstacle(int running, double total) {
        if (running < 1) {
            return Optional.of("one pump must run");
        }
        if (!Double.isNaN(speedRatio(running, total))) {
            return Optional.empty();
        }
        double q = total / running;
        double s = set.curve().speedRatioFor(q, headMetres(total, q));
        if (s > most * (1 + ROUNDING) && s < Double.POSITIVE_INFINITY) {
            return Optional.of("greatest speed of " + set.maximumSpeed());
        }
        return Optional.of(
                running > 1 && q < leastShare() * bestFlow * Math.max(s, least)
                        ? "least stable flow of " + running + " pumps"
                        : "tested range of the pump");
    }

    /** Not a number where so many pumps cannot serve the flow. */
    private double speedRatio(int running, double total) {
        double q = total / running;
        double asked = headMetres(total, q);
        double s = Math.max(least, set.curve().speedRatioFor(q, asked));
        if (s == Double.POSITIVE_INFINITY && covered(q, least) && set.curve().headMetres(q, least) >= asked) {
            s = least;
        }
        boolean served = s <= most * (1 + ROUNDING) && covered(q, s);
        boolean stable = running == 1 || q >= leastShare() * bestFlow * s * (1 - ROUNDING);
        return served && stable ? s : Double.NaN;
    }

    private boolean covered(double q, double s) {
        PumpCurve curve = set.curve();
        return q >= curve.lowestFlowAt(s) * (1 - ROUNDING) && q <= curve.highestFlowAt(s) * (1 + ROUNDING);
    }

    private double headMetres(double total, double q) {
        double share = q * installed / design.flow().si();
        return law.requiredHead(Flow.cubicMetresPerSecond(total)).orElseThrow().metres()
                + branchLoss.map(Head::metres).orElse(0.0) * share * share;
    }

    private double leastShare() {
        return leastShare.orElse(MinimumFlow.ASSUMED_SHARE).value();
    }

    @Override
    public Notes notes() {
        Notes notes = set.notes();
        if (leastShare.isEmpty() && installed > 1) {
            notes = notes.with(
                    StagingProblem.STABLE_FLOW_ASSUMED,
                    "Beside another a pump is taken to need " + MinimumFlow.ASSUMED_SHARE
                            + " of its best-efficiency flow at its speed; the maker states it");
        }
        if (!reaches(design.flow().si())) {
            notes = notes.with(
                    StagingProblem.PLANT_SHORT_OF_DESIGN,
                    "All " + installed + " pumps together do not reach " + design
                            + " within their speeds and their test");
        }
        return notes;
    }

    @Override
    public Basis basis() {
        return set.basis()
                .with("law '" + law.name() + "': " + law.statement())
                .with(installed + " alike pumps in parallel at one speed, branch loss "
                        + branchLoss.orElse(Head.ZERO) + " each at design flow, standby "
                        + set.driveTrain().standby() + " each");
    }

    @Override
    public String toString() {
        return installed + " × " + set.curve().name() + " for " + design + ", " + law.name();
    }
}
