package headrace.circuit.solve;

/**
 * A pump on the header with what lies in its own branch: the head that it gives to the header, against its flow.
 *
 * <p>A check valve keeps it shut while the header stands above its head at no flow.
 *
 * @param head the head in m against the flow in m³/s; it may droop
 * @param most the greatest flow for which that is known, in m³/s, above 0
 */
public record HeaderPump(HeadSource head, double most) {
    /** Refuses a pump without a range; a mistake of the program, not of its user. */
    public HeaderPump {
        if (!(most > 0 && most < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("no range of flow: " + most);
        }
    }
}
