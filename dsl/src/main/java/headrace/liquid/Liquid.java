package headrace.liquid;

import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.record.Traced;
import headrace.units.AbsolutePressure;
import headrace.units.Dense;
import headrace.units.Density;
import headrace.units.Head;
import headrace.units.HeatCapacity;
import headrace.units.KinematicViscosity;
import headrace.units.Numbers;
import headrace.units.Pressure;
import headrace.units.Ratio;
import headrace.units.Temperature;
import headrace.units.Viscosity;
import java.util.Optional;

/**
 * What is pumped, at a temperature.
 *
 * <dl>
 *   <dt>Units
 *   <dd>SI inside: kg/m³, Pa·s, Pa, J/(kg·K).
 *   <dt>Limits
 *   <dd>Water from 0 to 150 °C, liquid. Ethylene and propylene glycol in water up to 60 % by mass, from the freezing
 *       point to 100 °C. Other liquids only at the temperature at which their properties were given.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code TEMPERATURE_OUTSIDE_LIQUID}, {@code GLYCOL_OUTSIDE_RANGE} or
 *       {@code IMPOSSIBLE_LIQUID}.
 *   <dt>Source
 *   <dd>Water: IAPWS R7-97(2012) and IAPWS R12-08. Mixtures: Melinder, Properties of Secondary Working Fluids for
 *       Indirect Systems (IIR 2010), their vapour pressure by Raoult's law.
 * </dl>
 */
public final class Liquid implements Traced, Dense {
    /** The standard acceleration of free fall in m/s², which turns heads into pressures. */
    public static final double STANDARD_GRAVITY = 9.80665;

    private static final AbsolutePressure ATMOSPHERE = AbsolutePressure.pascals(101_325);

    /** So close to freezing a small error of the mixture or the temperature decides: an assumption of our own. */
    private static final double NEAR_FREEZING_KELVINS = 3;

    private final Substance substance;
    private final Temperature temperature;
    private final Substance.Properties properties;

    private Liquid(Substance substance, Temperature temperature) {
        this.substance = substance;
        this.temperature = temperature;
        this.properties = substance.at(temperature);
    }

    /** Returns liquid water at a temperature, at 101.325 kPa or at its vapour pressure if that is higher. */
    public static Liquid water(Temperature temperature) {
        return water(temperature, ATMOSPHERE);
    }

    /** Returns liquid water at a temperature and a pressure, or at its vapour pressure if that is higher. */
    public static Liquid water(Temperature temperature, AbsolutePressure pressure) {
        return new Liquid(new Water(pressure), temperature);
    }

    /**
     * Returns ethylene glycol mixed with water.
     *
     * @param share the share of glycol by mass
     */
    public static Liquid ethyleneGlycol(Ratio share, Temperature temperature) {
        return new Liquid(new GlycolMixture(Glycol.ETHYLENE, share.toPercent()), temperature);
    }

    /**
     * Returns propylene glycol mixed with water.
     *
     * @param share the share of glycol by mass
     */
    public static Liquid propyleneGlycol(Ratio share, Temperature temperature) {
        return new Liquid(new GlycolMixture(Glycol.PROPYLENE, share.toPercent()), temperature);
    }

    /** Returns a liquid of given properties, known at this temperature only. */
    public static Liquid of(String name, Temperature temperature, LiquidProperties properties) {
        return new Liquid(new GivenLiquid(name, temperature, properties.inSi()), temperature);
    }

    /**
     * Returns this liquid at another temperature.
     *
     * @throws Refusal with {@code TEMPERATURE_OUTSIDE_LIQUID} if it is not known there
     */
    public Liquid at(Temperature other) {
        return new Liquid(substance, other);
    }

    /** Returns what it is, without its temperature, such as {@code water}. */
    public String name() {
        return substance.name();
    }

    /** Returns the temperature. */
    public Temperature temperature() {
        return temperature;
    }

    /** Returns the density. */
    @Override
    public Density density() {
        return Density.kilogramsPerCubicMetre(properties.kilogramsPerCubicMetre());
    }

    /** Returns the dynamic viscosity. */
    public Viscosity viscosity() {
        return Viscosity.pascalSeconds(properties.pascalSeconds());
    }

    /** Returns the kinematic viscosity: the dynamic one divided by the density. */
    public KinematicViscosity kinematicViscosity() {
        return KinematicViscosity.squareMetresPerSecond(
                properties.pascalSeconds() / properties.kilogramsPerCubicMetre());
    }

    /** Returns the vapour pressure. */
    public AbsolutePressure vapourPressure() {
        return AbsolutePressure.pascals(properties.vapourPascals());
    }

    /** Returns the specific heat capacity at constant pressure. */
    public HeatCapacity heatCapacity() {
        return HeatCapacity.joulesPerKilogramKelvin(properties.joulesPerKilogramKelvin());
    }

    /** Returns the temperature at which it begins to freeze, if known. */
    public Optional<Temperature> freezingPoint() {
        return substance.freezingPoint();
    }

    /** Returns the head that a pressure difference is in this liquid: {@code Δp/(ρ·g)}. */
    public Head headOf(Pressure pressure) {
        return Head.metres(pressure.pascals() / weightPerVolume());
    }

    /** Returns the pressure difference that a head is in this liquid: {@code ρ·g·H}. */
    public Pressure pressureOf(Head head) {
        return Pressure.pascals(head.metres() * weightPerVolume());
    }

    private double weightPerVolume() {
        return properties.kilogramsPerCubicMetre() * STANDARD_GRAVITY;
    }

    @Override
    public Notes notes() {
        return freezingPoint()
                .filter(point -> substance instanceof GlycolMixture)
                .map(this::nearFreezing)
                .orElse(Notes.NONE);
    }

    private Notes nearFreezing(Temperature point) {
        double above = temperature.kelvins() - point.kelvins();
        if (above >= NEAR_FREEZING_KELVINS) {
            return Notes.NONE;
        }
        return Notes.NONE.with(
                LiquidProblem.NEAR_FREEZING,
                this + " is " + Numbers.print(above) + " K above its freezing point of " + point + ", less than "
                        + Numbers.print(NEAR_FREEZING_KELVINS) + " K");
    }

    @Override
    public Basis basis() {
        return Basis.of(substance.source());
    }

    /** Equal when of the same substance at the same temperature. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Liquid liquid
                && substance.equals(liquid.substance)
                && temperature.equals(liquid.temperature);
    }

    @Override
    public int hashCode() {
        return 31 * substance.hashCode() + temperature.hashCode();
    }

    /** Returns what it is and how warm, such as {@code water at 12 °C}. */
    @Override
    public String toString() {
        return name() + " at " + temperature;
    }
}
