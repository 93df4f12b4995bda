package headrace.rule.index;

import headrace.curve.CurvePoint;
import headrace.curve.PumpCurve;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Flow;
import headrace.units.Numbers;
import headrace.units.Ratio;
import java.util.List;

/**
 * Which minimum efficiency index of the EU a water pump reaches, at 75, 100 and 110 % of its best flow.
 *
 * <p>{@code η = 88.59·x + 13.46·y − 11.48·x² − 0.85·y² − 0.38·x·y − C} in per cent, with {@code x = ln n_s} and
 * {@code y = ln Q}; at 75 % flow 0.947 of it, at 110 % flow 0.985. A calculation aid, not a certified rating.
 *
 * <dl>
 *   <dt>Units
 *   <dd>In the formula Q in m³/h and {@code n_s = n·√Q/(H/i)^0.75} with rpm, m³/s, m and the number of stages i.
 *   <dt>Limits
 *   <dd>Index 0.10 and 0.40 only, those for which C is published. Scope as we remember it: best flow of 6 m³/h or more,
 *       150 kW at most; of the single-stage types also n_s 6 to 80 and at most 90 m at 1450 rpm, 140 m at 2900 rpm; of
 *       vertical multistage pumps at most 100 m³/h. Full impeller, clean cold water.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code OUTSIDE_INDEX_SCOPE}, and as {@link PumpCurve#at} where the curve does not reach 75
 *       or 110 % of its best flow.
 *   <dt>Source
 *   <dd>Commission Regulation (EU) No 547/2012, Annexes II and III; C and the points read in a copy, the formula and
 *       the scope from memory, the formula confirmed by its agreement with the US rule.
 * </dl>
 *
 * @param type the type of pump
 * @param stages the number of stages
 * @param specificSpeed n_s in rpm, m³/s and m
 * @param points part load, best efficiency, overload
 * @param reached which index all three points reach
 * @param notes what was touched
 * @param basis what it rests on
 */
public record MinimumEfficiencyIndex(
        WaterPumpType type,
        int stages,
        double specificSpeed,
        List<Point> points,
        Reached reached,
        Notes notes,
        Basis basis)
        implements Traced {
    private static final double ROUNDING = 1e-9;
    private static final String NAME = "minimum efficiency index";

    /** What the three points together reach. */
    public enum Reached {
        /** Below 0.10 at one of the points. */
        BELOW_0_10,
        /** 0.10 at each, 0.40 not at each. */
        AT_LEAST_0_10,
        /** 0.40 at each. */
        AT_LEAST_0_40
    }

    /**
     * The efficiencies that an index asks for.
     *
     * @param partLoad at 75 % of the best flow
     * @param best at the best flow
     * @param overload at 110 % of it
     */
    public record Required(Ratio partLoad, Ratio best, Ratio overload) {}

    /**
     * One of the three points.
     *
     * @param name part load, best efficiency or overload
     * @param flow its flow
     * @param efficiency what the pump has there
     * @param forTenth what index 0.10 asks for
     * @param forForty what index 0.40 asks for
     */
    public record Point(String name, Flow flow, Ratio efficiency, Ratio forTenth, Ratio forForty) {
        boolean reaches(Ratio required) {
            return efficiency.value() >= required.value() * (1 - ROUNDING);
        }
    }

    /** Keeps the points from changing. */
    public MinimumEfficiencyIndex {
        points = List.copyOf(points);
    }

    /**
     * Returns the index of a pump.
     *
     * @param curve its curve at full impeller, at or near 1450 or 2900 rpm
     * @param type its type
     * @param stages its number of stages
     */
    public static MinimumEfficiencyIndex of(PumpCurve curve, WaterPumpType type, int stages) {
        NominalSpeed.requireStages(stages, NAME);
        NominalSpeed nominal = NominalSpeed.of(curve, NAME, 1450, 2900);
        CurvePoint best = nominal.curve().bestEfficiencyPoint();
        double specificSpeed = specificSpeed(best, stages);
        Scope.of(type, stages, best, specificSpeed).require(curve.name());
        Required tenth = required(type, best, stages, false);
        Required forty = required(type, best, stages, true);
        List<Point> points = List.of(
                point(nominal.curve(), "part load", 0.75, tenth.partLoad(), forty.partLoad()),
                point(nominal.curve(), "best efficiency", 1.0, tenth.best(), forty.best()),
                point(nominal.curve(), "overload", 1.1, tenth.overload(), forty.overload()));
        boolean ten = points.stream().allMatch(point -> point.reaches(point.forTenth()));
        boolean fortyToo = points.stream().allMatch(point -> point.reaches(point.forForty()));
        return new MinimumEfficiencyIndex(
                type,
                stages,
                specificSpeed,
                points,
                fortyToo ? Reached.AT_LEAST_0_40 : ten ? Reached.AT_LEAST_0_10 : Reached.BELOW_0_10,
                curve.notes().and(best.notes()).and(nominal.notes()),
                nominal.curve()
                        .basis()
                        .with("minimum efficiency index: EU 547/2012, C of " + type + " at " + nominal.speed()
                                + " (formula and scope from memory)"));
    }

    /**
     * Returns the efficiencies that an index asks of a pump.
     *
     * @param type its type
     * @param best its best point at 1450 or 2900 rpm
     * @param stages its number of stages
     * @param fortyHundredths true for index 0.40, false for 0.10
     */
    public static Required required(WaterPumpType type, CurvePoint best, int stages, boolean fortyHundredths) {
        double x = Math.log(specificSpeed(best, stages));
        double y = Math.log(best.flow().toCubicMetresPerHour());
        double constant = type.constant(best.speed().toRevolutionsPerMinute(), fortyHundredths);
        double percent = 88.59 * x + 13.46 * y - 11.48 * x * x - 0.85 * y * y - 0.38 * x * y - constant;
        return new Required(Ratio.percent(0.947 * percent), Ratio.percent(percent), Ratio.percent(0.985 * percent));
    }

    @Override
    public String toString() {
        return type
                + (reached == Reached.BELOW_0_10
                        ? " pump below minimum efficiency index 0.10"
                        : " pump of minimum efficiency index " + (reached == Reached.AT_LEAST_0_40 ? "0.40" : "0.10")
                                + " or better")
                + ", a calculation aid, not a certified rating";
    }

    private static double specificSpeed(CurvePoint best, int stages) {
        return best.speed().toRevolutionsPerMinute()
                * Math.sqrt(best.flow().cubicMetresPerSecond())
                / Math.pow(best.head().metres() / stages, 0.75);
    }

    private static Point point(PumpCurve curve, String name, double share, Ratio forTenth, Ratio forForty) {
        Flow flow = curve.bestEfficiencyPoint().flow().times(share);
        return new Point(name, flow, curve.efficiencyAt(flow), forTenth, forForty);
    }

    /** The bounds within which the regulation applies, as we remember them. */
    private record Scope(String asked, boolean within, String possible) {
        static Scope of(WaterPumpType type, int stages, CurvePoint best, double specificSpeed) {
            double flow = best.flow().toCubicMetresPerHour();
            double kilowatts = best.shaftPower().toKilowatts();
            boolean slow = best.speed().toRevolutionsPerMinute() < 2000;
            double mostHead = slow ? 90 : 140;
            String asked = type + " with " + stages + " stages, " + best.flow() + " at " + best.head() + ", "
                    + best.shaftPower() + " and n_s " + Numbers.print(specificSpeed);
            if (type.multistage()) {
                boolean within = stages >= 2 && flow >= 6 && kilowatts <= 150;
                return new Scope(
                        asked,
                        within && (type != WaterPumpType.MS_V || flow <= 100),
                        "Pumps of this type have two stages or more, 6 m³/h or more, at most 150 kW, and vertical ones"
                                + " at most 100 m³/h");
            }
            return new Scope(
                    asked,
                    stages == 1
                            && flow >= 6
                            && kilowatts <= 150
                            && best.head().metres() <= mostHead
                            && specificSpeed >= 6
                            && specificSpeed <= 80,
                    "Pumps of this type have one stage, 6 m³/h or more, at most 150 kW and " + (slow ? 90 : 140)
                            + " m, and n_s 6 to 80");
        }

        void require(String pump) {
            if (!within) {
                throw new Refusal(
                        IndexProblem.OUTSIDE_INDEX_SCOPE,
                        "Asked for the minimum efficiency index of " + pump + ", " + asked,
                        possible,
                        "Leave the index out, or check type and stages");
            }
        }
    }
}
