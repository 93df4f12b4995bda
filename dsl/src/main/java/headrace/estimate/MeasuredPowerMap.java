package headrace.estimate;

import headrace.liquid.Liquid;
import headrace.numeric.DegreeChoice;
import headrace.numeric.Polynomial;
import headrace.numeric.Roots;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.units.Flow;
import headrace.units.Ratio;
import headrace.units.Speed;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * Wire power and head as measured on a pump set at several speeds: no model of losses, and no shaft power.
 *
 * <p>At each measured speed the power and {@code H/s²} are polynomials of {@code x = Q/s}. Between speeds, at the same
 * x, {@code ln P} and {@code H/s²} are interpolated over {@code ln s} by the parabola through both and the measured
 * speed next to them, or the straight line where there are two: both are exact where the affinity laws hold.
 *
 * <dl>
 *   <dt>Units
 *   <dd>See {@link PowerMap}; shares are of the greatest measured speed.
 *   <dt>Limits
 *   <dd>The measured speeds, 2 % wider for a reading at an end, and the x that all speeds cover. Two speeds at least,
 *       three points of different flow at each.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code IMPOSSIBLE_POWER_MAP}; shaft power is refused with {@code NO_SHAFT_POWER}.
 *   <dt>Source
 *   <dd>The interpolation is our own; the degree of the polynomials as in {@link DegreeChoice}.
 * </dl>
 */
public final class MeasuredPowerMap implements PowerMap {
    private static final double BESIDE = 0.02;
    private static final double SAME_SPEED = 0.015;
    private static final int FEWEST = 3;
    private static final int CHECKED = 64;

    private final String name;
    private final Liquid liquid;
    private final List<Level> levels;
    private final Speed speed;
    private final double low;
    private final double high;
    private final MapFactors factors;
    private final String how;
    private final Notes notes;
    private final Basis basis;

    /** One measured speed: power in W and H/s² in m over x. */
    private record Level(double s, Polynomial power, Polynomial head, double low, double high) {}

    private MeasuredPowerMap(MeasuredPowerMap map, MapFactors factors, String how) {
        this(map, map.liquid, map.levels, new Moved(factors, how, map.notes, map.basis));
    }

    private record Moved(MapFactors factors, String how, Notes notes, Basis basis) {}

    private MeasuredPowerMap(MeasuredPowerMap map, Liquid liquid, List<Level> levels, Moved moved) {
        this.name = map.name;
        this.liquid = liquid;
        this.levels = levels;
        this.speed = map.speed;
        this.low = map.low;
        this.high = map.high;
        this.factors = moved.factors;
        this.how = moved.how;
        this.notes = moved.notes;
        this.basis = moved.basis;
    }

    private MeasuredPowerMap(String name, Liquid liquid, List<Level> levels, Speed speed) {
        this.name = name;
        this.liquid = liquid;
        this.levels = List.copyOf(levels);
        this.speed = speed;
        this.low = levels.stream().mapToDouble(Level::low).max().orElseThrow();
        this.high = levels.stream().mapToDouble(Level::high).min().orElseThrow();
        this.factors = MapFactors.NONE;
        this.how = "";
        this.notes = liquid.notes();
        this.basis = liquid.basis()
                .with("wire power of " + name + " measured at " + levels.size() + " speeds, "
                        + Speed.radiansPerSecond(levels.get(0).s * speed.si()) + " to " + speed
                        + "; between them interpolated over the logarithm of speed at the same Q/n");
    }

    /**
     * Returns the map of points read at a pump set; speeds within 1.5 % count as one.
     *
     * @param name the name of the pump
     * @param liquid what was pumped
     * @param points the points
     */
    public static MeasuredPowerMap of(String name, Liquid liquid, List<MeasuredPoint> points) {
        List<List<MeasuredPoint>> groups = grouped(points);
        if (groups.size() < 2) {
            throw impossible(name, "readings at " + groups.size() + " speed", "Read at two speeds or more");
        }
        List<MeasuredPoint> fastest = groups.get(groups.size() - 1);
        Speed reference = mean(fastest);
        List<Level> levels =
                groups.stream().map(group -> level(name, group, reference)).toList();
        MeasuredPowerMap map = new MeasuredPowerMap(name, liquid, levels, reference);
        if (!(map.low < map.high)) {
            throw impossible(
                    name, "speeds that share no range of Q/n", "Read over the same share of flow at each speed");
        }
        return map;
    }

    private static List<List<MeasuredPoint>> grouped(List<MeasuredPoint> points) {
        List<List<MeasuredPoint>> groups = new ArrayList<>();
        for (MeasuredPoint point : points.stream()
                .sorted(Comparator.comparing(MeasuredPoint::speed))
                .toList()) {
            List<MeasuredPoint> last = groups.isEmpty() ? List.of() : groups.get(groups.size() - 1);
            if (last.isEmpty() || point.speed().over(last.get(0).speed()).value() > 1 + SAME_SPEED) {
                last = new ArrayList<>();
                groups.add(last);
            }
            last.add(point);
        }
        return groups;
    }

    private static Speed mean(List<MeasuredPoint> group) {
        return Speed.radiansPerSecond(
                group.stream().mapToDouble(p -> p.speed().si()).average().orElseThrow());
    }

    /** Readings a little off the mean speed are brought to it by the affinity laws. */
    private static Level level(String name, List<MeasuredPoint> group, Speed reference) {
        Speed speed = mean(group);
        double s = speed.over(reference).value();
        int n = group.size();
        double[] x = new double[n];
        double[] power = new double[n];
        double[] head = new double[n];
        double[] ones = new double[n];
        for (int i = 0; i < n; i++) {
            double own = group.get(i).speed().over(reference).value();
            x[i] = group.get(i).flow().si() / own;
            power[i] = group.get(i).power().watts() * Math.pow(s / own, 3);
            head[i] = group.get(i).head().metres() / (own * own);
            ones[i] = 1;
        }
        if (Arrays.stream(x).distinct().count() < FEWEST) {
            throw impossible(name, n + " readings at " + speed, "Read three flows or more at each speed");
        }
        Level level = new Level(
                s,
                DegreeChoice.fit(x, power, ones).polynomial(),
                DegreeChoice.fit(x, head, ones).polynomial(),
                Arrays.stream(x).min().orElseThrow(),
                Arrays.stream(x).max().orElseThrow());
        for (int i = 0; i <= CHECKED; i++) {
            if (!(level.power.valueAt(level.low + (level.high - level.low) * i / CHECKED) > 0)) {
                throw impossible(name, "readings at " + speed + " whose fitted power falls to 0", "Check them");
            }
        }
        return level;
    }

    private static Refusal impossible(String name, String given, String next) {
        return new Refusal(
                EstimateProblem.IMPOSSIBLE_POWER_MAP,
                "Asked for a map of wire power of " + name + " from " + given,
                "It takes two speeds or more with three different flows or more at each, over ranges of Q/n that overlap",
                next);
    }

    @Override
    public String name() {
        return name;
    }

    @Override
    public Speed speed() {
        return speed;
    }

    /** The best ratio of hydraulic to wire power at the greatest measured speed. */
    @Override
    public Flow bestFlow() {
        double best = low;
        for (double q : Roots.stopsIn(this::hydraulicShare, low, high)) {
            best = hydraulicShare(q) > hydraulicShare(best) ? q : best;
        }
        return Flow.cubicMetresPerSecond(best);
    }

    private double hydraulicShare(double q) {
        return q * headMetres(q, 1) / wireWatts(q, 1);
    }

    @Override
    public double slowest() {
        return levels.get(0).s * (1 - BESIDE);
    }

    @Override
    public double fastest() {
        return 1 + BESIDE;
    }

    @Override
    public double lowestFlow(double s) {
        return low * s;
    }

    @Override
    public double highestFlow(double s) {
        return high * s;
    }

    /** Returns the first of the measured speeds between which a speed is interpolated. */
    private int first(double s) {
        int i = 0;
        while (i < levels.size() - 2 && levels.get(i + 1).s <= s) {
            i++;
        }
        return i > 0 ? i - 1 : 0;
    }

    private int last(int first) {
        return Math.min(first + 2, levels.size() - 1);
    }

    /** Returns the weight of a measured speed at a place over ln s: 1 at its own, 0 at the others. */
    private double weight(int of, int first, double place) {
        double weight = 1;
        for (int k = first; k <= last(first); k++) {
            double node = Math.log(levels.get(k).s);
            weight *= k == of ? 1 : (place - node) / (Math.log(levels.get(of).s) - node);
        }
        return weight;
    }

    /** The slope of a parabola or a line is exact by central differences. */
    private double weightSlope(int of, int first, double place) {
        return 0.5 * (weight(of, first, place + 1) - weight(of, first, place - 1));
    }

    private double measured(double q, double s) {
        int first = first(s);
        double log = 0;
        for (int k = first; k <= last(first); k++) {
            log += weight(k, first, Math.log(s)) * Math.log(levels.get(k).power.valueAt(q / s));
        }
        return Math.exp(log);
    }

    /** What motor and drive lose is part of the measured power and cannot be told from it. */
    @Override
    public double wireWatts(double q, double s, double pump, double losses) {
        return pump * (factors.power() * measured(q, s) + factors.offsetWatts() * s);
    }

    @Override
    public double shaftWatts(double q, double s) {
        throw new Refusal(
                EstimateProblem.NO_SHAFT_POWER,
                "Asked for the shaft power of " + name,
                "Its map was measured at the wire and does not know what motor and drive lose",
                "Read wire power and speed, or make the map from a pump set with its losses");
    }

    @Override
    public double movedWatts(double wireWatts, double s) {
        return wireWatts;
    }

    @Override
    public double unmovedWattsAt(double q, double s) {
        return measured(q, s);
    }

    @Override
    public boolean knowsShaft() {
        return false;
    }

    @Override
    public double headMetres(double q, double s) {
        int first = first(s);
        double sum = 0;
        for (int k = first; k <= last(first); k++) {
            sum += weight(k, first, Math.log(s)) * levels.get(k).head.valueAt(q / s);
        }
        return factors.head() * s * s * sum;
    }

    @Override
    public double[] powerStops(double s) {
        return Roots.turnsIn(q -> wireWatts(q, s), lowestFlow(s), highestFlow(s));
    }

    @Override
    public void fill(double s, MapRow row, int count) {
        int first = first(s);
        double place = Math.log(s);
        for (int i = 0; i < count; i++) {
            double x = row.flow[i] / s;
            double logOverX = 0;
            double logOverPlace = 0;
            double headOverX = 0;
            double headOverPlace = 0;
            for (int k = first; k <= last(first); k++) {
                Level level = levels.get(k);
                double weight = weight(k, first, place);
                double slope = weightSlope(k, first, place);
                logOverX += weight * level.power.slopeAt(x) / level.power.valueAt(x);
                logOverPlace += slope * Math.log(level.power.valueAt(x));
                headOverX += weight * level.head.slopeAt(x);
                headOverPlace += slope * level.head.valueAt(x);
            }
            double power = factors.power() * measured(row.flow[i], s);
            row.wire[i] = power + factors.offsetWatts() * s;
            row.wireOverPower[i] = row.wire[i];
            row.wireOverFlow[i] = power * logOverX / s;
            row.wireOverSpeed[i] = power * (logOverPlace - x * logOverX) / s + factors.offsetWatts();
            row.head[i] = headMetres(row.flow[i], s);
            row.headOverFlow[i] = factors.head() * s * headOverX;
            row.headOverSpeed[i] = 2 * row.head[i] / s + factors.head() * s * (headOverPlace - x * headOverX);
        }
    }

    @Override
    public MapFactors factors() {
        return factors;
    }

    @Override
    public MeasuredPowerMap calibrated(MapFactors moved, String words) {
        return new MeasuredPowerMap(this, moved, words);
    }

    /** Measured on site, it needs no holding against readings there. */
    @Override
    public boolean isCalibrated() {
        return true;
    }

    @Override
    public MeasuredPowerMap in(Liquid other) {
        double density = other.density().over(liquid.density()).value();
        List<Level> scaled = levels.stream()
                .map(level -> new Level(level.s, level.power.times(density), level.head, level.low, level.high))
                .toList();
        Notes more = notes.and(other.notes())
                .with(
                        EstimateProblem.DENSITY_ON_WIRE,
                        "The wire power measured in " + liquid + " is taken times " + Ratio.of(density) + " for "
                                + other + ", losses of motor and drive included; viscosity is not corrected");
        return new MeasuredPowerMap(this, other, scaled, new Moved(factors, how, more, basis.and(other.basis())));
    }

    @Override
    public Notes notes() {
        return notes;
    }

    @Override
    public Basis basis() {
        return how.isEmpty() ? basis : basis.with(how + ": " + factors);
    }

    @Override
    public String toString() {
        return name + ", wire power measured at " + levels.size() + " speeds";
    }
}
