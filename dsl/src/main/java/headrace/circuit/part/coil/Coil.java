package headrace.circuit.part.coil;

import headrace.circuit.part.Drop;
import headrace.circuit.part.LinkLaw;
import headrace.circuit.part.NamedPart;
import headrace.circuit.part.PartName;
import headrace.circuit.part.PartProblem;
import headrace.liquid.Liquid;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.units.Flow;
import headrace.units.Numbers;

/**
 * The water side of a coil or of another emitter: {@code h = h_d·(Q/Q_d)^m}.
 *
 * <dl>
 *   <dt>Units
 *   <dd>m³/s, metres of the liquid.
 *   <dt>Limits
 *   <dd>An exponent from 1.8 to 2: turbulent flow in tubes and headers. Where the Reynolds number in the tubes at
 *       design flow is stated, a note is made below 2300.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_PART}.
 *   <dt>Source
 *   <dd>Textbook knowledge; the exponent is a choice of model, 2 unless chosen.
 * </dl>
 *
 * @param name what it is called
 * @param design what it takes at its design flow
 * @param exponent {@code m}
 * @param designReynolds the Reynolds number in its tubes at design flow; 0 if it is not known
 */
public record Coil(String name, Drop design, double exponent, double designReynolds) implements NamedPart {
    /** The Reynolds number below which flow in tubes turns laminar: a rule, the break depends on the coil. */
    public static final double LAMINAR = 2300;

    private static final double LEAST_EXPONENT = 1.8;
    private static final double MOST_EXPONENT = 2;

    /** Refuses what cannot be. */
    public Coil {
        PartName part = new PartName("coil", name);
        design.check(part, MOST_EXPONENT);
        if (!(exponent >= LEAST_EXPONENT && exponent <= MOST_EXPONENT)) {
            throw part.impossible(
                    "an exponent of flow of " + exponent,
                    "A coil has from " + Numbers.print(LEAST_EXPONENT) + " to " + Numbers.print(MOST_EXPONENT),
                    "Use 2 without further knowledge");
        }
        if (!(designReynolds >= 0 && designReynolds < Double.POSITIVE_INFINITY)) {
            throw part.impossible(
                    "a Reynolds number of " + designReynolds, "It is 0 or more", "Leave it out if it is not known");
        }
    }

    /** Returns a coil whose head goes with the square of flow. */
    public static Coil of(String name, Drop design) {
        return new Coil(name, design, MOST_EXPONENT, 0);
    }

    /** Returns this coil with another exponent of flow. */
    public Coil withExponent(double other) {
        return new Coil(name, design, other, designReynolds);
    }

    /** Returns this coil with the Reynolds number in its tubes at design flow. */
    public Coil withReynolds(double atDesign) {
        return new Coil(name, design, exponent, atDesign);
    }

    @Override
    public Coil named(String other) {
        return new Coil(other, design, exponent, designReynolds);
    }

    @Override
    public LinkLaw in(Liquid liquid) {
        return design.law(liquid, exponent);
    }

    @Override
    public Notes notesAt(Flow flow, Liquid liquid) {
        double reynolds = designReynolds * Math.abs(flow.si()) / design.flow().si();
        if (reynolds == 0 || reynolds >= LAMINAR) {
            return Notes.NONE;
        }
        return Notes.NONE.with(
                PartProblem.LAMINAR_COIL,
                "In " + new PartName("coil", name) + " the Reynolds number is " + Numbers.print(reynolds) + " at "
                        + flow + ", below " + Numbers.print(LAMINAR) + ": it turns laminar");
    }

    @Override
    public String toString() {
        return name + ", " + design;
    }
}
