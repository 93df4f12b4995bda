package headrace.units;

import java.util.List;

/** A specific heat capacity: the heat that warms a mass of something by one degree. */
public final class HeatCapacity extends Amount<HeatCapacity> {
    /** The units of a specific heat capacity, the SI unit first. */
    public static final Kind<HeatCapacity> KIND = new Kind<>(
            "heat capacity",
            HeatCapacity.class,
            HeatCapacity::new,
            List.of(
                    Unit.of("jpkgK", "J/(kg·K)", 1, "J/kgK", "J/kg/K"),
                    Unit.of("kjpkgK", "kJ/(kg·K)", 1e3, "kJ/kgK", "kJ/kg/K"),
                    Unit.of("btuplbF", "Btu/(lb·°F)", 4186.8, "Btu/(lb F)", "Btu/lb/°F")),
            "kjpkgK",
            "btuplbF");

    private HeatCapacity(double si) {
        super(si);
    }

    /** Returns the heat capacity of so many J/(kg·K). */
    public static HeatCapacity joulesPerKilogramKelvin(double value) {
        return new HeatCapacity(value);
    }

    /** Returns the heat capacity of so many kJ/(kg·K). */
    public static HeatCapacity kilojoulesPerKilogramKelvin(double value) {
        return KIND.of(value, "kjpkgK");
    }

    /** Returns the heat capacity of so many Btu/(lb·°F). */
    public static HeatCapacity btuPerPoundFahrenheit(double value) {
        return KIND.of(value, "btuplbF");
    }

    /** Returns this heat capacity in J/(kg·K). */
    public double joulesPerKilogramKelvin() {
        return si();
    }

    /** Returns this heat capacity in kJ/(kg·K). */
    public double toKilojoulesPerKilogramKelvin() {
        return in("kjpkgK");
    }

    /** Returns this heat capacity in Btu/(lb·°F). */
    public double toBtuPerPoundFahrenheit() {
        return in("btuplbF");
    }

    @Override
    public Kind<HeatCapacity> kind() {
        return KIND;
    }
}
