package headrace.circuit.part;

/**
 * Head that goes with a power of flow through a known point: {@code h = h_d·(Q/Q_d)·|Q/Q_d|^(m−1)}.
 *
 * @param designFlow {@code Q_d} in m³/s, above 0
 * @param designMetres {@code h_d} in m, 0 or more
 * @param exponent {@code m}, 1 or more
 */
record PowerLaw(double designFlow, double designMetres, double exponent) implements LinkLaw {
    @Override
    public double headMetres(double q) {
        double share = q / designFlow;
        return designMetres * share * Math.pow(Math.abs(share), exponent - 1);
    }

    @Override
    public double slope(double q) {
        return designMetres / designFlow * exponent * Math.pow(Math.abs(q) / designFlow, exponent - 1);
    }
}
