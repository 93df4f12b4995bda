package headrace.units;

/**
 * The units in which quantities are printed. It never changes a calculation.
 *
 * <p>Chosen for each thread that prints, and inherited by the threads it starts; metric until chosen otherwise.
 */
public enum UnitSystem {
    /** m³/h, m, kW, rpm, °C. */
    METRIC("metric"),
    /** US gpm, ft, hp, rpm, °F. */
    US_CUSTOMARY("US"),
    /** As US customary, but with the imperial gallon. */
    IMPERIAL("imperial");

    private static final InheritableThreadLocal<UnitSystem> CURRENT = new InheritableThreadLocal<>() {
        @Override
        protected UnitSystem initialValue() {
            return METRIC;
        }
    };

    /** Below this many metres a length is printed in mm or inches, below this share of an hour a time in min. */
    private static final double SHORT = 0.5;

    private static final double SMALL = 0.1;

    private final String word;

    UnitSystem(String word) {
        this.word = word;
    }

    /** Returns the system in which this thread prints. */
    public static UnitSystem current() {
        return CURRENT.get();
    }

    /** Returns the name by which a script chooses it. */
    public String word() {
        return word;
    }

    /** Makes this thread print in this system from now on. */
    public void choose() {
        CURRENT.set(this);
    }

    /** Returns the unit of this system for a kind of quantity, whatever its size. */
    public <Q extends Quantity<Q>> Unit unitOf(Kind<Q> kind) {
        if (this == METRIC) {
            return kind.unit(kind.metric());
        }
        boolean gallons = this == IMPERIAL && (kind.type() == Flow.class || kind.type() == Volume.class);
        return kind.unit(gallons ? kind.type() == Flow.class ? "impGpm" : "impGal" : kind.usCustomary());
    }

    /** Returns the unit in which this system prints one value of a kind: a smaller one for a short length or time. */
    <Q extends Quantity<Q>> Unit unitOf(Kind<Q> kind, double si) {
        Unit usual = unitOf(kind);
        if (kind.type() == Length.class && Math.abs(si) < SHORT) {
            return kind.unit(this == METRIC ? "mm" : "inch");
        }
        if (kind.type() == Time.class && Math.abs(usual.fromSi(si)) < SMALL) {
            return kind.unit(Math.abs(si) < 60 ? "s" : "minute");
        }
        return usual;
    }

    /** Returns how a script chooses it, and what it prints a flow and a head in. */
    @Override
    public String toString() {
        return word + " units: " + unitOf(Flow.KIND).symbol() + ", "
                + unitOf(Head.KIND).symbol() + ", " + unitOf(Power.KIND).symbol();
    }
}
