package headrace.estimate;

/** What a map has at one speed and several flows, with its slopes, on bare numbers in SI. */
final class MapRow {
    final double[] flow;
    final double[] wire;
    final double[] wireOverFlow;
    final double[] wireOverSpeed;

    /** W at the wire for the whole of the pump's own power more. */
    final double[] wireOverPower;

    final double[] loss;
    final double[] shaft;
    final double[] shaftOverFlow;
    final double[] shaftOverSpeed;
    final double[] head;
    final double[] headOverFlow;
    final double[] headOverSpeed;

    MapRow(int flows) {
        flow = new double[flows];
        wire = new double[flows];
        wireOverFlow = new double[flows];
        wireOverSpeed = new double[flows];
        wireOverPower = new double[flows];
        loss = new double[flows];
        shaft = new double[flows];
        shaftOverFlow = new double[flows];
        shaftOverSpeed = new double[flows];
        head = new double[flows];
        headOverFlow = new double[flows];
        headOverSpeed = new double[flows];
    }
}
