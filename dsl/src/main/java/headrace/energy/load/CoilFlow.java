package headrace.energy.load;

import headrace.circuit.part.coil.CoilHeat;
import headrace.circuit.part.coil.CoilRating;
import headrace.numeric.Roots;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.units.Flow;
import headrace.units.Ratio;
import headrace.units.Temperature;
import java.util.Objects;

/**
 * The flow that a coil needs for a share of its heat, with a supply temperature that goes with the load.
 *
 * @param coil the coil
 * @param rating its design
 * @param atNoLoad the temperature at which the liquid enters at no load
 */
record CoilFlow(CoilHeat coil, CoilRating rating, Temperature atNoLoad) implements LoadToFlow {
    private static final double ROUNDING = 1e-9;

    static CoilFlow of(CoilHeat coil, CoilRating rating, Temperature atNoLoad) {
        double design = lift(rating, rating.liquid().temperature());
        double reset = lift(rating, atNoLoad);
        if (!(design * reset >= 0 && Math.abs(reset) <= Math.abs(design) * (1 + ROUNDING))) {
            throw new Refusal(
                    LoadProblem.LOAD_BEYOND_EMITTER,
                    "Asked for a supply that is reset from " + rating.liquid().temperature() + " at design to "
                            + atNoLoad + " at no load, with air at " + rating.enteringAir(),
                    "At less load the supply comes nearer to the air, and does not pass it",
                    "Choose a temperature between the two");
        }
        return new CoilFlow(coil, rating, atNoLoad);
    }

    private static double lift(CoilRating rating, Temperature entering) {
        return entering.kelvins() - rating.enteringAir().kelvins();
    }

    @Override
    public double flowShare(double load) {
        if (load == 0) {
            return 0;
        }
        double wanted = load * rating.heat().watts();
        double most = HourlyLoad.MOST;
        if (heat(most, load) < wanted * (1 - ROUNDING)) {
            throw LoadToFlow.beyond(
                    this,
                    load,
                    "With 120 % of design flow it gives "
                            + Ratio.of(heat(most, load) / rating.heat().watts()));
        }
        return heat(most, load) <= wanted ? most : Roots.between(q -> heat(q, load) - wanted, 0, most);
    }

    /** Returns the heat in W at a share of design flow and the supply of a load. */
    private double heat(double flow, double load) {
        double design = rating.liquid().temperature().kelvins();
        Temperature entering =
                Temperature.kelvins(atNoLoad.kelvins() + Math.min(1, load) * (design - atNoLoad.kelvins()));
        Flow water = rating.water().times(flow);
        return Math.abs(
                coil.heatAt(water, entering, rating.air(), rating.enteringAir()).watts());
    }

    private boolean reset() {
        return !Objects.equals(atNoLoad, rating.liquid().temperature());
    }

    @Override
    public String name() {
        return "a " + coil + (reset() ? ", its supply reset to " + atNoLoad + " at no load" : "");
    }

    @Override
    public String toString() {
        return name();
    }

    @Override
    public Notes notes() {
        return Notes.NONE;
    }

    @Override
    public Basis basis() {
        return rating.liquid().basis().with("load to flow: by " + name() + ", effectiveness and transfer units");
    }
}
