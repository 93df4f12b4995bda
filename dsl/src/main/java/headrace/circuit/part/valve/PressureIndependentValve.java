package headrace.circuit.part.valve;

import headrace.circuit.part.FlowLimiting;
import headrace.circuit.part.LinkLaw;
import headrace.circuit.part.NamedPart;
import headrace.circuit.part.PartName;
import headrace.circuit.part.PartProblem;
import headrace.liquid.Liquid;
import headrace.problem.Notes;
import headrace.units.Flow;
import headrace.units.FlowCoefficient;
import headrace.units.Head;
import headrace.units.Pressure;
import headrace.units.Ratio;

/**
 * A pressure-independent valve: it holds its set flow times its lift while the pressure difference across it is between
 * a floor and a ceiling; below the floor it is a plain orifice. At full lift, and set once, it is an automatic flow
 * limiter.
 *
 * <dl>
 *   <dt>Units
 *   <dd>m³/s, Pa; head in metres of the liquid.
 *   <dt>Limits
 *   <dd>A lift above 0 and 100 % at most; a floor above 0 and below the ceiling. Below the floor the flow goes with the
 *       root of the pressure difference and meets the held flow at the floor, at every lift. Hysteresis is left out.
 *   <dt>Errors
 *   <dd>{@link headrace.problem.Refusal} with {@code IMPOSSIBLE_PART}.
 *   <dt>Source
 *   <dd>Common practice, no source: floors of 15 to 35 kPa, ceilings of 400 kPa and more. Linear with lift: an
 *       assumption of our own.
 * </dl>
 *
 * @param name what it is called
 * @param set the flow that it holds at full lift
 * @param floor the pressure difference that it needs
 * @param most the pressure difference that it bears
 * @param lift where it stands
 */
public record PressureIndependentValve(String name, Flow set, Pressure floor, Pressure most, Ratio lift)
        implements FlowLimiting, NamedPart {
    /** The floor unless another is stated: common practice, no source. */
    public static final Pressure USUAL_FLOOR = Pressure.kilopascals(25);

    /** The ceiling unless another is stated: common practice, no source. */
    public static final Pressure USUAL_CEILING = Pressure.kilopascals(400);

    /** Refuses what cannot be. */
    public PressureIndependentValve {
        PartName part = new PartName("pressure-independent valve", name);
        part.positive(set, "set flow");
        part.positive(floor, "floor of pressure difference");
        if (most.compareTo(floor) <= 0) {
            throw part.impossible(
                    "a ceiling of " + most + " over a floor of " + floor,
                    "The ceiling lies above the floor",
                    "Take both from its data sheet");
        }
        if (!(lift.si() > 0 && lift.si() <= 1)) {
            throw part.impossible(
                    "a lift of " + lift, "It is above 0 and 100 % at most", "Close the branch instead of the valve");
        }
    }

    /** Returns a valve at full lift with the usual floor and ceiling. */
    public static PressureIndependentValve of(String name, Flow set) {
        return new PressureIndependentValve(name, set, USUAL_FLOOR, USUAL_CEILING, Ratio.of(1));
    }

    /** Returns this valve with a floor and a ceiling of its own. */
    public PressureIndependentValve between(Pressure least, Pressure greatest) {
        return new PressureIndependentValve(name, set, least, greatest, lift);
    }

    /** Returns this valve at a lift. */
    public PressureIndependentValve at(Ratio other) {
        return new PressureIndependentValve(name, set, floor, most, other);
    }

    @Override
    public PressureIndependentValve named(String other) {
        return new PressureIndependentValve(other, set, floor, most, lift);
    }

    @Override
    public Flow limit() {
        return set.times(lift);
    }

    @Override
    public Head ceiling(Liquid liquid) {
        return most.headOf(liquid);
    }

    @Override
    public LinkLaw in(Liquid liquid) {
        return Orifice.law(coefficientIn(liquid));
    }

    private FlowCoefficient coefficientIn(Liquid liquid) {
        return Orifice.taking(floor.headOf(liquid), limit());
    }

    /** Returns the flow through it under a pressure difference of 0 or more, the ceiling left out of account. */
    public Flow flowAt(Pressure difference, Liquid liquid) {
        new PartName("pressure-independent valve", name).notNegative(difference, "pressure difference");
        Flow orifice = Orifice.flow(coefficientIn(liquid), difference.headOf(liquid));
        return orifice.compareTo(limit()) < 0 ? orifice : limit();
    }

    /** Returns what is to be said of it under a pressure difference. */
    public Notes notesAt(Pressure difference) {
        PartName part = new PartName("pressure-independent valve", name);
        if (difference.compareTo(floor) < 0) {
            return Notes.NONE.with(
                    PartProblem.BELOW_VALVE_FLOOR,
                    "Across " + part + " stand " + difference + ", less than the " + floor
                            + " that it needs: it is a plain orifice");
        }
        return difference.compareTo(most) > 0
                ? Notes.NONE.with(
                        PartProblem.ABOVE_VALVE_CEILING,
                        "Across " + part + " stand " + difference + ", more than the " + most + " that it bears")
                : Notes.NONE;
    }

    @Override
    public String toString() {
        return name + ", " + limit() + " from " + floor + " to " + most;
    }
}
