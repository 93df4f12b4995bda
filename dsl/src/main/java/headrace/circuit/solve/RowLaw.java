package headrace.circuit.solve;

/** A law of flow for each of many rows, such as the hours of a year; rows may differ, as with a head found for each. */
public interface RowLaw {
    /** Returns the head in m that the law asks for in a row at a flow through the pump in m³/s. */
    double metresAt(int row, double cubicMetresPerSecond);

    /** Returns its derivative with flow. */
    double slopeAt(int row, double cubicMetresPerSecond);
}
