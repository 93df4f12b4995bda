package headrace.circuit.answer;

import headrace.circuit.part.coil.CoilHeat;
import headrace.circuit.part.coil.EmissionLaw;
import headrace.units.Ratio;

/** How the heat of a branch goes with its flow, both as shares of design. */
@FunctionalInterface
public interface HeatOfFlow {
    /** Returns the share of design heat at a share of design flow from 0 to 1. */
    Ratio heatAt(Ratio flow);

    /** Returns that of an emission law. */
    static HeatOfFlow of(EmissionLaw law) {
        return law::heatAt;
    }

    /** Returns that of a coil, its temperatures and its air as at design. */
    static HeatOfFlow of(CoilHeat coil) {
        return coil::heatAt;
    }

    /** Returns the share of design heat that is not delivered where a share of flow is asked and another one flows. */
    default Ratio missing(Ratio asked, Ratio flows) {
        return Ratio.of(heatAt(within(asked)).value() - heatAt(within(flows)).value());
    }

    private static Ratio within(Ratio share) {
        return Ratio.of(Math.max(0, Math.min(1, share.value())));
    }
}
