package headrace.circuit.part.pipe;

import headrace.circuit.part.PartName;
import headrace.record.Basis;
import headrace.units.Length;
import headrace.units.Numbers;
import headrace.units.Ratio;

/**
 * How wide and how rough a pipe is inside.
 *
 * @param inside the inside diameter
 * @param roughness the roughness of its wall
 * @param words what it is called in a sentence, such as {@code steel DN 50}
 * @param basis where the numbers come from
 */
public record Bore(Length inside, Length roughness, String words, Basis basis) {
    /** Returns the bore of a size, new. */
    public static Bore of(PipeSize size) {
        return new Bore(
                size.inside(),
                size.series().roughness(),
                size.series().material() + " " + size,
                Basis.of(size.series().source()));
    }

    /** Returns a bore of one's own. */
    public static Bore of(Length inside, Length roughness) {
        return new Bore(inside, roughness, inside + " inside", Basis.NONE);
    }

    /** Returns this bore with another roughness, such as that of old steel. */
    public Bore withRoughness(Length other) {
        return new Bore(inside, other, words + ", roughness " + other, basis);
    }

    /** Returns the roughness as a share of the inside diameter. */
    public double relativeRoughness() {
        return roughness.metres() / inside.metres();
    }

    /** Returns the area in m². */
    double squareMetres() {
        double diameter = inside.metres();
        return Math.PI / 4 * diameter * diameter;
    }

    void check(PartName part) {
        part.positive(inside, "inside diameter");
        part.notNegative(roughness, "roughness");
        if (relativeRoughness() > Friction.ROUGHEST) {
            throw part.impossible(
                    "a roughness of " + roughness + " at " + inside + " inside, which is "
                            + Ratio.of(relativeRoughness()),
                    "Friction is known up to " + Numbers.print(100 * Friction.ROUGHEST) + " % of the inside diameter",
                    "Check the units of both");
        }
    }

    @Override
    public String toString() {
        return words;
    }
}
