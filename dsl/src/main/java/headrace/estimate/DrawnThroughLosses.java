package headrace.estimate;

import headrace.curve.CurveArrays;
import headrace.curve.PowerStretch;
import headrace.curve.PumpCurve;
import headrace.drive.DriveTrain;
import headrace.estimate.RootSearch.At;
import headrace.units.Ratio;
import java.util.List;

/** From wire power, or torque, through the losses to the shaft and from there to the flow: all draws at once. */
final class DrawnThroughLosses implements DrawnFlows {
    private static final int LOSS_STEPS = 8;

    private final ThroughLosses map;
    private final DrawnInputs in;
    private final boolean byTorque;
    private final PumpCurve curve;
    private final double at;
    private final double ofRated;
    private final PowerStretch own;
    private final List<PowerStretch> others;
    private final CurveArrays arrays;
    private final double[] ofRatedSpeed;
    private final double[] shaft;
    private final double[] taken;
    private final double[] other;
    private final boolean lossesDrawn;
    private int twoFlows;

    DrawnThroughLosses(ThroughLosses map, At root, DrawnInputs in, boolean byTorque) {
        this.map = map;
        this.in = in;
        this.byTorque = byTorque;
        this.at = root.speed();
        this.curve = map.set().curve().atSpeed(Ratio.of(at));
        this.ofRated = map.speed().si() / map.set().ratedSpeed().si();
        List<PowerStretch> all = curve.powerStretches();
        own = stretchOf(all, root.flow());
        others = all.stream().filter(stretch -> stretch != own).toList();
        int block = in.power.length;
        arrays = CurveArrays.of(new double[block], new double[block]);
        ofRatedSpeed = new double[block];
        shaft = new double[block];
        taken = new double[block];
        other = new double[block];
        lossesDrawn = in.draws(Cause.LOSSES) && !byTorque;
    }

    private static PowerStretch stretchOf(List<PowerStretch> all, double flow) {
        for (PowerStretch stretch : all) {
            if (flow <= stretch.toAt(1)) {
                return stretch;
            }
        }
        return all.get(all.size() - 1);
    }

    @Override
    public void solve(int count) {
        for (int i = 0; i < count; i++) {
            arrays.speeds()[i] = in.speed[i] / at;
            ofRatedSpeed[i] = in.speed[i] * ofRated;
        }
        if (byTorque) {
            double radians = map.speed().si();
            for (int i = 0; i < count; i++) {
                shaft[i] = in.torque[i] * in.speed[i] * radians;
            }
        } else {
            toShaft(count);
        }
        toPump(count);
        own.fillFlows(shaft, arrays.speeds(), arrays.flows(), count);
        curve.fillHeads(arrays, count);
        double head = map.factors().head();
        for (int i = 0; i < count; i++) {
            arrays.heads()[i] *= head * in.mapHead[i];
        }
        countOthers(count);
    }

    /** Losses drawn a little greater are taken off the wire power as what they are greater by, until that settles. */
    private void toShaft(int count) {
        DriveTrain train = map.set().driveTrain();
        train.fillShafts(in.power, ofRatedSpeed, shaft, count);
        double cable = 1 + train.cableLoss().value();
        for (int step = 0; lossesDrawn && step < LOSS_STEPS; step++) {
            for (int i = 0; i < count; i++) {
                double base = step == 0 ? in.power[i] : taken[i];
                double lost = Math.max(0, base - cable * Math.max(0, shaft[i]));
                taken[i] = in.power[i] - (in.losses[i] - 1) * lost;
            }
            train.fillShafts(taken, ofRatedSpeed, shaft, count);
        }
    }

    /** The map gives power times its factor and an offset; the drawn pump takes so much more than that. */
    private void toPump(int count) {
        double power = 1 / map.factors().power();
        double offset = map.factors().offsetWatts();
        for (int i = 0; i < count; i++) {
            shaft[i] = (shaft[i] / in.pump[i] - offset * in.speed[i]) * power;
        }
    }

    private void countOthers(int count) {
        twoFlows = 0;
        for (PowerStretch stretch : others) {
            stretch.fillFlows(shaft, arrays.speeds(), other, count);
            for (int i = 0; i < count; i++) {
                boolean both = Math.abs(other[i]) < Double.MAX_VALUE && Math.abs(arrays.flows()[i]) < Double.MAX_VALUE;
                twoFlows += both ? 1 : 0;
            }
        }
    }

    @Override
    public double[] flows() {
        return arrays.flows();
    }

    @Override
    public double[] heads() {
        return arrays.heads();
    }

    @Override
    public int twoFlows() {
        return twoFlows;
    }
}
