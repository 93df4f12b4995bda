package headrace.benchmark;

import headrace.circuit.part.LinkLaw;
import headrace.circuit.part.pipe.Pipe;
import headrace.circuit.solve.ClosingLaw;
import headrace.circuit.solve.Link;
import headrace.circuit.solve.Network;
import headrace.circuit.solve.NetworkSolution;
import headrace.circuit.solve.NetworkSolver;
import headrace.liquid.Liquid;
import headrace.liquid.LiquidProperties;
import headrace.units.AbsolutePressure;
import headrace.units.Density;
import headrace.units.HeatCapacity;
import headrace.units.Length;
import headrace.units.Temperature;
import headrace.units.Viscosity;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** W6: a main of five concentric rings with radial pipes, fed at two places. */
final class RingMain implements Workload {
    private static final int RINGS = 5;
    private static final double[] INSIDE = {0.150, 0.100, 0.080, 0.065, 0.050};
    private static final double[] LENGTH = {16, 14, 12, 10, 8};
    private static final double ROUGHNESS = 4.5e-5;
    private static final double SOURCE_METRES = 60;
    private static final double START_VELOCITY = 0.3;
    private static final double VISCOSITY = 1.004e-6;
    private static final double WEIGHT = 998.2 * 9.80665;

    private static final Liquid WATER = Liquid.of(
            "water of a stated viscosity",
            Temperature.celsius(20),
            new LiquidProperties(
                    Density.kilogramsPerCubicMetre(998.2),
                    Viscosity.pascalSeconds(VISCOSITY * 998.2),
                    AbsolutePressure.pascals(2339),
                    HeatCapacity.joulesPerKilogramKelvin(4184)));

    private final int stations;
    private final List<Link> links = new ArrayList<>();
    private final List<Double> inside = new ArrayList<>();
    private final double[] demand;
    private final double[] start;
    private final NetworkSolver solver;
    private final ClosingLaw source = ClosingLaw.constant(SOURCE_METRES);
    private NetworkSolution solution;

    RingMain(int stations) {
        this.stations = stations;
        for (int ring = 0; ring < RINGS; ring++) {
            for (int m = 0; m < stations; m++) {
                add(node(ring, m), node(ring, (m + 1) % stations), LENGTH[ring], INSIDE[ring]);
            }
        }
        for (int ring = 0; ring < RINGS - 1; ring++) {
            for (int m = 0; m < stations; m++) {
                add(node(ring, m), node(ring + 1, m), 10, 0.065);
            }
        }
        add(1, node(0, 0), 30, 0.25);
        add(1, node(0, stations / 2), 30, 0.25);
        demand = demand();
        Network.Scale scale = new Network.Scale(Inputs.sum(demand, 1), SOURCE_METRES);
        solver = NetworkSolver.of(
                new Network(RINGS * stations + 2, 1, links, demand, scale), 1e-9 / SOURCE_METRES);
        start = inside.stream()
                .mapToDouble(d -> START_VELOCITY * Math.PI / 4 * d * d)
                .toArray();
    }

    /** Node 0 is the ground and 1 the source; no link leads to the ground: what is taken out leaves at the nodes. */
    private static int node(int ring, int station) {
        return 2 + RINGS * station + ring;
    }

    private void add(int from, int to, double length, double diameter) {
        double metres = length * (0.8 + 0.4 * Inputs.uniform(601, links.size()));
        LinkLaw law = Pipe.of(
                        "pipe " + links.size(),
                        Length.metres(diameter),
                        Length.metres(ROUGHNESS),
                        Length.metres(metres))
                .in(WATER);
        links.add(Link.plain(from, to, law));
        inside.add(diameter);
    }

    private double[] demand() {
        double[] all = new double[RINGS * stations + 2];
        for (int v = 0; v < RINGS * stations; v++) {
            if (v % RINGS != 0 && Inputs.uniform(602, v) >= 0.15) {
                all[v + 2] = (1.2 + 3.6 * Inputs.uniform(603, v)) * (56.0 / stations) / 3600;
            }
        }
        return all;
    }

    @Override
    public String name() {
        return "W6 " + links.size() + " pipes, banded Cholesky";
    }

    @Override
    public int inner() {
        return stations > 100 ? 5 : 50;
    }

    @Override
    public void call() {
        solution = solver.solve(source, start);
    }

    @Override
    public Map<String, Object> outputs() {
        if (!solution.converged() || solution.residuals().massCubicMetresPerSecond() > 1e-12) {
            throw new IllegalStateException(solution.residuals().toString());
        }
        double[] flows = solution.flows();
        double[] heads = new double[RINGS * stations];
        int lowest = 0;
        for (int v = 0; v < heads.length; v++) {
            heads[v] = solution.headAt(v + 2);
            lowest = heads[v] < heads[lowest] ? v : lowest;
        }
        double[] absolute = new double[flows.length];
        double[] watts = new double[flows.length];
        int laminar = 0;
        int transition = 0;
        for (int l = 0; l < flows.length; l++) {
            double reynolds = Math.abs(flows[l]) * 4 / (Math.PI * inside.get(l) * VISCOSITY);
            laminar += reynolds <= 2000 ? 1 : 0;
            transition += reynolds > 2000 && reynolds <= 4000 ? 1 : 0;
            absolute[l] = Math.abs(flows[l]);
            watts[l] = WEIGHT * flows[l] * links.get(l).law().headMetres(flows[l]);
        }
        Map<String, Object> out = new LinkedHashMap<>();
        out.put("nodes", heads.length);
        out.put("pipes", flows.length);
        out.put("total_demand_m3h", Inputs.sum(demand, 3600));
        out.put("sum_absQ_m3h", Inputs.sum(absolute, 3600));
        out.put("sum_H", Inputs.sum(heads, 1));
        out.put("min_H", heads[lowest]);
        out.put("argmin_node", lowest);
        out.put("Q_feed0_m3h", flows[flows.length - 2] * 3600);
        out.put("Q_feed1_m3h", flows[flows.length - 1] * 3600);
        out.put("dissipated_W", Inputs.sum(watts, 1));
        out.put("laminar", laminar);
        out.put("transition", transition);
        out.put("H[139]", heads[139]);
        out.put("Q[100]_m3h", flows[100] * 3600);
        return out;
    }
}
