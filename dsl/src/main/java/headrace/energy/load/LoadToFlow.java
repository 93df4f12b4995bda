package headrace.energy.load;

import headrace.circuit.part.coil.CoilHeat;
import headrace.circuit.part.coil.CoilRating;
import headrace.circuit.part.coil.EmissionLaw;
import headrace.problem.Refusal;
import headrace.record.Traced;
import headrace.units.Ratio;
import headrace.units.Temperature;

/**
 * How much flow a load asks for, both as shares of design. The choice is material, so it is named in every result.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Shares of design load and of design flow.
 *   <dt>Limits
 *   <dd>No load asks for no flow. Flows of up to 120 % of design.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code LOAD_BEYOND_EMITTER}.
 *   <dt>Source
 *   <dd>Of each.
 * </dl>
 */
public sealed interface LoadToFlow extends Traced permits ConstantDifference, EmissionFlow, CoilFlow {
    /** Returns the share of design flow that a share of design load asks for. */
    double flowShare(double load);

    /** Returns what it is called. */
    String name();

    /** Flow goes with the load: the temperature difference stays that of design. */
    static LoadToFlow constantDifference() {
        return new ConstantDifference();
    }

    /** Flow goes with the load by an emission law with one number. */
    static LoadToFlow emission(EmissionLaw law) {
        return new EmissionFlow(law);
    }

    /** Flow goes with the load as a coil of a rating needs it, all temperatures as at design. */
    static LoadToFlow coil(CoilRating rating) {
        return coil(rating, rating.liquid().temperature());
    }

    /**
     * Flow goes with the load as a coil of a rating needs it, while the supply is reset.
     *
     * @param rating the coil at design
     * @param atNoLoad the temperature at which the liquid enters at no load; in between it changes in proportion
     */
    static LoadToFlow coil(CoilRating rating, Temperature atNoLoad) {
        return CoilFlow.of(CoilHeat.through("coil of the load", rating), rating, atNoLoad);
    }

    /** Refuses a load that asks for more flow than there can be. */
    static Refusal beyond(LoadToFlow way, double load, String possible) {
        return new Refusal(
                LoadProblem.LOAD_BEYOND_EMITTER,
                "Asked for the flow of a load of " + Ratio.of(load) + " of design by " + way.name(),
                possible,
                "Give a larger design load, or take a constant temperature difference");
    }
}
