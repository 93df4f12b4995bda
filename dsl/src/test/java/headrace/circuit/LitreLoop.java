package headrace.circuit;

import headrace.circuit.part.LinkLaw;
import headrace.circuit.part.Part;
import headrace.circuit.part.SquareLaw;
import headrace.circuit.part.Throttling;
import headrace.liquid.Liquid;
import headrace.units.Flow;
import headrace.units.Temperature;

/** Made-up parts and a circuit of them whose losses go with the square of flow in L/s, to be worked by hand. */
public final class LitreLoop {
    private static final double SQUARE_LITRES = 1e6;

    private LitreLoop() {}

    /** Loses so many metres at 1 L/s. */
    public record Loss(String name, double metresAtOneLitre) implements Part {
        @Override
        public LinkLaw in(Liquid liquid) {
            return new SquareLaw(metresAtOneLitre * SQUARE_LITRES);
        }
    }

    /** A valve whose stroke is its share. */
    public record Valve(String name, double metresAtOneLitre) implements Throttling {
        @Override
        public LinkLaw in(Liquid liquid) {
            return new SquareLaw(metresAtOneLitre * SQUARE_LITRES);
        }

        @Override
        public double openingAt(double share) {
            return share;
        }

        @Override
        public double shareAt(double opening) {
            return opening;
        }
    }

    public static Flow litres(double value) {
        return Flow.litresPerSecond(value);
    }

    /** Main 1 m at 1 L/s; near: coil 1 m and valve 1 m, design 1 L/s; far: coil 0.5 m and valve 0.5 m, design 3 L/s. */
    public static Circuit twoBranches() {
        return Circuit.of(
                Liquid.water(Temperature.celsius(20)),
                "supply",
                "return",
                Branch.of("main", "supply", "header", new Loss("main pipe", 1)),
                Branch.terminal(
                        "near", "header", "return", litres(1), new Loss("near coil", 1), new Valve("near valve", 1)),
                Branch.terminal(
                        "far", "header", "return", litres(3), new Loss("far coil", 0.5), new Valve("far valve", 0.5)));
    }
}
