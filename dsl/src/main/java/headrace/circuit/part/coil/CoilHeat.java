package headrace.circuit.part.coil;

import headrace.circuit.part.PartName;
import headrace.numeric.Roots;
import headrace.problem.Refusal;
import headrace.units.Flow;
import headrace.units.MassFlow;
import headrace.units.Power;
import headrace.units.Ratio;
import headrace.units.Temperature;

/**
 * The heat of a coil against its flows and temperatures: effectiveness and transfer units, with {@code 1/UA =
 * 1/(r_w·w^0.85) + 1/(r_a·a^0.8)}, where w and a are the flows of liquid and air as shares of design.
 *
 * <dl>
 *   <dt>Units
 *   <dd>SI inside: W, W/K, kg/s.
 *   <dt>Limits
 *   <dd>Dry air at 1006 J/(kg·K): a coil that dries the air takes more than this says. The properties of the liquid
 *       stay as at design. Turbulent flow in the tubes; {@link Coil} notes where it turns laminar.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_PART}.
 *   <dt>Source
 *   <dd>Effectiveness: {@link Effectiveness}. The exponents 0.85 and 0.8 are those of an open library of building
 *       models, from memory, unconfirmed.
 * </dl>
 */
public final class CoilHeat {
    /** The heat capacity of dry air, in J/(kg·K). */
    public static final double AIR_JOULES_PER_KILOGRAM_KELVIN = 1006;

    /**
     * The share of the resistance to heat that lies on the side of the liquid unless stated: an assumption of our own.
     */
    public static final Ratio USUAL_LIQUID_SHARE = Ratio.percent(30);

    private static final double WATER_POWER = 0.85;
    private static final double AIR_POWER = 0.8;
    private static final double MOST_UNITS = 50;

    private final CoilRating rating;
    private final Effectiveness arrangement;
    private final double waterConductance;
    private final double airConductance;

    private CoilHeat(CoilRating rating, Effectiveness arrangement, double conductance, double liquidShare) {
        this.rating = rating;
        this.arrangement = arrangement;
        waterConductance = conductance / liquidShare;
        airConductance = conductance / (1 - liquidShare);
    }

    /** Returns the coil of a rating, in cross flow, with the usual share of resistance on the side of the liquid. */
    public static CoilHeat through(String name, CoilRating rating) {
        return through(name, rating, Effectiveness.CROSS_FLOW, USUAL_LIQUID_SHARE);
    }

    /**
     * Returns the coil of a rating.
     *
     * @param liquidShare the share of the resistance to heat at design that lies on the side of the liquid
     */
    public static CoilHeat through(String name, CoilRating rating, Effectiveness arrangement, Ratio liquidShare) {
        PartName part = new PartName("coil", name);
        part.positive(rating.heat(), "heat");
        part.positive(rating.water(), "flow of liquid");
        part.positive(rating.air(), "flow of air");
        if (!(liquidShare.si() > 0 && liquidShare.si() < 1)) {
            throw part.impossible(
                    liquidShare + " of its resistance on the side of the liquid",
                    "It is above 0 and below 100 %",
                    "Leave it out for 30 %");
        }
        double smaller = Math.min(rating.waterCapacity(), rating.airCapacity());
        double ratio = smaller / Math.max(rating.waterCapacity(), rating.airCapacity());
        double most = smaller * rating.kelvins() * arrangement.at(MOST_UNITS, ratio);
        if (!(rating.heat().si() < most)) {
            throw part.impossible(
                    rating.heat() + " from these flows and temperatures",
                    "However large it is, no more than " + Power.watts(most) + " can pass",
                    "Check heat, flows and temperatures of the schedule against each other");
        }
        double wanted = rating.heat().si() / (smaller * rating.kelvins());
        double units = Roots.between(ntu -> arrangement.at(ntu, ratio) - wanted, 0, MOST_UNITS);
        return new CoilHeat(rating, arrangement, units * smaller, liquidShare.si());
    }

    /** Returns the conductance in W/K at shares of the design flows. */
    public double wattsPerKelvinAt(Ratio water, Ratio air) {
        if (water.si() <= 0 || air.si() <= 0) {
            return 0;
        }
        return 1
                / (1 / (waterConductance * Math.pow(water.si(), WATER_POWER))
                        + 1 / (airConductance * Math.pow(air.si(), AIR_POWER)));
    }

    /**
     * Returns the heat at flows and temperatures: above 0 from the liquid to the air, below 0 from the air.
     *
     * @param water the flow of liquid, 0 or more
     * @param entering the temperature at which it enters
     * @param air the flow of air, 0 or more
     * @param enteringAir the temperature at which it enters
     */
    public Power heatAt(Flow water, Temperature entering, MassFlow air, Temperature enteringAir) {
        PartName part = new PartName("coil", "to be computed");
        part.notNegative(water, "flow of liquid");
        part.notNegative(air, "flow of air");
        double waterShare = water.si() / rating.water().si();
        double airShare = air.si() / rating.air().si();
        if (waterShare == 0 || airShare == 0) {
            return Power.ZERO;
        }
        double waterCapacity = waterShare * rating.waterCapacity();
        double airCapacity = airShare * rating.airCapacity();
        double smaller = Math.min(waterCapacity, airCapacity);
        double units = wattsPerKelvinAt(Ratio.of(waterShare), Ratio.of(airShare)) / smaller;
        double effectiveness = arrangement.at(units, smaller / Math.max(waterCapacity, airCapacity));
        return Power.watts(effectiveness * smaller * (entering.kelvins() - enteringAir.kelvins()));
    }

    /** Returns the heat as a share of design at a share of the design flow, all else as at design. */
    public Ratio heatAt(Ratio water) {
        Flow flow = rating.water().times(water);
        Power heat = heatAt(flow, rating.liquid().temperature(), rating.air(), rating.enteringAir());
        return Ratio.of(Math.abs(heat.si()) / rating.heat().si());
    }

    @Override
    public String toString() {
        return "coil of " + rating.heat() + " at " + rating.water() + " of " + rating.liquid();
    }
}
