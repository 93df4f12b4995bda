package headrace.units;

import java.util.List;

/**
 * A power.
 *
 * <p>The horsepower is 550 foot-pounds of force a second, 745.69987 W.
 */
public final class Power extends Amount<Power> {
    /** The units of a power, the SI unit first. */
    public static final Kind<Power> KIND = new Kind<>(
            "power",
            Power.class,
            Power::new,
            List.of(
                    Unit.of("W", "W", 1),
                    Unit.of("kW", "kW", 1e3),
                    Unit.of("MW", "MW", 1e6),
                    Unit.of("hp", "hp", 550 * 0.3048 * 0.45359237 * 9.80665),
                    Unit.of("btuph", "Btu/h", 1055.05585262 / 3600, "BTU/h", "btu/h"),
                    Unit.of("tonR", "ton", 12000 * 1055.05585262 / 3600, "TR")),
            "kW",
            "hp");

    /** No power. */
    public static final Power ZERO = new Power(0);

    private Power(double si) {
        super(si);
    }

    /** Returns the power of so many W. */
    public static Power watts(double value) {
        return new Power(value);
    }

    /** Returns the power of so many kW. */
    public static Power kilowatts(double value) {
        return KIND.of(value, "kW");
    }

    /** Returns the power of so many MW. */
    public static Power megawatts(double value) {
        return KIND.of(value, "MW");
    }

    /** Returns the power of so many hp. */
    public static Power horsepower(double value) {
        return KIND.of(value, "hp");
    }

    /** Returns the power of so many Btu/h. */
    public static Power btuPerHour(double value) {
        return KIND.of(value, "btuph");
    }

    /** Returns the power of so many ton. */
    public static Power tonsOfRefrigeration(double value) {
        return KIND.of(value, "tonR");
    }

    /** Returns this power in W. */
    public double watts() {
        return si();
    }

    /** Returns this power in kW. */
    public double toKilowatts() {
        return in("kW");
    }

    /** Returns this power in MW. */
    public double toMegawatts() {
        return in("MW");
    }

    /** Returns this power in hp. */
    public double toHorsepower() {
        return in("hp");
    }

    /** Returns this power in Btu/h. */
    public double toBtuPerHour() {
        return in("btuph");
    }

    /** Returns this power in ton. */
    public double toTonsOfRefrigeration() {
        return in("tonR");
    }

    @Override
    public Kind<Power> kind() {
        return KIND;
    }
}
