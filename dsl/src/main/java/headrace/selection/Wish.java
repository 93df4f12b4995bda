package headrace.selection;

import headrace.control.ControlLaw;
import headrace.curve.Duty;
import headrace.drive.LossModel;
import headrace.energy.LoadProfile;
import headrace.liquid.Liquid;
import headrace.operation.limit.OperatingRegion;
import headrace.operation.suction.NpshRule;
import headrace.operation.suction.SuctionSide;
import headrace.problem.Refusal;
import headrace.rule.PartLoadRule;
import headrace.units.Ratio;
import java.util.Optional;

/**
 * What pumps are chosen for.
 *
 * @param law the control law, made for the duty, that asks for a head at every flow
 * @param year the load, in shares of the flow of the duty
 * @param conditions where the pump stands and what it must keep
 * @param motors what motors and drives are taken
 */
public record Wish(ControlLaw law, LoadProfile year, Conditions conditions, Motors motors) {
    /**
     * Where a pump stands and what it must keep.
     *
     * @param liquid what is pumped; the liquid of each test if absent
     * @param suction the suction side; NPSH is not judged if absent
     * @param margin the margin of NPSH
     * @param region the operating region
     * @param rule the part-load rule
     * @param leastMinimumHead the least minimum head that serves every branch, as a share of the design head; unknown
     *     if absent
     */
    public record Conditions(
            Optional<Liquid> liquid,
            Optional<SuctionSide> suction,
            NpshRule margin,
            OperatingRegion region,
            PartLoadRule rule,
            Optional<Ratio> leastMinimumHead) {
        /** The liquid of each test, the usual region, the rule of 30 % at half flow, nothing else known. */
        public static final Conditions USUAL = new Conditions(
                Optional.empty(),
                Optional.empty(),
                NpshRule.USUAL,
                OperatingRegion.USUAL,
                PartLoadRule.THIRTY_PERCENT_AT_HALF_FLOW,
                Optional.empty());
    }

    /**
     * What motors and drives are taken: the smallest standard rating that the pump never overloads at rated speed.
     *
     * @param ieClass the class of the motor
     * @param model the loss model
     * @param leastSpeed the least speed as a share of rated speed
     */
    public record Motors(int ieClass, LossModel model, Ratio leastSpeed) {}

    /** Refuses a law that asks for no head of flow, or is made for no duty. */
    public Wish {
        if (law.design().isEmpty()
                || law.requiredHead(law.design().get().flow()).isEmpty()) {
            throw new Refusal(
                    SelectionProblem.IMPOSSIBLE_WISH,
                    "Asked to choose a pump under the law '" + law.name() + "'",
                    "The law must be made for the duty and ask for a head at every flow",
                    "Use a quadratic, a linear or a constant head law");
        }
        double least = motors.leastSpeed().value();
        if (!(least > 0 && least < 1)) {
            throw new Refusal(
                    SelectionProblem.IMPOSSIBLE_WISH,
                    "Asked for a least speed of " + motors.leastSpeed(),
                    "It lies above 0 and below 100 % of rated speed",
                    "Common are 20 to 30 %");
        }
    }

    /** Returns the flow and head of the duty. */
    public Duty duty() {
        return law.design().orElseThrow();
    }
}
