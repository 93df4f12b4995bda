package headrace.units;

import java.util.List;

/**
 * An energy.
 *
 * <p>The Btu is that of the International Table, 1055.05585262 J.
 */
public final class Energy extends Amount<Energy> {
    /** The units of an energy, the SI unit first. */
    public static final Kind<Energy> KIND = new Kind<>(
            "energy",
            Energy.class,
            Energy::new,
            List.of(
                    Unit.of("J", "J", 1),
                    Unit.of("kJ", "kJ", 1e3),
                    Unit.of("MJ", "MJ", 1e6),
                    Unit.of("GJ", "GJ", 1e9),
                    Unit.of("Wh", "Wh", 3.6e3),
                    Unit.of("kWh", "kWh", 3.6e6, "KWH", "kwh"),
                    Unit.of("MWh", "MWh", 3.6e9),
                    Unit.of("btu", "Btu", 1055.05585262, "BTU")),
            "kWh",
            "kWh");

    /** No energy. */
    public static final Energy ZERO = new Energy(0);

    private Energy(double si) {
        super(si);
    }

    /** Returns the energy of so many J. */
    public static Energy joules(double value) {
        return new Energy(value);
    }

    /** Returns the energy of so many kJ. */
    public static Energy kilojoules(double value) {
        return KIND.of(value, "kJ");
    }

    /** Returns the energy of so many MJ. */
    public static Energy megajoules(double value) {
        return KIND.of(value, "MJ");
    }

    /** Returns the energy of so many kWh. */
    public static Energy kilowattHours(double value) {
        return KIND.of(value, "kWh");
    }

    /** Returns the energy of so many MWh. */
    public static Energy megawattHours(double value) {
        return KIND.of(value, "MWh");
    }

    /** Returns the energy of so many GJ. */
    public static Energy gigajoules(double value) {
        return KIND.of(value, "GJ");
    }

    /** Returns the energy of so many Wh. */
    public static Energy wattHours(double value) {
        return KIND.of(value, "Wh");
    }

    /** Returns the energy of so many Btu. */
    public static Energy btu(double value) {
        return KIND.of(value, "btu");
    }

    /** Returns this energy in J. */
    public double joules() {
        return si();
    }

    /** Returns this energy in kJ. */
    public double toKilojoules() {
        return in("kJ");
    }

    /** Returns this energy in MJ. */
    public double toMegajoules() {
        return in("MJ");
    }

    /** Returns this energy in kWh. */
    public double toKilowattHours() {
        return in("kWh");
    }

    /** Returns this energy in MWh. */
    public double toMegawattHours() {
        return in("MWh");
    }

    /** Returns this energy in GJ. */
    public double toGigajoules() {
        return in("GJ");
    }

    /** Returns this energy in Wh. */
    public double toWattHours() {
        return in("Wh");
    }

    /** Returns this energy in Btu. */
    public double toBtu() {
        return in("btu");
    }

    /** Returns the mean power of this energy over a time. */
    public Power over(Time time) {
        return Power.watts(si() / time.si());
    }

    /** Returns the time in which a power gives this energy. */
    public Time over(Power power) {
        return Time.seconds(si() / power.si());
    }

    /** Returns what this energy costs. */
    public Money times(EnergyPrice price) {
        return price.of(this);
    }

    @Override
    public Kind<Energy> kind() {
        return KIND;
    }
}
