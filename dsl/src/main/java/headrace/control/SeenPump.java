package headrace.control;

import headrace.circuit.solve.LoopView;

/** A circuit seen as it stands, with another flow at the pump, part of which a bypass takes. */
record SeenPump(double flow, LoopView rest) implements LoopView {
    @Override
    public double head() {
        return rest.head();
    }

    @Override
    public double flow(int link) {
        return rest.flow(link);
    }

    @Override
    public double headAt(int node) {
        return rest.headAt(node);
    }

    @Override
    public double headAcross(int link) {
        return rest.headAcross(link);
    }
}
