package headrace.circuit.part.valve;

/** {@code κ = √x}. */
record QuickOpening() implements Characteristic {
    @Override
    public double shareAt(double opening) {
        return Math.sqrt(Math.min(1, Math.max(0, opening)));
    }

    @Override
    public double openingAt(double share) {
        double kappa = Math.min(1, Math.max(0, share));
        return kappa * kappa;
    }

    @Override
    public String toString() {
        return "quick opening";
    }
}
