package headrace.data;

import java.util.List;
import java.util.Locale;
import java.util.Random;

/**
 * Makes the pump files of {@code demo-data/pumps}: head and power are polynomials of the flow as a share of the flow at
 * best efficiency, {@code x = Q/Q_bep}, each point with a scatter of its own from a seed.
 *
 * @param name the pump's name
 * @param seed the seed of the scatter
 * @param fileUnits the units of the file
 * @param speed the speed in rpm
 * @param poles the poles of the motor that it was tested with
 * @param diameter the impeller's diameter in mm
 * @param flow the flow at best efficiency in m³/h
 * @param head the head there in m
 * @param efficiency the efficiency there
 * @param headTerms the coefficients of {@code H/H_bep} in {@code x}, from the constant up; their sum is 1
 * @param powerTerms the coefficients of {@code P/P_bep} in {@code x}; their sum is 1
 */
record InventedPump(
        String name,
        long seed,
        FileUnits fileUnits,
        int speed,
        int poles,
        int diameter,
        double flow,
        double head,
        double efficiency,
        double[] headTerms,
        double[] powerTerms) {
    static final double SCATTER = 0.003;

    private static final double LEAST_NPSH_SHARE = 0.4;
    private static final double G = 9.80665;
    private static final double WATER = 998.2;
    private static final double[] SHARES = {0, 0.15, 0.3, 0.45, 0.6, 0.75, 0.9, 1, 1.1, 1.22, 1.35};

    /** The units of a file: their symbols, how many of them an SI unit is, and the digits after the point. */
    enum FileUnits {
        METRIC("m3/h", 3600, 1, "m", 1, 2, "kW", 1e-3, 3),
        US("gpm", 3600 / 0.2271247, 0, "ft", 1 / 0.3048, 1, "hp", 1 / 745.69987, 2);

        private final String flow;
        private final double flows;
        private final int flowDigits;
        private final String head;
        private final double heads;
        private final int headDigits;
        private final String power;
        private final double powers;
        private final int powerDigits;

        FileUnits(
                String flow,
                double flows,
                int flowDigits,
                String head,
                double heads,
                int headDigits,
                String power,
                double powers,
                int powerDigits) {
            this.flow = flow;
            this.flows = flows;
            this.flowDigits = flowDigits;
            this.head = head;
            this.heads = heads;
            this.headDigits = headDigits;
            this.power = power;
            this.powers = powers;
            this.powerDigits = powerDigits;
        }
    }

    /** The pumps of the folder. Slopes of head and power are such that the efficiency is greatest at {@code x = 1}. */
    static List<InventedPump> all() {
        return List.of(
                new InventedPump(
                        "Heron 65",
                        69,
                        FileUnits.METRIC,
                        1450,
                        4,
                        240,
                        52,
                        17,
                        0.755,
                        new double[] {1.22, -0.05, -0.17},
                        new double[] {0.38, 0.63, -0.01}),
                new InventedPump(
                        "Plover 40",
                        41,
                        FileUnits.METRIC,
                        2900,
                        2,
                        175,
                        22,
                        36,
                        0.62,
                        new double[] {1.10, 0.16, -0.26},
                        new double[] {0.34, 0.68, -0.02}),
                new InventedPump(
                        "Bittern 150",
                        150,
                        FileUnits.METRIC,
                        1480,
                        4,
                        331,
                        210,
                        32,
                        0.83,
                        new double[] {1.28, -0.12, 0.02, -0.18},
                        new double[] {0.5, 0.62, -0.12}),
                new InventedPump(
                        "Dunlin 100",
                        100,
                        FileUnits.METRIC,
                        970,
                        6,
                        261,
                        95,
                        8.5,
                        0.79,
                        new double[] {1.26, -0.10, -0.16},
                        new double[] {0.40, 0.62, -0.02}),
                new InventedPump(
                        "Merganser 80",
                        81,
                        FileUnits.US,
                        1760,
                        4,
                        245,
                        68,
                        26,
                        0.76,
                        new double[] {1.20, -0.04, -0.16},
                        new double[] {0.35, 0.66, -0.01}));
    }

    String fileName() {
        return name.toLowerCase(Locale.ROOT).replace(' ', '-') + ".csv";
    }

    /** Returns whether the file gives a speed at each point: the motor slips more under load. */
    boolean speedAtEachPoint() {
        return poles == 6;
    }

    /** Returns whether the file gives the NPSH required, which is read from 45 % of best-efficiency flow on. */
    boolean npshRead() {
        return diameter > 300;
    }

    /** Returns the NPSH required in m at a flow as a share of that at best efficiency: a made-up 2.2 + 1.3·x². */
    static double npsh(double x) {
        return 2.2 + 1.3 * x * x;
    }

    private String npshCell(double x) {
        if (!npshRead()) {
            return "";
        }
        return x < LEAST_NPSH_SHARE ? "," : ", " + text(npsh(x), 2);
    }

    String file() {
        Random random = new Random(seed);
        StringBuilder out = new StringBuilder(headLines());
        for (double x : SHARES) {
            double ratio = speedAtEachPoint() ? (1000 - 24 * value(powerTerms, x)) / speed : 1;
            double q =
                    Double.parseDouble(text(x * flow / 3600 * fileUnits.flows, fileUnits.flowDigits)) / fileUnits.flows;
            double at = q / ratio / (flow / 3600);
            double metres = head * value(headTerms, at) * ratio * ratio * scattered(random);
            double watts = shaftWatts() * value(powerTerms, at) * ratio * ratio * ratio * scattered(random);
            out.append(text(q * fileUnits.flows, fileUnits.flowDigits))
                    .append(", ")
                    .append(text(metres * fileUnits.heads, fileUnits.headDigits))
                    .append(", ")
                    .append(text(watts * fileUnits.powers, fileUnits.powerDigits))
                    .append(speedAtEachPoint() ? ", " + text(ratio * speed, 1) : "")
                    .append(npshCell(x))
                    .append('\n');
        }
        return out.toString();
    }

    private String headLines() {
        return "## An invented pump, no real one. Made from polynomials with scatter, see demo-data/README.md.\n"
                + "## Columns: flow through the pump, head in " + (fileUnits == FileUnits.US ? "feet" : "metres")
                + " of the pumped liquid, power at the shaft"
                + (speedAtEachPoint() ? ", speed at each point" : "")
                + (npshRead() ? ", NPSH required" : "") + ".\n"
                + "# name: " + name + "\n"
                + "# speed: " + speed + " rpm\n"
                + "# impeller diameter: " + diameter + " mm\n"
                + "# liquid: water 20 °C\n"
                + "# poles: " + poles + "\n"
                + "# source: invented, scatter 0.3 % from seed " + seed + "\n"
                + "# date: 2026-01-17\n"
                + "flow [" + fileUnits.flow + "], head [" + fileUnits.head + "], shaft power [" + fileUnits.power + "]"
                + (speedAtEachPoint() ? ", speed [rpm]" : "")
                + (npshRead() ? ", NPSH [m]" : "") + "\n";
    }

    /** Returns the shaft power at best efficiency. */
    double shaftWatts() {
        return WATER * G * flow / 3600 * head / efficiency;
    }

    private static double scattered(Random random) {
        return 1 + SCATTER * random.nextGaussian();
    }

    static double value(double[] terms, double x) {
        double value = 0;
        for (int i = terms.length - 1; i >= 0; i--) {
            value = value * x + terms[i];
        }
        return value;
    }

    private static String text(double value, int digits) {
        return String.format(Locale.ROOT, "%." + digits + "f", value);
    }
}
