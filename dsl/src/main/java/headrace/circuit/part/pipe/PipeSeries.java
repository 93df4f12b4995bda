package headrace.circuit.part.pipe;

import headrace.circuit.part.PartProblem;
import headrace.problem.Refusal;
import headrace.units.Length;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;

/**
 * The sizes in which pipes of a material are made, and how rough they are inside.
 *
 * <dl>
 *   <dt>Units
 *   <dd>mm in the tables.
 *   <dt>Limits
 *   <dd>The sizes that are listed; pipes of other walls are given by their inside diameter.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code UNKNOWN_PIPE_SIZE}, which lists the sizes.
 *   <dt>Source
 *   <dd>Steel: EN 10255 medium series to DN 150, beyond it EN 10220 series 1 with common walls. Copper: EN 1057, one
 *       common wall a size. Plastic: cross-linked polyethylene of EN ISO 15875-2, series S 5. All from memory,
 *       unconfirmed. Roughness: common practice, no source.
 * </dl>
 */
public enum PipeSeries {
    /** Steel pipe; its nominal sizes are DN. */
    STEEL("steel", 0.045, "EN 10255 medium series, above DN 150 EN 10220 series 1", new double[][] {
        {10, 17.2, 2.3},
        {15, 21.3, 2.6},
        {20, 26.9, 2.6},
        {25, 33.7, 3.2},
        {32, 42.4, 3.2},
        {40, 48.3, 3.2},
        {50, 60.3, 3.6},
        {65, 76.1, 3.6},
        {80, 88.9, 4.0},
        {100, 114.3, 4.5},
        {125, 139.7, 5.0},
        {150, 165.1, 5.0},
        {200, 219.1, 6.3},
        {250, 273.0, 6.3},
        {300, 323.9, 7.1}
    }),
    /** Copper tube; its nominal sizes are outside diameters. */
    COPPER("copper", 0.0015, "EN 1057", new double[][] {
        {12, 12, 1.0},
        {15, 15, 1.0},
        {18, 18, 1.0},
        {22, 22, 1.0},
        {28, 28, 1.0},
        {35, 35, 1.2},
        {42, 42, 1.2},
        {54, 54, 1.5},
        {76, 76.1, 2.0},
        {89, 88.9, 2.0},
        {108, 108, 2.5}
    }),
    /** Plastic pipe; its nominal sizes are outside diameters. */
    PLASTIC("plastic", 0.007, "EN ISO 15875-2 series S 5", new double[][] {
        {20, 20, 1.9},
        {25, 25, 2.3},
        {32, 32, 2.9},
        {40, 40, 3.7},
        {50, 50, 4.6},
        {63, 63, 5.8},
        {75, 75, 6.8},
        {90, 90, 8.2},
        {110, 110, 10.0}
    });

    private final String material;
    private final double roughnessMillimetres;
    private final String standard;
    private final List<PipeSize> sizes;

    PipeSeries(String material, double roughnessMillimetres, String standard, double[][] rows) {
        this.material = material;
        this.roughnessMillimetres = roughnessMillimetres;
        this.standard = standard;
        this.sizes = Arrays.stream(rows)
                .map(row -> PipeSize.of(this, (int) row[0], row[1], row[2]))
                .toList();
    }

    /** Returns the material, such as {@code steel}. */
    public String material() {
        return material;
    }

    /** Returns the roughness of new pipes. */
    public Length roughness() {
        return Length.millimetres(roughnessMillimetres);
    }

    /** Returns where the sizes come from. */
    public String source() {
        return material + " pipes: sizes of " + standard + ", from memory, unconfirmed; roughness " + roughness()
                + ", common practice, no source";
    }

    /** Returns the sizes, smallest first. */
    public List<PipeSize> sizes() {
        return sizes;
    }

    /**
     * Returns the size of a nominal name.
     *
     * @param nominal the DN of steel, the outside diameter in whole mm of copper and plastic
     * @throws Refusal with {@code UNKNOWN_PIPE_SIZE}
     */
    public PipeSize size(int nominal) {
        for (PipeSize size : sizes) {
            if (size.nominal() == nominal) {
                return size;
            }
        }
        throw new Refusal(
                PartProblem.UNKNOWN_PIPE_SIZE,
                "Asked for a " + material + " pipe of the nominal size " + nominal,
                "The sizes of " + material + " are "
                        + sizes.stream()
                                .map(size -> String.valueOf(size.nominal()))
                                .collect(Collectors.joining(", ")),
                "Take one of these, or give the pipe by its inside diameter and roughness");
    }
}
