package headrace.drive;

import headrace.problem.Refusal;
import headrace.units.Numbers;

/**
 * How the full-load losses of an induction motor divide, and how each part follows torque {@code t} and speed
 * {@code s}, both as shares of their rated values.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Shares of the full-load losses; the four parts add up to 1, so that full load gives the efficiency of the
 *       motor.
 *   <dt>Limits
 *   <dd>Constant flux up to the rated speed.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_LOSSES}.
 *   <dt>Source
 *   <dd>The form is that of textbooks on inverter duty; the exponents lie in the range they give.
 * </dl>
 *
 * @param copper the copper losses of stator and rotor: {@code copper·(m + (1−m)·t²)}
 * @param magnetising the part {@code m} of the copper losses that the magnetising current makes, whatever the load
 * @param iron the iron losses: {@code iron·s^1.5}
 * @param friction friction and windage: {@code friction·s^2.5}
 * @param stray the additional load losses: {@code stray·t²·s}
 */
public record MotorShares(double copper, double magnetising, double iron, double friction, double stray) {
    /**
     * Shares assumed by this project for motors of 0.75 to 200 kW where nothing better is known. Small motors have more
     * copper and less iron than this, large ones the other way round.
     */
    public static final MotorShares ASSUMED = new MotorShares(0.55, 0.20, 0.20, 0.10, 0.15);

    /** Refuses shares below 0 and parts that do not add up to 1. */
    public MotorShares {
        boolean each = copper >= 0 && iron >= 0 && friction >= 0 && stray >= 0 && magnetising >= 0 && magnetising <= 1;
        if (!each || !(Math.abs(copper + iron + friction + stray - 1) <= 1e-9)) {
            throw new Refusal(
                    DriveProblem.IMPOSSIBLE_LOSSES,
                    "Asked for motor losses with the shares copper " + copper + ", iron " + iron + ", friction "
                            + friction + ", stray " + stray + " and magnetising " + magnetising,
                    "Copper, iron, friction and stray add up to 1, none is below 0, and magnetising is 0 to 1",
                    "Divide the four by their sum");
        }
    }

    /** Returns the losses of a motor divided so. */
    MotorTerms of(Motor motor) {
        double watts = motor.fullLoadLoss().watts();
        MotorTerms.Watts parts = new MotorTerms.Watts(
                watts * copper * magnetising,
                watts * copper * (1 - magnetising),
                watts * iron,
                watts * friction,
                watts * stray);
        return new MotorTerms(motor.rated().watts(), parts, 1.5, 2.5);
    }

    String statement() {
        return "motor loss over full-load loss = " + Numbers.print(copper) + "·(" + Numbers.print(magnetising) + " + "
                + Numbers.print(1 - magnetising) + "·t²) + " + Numbers.print(iron) + "·s^1.5 + "
                + Numbers.print(friction) + "·s^2.5 + " + Numbers.print(stray) + "·t²·s";
    }
}
