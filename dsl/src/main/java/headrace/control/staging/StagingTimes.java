package headrace.control.staging;

import headrace.problem.Refusal;
import headrace.units.Ratio;
import headrace.units.Time;

/**
 * What keeps pumps from being switched too often.
 *
 * @param hysteresis how far apart, as a share of design flow, the flows lie at which a pump starts and stops
 * @param hold how long a flow must last beyond its limit before a pump starts or stops
 * @param minimumRun how long a pump runs at least
 */
public record StagingTimes(Ratio hysteresis, Time hold, Time minimumRun) {
    /** 5 % of design flow, 10 min, 15 min: common practice, no source; the 10 min are those of ASHRAE Guideline 36. */
    public static final StagingTimes COMMON = new StagingTimes(Ratio.percent(5), Time.minutes(10), Time.minutes(15));

    /** Refuses what cannot be. */
    public StagingTimes {
        if (hysteresis.value() < 0 || hysteresis.value() > 0.5 || hold.seconds() < 0 || minimumRun.seconds() < 0) {
            throw new Refusal(
                    StagingProblem.IMPOSSIBLE_STAGING_RULE,
                    "Asked for a hysteresis of " + hysteresis + ", a hold of " + hold + " and a least run of "
                            + minimumRun,
                    "A hysteresis lies from 0 to 50 % of design flow, and times are 0 or more",
                    "Common are 5 %, 10 min and 15 min");
        }
    }

    @Override
    public String toString() {
        return "hysteresis " + hysteresis + " of design flow, hold " + hold + ", least run " + minimumRun;
    }
}
