package headrace.estimate;

import headrace.curve.CurveArrays;
import headrace.curve.CurveSlopes;
import headrace.curve.PumpCurve;
import headrace.drive.DriveTrain;
import headrace.drive.LossArrays;
import headrace.drive.LossSlopes;
import headrace.liquid.Liquid;
import headrace.problem.Notes;
import headrace.pump.PumpSet;
import headrace.record.Basis;
import headrace.units.Flow;
import headrace.units.Speed;

/**
 * The map of a pump set through the losses of its motor and drive.
 *
 * <dl>
 *   <dt>Units
 *   <dd>See {@link PowerMap}.
 *   <dt>Limits
 *   <dd>The range of the pump's curve, extended or not, and the speeds of the pump set, 2 % wider for a reading at its
 *       end.
 *   <dt>Errors
 *   <dd>As {@link PumpCurve#inLiquid} for another liquid.
 *   <dt>Source
 *   <dd>Those of the pump set.
 * </dl>
 */
public final class ThroughLosses implements PowerMap {
    private static final double BESIDE = 0.02;

    private final PumpSet set;
    private final MapFactors factors;
    private final String how;
    private final PumpCurve curve;
    private final DriveTrain train;
    private final double ofRated;
    private final double[] stopsAtOne;
    private Scratch scratch = new Scratch(0);

    private ThroughLosses(PumpSet set, MapFactors factors, String how) {
        this.set = set;
        this.factors = factors;
        this.how = how;
        this.curve = set.curve();
        this.train = set.driveTrain();
        this.ofRated = curve.speed().si() / set.ratedSpeed().si();
        this.stopsAtOne = curve.isSimilarAtAllSpeeds() ? curve.powerStopsAt(1) : null;
    }

    /** Returns the map of a pump set. */
    public static ThroughLosses of(PumpSet set) {
        return new ThroughLosses(set, MapFactors.NONE, "");
    }

    /** Room for a row, kept from one to the next. */
    private record Scratch(CurveArrays curve, CurveSlopes slopes, LossArrays losses, LossSlopes growth) {
        Scratch(int n) {
            this(
                    CurveArrays.of(new double[n], new double[n]),
                    CurveSlopes.of(n),
                    LossArrays.of(new double[n]),
                    LossSlopes.of(new double[n]));
        }
    }

    /** Returns the pump set. */
    public PumpSet set() {
        return set;
    }

    @Override
    public String name() {
        return curve.name();
    }

    @Override
    public Speed speed() {
        return curve.speed();
    }

    @Override
    public Flow bestFlow() {
        return curve.bestEfficiencyPoint().flow();
    }

    @Override
    public double slowest() {
        return set.minimumSpeed().over(curve.speed()).value() * (1 - BESIDE);
    }

    @Override
    public double fastest() {
        return set.maximumSpeed().over(curve.speed()).value() * (1 + BESIDE);
    }

    @Override
    public double lowestFlow(double s) {
        return curve.lowestFlowAt(s);
    }

    @Override
    public double highestFlow(double s) {
        return curve.highestFlowAt(s);
    }

    @Override
    public double wireWatts(double q, double s, double pump, double losses) {
        double shaft = pump * shaftWatts(q, s);
        double cable = 1 + train.cableLoss().value();
        double lost = train.inputWatts(shaft, s * ofRated) / cable - shaft;
        return cable * (shaft + losses * lost);
    }

    @Override
    public double shaftWatts(double q, double s) {
        return factors.power() * curve.shaftWatts(q, s) + factors.offsetWatts() * s;
    }

    @Override
    public double movedWatts(double wireWatts, double s) {
        return train.shaftWatts(wireWatts, s * ofRated);
    }

    @Override
    public double unmovedWattsAt(double q, double s) {
        return curve.shaftWatts(q, s);
    }

    @Override
    public boolean knowsShaft() {
        return true;
    }

    @Override
    public double headMetres(double q, double s) {
        return factors.head() * curve.headMetres(q, s);
    }

    @Override
    public double[] powerStops(double s) {
        if (stopsAtOne == null) {
            return curve.powerStopsAt(s);
        }
        double[] stops = stopsAtOne.clone();
        for (int i = 0; i < stops.length; i++) {
            stops[i] *= s;
        }
        return stops;
    }

    @Override
    public synchronized void fill(double s, MapRow row, int count) {
        if (scratch.curve.count() < count) {
            scratch = new Scratch(Math.max(count, row.flow.length));
        }
        System.arraycopy(row.flow, 0, scratch.curve.flows(), 0, count);
        curve.fillAt(s, scratch.curve, count);
        curve.fillSlopesAt(s, scratch.curve, scratch.slopes, count);
        moved(s, row, count);
        System.arraycopy(row.shaft, 0, scratch.losses.shafts(), 0, count);
        System.arraycopy(row.shaft, 0, scratch.growth.shafts(), 0, count);
        train.fillLosses(s * ofRated, scratch.losses, count);
        train.fillSlopes(s * ofRated, scratch.growth, count);
        atTheWire(row, count);
    }

    private void moved(double s, MapRow row, int count) {
        double power = factors.power();
        double head = factors.head();
        double offset = factors.offsetWatts();
        double atSpeed = offset * s;
        scaled(scratch.curve.powers(), power, atSpeed, row.shaft, count);
        scaled(scratch.slopes.powerOverFlow(), power, 0, row.shaftOverFlow, count);
        scaled(scratch.slopes.powerOverSpeed(), power, offset, row.shaftOverSpeed, count);
        scaled(scratch.curve.heads(), head, 0, row.head, count);
        scaled(scratch.slopes.headOverFlow(), head, 0, row.headOverFlow, count);
        scaled(scratch.slopes.headOverSpeed(), head, 0, row.headOverSpeed, count);
    }

    private static void scaled(double[] from, double factor, double plus, double[] to, int count) {
        for (int i = 0; i < count; i++) {
            to[i] = factor * from[i] + plus;
        }
    }

    private void atTheWire(MapRow row, int count) {
        double cable = 1 + train.cableLoss().value();
        double[] motor = scratch.losses.motors();
        double[] drive = scratch.losses.drives();
        double[] perShaft = scratch.growth.perShaft();
        double[] perSpeed = scratch.growth.perSpeed();
        for (int i = 0; i < count; i++) {
            double lost = cable * (motor[i] + drive[i]);
            row.loss[i] = lost;
            row.wire[i] = cable * row.shaft[i] + lost;
        }
        double bySpeed = cable * ofRated;
        for (int i = 0; i < count; i++) {
            double taken = cable + cable * perShaft[i];
            row.wireOverFlow[i] = taken * row.shaftOverFlow[i];
            row.wireOverPower[i] = taken * row.shaft[i];
            row.wireOverSpeed[i] = taken * row.shaftOverSpeed[i] + bySpeed * perSpeed[i];
        }
    }

    @Override
    public MapFactors factors() {
        return factors;
    }

    @Override
    public ThroughLosses calibrated(MapFactors moved, String words) {
        return new ThroughLosses(set, moved, words);
    }

    @Override
    public boolean isCalibrated() {
        return !how.isEmpty();
    }

    @Override
    public ThroughLosses in(Liquid liquid) {
        return new ThroughLosses(set.with(curve.inLiquid(liquid)), factors, how);
    }

    @Override
    public Notes notes() {
        return set.notes();
    }

    @Override
    public Basis basis() {
        Basis basis =
                set.basis().with("in " + curve.liquid() + ", " + curve.liquid().density());
        return isCalibrated() ? basis.with(how + ": " + factors) : basis;
    }

    @Override
    public String toString() {
        return set + (isCalibrated() ? ", " + how : "");
    }
}
