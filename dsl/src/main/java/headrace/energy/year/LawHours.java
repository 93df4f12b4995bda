package headrace.energy.year;

import headrace.control.ControlLaw;
import headrace.operation.limit.OperatingRegion.Zone;
import headrace.problem.Notes;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Energy;
import headrace.units.Head;
import headrace.units.Numbers;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Time;
import headrace.units.Volume;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A year of a circuit under one law.
 *
 * @param law the law
 * @param energy the energy from the wire and into the shaft
 * @param peak the greatest power from the wire, and when
 * @param service what was not met
 * @param running how the pump ran
 * @param shares where the energy goes
 * @param hourly the power from the wire in each hour, in W
 * @param notes what was touched
 * @param basis what it rests on
 */
public record LawHours(
        ControlLaw law,
        Taken energy,
        Peak peak,
        Service service,
        Running running,
        EnergyShares shares,
        double[] hourly,
        Notes notes,
        Basis basis)
        implements Traced {
    /**
     * What was taken in the year.
     *
     * @param wire from the wire, standby included
     * @param shaft into the shaft
     */
    public record Taken(Energy wire, Energy shaft) {}

    /**
     * The greatest power.
     *
     * @param power the power from the wire
     * @param when when the hour begins
     */
    public record Peak(Power power, String when) {}

    /**
     * What was not met.
     *
     * @param starvedBranchHours the hours in which a branch got less than 99 % of its demand, over all branches
     * @param byBranch the same for each branch that starved
     * @param unmet the flow that was missing, over the year
     * @param worst the hour in which a branch got least, if any got too little
     */
    public record Service(
            Time starvedBranchHours, Map<String, Time> byBranch, Volume unmet, Optional<Shortfall> worst) {}

    /**
     * How the pump ran.
     *
     * @param on the hours in which it ran
     * @param starts how often it started
     * @param zones the hours in each zone of its operating region
     * @param atLeastSpeed the hours at its least speed
     * @param atGreatestSpeed the hours at its greatest speed
     * @param meanHead its mean head while it ran
     */
    public record Running(
            Time on, int starts, Map<Zone, Time> zones, Time atLeastSpeed, Time atGreatestSpeed, Head meanHead) {
        /** Returns the share of the running hours in the preferred region. */
        public Ratio preferred() {
            return on.si() > 0 ? zones.get(Zone.PREFERRED).over(on) : Ratio.ZERO;
        }
    }

    /** Returns the energy of the hours that a list names, for prices that change with the hour. */
    public Energy in(List<Integer> hours) {
        return Energy.joules(hours.stream()
                .mapToDouble(hour -> hourly[hour] * SECONDS_OF_AN_HOUR)
                .sum());
    }

    static final double SECONDS_OF_AN_HOUR = 3600;

    /** Copies the hours. */
    public LawHours {
        hourly = hourly.clone();
    }

    /** Returns the power from the wire in each hour, in W. */
    @Override
    public double[] hourly() {
        return hourly.clone();
    }

    @Override
    public String toString() {
        return law.name() + ": " + energy.wire() + ", " + peak.power() + " at most, "
                + Numbers.print(service.starvedBranchHours().toHours()) + " branch-hours with too little";
    }
}
