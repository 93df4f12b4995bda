package headrace.script;

import headrace.drive.FittedLosses;
import headrace.drive.LossModel;
import headrace.drive.LossPoint;
import headrace.drive.Motor;
import headrace.operation.OperatingPoint;
import headrace.pump.PumpSet;
import headrace.units.Power;
import headrace.units.Ratio;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Words about what motor and drive lose, and about a motor on the mains. */
public final class LossWords implements Words {
    private static final String MODEL = "A loss model by its name, 'separate', 'combined', 'handbook' or 'constant"
            + " efficiency', or one that is fitted to measured losses of a motor.";
    private static final String ON_MAINS =
            "Where the pump set runs at a flow with its motor on the mains, without the losses of a drive.";
    private static final String ON_MAINS_EXAMPLE = "onMains(set, 52.m3ph, slip: true)";

    @Override
    public String subject() {
        return "Losses";
    }

    /** Returns a loss model by its name. */
    @Word(help = MODEL, example = "lossModel('combined')")
    public static LossModel lossModel(Object name) {
        return DriveWords.lossModel(name, "the name of lossModel");
    }

    /** Fits a loss model to points. */
    @Word(
            help = MODEL,
            example = "lossModel('combined')",
            choices = {
                "points: measured losses of a motor, each a list of speed, torque and loss, speed and torque as shares of"
                        + " rated",
                "ironExponent: how iron losses follow the speed, 1.3 to 2; 1.5 unless chosen",
                "frictionExponent: how friction and windage follow the speed, 2 to 3; 2.5 unless chosen"
            })
    public static LossModel lossModel(Map<String, ?> given) {
        Choices choices = Choices.of("lossModel", given, "points", "ironExponent", "frictionExponent");
        FittedLosses.Exponents usual = FittedLosses.Exponents.USUAL;
        return FittedLosses.of(
                points(choices, "lossModel", "speed, torque and loss"),
                new FittedLosses.Exponents(
                        choices.number("ironExponent", usual.iron()),
                        choices.number("frictionExponent", usual.friction())));
    }

    /** Finds where the pump set runs on the mains. */
    @Word(help = ON_MAINS, example = ON_MAINS_EXAMPLE)
    public static OperatingPoint onMains(Object set, Object flow) {
        return onMains(Map.of(), set, flow);
    }

    /** Finds where the pump set runs on the mains. */
    @Word(
            help = ON_MAINS,
            example = ON_MAINS_EXAMPLE,
            choices = "slip: true for the speed that the slip leaves at this load; rated speed unless chosen")
    public static OperatingPoint onMains(Map<String, ?> given, Object set, Object flow) {
        PumpSet pumpSet = ControlWords.set(set, "onMains");
        return Choices.of("onMains", given, "slip").yes("slip", false)
                ? OperatingPoint.onMainsBySlip(pumpSet, Wanted.flow(flow, "the flow of onMains"))
                : OperatingPoint.onMains(pumpSet, Wanted.flow(flow, "the flow of onMains"));
    }

    /** Finds the torque of a motor by its slip. */
    @Word(
            help = "The torque of a motor on the mains, as a share of rated, by its slip at a measured speed; a rough"
                    + " measure, as good as the speed on the plate.",
            example = "torqueBySlip(motor(25.hp, premium: 'enclosed', poles: 4, ratedSpeed: 1750.rpm), 1770.rpm)")
    public static Ratio torqueBySlip(Object motor, Object speed) {
        return Wanted.object(Motor.class, motor, "the motor of torqueBySlip")
                .torqueBySlip(Wanted.speed(speed, "the speed of torqueBySlip"));
    }

    /** Reads the choice {@code points:} of a word. */
    static List<LossPoint> points(Choices choices, String word, String parts) {
        String place = "a point of " + word;
        List<LossPoint> points = new ArrayList<>();
        for (Object row : choices.object("points", List.class)) {
            Object[] values = Rows.of(row, 3, place, parts);
            points.add(new LossPoint(
                    Wanted.ratio(values[0], place),
                    Wanted.ratio(values[1], place),
                    Wanted.quantity(Power.KIND, values[2], place)));
        }
        return points;
    }
}
