package headrace.circuit.part;

/**
 * Head that goes with the square of flow: {@code h = r·Q·|Q|}.
 *
 * @param metresPerSquaredFlow {@code r} in m for each (m³/s)², 0 or more
 */
public record SquareLaw(double metresPerSquaredFlow) implements LinkLaw {
    @Override
    public double headMetres(double q) {
        return metresPerSquaredFlow * q * Math.abs(q);
    }

    @Override
    public double slope(double q) {
        return 2 * metresPerSquaredFlow * Math.abs(q);
    }
}
