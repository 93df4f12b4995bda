package headrace.rule.index;

import headrace.curve.CurvePoint;
import headrace.curve.PumpCurve;
import headrace.drive.CombinedLosses;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Flow;
import headrace.units.Head;
import headrace.units.Numbers;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Speed;
import java.util.ArrayList;
import java.util.List;

/**
 * The US pump energy index by the procedure of 2016: the power that the pump takes with a motor, over what a minimally
 * compliant pump takes in its place; at constant load without controls, at variable load with a drive.
 *
 * <p>The formulas stand in {@link StandardPump}, {@link CombinedLosses} and in the theory pages. A calculation aid, not
 * a certified rating.
 *
 * <dl>
 *   <dt>Units
 *   <dd>US gallons, feet and horsepower inside, as the procedure has them.
 *   <dt>Limits
 *   <dd>1 to 200 hp, 25 gpm or more and 459 ft at most at best efficiency, specific speed of 5000 at most, near 1800 or
 *       3600 rpm. The motor is the smallest premium one for the power at 120 % of best flow.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code OUTSIDE_INDEX_SCOPE}, and as {@link PumpCurve#at} where the curve does not reach 75
 *       to 120 % of its best flow.
 *   <dt>Source
 *   <dd>10 CFR 431 Subpart Y, Appendix A, 2016 procedure: formulas and scope from memory, unconfirmed; C and motor
 *       efficiencies read in a copy. The procedure was amended in 2023 for pumps sold with motors and controls.
 * </dl>
 *
 * @param type the type of pump
 * @param standard the minimally compliant pump
 * @param motorRated the power of the motor
 * @param motorEfficiency its efficiency at full load
 * @param loads the loads that count, at constant and at variable load
 * @param notes what was touched
 * @param basis what it rests on
 */
public record PumpEnergyIndex(
        ClearWaterPumpType type,
        StandardPump standard,
        Power motorRated,
        Ratio motorEfficiency,
        Loads loads,
        Notes notes,
        Basis basis)
        implements Traced {
    private static final String NAME = "pump energy index";
    private static final double[] VARIABLE = {0.25, 0.5, 0.75, 1};

    /**
     * The powers of the pump that the procedure counts.
     *
     * @param constant shaft powers at 75, 100 and 110 % of best flow
     * @param standardShaft what the minimally compliant pump takes there
     * @param constantInput wire powers of the pump at constant load
     * @param standardInput wire powers of the minimally compliant pump
     * @param variableInput wire powers at 25, 50, 75 and 100 % flow with a drive
     */
    public record Loads(
            List<Power> constant,
            List<Power> standardShaft,
            List<Power> constantInput,
            List<Power> standardInput,
            List<Power> variableInput) {}

    /**
     * Measured values of a pump at its nominal speed.
     *
     * @param speed the nominal speed
     * @param stages the number of stages
     * @param points flow, head and shaft power at 75, 100 and 110 % of best flow
     * @param overload the shaft power at 120 % of best flow
     */
    public record Measured(Speed speed, int stages, List<Point> points, Power overload) {}

    /**
     * One measured point.
     *
     * @param flow the flow
     * @param head the head
     * @param shaftPower the power at the shaft
     */
    public record Point(Flow flow, Head head, Power shaftPower) {
        static Point of(CurvePoint point) {
            return new Point(point.flow(), point.head(), point.shaftPower());
        }
    }

    /**
     * Returns the index of a pump.
     *
     * @param curve its curve at full impeller, at or near 1800 or 3600 rpm
     * @param type its type
     * @param stages its number of stages
     */
    public static PumpEnergyIndex of(PumpCurve curve, ClearWaterPumpType type, int stages) {
        NominalSpeed nominal = NominalSpeed.of(curve, NAME, 1800, 3600);
        PumpCurve at = nominal.curve();
        Flow best = at.bestEfficiencyPoint().flow();
        List<Point> points = new ArrayList<>();
        for (double share : StandardPump.FLOWS) {
            points.add(Point.of(at.at(best.times(share))));
        }
        Measured measured = new Measured(nominal.speed(), stages, points, at.shaftPowerAt(best.times(1.2)));
        PumpEnergyIndex index = of(measured, type);
        Notes notes = curve.notes().and(at.bestEfficiencyPoint().notes()).and(nominal.notes());
        return new PumpEnergyIndex(
                type,
                index.standard,
                index.motorRated,
                index.motorEfficiency,
                index.loads,
                notes,
                at.basis().and(index.basis));
    }

    /** Returns the index of measured values. */
    public static PumpEnergyIndex of(Measured measured, ClearWaterPumpType type) {
        NominalSpeed.requireStages(measured.stages(), NAME);
        StandardPump standard = StandardPump.of(measured, type);
        requireScope(measured, standard);
        DefaultMotor motor = DefaultMotor.of(measured);
        List<Power> shaft = measured.points().stream().map(Point::shaftPower).toList();
        List<Power> standardShaft = standard.shaftPowers(measured.points());
        List<Power> variable = new ArrayList<>();
        for (double flow : VARIABLE) {
            double share = (0.8 * flow * flow + 0.2) * flow;
            variable.add(motor.inputWithDrive(shaft.get(1).times(share)));
        }
        Loads loads = new Loads(
                shaft,
                standardShaft,
                shaft.stream().map(motor::inputOnMains).toList(),
                standardShaft.stream().map(motor::inputOnMains).toList(),
                List.copyOf(variable));
        return new PumpEnergyIndex(
                type,
                standard,
                motor.rated(),
                motor.efficiency(),
                loads,
                Notes.NONE,
                Basis.of("pump energy index: 10 CFR 431 Subpart Y Appendix A, 2016 procedure (formulas and scope from"
                        + " memory, unconfirmed)"));
    }

    /** Returns the averaged power of the minimally compliant pump. */
    public Power standardRating() {
        return mean(loads.standardInput());
    }

    /** Returns the averaged power at constant load. */
    public Power constantRating() {
        return mean(loads.constantInput());
    }

    /** Returns the averaged power at variable load, with a drive. */
    public Power variableRating() {
        return mean(loads.variableInput());
    }

    /** Returns the index at constant load, for a pump sold without controls; 1.00 is the most that is allowed. */
    public double constantLoad() {
        return constantRating().over(standardRating()).value();
    }

    /** Returns the index at variable load, for a pump sold with its drive and controls. */
    public double variableLoad() {
        return variableRating().over(standardRating()).value();
    }

    @Override
    public String toString() {
        return "pump energy index " + Numbers.print(constantLoad()) + " at constant load, "
                + Numbers.print(variableLoad())
                + " at variable load (2016 procedure), a calculation aid, not a certified rating";
    }

    private static Power mean(List<Power> powers) {
        return Power.watts(powers.stream().mapToDouble(Power::watts).average().orElseThrow());
    }

    private static void requireScope(Measured measured, StandardPump standard) {
        Point best = measured.points().get(1);
        double horsepower = best.shaftPower().toHorsepower();
        boolean size = horsepower >= 1 && horsepower <= 200;
        boolean duty = best.flow().toUsGallonsPerMinute() >= 25 && best.head().toFeet() <= 459;
        if (!size || !duty || standard.specificSpeed() > 5000) {
            throw new Refusal(
                    IndexProblem.OUTSIDE_INDEX_SCOPE,
                    "Asked for the pump energy index of a pump of " + best.flow() + ", " + best.head() + ", "
                            + best.shaftPower() + " and specific speed " + Numbers.print(standard.specificSpeed())
                            + " (US) with " + measured.stages() + " stages",
                    "The procedure takes 1 to 200 hp, 25 gpm or more, 459 ft at most and specific speeds up to 5000",
                    "Leave the index out, or check type and stages");
        }
    }
}
