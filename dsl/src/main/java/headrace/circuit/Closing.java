package headrace.circuit;

import headrace.circuit.solve.ClosingLaw;
import headrace.circuit.solve.HeadSource;
import headrace.units.Head;
import headrace.units.Ratio;
import java.util.Map;

/**
 * What settles the head at the pump of a named circuit: a head, a law of flow, sensors at branches, the neediest valve,
 * or an equation of one's own over the network.
 */
@FunctionalInterface
public interface Closing {
    /** Returns the equation for the circuit with its present demands. */
    ClosingLaw on(ClosingPlace place);

    /** Returns a head whatever happens. */
    static Closing head(Head head) {
        return place -> ClosingLaw.constant(head.metres());
    }

    /** Returns a head, in m, that depends on the flow through the pump in m³/s only. */
    static Closing ofFlow(HeadSource metres) {
        return place -> metres;
    }

    /** Returns the least head at which across each named branch there is the head that it wants. */
    static Closing sensors(Map<String, Head> wanted) {
        return place -> {
            int[] links = wanted.keySet().stream().mapToInt(place::link).toArray();
            double[] metres = wanted.values().stream().mapToDouble(Head::metres).toArray();
            return ClosingLaw.neediest(links, metres);
        };
    }

    /**
     * Returns the least head at which every demand is met and no control valve stands further open than a share of its
     * greatest flow coefficient at a stroke.
     *
     * @param opening the greatest stroke, above 0 and up to 1
     */
    static Closing neediestValve(Ratio opening) {
        return place -> place.neediestValve(opening.value());
    }

    /**
     * Returns the least head at which all but some demands are met with no valve further open than a stroke.
     *
     * @param opening the greatest stroke, above 0 and up to 1
     * @param ignored how many of the neediest branches do not count
     */
    static Closing needierThan(Ratio opening, int ignored) {
        return place -> place.needierThan(opening.value(), ignored);
    }
}
