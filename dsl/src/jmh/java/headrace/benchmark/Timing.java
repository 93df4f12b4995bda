package headrace.benchmark;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.StringJoiner;
import java.util.function.Supplier;

/**
 * Times workloads in this process and prints times and results as JSON: the first call, then warm calls.
 *
 * <p>Arguments: the seconds of warming up, the number of timed repetitions, then the workloads by name.
 */
public final class Timing {
    static final Map<String, Supplier<Workload>> ALL = all();

    private Timing() {}

    private static Map<String, Supplier<Workload>> all() {
        Map<String, Supplier<Workload>> all = new LinkedHashMap<>();
        all.put("W1", CurveEvaluation::new);
        all.put("W2", MapGrid::new);
        all.put("W3a", () -> new SpeedForDuty('a'));
        all.put("W3b", () -> new SpeedForDuty('b'));
        all.put("W3c", () -> new SpeedForDuty('c'));
        all.put("W4a", () -> new ParallelSystems(false));
        all.put("W4b", () -> new ParallelSystems(true));
        all.put("W5a", () -> new DirectReturn(5, 1000, "W5a N=5, 1000 cases singly, fold"));
        all.put("W5b", () -> new DirectReturn(200, 100, "W5b N=200, 100 cases singly, fold"));
        all.put("W5c", () -> new DirectReturn(2000, 10, "W5c N=2000, 10 cases singly, fold"));
        all.put("W5y", YearOfLoads::new);
        all.put("W6a", () -> new RingMain(56));
        all.put("W6b", () -> new RingMain(560));
        all.put("W7a", () -> new FlowFromPower('A'));
        all.put("W7c", () -> new FlowFromPower('B'));
        all.put("W7r", () -> new FlowFromPower('r'));
        all.put("W7b", UncertaintyGrid::new);
        all.put("W8", () -> new Paybacks(false));
        all.put("W8r", () -> new Paybacks(true));
        all.put("W9", TrendLogs::new);
        all.put("W10", CurveFits::new);
        return all;
    }

    /** Times the workloads whose names begin with one of the arguments. */
    public static void main(String[] arguments) {
        double warmUp = Double.parseDouble(arguments[0]);
        int repetitions = Integer.parseInt(arguments[1]);
        StringJoiner results = new StringJoiner(",\n", "{\"results\": {\n", "\n}}");
        for (String asked : Arrays.copyOfRange(arguments, 2, arguments.length)) {
            for (Map.Entry<String, Supplier<Workload>> each : ALL.entrySet()) {
                if (each.getKey().matches(asked + "[a-z]?")) {
                    results.add(timed(each.getValue().get(), warmUp, repetitions));
                }
            }
        }
        System.out.println(results);
    }

    private static String timed(Workload work, double warmUp, int repetitions) {
        double first = seconds(work, 1);
        long start = System.nanoTime();
        do {
            work.call();
        } while (System.nanoTime() - start < warmUp * 1e9);
        double[] times = new double[repetitions];
        for (int i = 0; i < repetitions; i++) {
            times[i] = seconds(work, work.inner());
        }
        Arrays.sort(times);
        return "\"" + work.name() + "\": {\"first\": " + first + ", \"median\": " + times[repetitions / 2]
                + ", \"min\": " + times[0] + ", \"outputs\": " + json(work.outputs()) + "}";
    }

    private static double seconds(Workload work, int calls) {
        long start = System.nanoTime();
        for (int i = 0; i < calls; i++) {
            work.call();
        }
        return (System.nanoTime() - start) * 1e-9 / calls;
    }

    private static String json(Map<String, Object> outputs) {
        StringJoiner all = new StringJoiner(", ", "{", "}");
        outputs.forEach((name, value) ->
                all.add("\"" + name + "\": " + (value instanceof double[] many ? Arrays.toString(many) : value)));
        return all.toString();
    }
}
