package headrace.benchmark;

import headrace.circuit.part.SquareLaw;
import headrace.circuit.solve.Link;
import headrace.circuit.solve.ManyLoads;
import headrace.circuit.solve.Network;
import headrace.circuit.solve.RowLaw;
import headrace.curve.PumpCurve;
import headrace.pump.PumpSet;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** W5y: five branches through the hours of a year under six laws, to the wire. Flows of the circuit are in m³/h. */
final class YearOfLoads implements Workload {
    private static final int HOURS = 8760;
    private static final double[] DESIGN = {16, 12, 20, 14, 18};
    private static final double[] OPEN = {5.0, 4.5, 5.5, 4.8, 6.0};
    private static final double[] SEGMENT = {1.2, 1.5, 1.6, 1.8, 2.0};
    private static final double PLANT = 6;
    private static final double TOTAL = 80;
    private static final double HEAD = 20.1;
    private static final double[] LOADED = {0.70, 0.75, 0.85, 1.30, 1.50};
    private static final double LEAST = 0.30;
    private static final double[] DAY = {
        0.35, 0.35, 0.35, 0.35, 0.40, 0.60, 0.85, 1.00, 0.95, 0.90, 0.85, 0.80,
        0.78, 0.76, 0.75, 0.76, 0.80, 0.85, 0.80, 0.70, 0.60, 0.50, 0.42, 0.38
    };
    private static final String[] LAWS = {"CS", "CD", "LP", "QS", "GP", "CV"};

    private final double[][] demand = demands();
    private final ManyLoads circuit = circuit();
    private final PumpSet set = SetInputs.of(Inputs.pump());
    private final double[][][] flows = new double[LAWS.length][DESIGN.length][HOURS];
    private final double[][] totals = new double[LAWS.length][HOURS];
    private final double[][] heads = new double[LAWS.length][HOURS];
    private final double[][] speeds = new double[LAWS.length][HOURS];
    private final double[][] watts = new double[LAWS.length][HOURS];
    private final double[] neediest = new double[HOURS];
    private final double[] perSecond = new double[HOURS];

    private static double[][] demands() {
        double[][] all = new double[DESIGN.length][HOURS];
        for (int h = 0; h < HOURS; h++) {
            int day = h / 24;
            double season = 0.65 + 0.35 * Math.cos(2 * Math.PI * (day - 15) / 365.0);
            double shape = DAY[h % 24] * (day % 7 < 5 ? 1 : 0.75);
            for (int j = 0; j < DESIGN.length; j++) {
                double u = Inputs.uniform(511, 5L * h + j);
                double share = Math.min(1, season * shape * (0.6 + 0.8 * u) * LOADED[j]);
                all[j][h] = share < 0.12 ? 0 : share * DESIGN[j];
            }
        }
        return all;
    }

    private static ManyLoads circuit() {
        List<Link> links = new ArrayList<>();
        double through = TOTAL;
        for (int j = 0; j < DESIGN.length; j++) {
            double k = SEGMENT[j] / (through * through) + (j == 0 ? PLANT / (TOTAL * TOTAL) : 0);
            links.add(Link.plain(j == 0 ? 1 : j + 1, j + 2, new SquareLaw(k)));
            links.add(Link.terminal(j + 2, 0, new SquareLaw(OPEN[j] / (DESIGN[j] * DESIGN[j])), DESIGN[j]));
            through -= DESIGN[j];
        }
        return ManyLoads.of(Network.closed(DESIGN.length + 2, 1, links, new Network.Scale(TOTAL, HEAD)))
                .orElseThrow();
    }

    /** A law within the speeds of the pump. */
    private abstract static class Within implements RowLaw {
        abstract double asked(int row, double q);

        abstract double rise(int row, double q);

        @Override
        public double metresAt(int row, double q) {
            return Math.min(Math.max(asked(row, q), pump(q, LEAST)), pump(q, 1));
        }

        @Override
        public double slopeAt(int row, double q) {
            double asked = asked(row, q);
            if (asked > pump(q, 1)) {
                return Inputs.HEAD[1] + 2 * Inputs.HEAD[2] * q;
            }
            return asked < pump(q, LEAST) ? Inputs.HEAD[1] * LEAST + 2 * Inputs.HEAD[2] * q : rise(row, q);
        }

        private static double pump(double q, double s) {
            return Inputs.HEAD[0] * s * s + Inputs.HEAD[1] * q * s + Inputs.HEAD[2] * q * q;
        }
    }

    /** {@code H = c + a·(q/80)^m}. */
    private static final class Power extends Within {
        private final double still;
        private final double moved;
        private final double exponent;

        Power(double still, double moved, double exponent) {
            this.still = still * HEAD;
            this.moved = moved * HEAD;
            this.exponent = exponent;
        }

        @Override
        double asked(int row, double q) {
            return still + moved * power(q / TOTAL, exponent);
        }

        @Override
        double rise(int row, double q) {
            return moved / TOTAL * exponent * power(q / TOTAL, exponent - 1);
        }

        private static double power(double z, double m) {
            return m == 1 ? z : m == 2 ? z * z : m == 0 ? 1 : Math.pow(z, m);
        }
    }

    /** The head of the row itself. */
    private final class Neediest extends Within {
        @Override
        double asked(int row, double q) {
            return neediest[row];
        }

        @Override
        double rise(int row, double q) {
            return 0;
        }
    }

    @Override
    public String name() {
        return "W5y year 8760 h x 5 x 6 laws";
    }

    @Override
    public void call() {
        circuit.fillNeediest(demand, 0.9, neediest);
        RowLaw[] laws = {
            new Power(1000, 0, 1),
            new Power(1, 0, 1),
            new Power(0.3, 0.7, 1),
            new Power(0.25, 0.75, 2),
            new Power(0.2, 0.8, 1.6),
            new Neediest()
        };
        for (int k = 0; k < laws.length; k++) {
            if (!circuit.solve(laws[k], demand, flows[k], totals[k], heads[k])) {
                throw new IllegalStateException("a row was not solved");
            }
            wire(k);
        }
    }

    private void wire(int k) {
        PumpCurve curve = set.curve();
        for (int h = 0; h < HOURS; h++) {
            perSecond[h] = totals[k][h] / 3600;
        }
        curve.fillSpeedRatios(perSecond, heads[k], speeds[k]);
        for (int h = 0; h < HOURS; h++) {
            watts[k][h] = totals[k][h] > 0 ? set.wireWatts(perSecond[h], speeds[k][h]) : 0;
        }
    }

    @Override
    public Map<String, Object> outputs() {
        Map<String, Object> out = new LinkedHashMap<>();
        int on = 0;
        for (int h = 0; h < HOURS; h++) {
            on += totals[0][h] > 0 ? 1 : 0;
        }
        out.put("hours_on", on);
        double asked = 0;
        for (double[] row : demand) {
            asked += Inputs.sum(row, 1);
        }
        out.put("demand_m3", asked);
        for (int k = 0; k < LAWS.length; k++) {
            outputs(k, on, out);
        }
        return out;
    }

    private void outputs(int k, int on, Map<String, Object> out) {
        double[] running = new double[HOURS];
        double[] missing = new double[HOURS];
        int starved = 0;
        int top = 0;
        double worst = 1;
        for (int h = 0; h < HOURS; h++) {
            boolean runs = totals[k][h] > 0;
            running[h] = runs ? heads[k][h] : 0;
            top += runs && speeds[k][h] >= 1 - 1e-9 ? 1 : 0;
            for (int j = 0; j < DESIGN.length; j++) {
                missing[h] += demand[j][h] - flows[k][j][h];
                double share = demand[j][h] > 0 ? flows[k][j][h] / demand[j][h] : 1;
                starved += share < 0.99 ? 1 : 0;
                worst = Math.min(worst, share);
            }
        }
        out.put(LAWS[k] + ".kWh", Inputs.sum(watts[k], 1e-3));
        out.put(LAWS[k] + ".meanH", Inputs.sum(running, 1) / on);
        out.put(LAWS[k] + ".unmet_m3", Inputs.sum(missing, 1));
        out.put(LAWS[k] + ".starved", starved);
        out.put(LAWS[k] + ".worst", worst);
        out.put(LAWS[k] + ".at_max", top);
    }
}
