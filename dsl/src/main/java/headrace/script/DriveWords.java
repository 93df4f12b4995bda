package headrace.script;

import headrace.curve.PumpCurve;
import headrace.drive.Drive;
import headrace.drive.DriveLosses;
import headrace.drive.DriveProblem;
import headrace.drive.DriveTrain;
import headrace.drive.LossModel;
import headrace.drive.Motor;
import headrace.drive.Site;
import headrace.problem.Nearest;
import headrace.problem.Refusal;
import headrace.pump.PumpSet;
import headrace.pump.TypicalEfficiency;
import headrace.units.Length;
import headrace.units.Power;
import headrace.units.Quantities;
import headrace.units.Ratio;
import headrace.units.Speed;
import headrace.units.Temperature;
import java.util.List;
import java.util.Map;

/** Words about the motor, the drive and the pump set that they make with a pump. */
public final class DriveWords implements Words {
    private static final String MOTOR = "A motor by its efficiency class, 0.12 to 1000 kW at 50 Hz, by the US table of"
            + " premium motors, or by what stands on its plate.";
    private static final String MOTOR_EXAMPLE = "motor(5.5.kW, ie: 3, poles: 4)";
    private static final String DRIVE = "A variable-speed drive for a motor of that power, with the reference losses of"
            + " EU 2019/1781 unless chosen otherwise.";
    private static final String DRIVE_EXAMPLE = "drive(5.5.kW)";
    private static final String SET =
            "A pump with its motor and its drive; without a drive it turns at rated speed on the mains.";
    private static final String SET_EXAMPLE = "pumpSet(curve, motor(5.5.kW, ie: 3, poles: 4), drive(5.5.kW))";

    @Override
    public String subject() {
        return "Motor and drive";
    }

    /** Makes a motor. */
    @Word(help = MOTOR, example = MOTOR_EXAMPLE)
    public static Motor motor(Object rated) {
        return motor(Map.of(), rated);
    }

    /** Makes a motor. */
    @Word(
            help = MOTOR,
            example = MOTOR_EXAMPLE,
            choices = {
                "ie: efficiency class, 2, 3 or 4",
                "poles: 2, 4, 6 or 8; always needed",
                "efficiency: efficiency at full load from the plate, instead of a class",
                "premium: 'open' or 'enclosed', the US table at 60 Hz instead of a class",
                "ratedSpeed: speed at full load from the plate; else the speed of the pump curve",
                "altitude: height above the sea; above 1000 m it gives less",
                "ambient: temperature of the air; above 40 °C it gives less"
            })
    public static Motor motor(Map<String, ?> given, Object rated) {
        Choices choices =
                Choices.of("motor", given, "ie", "poles", "efficiency", "premium", "ratedSpeed", "altitude", "ambient");
        Motor motor = motor(choices, Wanted.power(rated, "the rated power of a motor"))
                .at(new Site(
                        choices.quantity("altitude", Length.KIND, Site.ORDINARY.altitude()),
                        choices.quantity("ambient", Temperature.KIND, Site.ORDINARY.ambient())));
        return choices.has("ratedSpeed") ? motor.atRatedSpeed(choices.quantity("ratedSpeed", Speed.KIND)) : motor;
    }

    private static Motor motor(Choices choices, Power power) {
        int poles = choices.whole("poles");
        if (choices.has("efficiency")) {
            return Motor.ofPlate(power, poles, choices.ratio("efficiency"));
        }
        if (!choices.has("premium")) {
            return Motor.ofClass(power, choices.whole("ie"), poles);
        }
        String housing = choices.text("premium");
        if (housing.equals("open")) {
            return Motor.premiumOpen(power, poles);
        }
        if (housing.equals("enclosed")) {
            return Motor.premiumEnclosed(power, poles);
        }
        throw new Refusal(
                ScriptProblem.WRONG_VALUE,
                "The text '" + housing + "' was given for the choice premium: of motor",
                "It must be 'open' or 'enclosed'",
                "Use one of these");
    }

    /** Makes a drive. */
    @Word(help = DRIVE, example = DRIVE_EXAMPLE)
    public static Drive drive(Object motorRated) {
        return drive(Map.of(), motorRated);
    }

    /** Makes a drive. */
    @Word(
            help = DRIVE,
            example = DRIVE_EXAMPLE,
            choices = {
                "ie: efficiency class, 1 for the reference losses or 2 for three quarters of them; 1 unless chosen",
                "loss: declared loss at 90 % frequency and 100 % torque current, instead of a class",
                "points: declared losses, each a list of frequency, torque current and loss, instead of a class",
                "magnetisingCurrent: of the motor, as a share of its rated current; not counted unless chosen",
                "standby: power while the pump stands still; none unless chosen"
            })
    public static Drive drive(Map<String, ?> given, Object motorRated) {
        Choices choices = Choices.of("drive", given, "ie", "loss", "points", "magnetisingCurrent", "standby");
        Drive drive = drive(choices, Wanted.power(motorRated, "the rated power of a drive"));
        if (choices.has("magnetisingCurrent")) {
            drive = drive.withMagnetisingCurrent(choices.ratio("magnetisingCurrent"));
        }
        return choices.has("standby") ? drive.withStandby(choices.quantity("standby", Power.KIND)) : drive;
    }

    private static Drive drive(Choices choices, Power rated) {
        if (choices.has("points")) {
            return Drive.declared(
                    rated, DriveLosses.of(LossWords.points(choices, "drive", "frequency, torque current and loss")));
        }
        if (choices.has("loss")) {
            return Drive.declared(rated, choices.quantity("loss", Power.KIND));
        }
        int ieClass = choices.whole("ie", 1);
        if (ieClass == 1) {
            return Drive.reference(rated);
        }
        if (ieClass == 2) {
            return Drive.ie2(rated);
        }
        throw new Refusal(
                DriveProblem.RATING_OUTSIDE_TABLE,
                "Asked for a drive of class IE" + ieClass,
                "The table gives drives of IE1 and IE2",
                "Use one of these, or state the declared loss of the drive");
    }

    /** Makes a pump set without a drive. */
    @Word(help = SET, example = SET_EXAMPLE)
    public static PumpSet pumpSet(Object curve, Object motor) {
        return pumpSet(Map.of(), curve, motor);
    }

    /** Makes a pump set without a drive. */
    @Word(help = SET, example = SET_EXAMPLE)
    public static PumpSet pumpSet(Map<String, ?> given, Object curve, Object motor) {
        Choices choices = Choices.of("pumpSet", given, "losses", "cableLoss");
        return PumpSet.of(
                Wanted.object(PumpCurve.class, curve, "the curve of a pump set"),
                DriveTrain.onMains(Wanted.object(Motor.class, motor, "the motor of a pump set"), losses(choices))
                        .withCableLoss(choices.ratio("cableLoss", Ratio.ZERO)));
    }

    /** Makes a pump set. */
    @Word(help = SET, example = SET_EXAMPLE)
    public static PumpSet pumpSet(Object curve, Object motor, Object drive) {
        return pumpSet(Map.of(), curve, motor, drive);
    }

    /** Makes a pump set. */
    @Word(
            help = SET,
            example = SET_EXAMPLE,
            choices = {
                "minimumSpeed: least speed of the drive, as a speed or a share of rated speed; 25 % is assumed, and noted",
                "maximumSpeed: greatest speed, as a speed or a share of rated speed; rated speed unless chosen",
                "losses: the loss model, 'separate' unless chosen; 'combined', 'handbook', 'constant efficiency' or one of"
                        + " lossModel(points: …)",
                "cableLoss: what cables and filters lose, as a share of what passes; none unless chosen"
            })
    public static PumpSet pumpSet(Map<String, ?> given, Object curve, Object motor, Object drive) {
        Choices choices = Choices.of("pumpSet", given, "minimumSpeed", "maximumSpeed", "losses", "cableLoss");
        PumpSet set = PumpSet.of(
                Wanted.object(PumpCurve.class, curve, "the curve of a pump set"),
                DriveTrain.of(
                                Wanted.object(Motor.class, motor, "the motor of a pump set"),
                                Wanted.object(Drive.class, drive, "the drive of a pump set"),
                                losses(choices))
                        .withCableLoss(choices.ratio("cableLoss", Ratio.ZERO)));
        if (choices.has("maximumSpeed")) {
            set = set.withMaximumSpeed(speed(choices, "maximumSpeed", set));
        }
        return choices.has("minimumSpeed") ? set.withMinimumSpeed(speed(choices, "minimumSpeed", set)) : set;
    }

    /** Returns a pump set with another loss model. */
    @Word(
            help = "The same pump set with another loss model, by its name or as lossModel makes it.",
            example = "withLosses(set, 'combined')")
    public static PumpSet withLosses(Object set, Object losses) {
        return Wanted.object(PumpSet.class, set, "the pump set of withLosses")
                .with(lossModel(losses, "the loss model of withLosses"));
    }

    private static LossModel losses(Choices choices) {
        return choices.has("losses")
                ? lossModel(choices.object("losses", Object.class), "the choice losses: of pumpSet")
                : LossModel.all().get(0);
    }

    /** Takes a loss model or its name. */
    static LossModel lossModel(Object given, String place) {
        if (!(given instanceof CharSequence)) {
            return Wanted.object(LossModel.class, given, place);
        }
        List<String> names = LossModel.all().stream().map(LossModel::name).toList();
        String name = given.toString().strip();
        List<String> near = Nearest.to(name, names);
        if (!names.contains(name) && !near.isEmpty()) {
            throw new Refusal(
                    DriveProblem.UNKNOWN_LOSS_MODEL,
                    "Asked for the loss model '" + name + "'",
                    "There are " + String.join(", ", names),
                    "The nearest is '" + near.get(0) + "'");
        }
        return LossModel.named(name);
    }

    private static Speed speed(Choices choices, String name, PumpSet set) {
        Object value = choices.object(name, Object.class);
        if (value instanceof CharSequence text) {
            value = Quantities.parse(text.toString());
        }
        return value instanceof Ratio share
                ? set.ratedSpeed().times(share)
                : Wanted.speed(value, "the choice " + name + ": of pumpSet");
    }

    /** Guesses an efficiency by size. */
    @Word(
            help =
                    "The efficiency that a pump for a flow, or a motor for a shaft power, commonly has: a first guess, no"
                            + " rating.",
            example = "typicalEfficiency(105.m3ph)")
    public static Ratio typicalEfficiency(Object flowOrPower) {
        return flowOrPower instanceof Power shaft
                ? TypicalEfficiency.ofMotor(shaft)
                : TypicalEfficiency.ofPump(Wanted.flow(flowOrPower, "the size of typicalEfficiency"));
    }
}
