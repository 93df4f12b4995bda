package headrace.estimate;

import headrace.estimate.FlowDraws.Counts;
import headrace.estimate.FlowDraws.Drawn;
import headrace.estimate.RootSearch.At;
import headrace.numeric.RandomStreams;
import headrace.work.Steps;
import headrace.work.Work;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Readings and maps drawn as their errors say, a block at a time so that all of it stays in a near cache. */
final class DrawnInputs {
    private static final int BLOCK = 8192;
    private static final Map<Method, Set<Cause>> NOT_ASKED = notAsked();

    private final FlowEstimate estimate;
    private final RandomStreams streams;
    private final List<ErrorBudget.Part> parts;
    private final double[] normal = new double[BLOCK];
    private final double[] other = new double[BLOCK];

    /** Powers in W, torques in N·m, heads in m, speeds as shares, and factors of the pump's power, losses and head. */
    final double[] power = new double[BLOCK];

    final double[] torque = new double[BLOCK];
    final double[] head = new double[BLOCK];
    final double[] speed = new double[BLOCK];
    final double[] pump = new double[BLOCK];
    final double[] losses = new double[BLOCK];
    final double[] mapHead = new double[BLOCK];

    private DrawnInputs(FlowEstimate estimate, RandomStreams streams) {
        this.estimate = estimate;
        this.streams = streams;
        Set<Cause> left = NOT_ASKED.get(estimate.method());
        parts = estimate.estimator().budget().parts().stream()
                .filter(part -> !left.contains(part.cause()))
                .toList();
    }

    static DrawnInputs of(FlowEstimate estimate, RandomStreams streams) {
        return new DrawnInputs(estimate, streams);
    }

    /** What has no say in a method is not drawn, so that a budget may hold more than one method asks for. */
    private static Map<Method, Set<Cause>> notAsked() {
        Map<Method, Set<Cause>> map = new EnumMap<>(Method.class);
        map.put(Method.POWER_AND_SPEED, Set.of(Cause.TORQUE_READING, Cause.HEAD_READING));
        map.put(
                Method.TORQUE_AND_SPEED,
                Set.of(Cause.POWER_READING, Cause.METER_SCALE, Cause.HEAD_READING, Cause.LOSSES));
        map.put(Method.POWER_AND_HEAD, Set.of(Cause.TORQUE_READING, Cause.SPEED_READING));
        map.put(
                Method.HEAD_AND_SPEED,
                Set.of(Cause.POWER_READING, Cause.TORQUE_READING, Cause.METER_SCALE, Cause.LOSSES, Cause.POWER_MAP));
        map.put(Method.MIX, Set.of(Cause.TORQUE_READING));
        return map;
    }

    boolean draws(Cause cause) {
        return parts.stream().anyMatch(part -> part.cause() == cause);
    }

    Drawn drawn(At at, int draws) {
        DrawnFlows solver = DrawnFlows.of(estimate, at, this);
        double[] flows = new double[draws];
        double[] heads = new double[draws];
        Counts counts = new Counts(0, 0, 0, 0);
        try (Steps steps = Work.steps("drawing estimates", draws)) {
            for (int from = 0; from < draws; from += BLOCK) {
                int here = Math.min(BLOCK, draws - from);
                steps.at(from);
                fill(at, from, here);
                solver.solve(here);
                counts = counts.plus(kept(solver, here, flows, heads, counts.kept()));
            }
            steps.at(draws);
        }
        if (counts.kept() < 2) {
            throw new IllegalStateException("the reading lies on the map, and so do draws about it");
        }
        return new Drawn(flows, heads, counts);
    }

    private static Counts kept(DrawnFlows solver, int here, double[] flows, double[] heads, int already) {
        int kept = already;
        int below = 0;
        for (int i = 0; i < here; i++) {
            double flow = solver.flows()[i];
            if (Double.isFinite(flow)) {
                flows[kept] = flow;
                heads[kept] = solver.heads()[i];
                kept++;
            } else if (flow < 0) {
                below++;
            }
        }
        int above = here - (kept - already) - below;
        return new Counts(kept - already, below, above, solver.twoFlows());
    }

    private void fill(At at, long from, int count) {
        Reading reading = estimate.reading();
        Arrays.fill(power, 0, count, reading.power().map(p -> p.watts()).orElse(0.0));
        Arrays.fill(
                torque, 0, count, reading.torque().map(t -> t.newtonMetres()).orElse(0.0));
        Arrays.fill(head, 0, count, reading.head().map(h -> h.metres()).orElse(0.0));
        Arrays.fill(speed, 0, count, at.speed());
        Arrays.fill(pump, 0, count, 1);
        Arrays.fill(losses, 0, count, 1);
        Arrays.fill(mapHead, 0, count, 1);
        int stream = 0;
        boolean pending = false;
        for (ErrorBudget.Part part : parts) {
            if (!part.cause().rectangular()) {
                if (!pending) {
                    streams.fillNormal(stream, from, normal, other, count);
                    stream += 2;
                }
                add(part, pending ? other : normal, count);
                pending = !pending;
            }
        }
        for (ErrorBudget.Part part : parts) {
            if (part.cause().rectangular()) {
                streams.fillUniform(stream++, from, normal, count);
                for (int i = 0; i < count; i++) {
                    normal[i] = 2 * normal[i] - 1;
                }
                add(part, normal, count);
            }
        }
    }

    private void add(ErrorBudget.Part part, double[] drawn, int count) {
        double radians = estimate.estimator().map().speed().si();
        switch (part.cause()) {
            case POWER_READING -> added(power, Math.hypot(part.relative() * power[0], part.fixed()), drawn, count);
            case TORQUE_READING -> added(torque, Math.hypot(part.relative() * torque[0], part.fixed()), drawn, count);
            case HEAD_READING -> added(head, Math.hypot(part.relative() * head[0], part.fixed()), drawn, count);
            case SPEED_READING ->
                added(speed, Math.hypot(part.relative() * speed[0], part.fixed() / radians), drawn, count);
            case METER_SCALE -> scaled(power, part.relative(), drawn, count);
            case POWER_MAP, DENSITY -> scaled(pump, part.relative(), drawn, count);
            case HEAD_MAP -> scaled(mapHead, part.relative(), drawn, count);
            case LOSSES -> scaled(losses, part.relative(), drawn, count);
        }
    }

    private static void added(double[] values, double size, double[] drawn, int count) {
        for (int i = 0; i < count; i++) {
            values[i] += size * drawn[i];
        }
    }

    private static void scaled(double[] values, double share, double[] drawn, int count) {
        for (int i = 0; i < count; i++) {
            values[i] *= 1 + share * drawn[i];
        }
    }
}
