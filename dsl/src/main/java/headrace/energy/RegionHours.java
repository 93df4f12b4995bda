package headrace.energy;

import headrace.operation.OperatingPoint;
import headrace.operation.limit.OperatingRegion;
import headrace.operation.limit.OperatingRegion.Zone;
import headrace.operation.limit.RegionPoint;
import headrace.problem.GatheredNotes;
import headrace.problem.Notes;
import headrace.pump.PumpSet;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.Ratio;
import headrace.units.Time;
import java.util.EnumMap;
import java.util.Map;

/**
 * How many hours of a year under a control law a pump runs in each part of its operating region.
 *
 * @param law the law's name
 * @param hours the hours in each zone, at the speed that the law gives in each bin
 * @param off the hours in which it stands still
 * @param notes what was assumed, and which bins lie outside
 * @param basis what it rests on
 */
public record RegionHours(String law, Map<Zone, Time> hours, Time off, Notes notes, Basis basis) implements Traced {
    /** Keeps the hours from changing. */
    public RegionHours {
        hours = Map.copyOf(hours);
    }

    /** Returns the hours of a pump set in the year of a law. */
    public static RegionHours of(PumpSet set, LawYear year, OperatingRegion region) {
        Map<Zone, Time> hours = new EnumMap<>(Zone.class);
        for (Zone zone : Zone.values()) {
            hours.put(zone, Time.ZERO);
        }
        Time off = Time.ZERO;
        GatheredNotes notes = new GatheredNotes();
        notes.add(year.notes());
        for (BinResult bin : year.bins()) {
            if (bin.state().isEmpty()) {
                off = off.plus(bin.bin().hours());
            } else {
                OperatingPoint point = bin.state().get().point();
                RegionPoint at = region.at(set.curve(), point.point());
                hours.merge(at.zone(), bin.bin().hours(), Time::plus);
                notes.add(at.notes());
            }
        }
        return new RegionHours(
                year.law().name(), hours, off, notes.notes(), year.basis().with("operating region: " + region));
    }

    /** Returns the hours in which the pump runs. */
    public Time running() {
        return hours.values().stream().reduce(Time.ZERO, Time::plus);
    }

    /** Returns the share of the running hours in a zone; 0 if it never runs. */
    public Ratio share(Zone zone) {
        Time running = running();
        return running.si() > 0 ? hours.get(zone).over(running) : Ratio.ZERO;
    }

    @Override
    public String toString() {
        return law + ": " + share(Zone.PREFERRED) + " of its hours in the preferred region, " + share(Zone.OUTSIDE)
                + " outside the allowable one";
    }
}
