package headrace.rule.index;

import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Numbers;
import headrace.units.Power;
import java.util.ArrayList;
import java.util.List;

/**
 * The energy index of the EU for a circulator: its power over the year's flows, over the power of a reference
 * circulator.
 *
 * <p>{@code index = 0.49·P_avg/P_ref} with {@code P_avg = 0.06·P₁₀₀ + 0.15·P₇₅ + 0.35·P₅₀ + 0.44·P₂₅} and {@code P_ref
 * = 1.7·P_h + 17·(1 − e^(−0.3·P_h))}, powers in W. The reference control curve is the straight line from the head at
 * 100 % flow to half of it at no flow; where the circulator stays below it, its power is raised in the ratio of the
 * heads. A calculation aid, not a certified rating.
 *
 * <dl>
 *   <dt>Units
 *   <dd>The hydraulic power at 100 % flow is that of water at 20 °C.
 *   <dt>Limits
 *   <dd>Hydraulic power of 1 to 2500 W. The first reading is the point of the greatest hydraulic power; the others lie
 *       at 75, 50 and 25 % of its flow, within 2 points, a tolerance of our own.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code OUTSIDE_INDEX_SCOPE} or {@code INDEX_READINGS_DO_NOT_FIT}.
 *   <dt>Source
 *   <dd>Commission Regulation (EC) No 641/2009 as amended by (EU) No 622/2012, Annex II; read in a copy, the head at no
 *       flow of the reference curve and the raised power from memory. Limits there: 0.27 from 2013, 0.23 from August
 *       2015; benchmark 0.20.
 * </dl>
 *
 * @param readings the four readings, the greatest flow first
 * @param hydraulicPower the hydraulic power of the first
 * @param counted the powers of the readings as they count
 * @param average the power averaged over the profile
 * @param referencePower the power of the reference circulator
 * @param index the index
 */
public record CirculatorEnergyIndex(
        List<Reading> readings,
        Power hydraulicPower,
        List<Power> counted,
        Power average,
        Power referencePower,
        double index)
        implements Traced {
    /** The most that the regulation allows since August 2015. */
    public static final double LIMIT = 0.23;

    /** The best that was on the market when the regulation was made. */
    public static final double BENCHMARK = 0.20;

    private static final double[] FLOWS = {1, 0.75, 0.5, 0.25};
    private static final double[] TIMES = {0.06, 0.15, 0.35, 0.44};
    private static final double FLOW_TOLERANCE = 0.02;
    private static final double ROUNDING = 1e-9;
    private static final double CALIBRATION = 0.49;

    /** Water at 20 °C, kg/m³ times m/s². */
    private static final double WEIGHT = 998.2 * 9.80665;

    /**
     * A reading along the control curve.
     *
     * @param flow the flow
     * @param head the head
     * @param electricalPower the power from the wire
     */
    public record Reading(Flow flow, Head head, Power electricalPower) {}

    /** Keeps the lists from changing. */
    public CirculatorEnergyIndex {
        readings = List.copyOf(readings);
        counted = List.copyOf(counted);
    }

    /** Returns the index of four readings at 100, 75, 50 and 25 % flow. */
    public static CirculatorEnergyIndex of(List<Reading> readings) {
        requireProfile(readings);
        Reading full = readings.get(0);
        List<Power> counted = new ArrayList<>();
        for (Reading each : readings) {
            double share = each.flow().over(full.flow()).value();
            Head reference = full.head().times(0.5 + 0.5 * share);
            double raised = Math.max(1, reference.over(each.head()).value());
            counted.add(each.electricalPower().times(raised));
        }
        Power hydraulic = Power.watts(WEIGHT * full.flow().si() * full.head().metres());
        Power average = average(counted);
        Power reference = referencePower(hydraulic);
        double index = indexOf(average, hydraulic);
        return new CirculatorEnergyIndex(readings, hydraulic, counted, average, reference, index);
    }

    /**
     * Returns the power of the reference circulator.
     *
     * @param hydraulic the hydraulic power at 100 % flow, 1 to 2500 W
     */
    public static Power referencePower(Power hydraulic) {
        double watts = hydraulic.watts();
        if (!(watts >= 1 - ROUNDING && watts <= 2500 * (1 + ROUNDING))) {
            throw new Refusal(
                    IndexProblem.OUTSIDE_INDEX_SCOPE,
                    "Asked for the energy index of a circulator of " + hydraulic + " hydraulic power",
                    "The index is defined from 1 W to 2500 W",
                    "Leave the index out, or check flow and head of the first reading");
        }
        return Power.watts(1.7 * watts + 17 * (1 - Math.exp(-0.3 * watts)));
    }

    /** Returns the power averaged over the profile, of the powers at 100, 75, 50 and 25 % flow. */
    public static Power average(List<Power> powers) {
        double watts = 0;
        for (int i = 0; i < TIMES.length; i++) {
            watts += TIMES[i] * powers.get(i).watts();
        }
        return Power.watts(watts);
    }

    /** Returns the index of an averaged power and a hydraulic power. */
    public static double indexOf(Power average, Power hydraulic) {
        return CALIBRATION * average.over(referencePower(hydraulic)).value();
    }

    @Override
    public Notes notes() {
        return Notes.NONE;
    }

    @Override
    public Basis basis() {
        return Basis.of("circulator energy index: EC 641/2009 as amended, hydraulic power of water at 20 °C (reference"
                + " curve to half the head at no flow from memory)");
    }

    @Override
    public String toString() {
        return "circulator energy index " + Numbers.print(index) + ", a calculation aid, not a certified rating";
    }

    private static void requireProfile(List<Reading> readings) {
        boolean fits = readings.size() == FLOWS.length;
        for (int i = 0; fits && i < FLOWS.length; i++) {
            Reading each = readings.get(i);
            boolean possible = each.flow().si() > 0
                    && each.head().si() > 0
                    && each.electricalPower().si() > 0;
            fits = possible
                    && Math.abs(each.flow().over(readings.get(0).flow()).value() - FLOWS[i])
                            <= FLOW_TOLERANCE + ROUNDING;
        }
        if (!fits) {
            throw new Refusal(
                    IndexProblem.INDEX_READINGS_DO_NOT_FIT,
                    "Asked for a circulator energy index of " + readings.size() + " readings: " + listed(readings),
                    "It takes four readings at 100, 75, 50 and 25 % of the first flow, within 2 points, with flow, head"
                            + " and power above 0",
                    "Read along the control curve at these flows, the greatest first");
        }
    }

    private static String listed(List<Reading> readings) {
        return String.join(
                "; ",
                readings.stream()
                        .map(each -> each.flow() + ", " + each.head() + ", " + each.electricalPower())
                        .toList());
    }
}
