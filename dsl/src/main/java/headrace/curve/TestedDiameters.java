package headrace.curve;

import headrace.curve.PumpMap.Range;
import headrace.numeric.MonotoneCubic;
import headrace.numeric.Polynomial;
import headrace.numeric.SmoothCurve;
import headrace.problem.Notes;
import headrace.problem.Refusal;
import headrace.record.Basis;
import headrace.units.Head;
import headrace.units.Length;
import headrace.units.Power;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * One pump tested with several impeller diameters, and what lies between them.
 *
 * <dl>
 *   <dt>Limits
 *   <dd>Between the smallest and the largest tested diameter. Between two neighbours head and power change in
 *       proportion to the diameter, compared at the same share of the tested range.
 *   <dt>Errors
 *   <dd>{@link Refusal} with {@code DIAMETER_UNKNOWN}, {@code TRIM_OUT_OF_RANGE} or {@code IMPOSSIBLE_TRIM}.
 *   <dt>Source
 *   <dd>Interpolation is common practice, no source.
 * </dl>
 */
public final class TestedDiameters {
    private static final int STATIONS = 33;

    private final List<PumpCurve> curves;

    private TestedDiameters(List<PumpCurve> curves) {
        this.curves = curves;
    }

    /** Returns the family of curves, each of another diameter, all of one test speed and in one liquid. */
    public static TestedDiameters of(List<PumpCurve> curves) {
        List<PumpCurve> ordered =
                curves.stream().sorted(Comparator.comparing(Trim::full)).toList();
        long different = ordered.stream().map(Trim::full).distinct().count();
        long speeds = ordered.stream().map(PumpCurve::testedSpeed).distinct().count();
        long liquids = ordered.stream().map(PumpCurve::liquid).distinct().count();
        if (ordered.size() < 2 || different < ordered.size() || speeds > 1 || liquids > 1) {
            throw new Refusal(
                    CurveProblem.IMPOSSIBLE_TRIM,
                    "Given " + ordered.size() + " curves of " + different + " diameters, " + speeds
                            + " test speeds and " + liquids + " liquids to interpolate between",
                    "It takes two or more, each of another diameter, all of one test speed and in one liquid",
                    "Bring the tests to one speed first");
        }
        return new TestedDiameters(ordered);
    }

    /** Returns the curves in the order of their diameters. */
    public List<PumpCurve> curves() {
        return curves;
    }

    /** Returns the curve of a diameter between the tested ones, at the test speed. */
    public PumpCurve at(Length diameter) {
        Length smallest = Trim.full(curves.get(0));
        Length largest = Trim.full(curves.get(curves.size() - 1));
        if (diameter.compareTo(smallest) < 0 || diameter.compareTo(largest) > 0) {
            throw new Refusal(
                    CurveProblem.TRIM_OUT_OF_RANGE,
                    "Asked for an impeller of " + diameter + " between those tested",
                    "Tested were " + smallest + " to " + largest,
                    "Choose a diameter in between, or take a rule for a trim beyond");
        }
        int upper = IntStream.range(1, curves.size())
                .filter(i -> diameter.compareTo(Trim.full(curves.get(i))) <= 0)
                .findFirst()
                .orElseThrow();
        return between(curves.get(upper - 1), curves.get(upper), diameter);
    }

    private static PumpCurve between(PumpCurve small, PumpCurve large, Length diameter) {
        double d = Trim.full(small).si();
        double share = (diameter.si() - d) / (Trim.full(large).si() - d);
        SimilarityMap from = small.map().similarity();
        SimilarityMap to = large.map().similarity();
        Range range = new Range(
                mixed(from.tested().low(), to.tested().low(), share),
                mixed(from.tested().high(), to.tested().high(), share));
        SmoothCurve head = mixed(from.head(), to.head(), new Mix(from.tested(), to.tested(), range, share));
        SmoothCurve power = mixed(from.power(), to.power(), new Mix(from.tested(), to.tested(), range, share));
        Tested tested = new Tested(
                large.name(),
                large.testedSpeed(),
                Optional.of(diameter),
                large.liquid(),
                large.tested().testedIn(),
                List.of(),
                FittedCurve.known(Head.KIND, head),
                FittedCurve.known(Power.KIND, power));
        Notes notes = small.notes().and(large.notes());
        Basis basis = small.basis()
                .and(large.basis())
                .with(large.name() + " at " + diameter + ": between the tested " + Trim.full(small) + " and "
                        + Trim.full(large) + ", in proportion");
        return CurveChecks.checked(tested, head, power, range, notes, basis);
    }

    private static double mixed(double from, double to, double share) {
        return from + share * (to - from);
    }

    /**
     * How two curves are mixed.
     *
     * @param from the range of the smaller
     * @param to the range of the larger
     * @param made the range of the curve between them
     * @param share how near it lies to the larger
     */
    private record Mix(Range from, Range to, Range made, double share) {}

    private static SmoothCurve mixed(SmoothCurve from, SmoothCurve to, Mix mix) {
        if (from instanceof Polynomial small && to instanceof Polynomial large) {
            return stretched(small, mix.from, mix.made)
                    .times(1 - mix.share)
                    .plus(stretched(large, mix.to, mix.made).times(mix.share));
        }
        double[] flows = new double[STATIONS];
        double[] values = new double[STATIONS];
        for (int i = 0; i < STATIONS; i++) {
            double at = i / (STATIONS - 1.0);
            flows[i] = mixed(mix.made.low(), mix.made.high(), at);
            values[i] = mixed(
                    from.valueAt(mixed(mix.from.low(), mix.from.high(), at)),
                    to.valueAt(mixed(mix.to.low(), mix.to.high(), at)),
                    mix.share);
        }
        return MonotoneCubic.through(flows, values);
    }

    /** Returns the polynomial that has over one range the values that the given one has over another. */
    private static Polynomial stretched(Polynomial given, Range over, Range made) {
        double factor = (over.high() - over.low()) / (made.high() - made.low());
        return given.shiftedBy(-over.low()).ofScaled(factor).shiftedBy(made.low());
    }
}
