package headrace.units;

import java.util.List;

/**
 * A power.
 *
 * <p>The horsepower is 550 foot-pounds of force a second, 745.69987 W; the metric horsepower 75 kilogram-metres of
 * force a second, 735.49875 W. The Btu is that of the International Table, 1055.05585262 J; the ton of refrigeration is
 * 12 000 Btu an hour.
 */
public final class Power extends Amount<Power> {
    /** The units of a power, the SI unit first. */
    public static final Kind<Power> KIND = new Kind<>(
            "power",
            Power.class,
            Power::new,
            List.of(
                    Unit.of("W", "W", 1),
                    Unit.of("kW", "kW", 1e3, "KW", "kw"),
                    Unit.of("MW", "MW", 1e6),
                    Unit.of("hp", "hp", 550 * 0.3048 * 0.45359237 * 9.80665, "HP", "bhp"),
                    Unit.of("metricHp", "hp metric", 75 * 9.80665, "PS", "metric hp"),
                    Unit.of("btuph", "Btu/h", 1055.05585262 / 3600, "BTU/h", "btu/h", "Btu/hr", "BTU/hr"),
                    Unit.of("kbtuph", "kBtu/h", 1e3 * 1055.05585262 / 3600, "MBH", "kBTU/h", "kBtu/hr"),
                    Unit.of("tonR", "ton", 12000 * 1055.05585262 / 3600, "TR", "ton of refrigeration", "tons")),
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

    /** Returns the power of so many metric hp. */
    public static Power metricHorsepower(double value) {
        return KIND.of(value, "metricHp");
    }

    /** Returns the power of so many kBtu/h. */
    public static Power thousandBtuPerHour(double value) {
        return KIND.of(value, "kbtuph");
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

    /** Returns this power in metric hp. */
    public double toMetricHorsepower() {
        return in("metricHp");
    }

    /** Returns this power in kBtu/h. */
    public double toThousandBtuPerHour() {
        return in("kbtuph");
    }

    /** Returns the energy of this power over a time. */
    public Energy times(Time time) {
        return Energy.joules(si() * time.si());
    }

    /** Returns the torque that gives this power at a speed. */
    public Torque over(Speed speed) {
        return Torque.newtonMetres(si() / speed.si());
    }

    /** Returns the speed at which a torque gives this power. */
    public Speed over(Torque torque) {
        return Speed.radiansPerSecond(si() / torque.si());
    }

    /** Returns the pressure difference by which this hydraulic power lifts a flow. */
    public Pressure over(Flow flow) {
        return Pressure.pascals(si() / flow.si());
    }

    /** Returns the flow that this hydraulic power lifts by a pressure difference. */
    public Flow over(Pressure rise) {
        return Flow.cubicMetresPerSecond(si() / rise.si());
    }

    @Override
    public Kind<Power> kind() {
        return KIND;
    }
}
