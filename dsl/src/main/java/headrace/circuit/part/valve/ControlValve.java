package headrace.circuit.part.valve;

import headrace.circuit.part.LinkLaw;
import headrace.circuit.part.NamedPart;
import headrace.circuit.part.PartName;
import headrace.circuit.part.PartProblem;
import headrace.circuit.part.Throttling;
import headrace.liquid.Liquid;
import headrace.units.Flow;
import headrace.units.FlowCoefficient;
import headrace.units.Head;
import headrace.units.Pressure;
import headrace.units.Ratio;
import java.util.Optional;

/**
 * A two-way control valve.
 *
 * <dl>
 *   <dt>Units
 *   <dd>Kv; head in metres of the liquid.
 *   <dt>Limits
 *   <dd>Turbulent flow without cavitation; the valve follows its characteristic and shuts tight.
 *   <dt>Errors
 *   <dd>{@link headrace.problem.Refusal} with {@code IMPOSSIBLE_PART} or {@code DEMAND_ABOVE_OPEN_VALVE}.
 *   <dt>Source
 *   <dd>{@link Orifice}, {@link Characteristic}.
 * </dl>
 *
 * @param name what it is called
 * @param open Kvs, the flow coefficient when it is fully open
 * @param characteristic how the flow coefficient goes with the stroke
 * @param closeOff the pressure difference against which its actuator holds it shut, if it is known
 */
public record ControlValve(
        String name, FlowCoefficient open, Characteristic characteristic, Optional<Pressure> closeOff)
        implements Throttling, NamedPart {
    /** Refuses what cannot be. */
    public ControlValve {
        PartName part = new PartName("control valve", name);
        part.positive(open, "flow coefficient");
        closeOff.ifPresent(most -> part.positive(most, "pressure difference against which it shuts"));
    }

    /** Returns a valve whose actuator holds it shut against whatever comes. */
    public ControlValve(String name, FlowCoefficient open, Characteristic characteristic) {
        this(name, open, characteristic, Optional.empty());
    }

    /** Returns a valve of equal percentage with the usual rangeability. */
    public static ControlValve of(String name, FlowCoefficient open) {
        return new ControlValve(name, open, Characteristic.equalPercentage());
    }

    @Override
    public ControlValve named(String other) {
        return new ControlValve(other, open, characteristic, closeOff);
    }

    @Override
    public LinkLaw in(Liquid liquid) {
        return Orifice.law(open);
    }

    @Override
    public double openingAt(double share) {
        return characteristic.openingAt(share);
    }

    @Override
    public double shareAt(double opening) {
        return characteristic.shareAt(opening);
    }

    /** Returns the flow through it at an opening under a head. */
    public Flow flowAt(Ratio opening, Head head) {
        PartName part = new PartName("control valve", name);
        part.notNegative(head, "head across it");
        return Orifice.flow(open, head).times(shareAt(opening.si()));
    }

    /**
     * Returns the opening at which it passes a flow under a head.
     *
     * @throws headrace.problem.Refusal with {@code DEMAND_ABOVE_OPEN_VALVE}
     */
    public Ratio openingFor(Flow flow, Head head) {
        PartName part = new PartName("control valve", name);
        part.notNegative(flow, "flow through it");
        part.notNegative(head, "head across it");
        Flow most = Orifice.flow(open, head);
        if (flow.compareTo(most) > 0) {
            throw part.refusal(
                    PartProblem.DEMAND_ABOVE_OPEN_VALVE,
                    "Asked for " + flow + " through " + part + " at " + head,
                    "Fully open, at " + open + ", it passes " + most + " at that head",
                    "Take a larger valve, give it more head, or ask for less flow");
        }
        return flow.si() == 0 ? Ratio.ZERO : Ratio.of(openingAt(flow.si() / most.si()));
    }

    @Override
    public String toString() {
        return name + ", " + open + ", " + characteristic;
    }
}
