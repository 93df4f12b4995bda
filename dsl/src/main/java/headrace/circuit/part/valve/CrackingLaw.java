package headrace.circuit.part.valve;

import headrace.circuit.part.LinkLaw;

/**
 * The law of a part that a head opens: at no flow it is that head.
 *
 * @param crackingMetres the head that opens it
 * @param open the law of the open part
 */
record CrackingLaw(double crackingMetres, LinkLaw open) implements LinkLaw {
    @Override
    public double headMetres(double q) {
        return crackingMetres + open.headMetres(q);
    }

    @Override
    public double slope(double q) {
        return open.slope(q);
    }
}
