package headrace.circuit.solve;

/** A closing law that looks at the flow through the pump only, as a pump at a speed or a law of flow. */
@FunctionalInterface
public interface HeadSource extends ClosingLaw {
    /** Returns the head in m at a flow in m³/s. */
    double metresAt(double cubicMetresPerSecond);

    /** Returns its derivative; by a difference where the law does not know it. */
    default double slopeAt(double cubicMetresPerSecond) {
        double step = 1e-6 * Math.max(Math.abs(cubicMetresPerSecond), 1e-6);
        return (metresAt(cubicMetresPerSecond + step) - metresAt(cubicMetresPerSecond - step)) / (2 * step);
    }

    @Override
    default double headMetres(LoopView loop) {
        return metresAt(loop.flow());
    }
}
