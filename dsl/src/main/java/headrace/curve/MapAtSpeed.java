package headrace.curve;

import headrace.curve.PumpMap.Range;
import headrace.curve.PumpMap.Rise;
import headrace.units.Flow;
import headrace.units.Head;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;

/**
 * A map seen at one speed, over the range that its user chose.
 *
 * @param map the map
 * @param ratio the speed as a share of the tested speed
 * @param range the homologous flows that it covers, the tested ones unless extended
 */
record MapAtSpeed(PumpMap map, double ratio, Range range) {
    /** Returns the flow at this speed to which a flow of the test belongs. */
    Flow flow(double homologous) {
        return Flow.cubicMetresPerSecond(map.actual(homologous, ratio));
    }

    boolean covers(Flow flow) {
        return range.holds(map.homologous(flow.si(), ratio));
    }

    boolean tested(Flow flow) {
        return map.tested().holds(map.homologous(flow.si(), ratio));
    }

    /** Returns a range in words, at a share of this speed. */
    String flows(Range shown, double share) {
        double s = ratio * share;
        return Flow.cubicMetresPerSecond(map.actual(shown.low(), s)) + " to "
                + Flow.cubicMetresPerSecond(map.actual(shown.high(), s));
    }

    /** Returns the least and the greatest head inside a range. */
    double[] heads(Range within) {
        return map.extremeHeads(ratio, within);
    }

    /**
     * Returns every flow inside a range at which there is a head; a head typed as printed may miss an end by rounding.
     */
    List<Flow> flowsAt(Head head, Range within) {
        double[] flows = map.flowsAt(head.metres(), ratio, within);
        if (flows.length == 0) {
            double nothing = PumpMap.ROUNDING * heads(within)[1];
            flows = DoubleStream.of(within.low(), within.high())
                    .map(x -> map.actual(x, ratio))
                    .filter(q -> Math.abs(map.headMetres(q, ratio) - head.metres()) <= nothing)
                    .toArray();
        }
        return DoubleStream.of(flows).mapToObj(Flow::cubicMetresPerSecond).toList();
    }

    Optional<Droop> droop() {
        Rise rise = map.headRise(ratio);
        return rise.by() == 0
                ? Optional.empty()
                : Optional.of(new Droop(
                        Head.metres(rise.by()),
                        Flow.cubicMetresPerSecond(rise.from()),
                        Flow.cubicMetresPerSecond(rise.to()),
                        Head.metres(map.headMetres(rise.to(), ratio))));
    }

    MapAtSpeed at(double other) {
        return new MapAtSpeed(map, other, range);
    }

    MapAtSpeed of(PumpMap other) {
        return new MapAtSpeed(other, ratio, range);
    }

    MapAtSpeed including(Flow flow) {
        return new MapAtSpeed(map, ratio, range.including(map.homologous(flow.si(), ratio)));
    }
}
