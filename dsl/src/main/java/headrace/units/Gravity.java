package headrace.units;

/** The fall that turns a head into a pressure. */
public final class Gravity {
    /** Standard gravity in m/s², exact by convention (3rd CGPM, 1901). */
    public static final double STANDARD = 9.80665;

    private Gravity() {}
}
