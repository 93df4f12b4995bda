package headrace.trend;

import headrace.curve.PumpCurve;
import headrace.data.PumpFile;
import headrace.drive.Drive;
import headrace.drive.DriveTrain;
import headrace.drive.LossModel;
import headrace.drive.Motor;
import headrace.pump.PumpSet;
import headrace.record.Basis;
import headrace.units.Flow;
import headrace.units.Power;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;

/**
 * Makes the log of an invented building from a seed: chilled water whose load follows the outdoor temperature above 12
 * °C and the hour, the pump Heron 65 on a quadratic law from 52 m³/h and 16 m with 30 % minimum head, and readings that
 * scatter. From a day on, conditions of given sizes are there.
 *
 * <p>Scatter of a reading: power 0.7 %, flow 1 %, head 0.7 %, plant head 2 %, normally distributed; on top of that what
 * stays for hours, 0.3 % on power and head, with a correlation of 0.8 from hour to hour.
 *
 * @param seed of all that is drawn
 * @param days how many days
 * @param minutes from row to row
 * @param faultDay the day from which on the conditions are there
 * @param sizes the conditions with their sizes
 */
public record InventedLog(long seed, int days, int minutes, double faultDay, Map<Condition, Double> sizes) {
    public static final Flow DESIGN = Flow.cubicMetresPerHour(52);
    public static final Instant START = Instant.parse("2026-06-01T00:00:00Z");

    private static final PumpSet SET = heron();
    private static final double DESIGN_HEAD = 16;
    private static final double MINIMUM = 0.3;
    private static final double PLANT = 1.8;
    private static final double SLOW = 0.003;
    private static final double HOUR_TO_HOUR = 0.8;

    static InventedLog sound(long seed, int days) {
        return new InventedLog(seed, days, 10, days, Map.of());
    }

    static InventedLog with(long seed, int days, Map<Condition, Double> sizes) {
        return new InventedLog(seed, days, 10, days / 2.0, sizes);
    }

    public static PumpSet set() {
        return SET;
    }

    private static PumpSet heron() {
        PumpCurve curve = PumpCurve.fit(PumpFile.read(Path.of("..", "demo-data", "pumps", "heron-65.csv")));
        Power rated = Power.kilowatts(5.5);
        DriveTrain train = DriveTrain.of(
                Motor.ofClass(rated, 3, 4),
                Drive.reference(rated),
                LossModel.all().get(0));
        return PumpSet.of(curve, train).withMinimumSpeed(curve.speed().times(0.3));
    }

    /** A row: what the meters show, in SI. */
    record Row(long second, double watts, double share, double flow, double head, double plant, double outdoor) {}

    Instant faultsFrom() {
        return START.plusSeconds(Math.round(faultDay * 86_400));
    }

    List<Row> rows() {
        Random random = new Random(seed);
        List<Row> rows = new java.util.ArrayList<>();
        double warm = 0;
        double slowPower = 0;
        double slowHead = 0;
        double use = 0;
        for (int i = 0; i < days * 1440 / minutes; i++) {
            long second = START.getEpochSecond() + 60L * minutes * i;
            double hour = minutes * i / 60.0;
            if (i % Math.max(1, 60 / minutes) == 0) {
                warm = 0.95 * warm + 0.6 * random.nextGaussian();
                use = 0.7 * use + 0.03 * random.nextGaussian();
                double fresh = Math.sqrt(1 - HOUR_TO_HOUR * HOUR_TO_HOUR) * SLOW;
                slowPower = HOUR_TO_HOUR * slowPower + fresh * random.nextGaussian();
                slowHead = HOUR_TO_HOUR * slowHead + fresh * random.nextGaussian();
            }
            double outdoor = 19 + 6 * Math.sin(2 * Math.PI * (hour % 24 - 9) / 24) + warm;
            double load = Math.min(1.05, Math.max(0.2, load(outdoor) + use + 0.01 * random.nextGaussian()));
            rows.add(row(second, load, outdoor, new Noise(random, slowPower, slowHead)));
        }
        return rows;
    }

    static double load(double outdoor) {
        return 0.25 + 0.045 * Math.max(0, outdoor - 12);
    }

    private record Noise(Random random, double slowPower, double slowHead) {
        double times(double share) {
            return 1 + share * random.nextGaussian();
        }
    }

    private double size(Condition condition, long second) {
        return second < faultsFrom().getEpochSecond() ? 0 : sizes.getOrDefault(condition, 0.0);
    }

    /** Works out what the pump does, then what its meters show. */
    private Row row(long second, double load, double outdoor, Noise noise) {
        double q = load * DESIGN.si();
        double head = DESIGN_HEAD * (MINIMUM + (1 - MINIMUM) * load * load);
        double lost = size(Condition.WEAR, second) + size(Condition.WRONG_ROTATION, second);
        double air = size(Condition.AIR, second);
        double s = SET.curve().speedRatioFor(q, head / (1 - lost - air));
        double watts = SET.wireWatts(q, s) * (1 - air)
                + size(Condition.DRAG, second)
                        * SET.driveTrain().motor().rated().watts()
                        * s;
        double plant = PLANT * load * load * (1 + size(Condition.CLOGGED, second));
        double offset = size(Condition.HEAD_SENSOR, second) * SET.curve().headMetres(0, 1);
        return new Row(
                second,
                watts * (1 + size(Condition.POWER_METER, second)) * (noise.times(0.007) + noise.slowPower),
                s * noise.times(0.0005),
                q * (1 + size(Condition.FLOW_METER, second)) * noise.times(0.01),
                (head + offset) * (noise.times(0.007) + noise.slowHead),
                plant * noise.times(0.02),
                outdoor + 0.1 * noise.random.nextGaussian());
    }

    /** Returns the log as it is read, without a file between. */
    TrendLog read() {
        List<Row> rows = rows();
        int n = rows.size();
        Map<Channel, double[]> values = new EnumMap<>(Channel.class);
        double speed = SET.curve().speed().si();
        values.put(Channel.POWER, rows.stream().mapToDouble(Row::watts).toArray());
        values.put(
                Channel.SPEED,
                rows.stream().mapToDouble(row -> row.share * speed).toArray());
        values.put(Channel.FLOW, rows.stream().mapToDouble(Row::flow).toArray());
        values.put(Channel.HEAD, rows.stream().mapToDouble(Row::head).toArray());
        values.put(Channel.PLANT_HEAD, rows.stream().mapToDouble(Row::plant).toArray());
        values.put(
                Channel.OUTDOOR,
                rows.stream().mapToDouble(row -> row.outdoor + 273.15).toArray());
        int[] lines = java.util.stream.IntStream.range(2, n + 2).toArray();
        long[] seconds = rows.stream().mapToLong(Row::second).toArray();
        TrendLog.Rows columns = new TrendLog.Rows(seconds, lines, values, n, ZoneOffset.UTC);
        return TrendLog.read("seed " + seed, columns, List.of(), Basis.NONE);
    }

    TrendLog clean() {
        return read().cleaned(CleaningRules.of(SET));
    }

    MapCheck check() {
        return MapCheck.of(clean(), SET, MapPower.WIRE, START.plusSeconds(days * 43_200L));
    }

    /** Returns a row as it stands in a file. */
    static String text(Row row) {
        return String.format(
                Locale.ROOT,
                "%s,%.3f,%.1f,%.2f,%.2f,%.2f,%.1f",
                Instant.ofEpochSecond(row.second).toString().substring(0, 16).replace('T', ' '),
                row.watts / 1000,
                row.share * 100,
                row.flow * 3600,
                row.head,
                row.plant,
                row.outdoor);
    }
}
