package headrace.units;

/**
 * The units in which quantities are printed. It never changes a calculation.
 *
 * <p>Chosen for each thread that prints, and inherited by the threads it starts; metric until chosen otherwise.
 */
public enum UnitSystem {
    /** m³/h, m, kW, rpm, °C. */
    METRIC,
    /** US gpm, ft, hp, rpm, °F. */
    US_CUSTOMARY;

    private static final InheritableThreadLocal<UnitSystem> CURRENT = new InheritableThreadLocal<>() {
        @Override
        protected UnitSystem initialValue() {
            return METRIC;
        }
    };

    /** Returns the system in which this thread prints. */
    public static UnitSystem current() {
        return CURRENT.get();
    }

    /** Makes this thread print in this system from now on. */
    public void choose() {
        CURRENT.set(this);
    }

    /** Returns the unit of this system for a kind of quantity. */
    public <Q extends Quantity<Q>> Unit unitOf(Kind<Q> kind) {
        return kind.unit(this == METRIC ? kind.metric() : kind.usCustomary());
    }
}
