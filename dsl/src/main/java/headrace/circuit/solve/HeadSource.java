package headrace.circuit.solve;

/** A closing law that looks at the flow through the pump only, as a pump at a speed or a law of flow. */
@FunctionalInterface
public interface HeadSource extends ClosingLaw {
    /** Returns the head in m at a flow in m³/s. */
    double metresAt(double cubicMetresPerSecond);

    @Override
    default double headMetres(LoopView loop) {
        return metresAt(loop.flow());
    }
}
