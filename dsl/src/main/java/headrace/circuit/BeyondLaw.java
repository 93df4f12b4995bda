package headrace.circuit;

import headrace.circuit.part.LinkLaw;

/**
 * What a branch with a part that holds its flow carries beyond that flow: nothing until the part is at its ceiling,
 * then as a resistance that loses the ceiling at the held flow.
 *
 * @param others the other parts of the branch
 * @param held the flow that it holds in m³/s
 * @param ceiling the head across the part up to which it does, in m
 */
record BeyondLaw(LinkLaw others, double held, double ceiling) implements LinkLaw {
    @Override
    public double headMetres(double beyond) {
        double q = held + beyond;
        return others.headMetres(q) + ceiling * q / held * Math.abs(q / held);
    }

    @Override
    public double slope(double beyond) {
        double q = held + beyond;
        return others.slope(q) + 2 * ceiling * Math.abs(q) / (held * held);
    }
}
