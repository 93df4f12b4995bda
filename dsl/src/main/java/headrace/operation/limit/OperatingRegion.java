package headrace.operation.limit;

import headrace.curve.CurvePoint;
import headrace.curve.PumpCurve;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.units.Flow;
import headrace.units.Ratio;

/**
 * The flows at which a pump runs well, as shares of the flow of best efficiency at the same speed.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Shares of best-efficiency flow.
 *   <dt>Limits
 *   <dd>Preferred 70 to 120 %, allowable 50 to 125 % unless stated. The allowable region is the maker's to declare; an
 *       assumed one is noted. For pumps of high specific speed the preferred region is narrower.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_REGION}.
 *   <dt>Source
 *   <dd>ANSI/HI 9.6.3-2012 for the preferred region, read second hand; the allowable one is an assumption of our own.
 * </dl>
 *
 * @param preferredFrom where the preferred region begins
 * @param preferredTo where it ends
 * @param allowableFrom where the allowable region begins, not above the preferred one
 * @param allowableTo where it ends, not below the preferred one
 * @param stated whether the limits were stated, by the maker say
 */
public record OperatingRegion(
        Ratio preferredFrom, Ratio preferredTo, Ratio allowableFrom, Ratio allowableTo, boolean stated) {
    /** The region that is assumed where none is stated. */
    public static final OperatingRegion USUAL =
            new OperatingRegion(Ratio.of(0.7), Ratio.of(1.2), Ratio.of(0.5), Ratio.of(1.25), false);

    private static final double ROUNDING = 1e-9;

    /** Refuses a region that is empty, or a preferred one that is not inside the allowable one. */
    public OperatingRegion {
        boolean possible = allowableFrom.value() >= 0
                && allowableFrom.compareTo(preferredFrom) <= 0
                && preferredFrom.compareTo(preferredTo) < 0
                && preferredTo.compareTo(allowableTo) <= 0;
        if (!possible) {
            throw new Refusal(
                    LimitProblem.IMPOSSIBLE_REGION,
                    "Asked for a preferred region of " + preferredFrom + " to " + preferredTo
                            + " in an allowable one of " + allowableFrom + " to " + allowableTo,
                    "Each begins below its end, the allowable one encloses the preferred one, and none begins below 0",
                    "Common are 70 to 120 % and 50 to 125 % of best-efficiency flow");
        }
    }

    /** Returns stated limits. */
    public static OperatingRegion of(Ratio preferredFrom, Ratio preferredTo, Ratio allowableFrom, Ratio allowableTo) {
        return new OperatingRegion(preferredFrom, preferredTo, allowableFrom, allowableTo, true);
    }

    /** Where a flow lies. */
    public enum Zone {
        /** Inside the preferred region. */
        PREFERRED("preferred region"),
        /** Outside the preferred region, inside the allowable one. */
        ALLOWABLE("allowable region"),
        /** Outside both. */
        OUTSIDE("outside the allowable region");

        private final String words;

        Zone(String words) {
            this.words = words;
        }

        @Override
        public String toString() {
            return words;
        }
    }

    /** Returns the zone of a share of best-efficiency flow; limits belong to their region. */
    public Zone zoneOf(Ratio share) {
        double x = share.value();
        if (within(x, preferredFrom, preferredTo)) {
            return Zone.PREFERRED;
        }
        return within(x, allowableFrom, allowableTo) ? Zone.ALLOWABLE : Zone.OUTSIDE;
    }

    private static boolean within(double x, Ratio from, Ratio to) {
        return x >= from.value() - ROUNDING && x <= to.value() + ROUNDING;
    }

    /** Returns where a point of a pump lies in this region. */
    public RegionPoint at(PumpCurve curve, CurvePoint point) {
        return at(curve.atSpeed(point.speed()), point.flow());
    }

    /** Returns where a flow of a pump, at the speed of its curve, lies in this region. */
    public RegionPoint at(PumpCurve curve, Flow flow) {
        CurvePoint best = curve.bestEfficiencyPoint();
        Ratio share = flow.over(best.flow());
        Zone zone = zoneOf(share);
        Notes notes = best.notes().and(notes());
        String where = flow + " at " + curve.speed() + " is " + share + " of the flow of best efficiency, ";
        if (zone != Zone.PREFERRED) {
            notes = notes.with(
                    LimitProblem.OUTSIDE_PREFERRED_REGION,
                    where + "outside the preferred " + preferredFrom + " to " + preferredTo);
        }
        if (zone == Zone.OUTSIDE) {
            notes = notes.with(
                    LimitProblem.OUTSIDE_ALLOWABLE_REGION,
                    where + "outside the allowable " + allowableFrom + " to " + allowableTo);
        }
        return new RegionPoint(
                flow, best.flow(), share, zone, notes, curve.basis().with("operating region: " + this));
    }

    /** Returns that the region was assumed, if it was. */
    public Notes notes() {
        return stated
                ? Notes.NONE
                : Notes.NONE.with(
                        LimitProblem.REGION_ASSUMED,
                        "No operating region was stated; preferred " + preferredFrom + " to " + preferredTo
                                + " and allowable " + allowableFrom + " to " + allowableTo
                                + " of best-efficiency flow are assumed");
    }

    @Override
    public String toString() {
        return "preferred " + preferredFrom + " to " + preferredTo + ", allowable " + allowableFrom + " to "
                + allowableTo + " of best-efficiency flow" + (stated ? "" : " (assumed)");
    }
}
