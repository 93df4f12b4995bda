package headrace.rule.index;

import headrace.drive.CombinedLosses;
import headrace.drive.Motor;
import headrace.problem.Refusal;
import headrace.units.Power;
import headrace.units.Ratio;

/** The default motor of the US procedure: the smallest premium motor for the power at 120 % of best flow. */
record DefaultMotor(Power rated, Ratio efficiency, Power fullLoadLoss) {
    private static final double ROUNDING = 1e-9;

    static DefaultMotor of(PumpEnergyIndex.Measured measured) {
        int poles = measured.speed().toRevolutionsPerMinute() < 2700 ? 4 : 2;
        Power rated = Motor.premiumRatings().stream()
                .filter(each ->
                        each.watts() * (1 + ROUNDING) >= measured.overload().watts())
                .findFirst()
                .orElseThrow(() -> new Refusal(
                        IndexProblem.OUTSIDE_INDEX_SCOPE,
                        "Asked for the pump energy index of a pump that takes " + measured.overload()
                                + " at 120 % of best flow",
                        "The motors of the procedure end at 200 hp",
                        "Leave the index out"));
        Motor open = Motor.premiumOpen(rated, poles);
        Motor enclosed = Motor.premiumEnclosed(rated, poles);
        Motor motor = open.fullLoadEfficiency().compareTo(enclosed.fullLoadEfficiency()) < 0 ? open : enclosed;
        return new DefaultMotor(rated, motor.fullLoadEfficiency(), motor.fullLoadLoss());
    }

    Power inputOnMains(Power shaft) {
        return shaft.plus(fullLoadLoss.times(CombinedLosses.factorOnMains(load(shaft))));
    }

    Power inputWithDrive(Power shaft) {
        return shaft.plus(fullLoadLoss.times(CombinedLosses.factorWithDrive(rated, load(shaft))));
    }

    /** The procedure counts no load above 1. */
    private double load(Power shaft) {
        return Math.min(1, shaft.over(rated).value());
    }
}
